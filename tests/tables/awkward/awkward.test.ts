import fc from "fast-check";
import { DateTime } from "luxon";
import { describe, expect, test } from "vitest";
import { readLogs } from "../../../src/tables/readLogs.ts";
import { folderOf, logsOf, valuesOf } from "../logsOf.ts";
import { awkwardClocks } from "./awkwardClocks.ts";
import { awkwardExports } from "./awkwardExports.ts";
import { awkwardLoggers } from "./awkwardLoggers.ts";
import { awkwardSheets } from "./awkwardSheets.ts";
import "../../support/matchers.ts";

const awkwardFiles = [...awkwardSheets, ...awkwardExports, ...awkwardClocks, ...awkwardLoggers];

const isMoment = (text: unknown): text is string =>
  typeof text === "string" && /^\d{4}-\d\d-\d\dT\d\d:\d\dZ$/.test(text);

describe("readLogs, given", () => {
  test("50 awkward files or more", () => expect(awkwardFiles.length).toBeGreaterThanOrEqual(50));

  test.each(awkwardFiles.map((file) => [file.what, file] as const))(
    "%s",
    async (_, { house, files, table, expected, problems = [] }) => {
      for (const bytesAPiece of [1 << 16, 7]) {
        const logs = await readLogs(folderOf({ "house.toml": house ?? "", ...files }, bytesAPiece));
        // Only the file at hand stands in the folder: that lots, runs or loads are not named elsewhere is no fault of its.
        const own = logs.problems.map(({ rule }) => rule).filter((rule) => !/^unknown-(lot|run)$/.test(rule));
        expect(own).toEqual(problems);
        if (Object.keys(expected).length === 0) expect(logs.tables.has(table)).toBe(false);
        for (const [column, wanted] of Object.entries(expected)) {
          const found = valuesOf(logs, table, column);
          expect(found).toHaveLength(wanted.length);
          wanted.forEach((value, i) => {
            if (typeof value === "number") expect(found[i] as number).toAgreeWithin(value, 1e-12);
            else expect(found[i]).toBe(isMoment(value) ? Date.parse(value) : value);
          });
        }
      }
    },
  );
});

describe("kiln hours over a clock change", () => {
  const nights = [
    ["Europe/Berlin", "2026-03-28T20:00", "2026-10-24T20:00"],
    ["America/Chicago", "2026-03-07T20:00", "2026-10-31T20:00"],
    ["Australia/Sydney", "2026-10-03T20:00", "2026-04-04T20:00"],
    ["Pacific/Auckland", "2026-09-26T20:00", "2026-04-04T20:00"],
  ] as const;

  // Durations by luxon, an independent library of time zones.
  test.each(nights)("in %s are the hours that passed, by luxon's count", async (zone, forward, back) => {
    for (const [from, change] of [
      [forward, -1],
      [back, 1],
    ] as const) {
      await fc.assert(
        fc.asyncProperty(fc.integer({ min: 10 * 60, max: 30 * 60 }), async (minutes) => {
          const loaded = DateTime.fromISO(from, { zone });
          const unloaded = loaded.plus({ minutes });
          const wall = (time: DateTime): string => time.toFormat("yyyy-MM-dd HH:mm");
          const logs = await logsOf({
            "house.toml": `time_zone = "${zone}"\n[[kilns]]\nid = "K1"\n`,
            "kilning.csv": `run,kiln,loaded_at,unloaded_at\nR1,K1,${wall(loaded)},${wall(unloaded)}\n`,
          });
          const [start] = valuesOf(logs, "kilning", "loaded_at") as number[];
          const [end] = valuesOf(logs, "kilning", "unloaded_at") as number[];
          expect(((end as number) - (start as number)) / 60_000).toBe(minutes);
          const onTheWall =
            Date.parse(`${wall(unloaded).replace(" ", "T")}Z`) - Date.parse(`${wall(loaded).replace(" ", "T")}Z`);
          expect(minutes - onTheWall / 60_000).toBe(60 * change);
        }),
        { numRuns: 20 },
      );
    }
  });
});
