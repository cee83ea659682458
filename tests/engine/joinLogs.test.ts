import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { LoadableDatabase } from "../../src/engine/database.ts";
import { openNodeDatabase } from "../../src/engine/node.ts";
import { readLoads } from "../../src/report/readLoads.ts";
import { readRuns } from "../../src/report/readRuns.ts";
import { everyRow } from "../../src/report/whereRows.ts";
import { csv, joinInto } from "../support/openRuns.ts";

const HOUSE = 'name = "Edge cases"\ntime_zone = "Etc/GMT"\n';

let database: LoadableDatabase;
beforeAll(async () => {
  database = await openNodeDatabase([]);
});
afterAll(() => database.close());

/** Joins logs made up for one question and reads all runs and loads. */
async function joined(files: Readonly<Record<string, string>>) {
  await joinInto(database, { "house.toml": HOUSE, ...files });
  return { runs: await readRuns(database, everyRow), loads: await readLoads(database, everyRow) };
}

const kilning = ["run", "kiln", "load", "loaded_at", "unloaded_at"];

describe("joinLogs", () => {
  test("joins logs without a single row", async () => {
    const { runs, loads } = await joined({});
    expect(runs).toEqual([]);
    expect(loads).toEqual([]);
  });

  test("shows a run that has only been steeped, and one that only the kiln knows", async () => {
    const { runs } = await joined({
      "grain-lots.csv": csv(["lot", "grain", "variety"], ["L1", "barley", "Specimen"]),
      "steeping.csv": csv(["run", "lot", "started_at"], ["new", "L1", "2026-02-01 08:00"]),
      "kilning.csv": csv(kilning, ["old", "K1", "", "2026-01-01 06:00", "2026-01-01 19:00"]),
    });
    expect(runs.map(({ run, loads, load, tanks }) => ({ run, loads, load, tanks }))).toEqual([
      { run: "new", loads: 0, load: null, tanks: 1 },
      { run: "old", loads: 1, load: "K1 2026-01-01T06:00Z", tanks: null },
    ]);
  });

  test("keeps loads of two kilns apart that bear the same name", async () => {
    const { loads } = await joined({
      "kilning.csv": csv(
        kilning,
        ["a", "K1", "7", "2026-01-01 06:00", "2026-01-01 19:00"],
        ["b", "K2", "7", "2026-01-03 06:00", "2026-01-03 18:00"],
      ),
    });
    expect(loads.map(({ load, kilnHours }) => [load, kilnHours])).toEqual([
      ["7 K1", 13],
      ["7 K2", 12],
    ]);
  });

  test("gives a row without a load's name the name that its neighbour in the kiln has", async () => {
    const { loads } = await joined({
      "kilning.csv": csv(
        kilning,
        ["a", "K1", "P7", "2026-01-01 06:00", "2026-01-01 19:00"],
        ["b", "K1", "", "2026-01-01 06:00", ""],
      ),
    });
    expect(loads.map(({ load, runs, kilnHours }) => ({ load, runs, kilnHours }))).toEqual([
      { load: "P7", runs: ["a", "b"], kilnHours: 13 },
    ]);
  });

  test("adds nothing up where one of several rows has no mass, and averages what there is", async () => {
    const { runs } = await joined({
      "grain-lots.csv": csv(["lot", "grain", "variety", "moisture_pct"], ["L1", "barley", "Specimen", 12]),
      "steeping.csv": csv(
        ["run", "lot", "tank", "grain_in_kg", "started_at", "water_c"],
        ["a", "L1", "T1", 300, "2026-01-01 08:00", 12],
        ["a", "L1", "T2", "", "2026-01-01 08:00", 15],
      ),
    });
    expect(runs).toMatchObject([{ grainInKilograms: null, grainMoisturePercent: 12, steepWaterCelsius: 13.5 }]);
  });

  test("gives no steep-out moisture where the grain came out lighter than its dry matter", async () => {
    const { runs } = await joined({
      "steeping.csv": csv(
        ["run", "lot", "grain_in_kg", "grain_moisture_pct", "started_at", "steep_out_kg"],
        ["a", "L1", 500, 12, "2026-01-01 08:00", 430],
      ),
    });
    expect(runs).toMatchObject([{ steepOutMoisturePercent: null, steepOutMoistureBasis: null, grain: null }]);
  });

  test("gives a load no energy where its rows disagree", async () => {
    const { loads } = await joined({
      "kilning.csv": csv(
        [...kilning, "energy_kwh"],
        ["a", "K1", "P7", "2026-01-01 06:00", "2026-01-01 19:00", 400],
        ["b", "K1", "P7", "2026-01-01 06:00", "2026-01-01 19:00", 410],
        ["c", "K1", "P8", "2026-01-02 06:00", "2026-01-02 19:00", 390],
        ["d", "K1", "P8", "2026-01-02 06:00", "2026-01-02 19:00", ""],
      ),
    });
    expect(loads.map((load) => load.energyKilowattHours)).toEqual([null, 390]);
  });

  test("keeps ids with leading zeros, quotes, commas and line ends as they were written", async () => {
    const hostile = ["007", 'a "b"', "x, y", "o'clock", "é\nf"];
    const quoted = hostile.map((id) => `"${id.replaceAll('"', '""')}"`);
    const { runs } = await joined({
      "kilning.csv": csv(kilning, ...quoted.map((id, i) => [id, "K1", "", `2026-01-0${i + 1} 06:00`, ""])),
    });
    expect(runs.map(({ run }) => run).toReversed()).toEqual(hostile);
  });
});

describe("load_weather", () => {
  const load = ["a", "K1", "P1", "2026-01-02 06:00", "2026-01-02 18:00"];
  const at = (hour: number): string =>
    new Date(Date.UTC(2026, 0, 2) + Math.round(hour * 60) * 60_000).toISOString().slice(0, 16).replace("T", " ");
  const airOf = async (records: readonly (readonly [hour: number, humidity: number, celsius: number | ""])[]) => {
    const rows = records.map(([hour, humidity, celsius]) => [at(hour), humidity, celsius]);
    const { loads } = await joined({
      "kilning.csv": csv(kilning, load),
      "weather/all.csv": csv(["at", "ambient_rh_pct", "ambient_c"], ...rows),
    });
    const [{ airAtLoading, airOverLoad } = { airAtLoading: null, airOverLoad: null }] = loads;
    return { airAtLoading, airOverLoad };
  };

  test("bridges a gap of exactly three hours and none that is longer", async () => {
    const every = (hours: readonly number[]) => hours.map((hour) => [hour, 50, 10] as const);
    const air = { relativeHumidityPercent: 50, celsius: 10, source: "weather" };
    expect((await airOf(every([6, 9, 12, 15, 18]))).airOverLoad).toEqual(air);
    expect((await airOf(every([6, 9, 12.02, 15, 18]))).airOverLoad).toBeNull();
  });

  test("knows the air of a record made at the very moment, whatever is missing around it", async () => {
    expect(await airOf([[6, 61, 9]])).toEqual({
      airAtLoading: { relativeHumidityPercent: 61, celsius: 9, source: "weather" },
      airOverLoad: null,
    });
  });

  test("does not reach beyond the first and the last record", async () => {
    expect(
      (
        await airOf([
          [6.5, 50, 10],
          [9, 50, 10],
        ])
      ).airAtLoading,
    ).toBeNull();
    expect((await airOf([[5.5, 50, 10]])).airAtLoading).toBeNull();
  });

  test("takes humidity without a temperature, and a temperature that has gaps of its own", async () => {
    const { airAtLoading, airOverLoad } = await airOf([
      [6, 50, 10],
      [9, 60, ""],
      [12, 70, 10],
      [15, 60, 10],
      [18, 50, 10],
    ]);
    expect(airAtLoading).toEqual({ relativeHumidityPercent: 50, celsius: 10, source: "weather" });
    expect(airOverLoad).toMatchObject({ celsius: null, source: "weather" });
    expect(airOverLoad?.relativeHumidityPercent).toAgreeWithin(60, 1e-12);
  });

  test("of air that changes evenly over the load is the air in the middle of it", { timeout: 30_000 }, async () => {
    const times = fc.uniqueArray(fc.integer({ min: 301, max: 1139 }), { minLength: 6, maxLength: 20 });
    await fc.assert(
      fc.asyncProperty(times, fc.integer({ min: -20, max: 20 }), async (minutes, slope) => {
        // Every two and a half hours at the least, so that no gap is too wide.
        const all = new Set([...minutes, ...[4, 6.5, 9, 11.5, 14, 16.5, 19].map((hour) => hour * 60)]);
        const hours = [...all].sort((a, b) => a - b).map((minute) => minute / 60);
        const humidity = (hour: number): number => 50 + (slope / 10) * (hour - 12);
        const celsius = (hour: number): number => humidity(hour) / 5;
        const air = await airOf(hours.map((hour) => [hour, humidity(hour), celsius(hour)] as const));
        expect(air.airOverLoad?.relativeHumidityPercent).toAgreeWithin(50, 1e-12);
        expect(air.airOverLoad?.celsius).toAgreeWithin(10, 1e-12);
        expect(air.airAtLoading?.celsius).toAgreeWithin(celsius(6), 1e-12);
      }),
      { numRuns: 12 },
    );
  });
});
