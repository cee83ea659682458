import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { LoadableDatabase } from "../../src/engine/database.ts";
import { compareAir, readAirSources } from "../../src/report/airCompared.ts";
import type { LoadRow } from "../../src/report/loadRow.ts";
import { readLoads } from "../../src/report/readLoads.ts";
import { everyRow } from "../../src/report/whereRows.ts";
import { openRuns } from "../support/openRuns.ts";
import { tenRuns, tenRunsAt } from "../support/tenRuns.ts";

let database: LoadableDatabase;
let loads: readonly LoadRow[];
beforeAll(async () => {
  ({ database } = await openRuns(tenRuns));
  loads = await readLoads(database, everyRow);
});
afterAll(() => database.close());

function load(name: string): LoadRow {
  const found = loads.find((row) => row.load === name);
  if (!found) throw new Error(`no load ${name}`);
  return found;
}

describe("readLoads", () => {
  test("gives one row a firing, earliest first, named as logged or by kiln and moment", () => {
    const names = ["P1", "P2", "P3", "P4", "K2 2026-02-08T04:00Z", "P8a", "P8b", "P9", "P10"];
    expect(loads.map((row) => row.load)).toEqual(names);
  });

  test("puts runs that share a load into it: hours once, masses together, one energy", () => {
    expect(load("P4")).toMatchObject({
      runs: ["R04", "R05"],
      variety: null,
      grain: null,
      kilnHours: 14,
      dryingHours: 11,
      grainInKilograms: 490,
      greenLoadKilograms: 730,
      maltOutKilograms: 422,
      energyKilowattHours: 410,
    });
    expect(load("P4").finalMoisturePercent).toAgreeWithin((232 * 4.4 + 190 * 4.8) / 422, 1e-12);
    expect(load("P4").greenMoisturePercent).toAgreeWithin((400 * 44 + 330 * 45) / 730, 1e-12);
    const water = 232 * 0.956 * (44 / 56 - 4.4 / 95.6) + 190 * 0.952 * (45 / 55 - 4.8 / 95.2);
    expect(load("P4").waterRemovedKilograms).toAgreeWithin(water, 1e-12);
  });

  test("puts rows without a load's name together by kiln and moment", () => {
    expect(load("K2 2026-02-08T04:00Z")).toMatchObject({
      runs: ["R06", "R07"],
      variety: "Specimen",
      loadedAt: tenRunsAt("2026-02-08 06:00"),
      cureStartedAt: null,
      dryingHours: null,
      kilnHours: 14.5,
    });
  });

  test("gives each part of a split run its own hours and its share of the grain, by green malt", () => {
    expect(load("P8a")).toMatchObject({ kiln: "K1", kilnHours: 11, greenLoadKilograms: 450, maltOutKilograms: 268 });
    expect(load("P8b")).toMatchObject({ kiln: "K2", kilnHours: 9, greenLoadKilograms: 300, maltOutKilograms: 177 });
    expect(load("P8a").grainInKilograms).toAgreeWithin((500 * 450) / 750, 1e-12);
    expect(load("P8b").grainInKilograms).toAgreeWithin((500 * 300) / 750, 1e-12);
    expect(load("P8a").bedDepthMetres).toAgreeWithin(0.1, 1e-12);
  });

  test("has no hours for a load under way, and no air over it", () => {
    expect(load("P10")).toMatchObject({ unloadedAt: null, kilnHours: null, dryingHours: null, airOverLoad: null });
    expect(load("P10").airAtLoading).toEqual({ relativeHumidityPercent: 50, celsius: 15, source: "logged" });
  });

  test("filters by moment, kiln and variety; a mixed load belongs to no variety", async () => {
    const names = async (filter: Partial<typeof everyRow>) =>
      (await readLoads(database, { ...everyRow, ...filter })).map((row) => row.load);
    expect(await names({ variety: "Sampler" })).toEqual(["P8a", "P8b"]);
    expect(await names({ kiln: "K2" })).toEqual(["K2 2026-02-08T04:00Z", "P8b"]);
    expect(await names({ loadedFrom: tenRunsAt("2026-02-22 06:00") })).toEqual(["P9", "P10"]);
    expect(await names({ loadedBefore: tenRunsAt("2026-01-18 21:00") })).toEqual(["P1"]);
    expect(await names({ kiln: "K2' OR '1'='1" })).toEqual([]);
  });
});

describe("air at the intake", () => {
  test("at loading is as logged, even where there is weather; over the load it is the weather's mean", () => {
    expect(load("P1").airAtLoading).toEqual({ relativeHumidityPercent: 81, celsius: 5.5, source: "logged" });
    const over = load("P1").airOverLoad;
    // 06:00 to 19:00 over three-hourly records, trapezium by trapezium: (84·2 + 80·3 + 68·3 + 65·3 + 72·2) / 13 and
    // (6·2 + 8.5·3 + 11.5·3 + 11.5·3 + 9·2) / 13.
    expect(over?.relativeHumidityPercent).toAgreeWithin(951 / 13, 1e-12);
    expect(over?.celsius).toAgreeWithin(124.5 / 13, 1e-12);
    expect(over?.source).toBe("weather");
  });

  test("at loading is the weather of that moment where none was logged, between two records", () => {
    // 21:00 is a third of the way from 90 %, 2 °C at 20:00 to 84 %, −1 °C at 23:00.
    expect(load("P2").airAtLoading?.relativeHumidityPercent).toAgreeWithin(88, 1e-12);
    expect(load("P2").airAtLoading?.celsius).toAgreeWithin(1, 1e-12);
    expect(load("P2").airAtLoading?.source).toBe("weather");
  });

  test("over the load is unknown where more than three hours of weather are missing", () => {
    expect(load("P2").airOverLoad).toBeNull();
  });

  test("logged without saying when counts as at loading", () => {
    expect(load("P3").airAtLoading).toEqual({ relativeHumidityPercent: 70, celsius: 8, source: "logged" });
    expect(load("P3").airOverLoad).toBeNull();
  });

  test("logged as a mean is never taken for air at loading", () => {
    expect(load("K2 2026-02-08T04:00Z").airAtLoading).toBeNull();
    expect(load("P9").airOverLoad).toEqual({ relativeHumidityPercent: 55, celsius: 14, source: "logged" });
  });
});

describe("compareAir", () => {
  test("counts what the loads go by and sets weather against what was written down, load by load", async () => {
    const sources = await readAirSources(database);
    const loads = await readLoads(database, everyRow);
    const compared = compareAir(sources, loads, "at_loading");
    const both = sources.filter((source) => source.loggedAtLoading !== null && source.weatherAtLoading !== null);
    expect(both.map((source) => source.load)).toContain("P1");
    expect(compared.logged + compared.weather).toBe(loads.filter((row) => row.airAtLoading !== null).length);
    expect(compared.difference?.loads).toBe(both.length);
    const only = compareAir(sources, [load("P1")], "at_loading");
    // Written down at 06:00: 81 %; the weather a third of the way from 80 % at 05:00 to 86 % at 08:00: 82 %.
    expect(only).toEqual({ logged: 1, weather: 0, difference: { loads: 1, median: 1, medianSize: 1 } });
    expect(compareAir(sources, [load("P3")], "mean")).toEqual({ logged: 0, weather: 0, difference: null });
  });
});
