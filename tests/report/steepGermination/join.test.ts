import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { LoadableDatabase } from "../../../src/engine/database.ts";
import { type LoggedRows, readLoggedRows } from "../../../src/report/loggedRows.ts";
import { analyseSteepGermination } from "../../../src/report/steepGermination/analyseSteepGermination.ts";
import type { FloorRows } from "../../../src/report/steepGermination/floorRows.ts";
import type { SteepGerminationResult } from "../../../src/report/steepGerminationResult.ts";
import { openRuns } from "../../support/openRuns.ts";
import { tenRuns, tenRunsAt } from "../../support/tenRuns.ts";

const counts = `\
run,bed,counted_at,acrospire_none,acrospire_to_quarter,acrospire_to_half,acrospire_to_three_quarters,acrospire_to_full,acrospire_over
R01,,2026-01-10 08:00,1,20,60,19,0,0
R01,,2026-01-09 08:00,5,70,25,0,0,0
R02,B2,2026-01-16 10:00,5,60,35,0,0,0
R02,B9,2026-01-16 10:00,5,60,35,0,0,0
R03,B1,2026-01-22 08:00,5,60,35,0,0,
`;
const targets = `\
variety,measure,low,target,high
any,steep_out_moisture_pct,43,44.5,46
Sampler,steep_out_moisture_pct,41,,43
any,acrospire_mean,0.65,0.75,0.9
`;

let database: LoadableDatabase;
let logged: LoggedRows;
let floor: FloorRows;
let result: SteepGerminationResult;
beforeAll(async () => {
  ({ database } = await openRuns({ ...tenRuns, "acrospire-counts.csv": counts, "targets.csv": targets }));
  logged = await readLoggedRows(database);
  floor = await logged.floor();
  result = analyseSteepGermination(logged.runs, { floor, targets: logged.targets, without: new Set() });
});
afterAll(() => database.close());

const steep = (run: string): SteepGerminationResult["steeps"][number] => {
  const found = result.steeps.find((own) => own.run === run);
  if (!found) throw new Error(`no steep of ${run}`);
  return found;
};

describe("readFloor", () => {
  test("gives every tank, its grain moisture the lot's where it has none of its own", () => {
    const own = floor.tanks.filter(({ run }) => run === "R02");
    expect(own.map(({ tank, grainMoisturePercent }) => [tank, grainMoisturePercent])).toEqual([
      ["T1", 12],
      ["T2", 13.5],
    ]);
  });

  test("gives every bed, and a count only where every class has a number", () => {
    expect(floor.beds).toHaveLength(11);
    expect(floor.beds.find(({ run }) => run === "R01")?.counts).toEqual({
      none: 0,
      toQuarter: 2,
      toHalf: 8,
      toThreeQuarters: 30,
      toFull: 55,
      over: 5,
    });
    expect(floor.beds.find(({ run }) => run === "R06")?.counts).toBeNull();
  });

  test("gives counts on the way by time, and none that is incomplete", () => {
    expect(floor.counts.map(({ run, countedAt }) => [run, countedAt])).toEqual([
      ["R01", tenRunsAt("2026-01-09 08:00")],
      ["R01", tenRunsAt("2026-01-10 08:00")],
      ["R02", tenRunsAt("2026-01-16 10:00")],
      ["R02", tenRunsAt("2026-01-16 10:00")],
    ]);
  });
});

describe("analyseSteepGermination(runs) of ten runs", () => {
  test("lists the steeps by start, with moisture measured or from the gain in mass, and says which", () => {
    expect(result.steeps.map(({ run }) => run)).toEqual(logged.runs.map(({ run }) => run).reverse());
    // 500 kg at 12 % to 785.7 kg: 44.00 % (trade table, computed).
    expect(steep("R01").fromMassGainPercent).toLieWithin(44, 0.005);
    expect(steep("R01")).toMatchObject({ basis: "from mass gain", measuredPercent: null, hours: 48 });
    expect(steep("R01").steepOutPercent).toBe(steep("R01").fromMassGainPercent);
    expect(steep("R03")).toMatchObject({ basis: "measured", measuredPercent: 43.5, fromMassGainPercent: null });
    expect(steep("R04")).toMatchObject({ basis: null, steepOutPercent: null });
  });

  test("agrees with the joined rows on steep-out moisture and how it was come by", () => {
    for (const { run, steepOutMoisturePercent, steepOutMoistureBasis } of logged.runs) {
      expect(steep(run).basis).toBe(steepOutMoistureBasis);
      if (steepOutMoisturePercent === null) expect(steep(run).steepOutPercent).toBeNull();
      else expect(steep(run).steepOutPercent).toAgreeWithin(steepOutMoisturePercent, 1e-12);
    }
  });

  test("takes the nearest target", () => {
    expect(steep("R01").target).toEqual({ low: 43, target: 44.5, high: 46 });
    expect(steep("R05").target).toEqual({ low: 41, target: null, high: 43 });
  });

  test("counts the kernels of all beds of a batch together and keeps the beds", () => {
    const both = result.acrospires.find(({ run }) => run === "R02");
    expect(both?.counted).toBe(200);
    // (4·0 … 93·0.875 + 7·1.125)/200, worked out by hand from the two beds' counts.
    const lengths = 6 * 0.125 + 23 * 0.375 + 70 * 0.625 + 93 * 0.875 + 7 * 1.125;
    expect(both?.meanLength.estimate).toAgreeWithin(lengths / 200, 1e-12);
    expect(both?.beds.map(({ bed, counted, bedMeanCelsius }) => [bed, counted, bedMeanCelsius])).toEqual([
      ["B1", 100, 16],
      ["B2", 100, 18],
    ]);
    expect(both?.targets).toEqual({ meanLow: 0.65, meanTarget: 0.75, meanHigh: 0.9, overgrownHigh: null });
    expect(result.acrospires.map(({ run }) => run)).toEqual(["R01", "R02"]);
  });

  test("says in sentences what so few batches cannot carry", () => {
    expect(result.uptake).toBeNull();
    expect(result.uptakeTooLittle).toMatch(/^The estimate needs 12 batches .* so far there/);
    expect(result.bias).toBeNull();
    expect(result.growth).toBeNull();
    // R01's only bed was counted twice; R02's counts name one bed that exists, once.
    expect(result.growthTooLittle).toMatch(/in 10 batches .*; so far 1 has them\.$/);
    expect(result.lengthOnTemperature).toBeNull();
    // 90 %, and 80 and 85 of 300 and 200 kg.
    expect(result.chitted).toMatchObject({ batches: 2, below: [], lowPercent: 80 });
    expect(result.chitted?.medianPercent).toAgreeWithin(86, 1e-12);
  });

  test("leaves out what the reader leaves out", () => {
    const without = analyseSteepGermination(logged.runs, { floor, targets: logged.targets, without: new Set(["R02"]) });
    expect(without.acrospires.map(({ run }) => run)).toEqual(["R01"]);
    expect(without.steeps).toHaveLength(9);
    expect(without.beds.compared).toBe(0);
  });

  test("says of nothing that there is nothing", () => {
    const nothing = analyseSteepGermination([], { floor, targets: [], without: new Set() });
    expect(nothing.steepTooLittle).toMatch(/^No steep/);
    expect(nothing.acrospireTooLittle).toMatch(/^No kernels/);
    expect(nothing.growthTooLittle).toMatch(/so far no batch has them\.$/);
    expect(nothing).toMatchObject({
      steeps: [],
      acrospires: [],
      bias: null,
      uptake: null,
      chitted: null,
      countSize: null,
    });
  });
});
