import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { LoadableDatabase } from "../../src/engine/database.ts";
import { openNodeDatabase } from "../../src/engine/node.ts";
import { logsCoverage } from "../../src/report/logsCoverage.ts";
import type { MonthCoverage } from "../../src/report/logsResult.ts";
import { readLoads } from "../../src/report/readLoads.ts";
import { readRuns } from "../../src/report/readRuns.ts";
import { everyRow } from "../../src/report/whereRows.ts";
import { csv, joinInto } from "../support/openRuns.ts";
import { tenRuns } from "../support/tenRuns.ts";

let database: LoadableDatabase;
beforeAll(async () => {
  database = await openNodeDatabase([]);
});
afterAll(() => database.close());

async function covered(files: Readonly<Record<string, string>>): Promise<readonly MonthCoverage[]> {
  const logs = await joinInto(database, files);
  const runs = await readRuns(database, everyRow);
  const loads = await readLoads(database, everyRow);
  return logsCoverage(logs.tables, runs, loads, logs.house.timeZone);
}

describe("logsCoverage", () => {
  let months: ReadonlyMap<string, MonthCoverage>;
  beforeAll(async () => {
    months = new Map((await covered(tenRuns)).map((month) => [month.month, month]));
  });

  test("lists the months between batches and any other month that has a row, in order", () => {
    expect([...months.keys()]).toEqual(["2025-09", "2025-10", "2026-01", "2026-02", "2026-03"]);
  });

  test("counts rows in the month they begin", () => {
    expect(months.get("2026-01")?.rows).toEqual({
      steeping: 6,
      germination: 6,
      kilning: 3,
      readings: 16,
      weather: 12,
      deliveries: 1,
    });
    expect(months.get("2025-09")?.rows).toEqual({ "grain-lots": 2 });
  });

  test("counts loads and runs in the month they were unloaded, and which of them have what is needed", () => {
    expect(months.get("2026-01")).toMatchObject({
      loads: 3,
      loadsWithAir: 3,
      loadsWithDepth: 3,
      loadsWithReadings: 0,
      runsWithFinalMoisture: 3,
      runsWithYield: 3,
    });
    // R09 was unloaded without a moisture or a mass; R10 is still in the kiln in March.
    expect(months.get("2026-02")).toMatchObject({ loads: 5, runsWithFinalMoisture: 5, runsWithYield: 5 });
    expect(months.get("2026-03")).toMatchObject({ loads: 0, rows: { kilning: 1 } });
  });

  test("lists a month without anything where batches were made before and after it", async () => {
    const listed = await covered({
      "house.toml": 'name = "Gap"\ntime_zone = "Etc/GMT"\n',
      "kilning.csv": csv(
        ["run", "kiln", "loaded_at", "unloaded_at"],
        ["a", "K1", "2025-11-10 06:00", "2025-11-10 19:00"],
        ["b", "K1", "2026-02-10 06:00", "2026-02-10 19:00"],
      ),
    });
    expect(listed.map(({ month, loads }) => [month, loads])).toEqual([
      ["2025-11", 1],
      ["2025-12", 0],
      ["2026-01", 0],
      ["2026-02", 1],
    ]);
  });

  test("counts by the house's own clock: the last evening of a month belongs to it", async () => {
    const listed = await covered({
      "house.toml": 'name = "West"\ntime_zone = "Etc/GMT+6"\n',
      "kilning.csv": csv(
        ["run", "kiln", "loaded_at", "unloaded_at"],
        ["a", "K1", "2026-01-31 09:00", "2026-01-31 23:30"],
      ),
      "events.csv": csv(["on", "kind", "scope", "what"], ["2026-02-01", "change", "kiln", "new fan"]),
    });
    expect(listed.map(({ month, loads, rows }) => [month, loads, rows])).toEqual([
      ["2026-01", 1, { kilning: 1 }],
      ["2026-02", 0, { events: 1 }],
    ]);
  });

  test("is empty for empty logs", async () => {
    expect(await covered({})).toEqual([]);
  });
});
