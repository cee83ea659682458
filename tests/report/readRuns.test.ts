import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { LoadableDatabase } from "../../src/engine/database.ts";
import { readRuns } from "../../src/report/readRuns.ts";
import type { RunRow } from "../../src/report/runRow.ts";
import { everyRow } from "../../src/report/whereRows.ts";
import { openRuns } from "../support/openRuns.ts";
import { tenRuns, tenRunsAt } from "../support/tenRuns.ts";

let database: LoadableDatabase;
let runs: readonly RunRow[];
beforeAll(async () => {
  ({ database } = await openRuns(tenRuns));
  runs = await readRuns(database, everyRow);
});
afterAll(() => database.close());

function run(name: string): RunRow {
  const found = runs.find((row) => row.run === name);
  if (!found) throw new Error(`no run ${name}`);
  return found;
}

describe("readRuns", () => {
  test("gives one row a run, latest first", () => {
    expect(runs.map((row) => row.run)).toEqual(["R10", "R09", "R08", "R07", "R06", "R05", "R04", "R03", "R02", "R01"]);
  });

  test("joins every stage of a run that was logged in full", () => {
    expect(run("R01")).toMatchObject({
      lot: "L1",
      lots: null,
      grain: "barley",
      variety: "Specimen",
      grower: "First Grower",
      cropYear: 2025,
      grainInKilograms: 500,
      grainProteinDryPercent: 10.5,
      steepStartedAt: tenRunsAt("2026-01-05 08:00"),
      steepEndedAt: tenRunsAt("2026-01-07 08:00"),
      tanks: 1,
      germinationStartedAt: tenRunsAt("2026-01-07 08:00"),
      germinationEndedAt: tenRunsAt("2026-01-12 05:00"),
      beds: 1,
      load: "P1",
      loads: 1,
      kiln: "K1",
      loadedAt: tenRunsAt("2026-01-12 06:00"),
      cureStartedAt: tenRunsAt("2026-01-12 16:00"),
      heatOffAt: tenRunsAt("2026-01-12 18:30"),
      unloadedAt: tenRunsAt("2026-01-12 19:00"),
      kilnHours: 13,
      dryingHours: 10,
      energyKilowattHours: 420,
      bagCode: "A-01",
      notes: "first of the year\ndried well",
    });
    expect(run("R01").bedDepthMetres).toAgreeWithin(0.155, 1e-12);
  });

  test("takes the grain's moisture from its lot where the steep has none", () => {
    expect(run("R01").grainMoisturePercent).toBe(12);
    expect(run("R03").grainMoisturePercent).toBe(15);
  });

  test("works steep-out moisture out from the gain in mass: 500 kg at 12 % to 785.7 kg is 44.00 %", () => {
    // W₁ = W₀(100 − M₀)/(100 − M₁): 100 kg at 12 % → 157.14 kg is 44.00 % (trade table, computed). 785.7 kg is five times that.
    expect(run("R01").steepOutMoisturePercent).toLieWithin(44, 0.005);
    expect(run("R01").steepOutMoistureBasis).toBe("from mass gain");
  });

  test("prefers the moisture that was measured", () => {
    expect(run("R03")).toMatchObject({ steepOutMoisturePercent: 43.5, steepOutMoistureBasis: "measured" });
    expect(run("R04")).toMatchObject({ steepOutMoisturePercent: null, steepOutMoistureBasis: null });
  });

  test("reproduces the worked batch of the drying theory: 302.2 kg of water", () => {
    // 500 kg barley at 12 %, 409.2 kg of dry matter in the kiln, 44 % to 4.5 % (computed): 409.2 × (0.7857 − 0.04712).
    expect(run("R01").waterRemovedKilograms).toLieWithin(302.2, 0.05);
  });

  test("reproduces the encyclopaedia's worked yield: 76.19 % as is and 87.84 % of dry matter", () => {
    // Encyclopaedia Britannica, 14th ed., "Malt": 42 g at 15 % make 32 g at 2 %. The exact quotients; its own are misprinted.
    expect(run("R03").asIsYieldPercent).toLieWithin(76.19, 0.005);
    expect(run("R03").dryMatterYieldPercent).toLieWithin(87.84, 0.005);
    expect(run("R03")).toMatchObject({ maltKilograms: 320, maltBasis: "cleaned" });
  });

  test("takes final moisture as logged, else the mean of the samples, else the latest certificate", () => {
    const basis = (name: string) => [run(name).finalMoisturePercent, run(name).finalMoistureBasis];
    expect(basis("R01")).toEqual([4.5, "logged"]);
    expect(run("R02").finalMoisturePercent).toAgreeWithin((4.2 + 4.6 + 4.7) / 3, 1e-12);
    expect(run("R02").finalMoistureBasis).toBe("mean of 3 samples");
    expect(basis("R03")).toEqual([2, "laboratory"]);
    expect(basis("R09")).toEqual([null, null]);
  });

  test("takes malt less rootlets where it was not cleaned, else as unloaded, and names which", () => {
    expect(run("R01")).toMatchObject({ maltKilograms: 428.5 - 15, maltBasis: "as unloaded less rootlets" });
    // 413.5 kg at 4.5 % over 500 kg at 12 %.
    expect(run("R01").dryMatterYieldPercent).toAgreeWithin((413.5 * 0.955) / 4.4, 1e-12);
    expect(run("R02")).toMatchObject({ maltKilograms: 430, maltBasis: "as unloaded" });
    expect(run("R09")).toMatchObject({ maltKilograms: null, maltBasis: null, dryMatterYieldPercent: null });
  });

  test("adds up two tanks and averages what they were like by the grain in them", () => {
    const two = run("R02");
    expect(two).toMatchObject({
      tanks: 2,
      lot: "L1",
      lots: "L1, L2",
      grower: "First Grower, Second Grower",
      grainInKilograms: 500,
      steepStartedAt: tenRunsAt("2026-01-12 08:00"),
      steepEndedAt: tenRunsAt("2026-01-14 10:00"),
      steepOutKilograms: 785,
    });
    expect(two.grainMoisturePercent).toAgreeWithin((300 * 12 + 200 * 13.5) / 500, 1e-12);
    expect(two.grainProteinDryPercent).toAgreeWithin((300 * 10.5 + 200 * 11.5) / 500, 1e-12);
    expect(two.steepWaterCelsius).toAgreeWithin((300 * 14 + 200 * 16) / 500, 1e-12);
    expect(two.chittedPercent).toAgreeWithin((300 * 80 + 200 * 85) / 500, 1e-12);
    // Dry matter 300 × 0.88 + 200 × 0.865 = 437 kg in 785 kg.
    expect(two.steepOutMoisturePercent).toAgreeWithin(100 - 43700 / 785, 1e-12);
  });

  test("counts the kernels of two beds together and averages their conditions by bed_grain", () => {
    const two = run("R02");
    expect(two.beds).toBe(2);
    expect(two.bedMeanCelsius).toAgreeWithin((300 * 16 + 200 * 18) / 500, 1e-12);
    expect(two.bedMaxCelsius).toBe(22);
    expect(two.greenMoisturePercent).toAgreeWithin((300 * 43 + 200 * 45) / 500, 1e-12);
    expect(two.acrospireCounted).toBe(200);
    expect(two.acrospireOvergrownPercent).toAgreeWithin((100 * 7) / 200, 1e-12);
    const lengths = 6 * 0.125 + 23 * 0.375 + 70 * 0.625 + 93 * 0.875 + 7 * 1.125;
    expect(two.acrospireMean).toAgreeWithin(lengths / 200, 1e-12);
  });

  test("makes nothing of a count with classes left blank", () => {
    expect(run("R06")).toMatchObject({ acrospireMean: null, acrospireOvergrownPercent: null, acrospireCounted: null });
  });

  test("adds up the masses of a run split over two loads and takes the hours of the first", () => {
    const split = run("R08");
    expect(split).toMatchObject({
      loads: 2,
      load: "P8a",
      kiln: "K1",
      kilnHours: 11,
      dryingHours: 8,
      greenLoadKilograms: 750,
      maltOutKilograms: 445,
      energyKilowattHours: 430,
      bagCode: "A-08",
    });
    expect(split.finalMoisturePercent).toAgreeWithin((268 * 4.2 + 177 * 4.8) / 445, 1e-12);
    const water = 268 * 0.958 * (43 / 57 - 4.2 / 95.8) + 177 * 0.952 * (43 / 57 - 4.8 / 95.2);
    expect(split.waterRemovedKilograms).toAgreeWithin(water, 1e-12);
  });

  test("takes the water from green load and malt where the green moisture was not measured", () => {
    expect(run("R03").waterRemovedKilograms).toAgreeWithin(600 - 340, 1e-12);
  });

  test("leaves the energy of a shared load with the load", () => {
    expect(run("R04").energyKilowattHours).toBeNull();
  });

  test("shows a run that is still in the kiln, without hours", () => {
    expect(run("R10")).toMatchObject({
      loadedAt: tenRunsAt("2026-03-01 06:00"),
      unloadedAt: null,
      kilnHours: null,
      dryingHours: null,
      maltOutKilograms: null,
      dryMatterYieldPercent: null,
    });
  });
});

describe("readRuns with a filter", () => {
  const names = async (filter: Partial<typeof everyRow>) =>
    (await readRuns(database, { ...everyRow, ...filter })).map((row) => row.run);

  test("lets through what was loaded from the first moment and before the last", async () => {
    const loadedFrom = tenRunsAt("2026-01-25 06:00");
    expect(await names({ loadedFrom, loadedBefore: tenRunsAt("2026-02-08 06:00") })).toEqual(["R05", "R04", "R03"]);
    expect(await names({ loadedFrom, loadedBefore: tenRunsAt("2026-02-08 06:01") })).toEqual([
      "R07",
      "R06",
      "R05",
      "R04",
      "R03",
    ]);
  });

  test("lets through a variety and a kiln", async () => {
    expect(await names({ variety: "Sampler" })).toEqual(["R08", "R05"]);
    expect(await names({ kiln: "K2" })).toEqual(["R07", "R06"]);
    expect(await names({ variety: "Sampler", kiln: "K2" })).toEqual([]);
  });

  test.for(["' OR 1=1 --", "Sampler' OR 'x'='x", "Sampler'; DROP TABLE run_rows; --", "%", "\\'", ""])(
    "takes %j for a variety's name and nothing more",
    async (variety) => {
      expect(await names({ variety })).toEqual([]);
      expect((await names({})).length).toBe(10);
    },
  );
});
