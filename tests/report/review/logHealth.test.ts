import { describe, expect, it } from "vitest";
import { logHealthOf } from "../../../src/report/review/logHealth.ts";
import { madeUpReport } from "../../support/madeUpReport.ts";

const report = madeUpReport(6);
const [run] = report.runs;
if (run === undefined) throw new Error("the made-up report has no run");
const ended = run.germinationEndedAt ?? 0;
const month = { from: ended - 1, before: ended + 40 * 86_400_000 };
const problem = (effect: "row-set-aside" | "file-set-aside", file: string, of: string | null) => ({
  file,
  line: 2,
  column: null,
  value: null,
  run: of,
  rule: "no-such-date" as const,
  effect,
  message: "There is no such date.",
  hint: "Look it up.",
});

describe("logHealthOf(report, monthRuns, month)", () => {
  const lost = { ...run, run: "lost", unloadedAt: null };

  it("counts a kiln row set aside for the month in which its batch left the floor, and names the batch", () => {
    const problems = [problem("row-set-aside", "kilning.csv", "lost")];
    const health = logHealthOf({ runs: [run, lost], logs: { ...report.logs, problems } }, [run], month);
    expect(health).toMatchObject({ rowsSetAside: 1, runsLost: ["lost"], runs: 1, filesSetAside: [] });
    const later = { from: month.before, before: month.before + 1 };
    expect(logHealthOf({ runs: [run, lost], logs: { ...report.logs, problems } }, [], later).runsLost).toEqual([]);
  });

  it("does not take a batch on the floor for a lost one", () => {
    const health = logHealthOf({ runs: [run, lost], logs: { ...report.logs, problems: [] } }, [run], month);
    expect(health.runsLost).toEqual([]);
  });

  it("names each file that could not be read once", () => {
    const problems = ["orders.csv", "events.csv", "orders.csv"].map((file) => problem("file-set-aside", file, null));
    const health = logHealthOf({ runs: [], logs: { ...report.logs, problems } }, [], month);
    expect(health.filesSetAside).toEqual(["events.csv", "orders.csv"]);
  });
});
