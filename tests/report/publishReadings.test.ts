import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { LoadableDatabase } from "../../src/engine/database.ts";
import { openNodeDatabase } from "../../src/engine/node.ts";
import { parseLoadReadings } from "../../src/report/loadCurve.ts";
import { loadReadingsTable, publishLoad } from "../../src/report/publishReadings.ts";
import { curvesByLoad } from "../../src/report/readingsByLoad.ts";
import { readLoads } from "../../src/report/readLoads.ts";
import { everyRow } from "../../src/report/whereRows.ts";
import type { Table } from "../../src/tables/table.ts";
import { csv, joinInto } from "../support/openRuns.ts";
import { tenRuns, tenRunsAt } from "../support/tenRuns.ts";

let database: LoadableDatabase;
beforeAll(async () => {
  database = await openNodeDatabase([]);
});
afterAll(() => database.close());

async function published(logFiles: Readonly<Record<string, string>>) {
  const logs = await joinInto(database, logFiles);
  const loads = await readLoads(database, everyRow);
  const readings = logs.tables.get("readings") as Table;
  const files = [...curvesByLoad(readings, loads)].map(([load, curve]) => publishLoad(load, curve, null));
  await database.load([loadReadingsTable(files)]);
  const after = await readLoads(database, everyRow);
  const summed = await database.query("SELECT load, readings FROM load_readings ORDER BY load");
  return { files, loads: after, summed };
}

describe("publishLoad and loadReadingsTable", () => {
  test("writes one file a load with readings, and sums them up where the loads are read", async () => {
    const { files, loads, summed } = await published(tenRuns);
    // The hour before loading and the hour after unloading are not the load's.
    expect(summed).toEqual([{ load: "P1", readings: 14 }]);
    const [file] = files;
    expect(files.length).toBe(1);
    expect(loads.map((load) => load.readingsFile)).toEqual([file?.file, ...Array(8).fill(null)]);
    const curve = parseLoadReadings(new TextDecoder().decode(file?.csv));
    expect(curve.at[0]).toBe(tenRunsAt("2026-01-12 06:00"));
    expect(curve.at.at(-1)).toBe(tenRunsAt("2026-01-12 19:00"));
    expect(curve.airOnCelsius.slice(0, 3)).toEqual(Float64Array.of(14, 47.6, 48.3));
    expect(curve.airOffCelsius[11]).toBeNaN();
  });

  test("says nothing of the heater on fourteen readings", async () => {
    const { loads } = await published(tenRuns);
    expect(loads[0]).toMatchObject({ powerLimitedShare: null, powerLimited: false });
  });

  test("marks a load whose heater could not hold the set point, and leaves one that could", async () => {
    const minutes = Array.from({ length: 600 }, (_, minute) => minute);
    const clock = (day: string, minute: number): string =>
      new Date(Date.parse(`${day}T06:00Z`) + minute * 60_000).toISOString().slice(0, 16).replace("T", " ");
    const { loads } = await published({
      "house.toml": 'name = "Heat"\ntime_zone = "Etc/GMT"\n',
      "kilning.csv": csv(
        ["run", "kiln", "loaded_at", "cure_started_at", "unloaded_at", "drying_set_c"],
        ["short", "K1", "2026-01-01 06:00", "2026-01-01 16:00", "2026-01-01 19:00", 48],
        ["held", "K1", "2026-01-02 06:00", "2026-01-02 16:00", "2026-01-02 19:00", 48],
      ),
      "readings/all.csv": csv(
        ["kiln", "at", "air_on_c", "heater_on"],
        ...minutes.map((minute) => ["K1", clock("2026-01-01", minute), 42, 1]),
        ...minutes.map((minute) => [
          "K1",
          clock("2026-01-02", minute),
          minute % 12 < 6 ? 47.5 : 48.5,
          minute % 12 < 6 ? 1 : 0,
        ]),
      ),
    });
    expect(loads.map((load) => [load.runs, load.powerLimitedShare, load.powerLimited])).toEqual([
      [["short"], 1, true],
      [["held"], 0, false],
    ]);
  });

  test("names a file by what is in it", async () => {
    const first = (await published(tenRuns)).files[0]?.file;
    const again = (await published(tenRuns)).files[0]?.file;
    const path = "readings/2026-01.csv";
    const changed = { ...tenRuns, [path]: (tenRuns[path] ?? "").replace("12:00,47.8", "12:00,47.9") };
    expect(again).toBe(first);
    expect((await published(changed)).files[0]?.file).not.toBe(first);
  });
});
