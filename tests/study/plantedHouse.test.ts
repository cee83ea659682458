import { describe, expect, test } from "vitest";
import { type Plant, type PlantKind, plantedOn } from "../../scripts/demo/plant.ts";
import { simulateHouse } from "../../scripts/demo/simulateHouse.ts";
import { writeLogs } from "../../scripts/demo/writeLogs.ts";
import { affectedRuns } from "../../scripts/study/affectedRuns.ts";
import { namesPlant } from "../../scripts/study/namesPlant.ts";
import { PLANT_SIZES } from "../../scripts/study/plantSizes.ts";

const FROM = "2026-06-15";
const RUNS = 40;
const houseWith = (plant: Plant | null) => simulateHouse({ seed: 900_001, runs: RUNS, quiet: { plant } });
const quiet = houseWith(null);
const kinds = Object.keys(PLANT_SIZES) as PlantKind[];
const largeOf = (kind: PlantKind): Plant => ({
  kind,
  size: PLANT_SIZES[kind].sizes[2] * PLANT_SIZES[kind].factor,
  from: FROM,
});

describe("plantedOn", () => {
  test.each(kinds)("leaves the house sound before it begins: %s", (kind) => {
    expect(plantedOn(largeOf(kind), "2026-06-14")).toEqual(plantedOn(null, "2026-06-14"));
  });

  test("lets a creep grow with time and a step stand", () => {
    const at = (kind: PlantKind, date: string): number =>
      plantedOn({ kind, size: 1, from: FROM }, date).thermostatKelvin;
    expect(at("thermostat creep", "2026-07-15")).toAgreeWithin(30 / 30.44, 1e-12);
    expect(at("thermostat creep", "2026-08-14")).toAgreeWithin(60 / 30.44, 1e-12);
    expect(at("thermostat step", "2026-08-14")).toBe(1);
  });
});

describe("a quiet house", () => {
  test("has no fault but want of heat in deep cold, no poor lot and a settled bed", () => {
    expect(new Set(quiet.loads.flatMap(({ faults }) => faults).filter((fault) => fault !== "power-limited"))).toEqual(
      new Set(),
    );
    expect(quiet.batches.every(({ planned }) => planned.lot.unevenness === 1)).toBe(true);
    expect(quiet.loads.every(({ thermostatOffset }) => thermostatOffset === 0)).toBe(true);
  });

  test.each(kinds)(
    "is the same house up to the day on which something is planted, and another after it: %s",
    (kind) => {
      const planted = writeLogs(houseWith(largeOf(kind)));
      const before = writeLogs(quiet);
      const kept = ["kilning.csv", "germination.csv", "steeping.csv", "moisture-samples.csv", "logger-checks.csv"];
      const differing = kept.flatMap((path) => {
        const [own, other] = [planted, before].map((files) => (files.get(path) ?? "").split("\n"));
        return (own ?? []).filter((line, at) => line !== other?.[at]);
      });
      // Readings are left out here, and they alone show what a thermostat's switch does.
      if (kind !== "worn contacts") expect(differing.length).toBeGreaterThan(0);
      const runsBefore = new Set(
        quiet.loads
          .filter(({ planned }) => planned.date < FROM)
          .flatMap(({ batches }) => batches.map((b) => b.planned.run)),
      );
      for (const line of differing) expect(runsBefore, line).not.toContain(line.split(",")[0]);
    },
  );
});

describe("over-drying", () => {
  test("brings malt off as much drier as it is sized, on average", () => {
    const { size } = largeOf("over-drying");
    const planted = houseWith(largeOf("over-drying"));
    const drier = quiet.loads.flatMap(({ planned, fired }, at) => {
      const other = planted.loads[at]?.fired.finalMoisturePercent ?? Number.NaN;
      return planned.date < FROM ? [] : [fired.finalMoisturePercent - other];
    });
    expect(drier.length).toBeGreaterThan(15);
    expect(drier.reduce((sum, points) => sum + points, 0) / drier.length).toLieWithin(size, 0.15);
  });
});

describe("affectedRuns", () => {
  test("counts a thermostat's creep from half a kelvin on", () => {
    const plant: Plant = { kind: "thermostat creep", size: -0.5, from: FROM };
    const [first] = affectedRuns(houseWith(plant), plant);
    expect(first?.at).toBeGreaterThan(Date.parse("2026-07-14"));
    expect(first?.at).toBeLessThan(Date.parse("2026-07-30"));
  });

  test("counts every run from a step on", () => {
    const plant: Plant = { kind: "thermostat step", size: 2, from: FROM };
    const since = quiet.loads.filter(({ planned }) => planned.date >= FROM).length;
    // The last is still in the kiln when the logs end.
    expect(affectedRuns(houseWith(plant), plant)).toHaveLength(since - 1);
  });
});

describe("namesPlant", () => {
  const truth = { lot: null, lotRuns: new Set<string>(), field: "bedDepthMetres" };
  const base = {
    from: 0,
    to: 1,
    runs: ["26-001"],
    runCount: 1,
    chanceReal: 1,
    beside: [],
    loss: { kilnHours: 0, labourHours: 0, kilowattHours: 0, kilogramsMalt: 0, refusedBatches: 0 },
  };

  test("takes a moved yield for the scale that moved it only where the way is right", () => {
    const fact = { ...base, kind: "chart", measure: "dry_yield_pct", variety: null, size: -2, single: false } as const;
    expect(namesPlant({ kind: "mis-set scale", size: -0.02, from: FROM }, truth, fact)).toBe(true);
    expect(namesPlant({ kind: "mis-set scale", size: 0.02, from: FROM }, truth, fact)).toBe(false);
    expect(namesPlant({ kind: "slipping belt", size: 0.1, from: FROM }, truth, fact)).toBe(false);
  });

  test("asks for the very column that is no longer kept", () => {
    const fact = {
      ...base,
      kind: "logs",
      rowsSetAside: 0,
      batchesLost: 0,
      valuesBlanked: 0,
      missing: ["energyKilowattHours"],
    } as const;
    const plant: Plant = { kind: "column not kept", size: 1, from: FROM };
    expect(namesPlant(plant, truth, fact)).toBe(false);
    expect(namesPlant(plant, { ...truth, field: "energyKilowattHours" }, fact)).toBe(true);
  });
});
