import { describe, expect, it } from "vitest";
import { sortRuns } from "../../src/bodies/runs/runsOrder.ts";
import { bareRun } from "../support/madeUpReport.ts";

const DAY = 86_400_000;
const row = (run: string, steeped: number, loaded: number | null) => ({
  ...bareRun,
  run,
  steepStartedAt: steeped * DAY,
  loadedAt: loaded === null ? null : loaded * DAY,
});
const names = (rows: Parameters<typeof sortRuns>[0]): readonly string[] => sortRuns(rows, null).map(({ run }) => run);

describe("sortRuns(rows, null)", () => {
  it("puts what is in steep or on the floor above what is in the kiln", () => {
    expect(names([row("3", 4, 10), row("5", 9, null), row("4", 6, null), row("2", 1, 6)])).toEqual([
      "5",
      "4",
      "3",
      "2",
    ]);
  });

  it("leaves a batch without a kiln row among those of its own days", () => {
    expect(names([row("3", 4, 10), row("lost", 2, null), row("1", 0, 5)])).toEqual(["3", "lost", "1"]);
  });

  it("leaves rows as they come where none has been in a kiln", () => {
    expect(names([row("2", 2, null), row("1", 1, null)])).toEqual(["2", "1"]);
  });
});
