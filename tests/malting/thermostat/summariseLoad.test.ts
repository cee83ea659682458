import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { KilnReadings } from "../../../src/malting/thermostat/kilnReadings.ts";
import { relayCycle } from "../../../src/malting/thermostat/relayCycle.ts";
import { type SummarisedLoad, summariseLoad } from "../../../src/malting/thermostat/summariseLoad.ts";
import { readingsByLoad } from "../../../src/report/readingsByLoad.ts";
import type { ColumnValues, Table } from "../../../src/tables/table.ts";
import { fireRelayKiln, logRelayKiln, MINUTE, slowPlant } from "./relayKiln.ts";

const minutes = 13 * 60;
const CURE_AT = 9 * 60;
const OFF_AT = 12 * 60 + 20;
const firing = {
  plant: slowPlant,
  startCelsius: 15,
  minutes,
  cure: { atMinute: CURE_AT, higherBy: 32 },
  heatOffMinute: OFF_AT,
};
const kiln = fireRelayKiln(firing);
const load: SummarisedLoad = {
  load: "F1",
  kiln: "K1",
  loadedAt: 0,
  cureStartedAt: CURE_AT * MINUTE,
  heatOffAt: OFF_AT * MINUTE,
  unloadedAt: minutes * MINUTE,
  dryingSetCelsius: 48,
  cureSetCelsius: 80,
  fanSetCelsius: null,
};
const unchecked = { sessions: [], steps: [] };
const logged = { stepSeconds: 60, minutes, noiseKelvin: 0.08, resolutionKelvin: 0.1 };
const read = (curve: KilnReadings, changes: Partial<SummarisedLoad> = {}) =>
  summariseLoad(curve, { ...load, ...changes }, unchecked);
const drying = relayCycle(slowPlant);
const cure = relayCycle({ ...slowPlant, switchOffCelsius: 82, switchOnCelsius: 78 });

describe("summariseLoad", () => {
  test.each([true, false])("reads both holds of a load against the closed form (heater_on logged: %s)", (heater) => {
    const row = read(logRelayKiln(kiln, { ...logged, heater }));
    expect(row.dryingOffsetKelvin).toLieWithin(drying.meanCelsius - 48, 0.06);
    expect(row.dryingSwingKelvin).toLieWithin(drying.highCelsius - drying.lowCelsius, 0.25);
    expect(row.dryingPeriodMinutes).toAgreeWithin(drying.periodMinutes, 0.01);
    expect(row.dryingDuty).toLieWithin(drying.duty, 0.02);
    expect(row.cureOffsetKelvin).toLieWithin(cure.meanCelsius - 80, 0.1);
    expect(row.curePeriodMinutes).toAgreeWithin(cure.periodMinutes, 0.02);
    expect(row.cureDuty).toLieWithin(cure.duty, 0.03);
    expect(row.dryingPowerLimitedShare).toBe(0);
    expect(row.rampIs).toBe("logged");
    // The first peak of the cure is like any other in a plant without memory.
    expect(row.cureOvershootKelvin).toLieWithin(cure.highCelsius - 80, 0.5);
    expect(row.cureOvershootBeyondCyclesKelvin).toLieWithin(0, 0.5);
    const { timeConstantMinutes: tau, heaterOnCelsius: hot } = slowPlant;
    expect(row.minutesToDryingSet).toLieWithin(tau * Math.log((hot - 15) / (hot - 48)), 0.3);
    expect(row).toMatchObject({ warmUpRiseFromCelsius: 33, warmUpRiseToCelsius: 43 });
    expect(row.warmUpRiseKelvinPerMinute).toAgreeWithin(10 / (tau * Math.log((hot - 33) / (hot - 43))), 0.03);
    expect(row.rampRiseKelvinPerMinute).toAgreeWithin(16 / (tau * Math.log((hot - 56) / (hot - 72))), 0.03);
  });

  test("switch points from heater_on are the thermostat's own plus what dead time hides", () => {
    const row = read(logRelayKiln(kiln, { ...logged, heater: true }));
    // The heater acts when the dead time is over, so that it switches at the turning points of the air.
    expect(row.dryingSwitchOffCelsius).toLieWithin(drying.highCelsius, 0.3);
    expect(row.dryingSwitchOnCelsius).toLieWithin(drying.lowCelsius, 0.3);
  });

  test.each([120, 300, 600])("keeps the mean and drops the swing at readings %d s apart", (stepSeconds) => {
    for (const heater of [true, false]) {
      const row = read(logRelayKiln(kiln, { ...logged, stepSeconds, heater }));
      const error = (row.dryingOffsetKelvin as number) - (drying.meanCelsius - 48);
      expect(Math.abs(error)).toBeLessThan(3 * (row.dryingStandardErrorKelvin as number) + 0.1);
      expect(Math.abs(error)).toBeLessThan(0.5);
      expect(row).toMatchObject({ dryingSwingKelvin: null, dryingPeriodMinutes: null, dryingSwitchOnCelsius: null });
      expect(row.sentences.join(" ")).toMatch(/swing, period and switch points/);
    }
  });

  test("is not taken in by readings nearly one cycle apart, which show a slow cycle that is not there", () => {
    const stepSeconds = Math.round(drying.periodMinutes * 60 * 1.04);
    const row = read(logRelayKiln(kiln, { stepSeconds, minutes }));
    expect(row.dryingReadingsACycle).toBeNull();
    expect(row.dryingSwingKelvin).toBeNull();
  });

  test("shifting all readings by c shifts both offsets by c and nothing else", () => {
    const curve = logRelayKiln(kiln, { ...logged, heater: true });
    const plain = read(curve);
    fc.assert(
      fc.property(fc.double({ min: -1.9, max: 1.9, noNaN: true }), (c) => {
        const row = read({ ...curve, airOnCelsius: curve.airOnCelsius.map((air) => air + c) });
        expect(row.dryingOffsetKelvin).toLieWithin((plain.dryingOffsetKelvin as number) + c, 1e-9);
        expect(row.cureOffsetKelvin).toLieWithin((plain.cureOffsetKelvin as number) + c, 1e-9);
        expect(row.dryingSwingKelvin).toLieWithin(plain.dryingSwingKelvin as number, 1e-9);
        expect(row.dryingDuty).toLieWithin(plain.dryingDuty as number, 1e-12);
        expect(row.dryingStandardErrorKelvin).toLieWithin(plain.dryingStandardErrorKelvin as number, 1e-9);
      }),
      { numRuns: 25 },
    );
  });

  test("irregular sampling keeps the mean, and with half of a short cure lost says that it cannot be told", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        (seed, droppedShare) => {
          const row = read(logRelayKiln(kiln, { ...logged, stepSeconds: 40, seed, droppedShare }));
          expect(row.dryingOffsetKelvin).toLieWithin(drying.meanCelsius - 48, 0.1);
          // The cure lasts some ten cycles: lost readings can leave fewer than the three that an offset needs.
          if (row.cureCycles !== null && row.cureCycles < 3) {
            expect(row.cureOffsetKelvin).toBeNull();
            expect(row.sentences.join(" ")).toMatch(/Cure: The hold shows (no|only [12]) whole cycles? .* needs 3\./);
          } else {
            expect(row.cureOffsetKelvin).toLieWithin(cure.meanCelsius - 80, 0.25);
          }
        },
      ),
      { numRuns: 25, examples: [[112203, 0.48254900000000006]] },
    );
  });

  test("splitting the logger's file changes nothing, overlapping or not, in whatever order", () => {
    const curve = logRelayKiln(kiln, { ...logged, heater: true });
    const plain = read(curve);
    const n = curve.at.length;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: n - 1 }),
        fc.integer({ min: 0, max: 200 }),
        fc.boolean(),
        (cut, more, swap) => {
          const parts = [[0, Math.min(n, cut + more)] as const, [cut, n] as const];
          const rows = (swap ? parts.reverse() : parts).flatMap(([from, to]) =>
            Array.from({ length: to - from }, (_, i) => from + i),
          );
          const joined = readingsByLoad(tableOf(curve, rows), [
            { load: "F1", kiln: "K1", loadedAt: 0, unloadedAt: minutes * MINUTE },
          ]);
          expect(read(joined.get("F1") as KilnReadings)).toEqual(plain);
        },
      ),
      { numRuns: 25 },
    );
  });

  test("claims no offset for a hold that the heater could not reach, and says why", () => {
    const weak = fireRelayKiln({
      plant: { ...slowPlant, heaterOnCelsius: 45.5, switchOffCelsius: 45.4, switchOnCelsius: 45 },
      startCelsius: 15,
      minutes: CURE_AT,
    });
    const row = read(logRelayKiln(weak, { ...logged, minutes: CURE_AT, heater: true }));
    expect(row).toMatchObject({ dryingOffsetKelvin: null, dryingPowerLimited: true, minutesToDryingSet: null });
    expect(row.dryingPowerLimitedShare as number).toBeGreaterThan(0.5);
    expect(row.sentences.join(" ")).toMatch(/could not satisfy/);
  });

  test("leaves a gap, a frozen stretch and a leap out of the offset, and counts them", () => {
    const curve = logRelayKiln(kiln, { ...logged, heater: true });
    const airOnCelsius = curve.airOnCelsius.slice();
    airOnCelsius.fill(51.2, 200, 290);
    airOnCelsius[400] = 93.4;
    const keep = (column: Float64Array): Float64Array => column.filter((_, i) => i < 100 || i >= 160);
    const row = read({
      ...curve,
      at: keep(curve.at),
      airOnCelsius: keep(airOnCelsius),
      heaterOn: keep(curve.heaterOn as Float64Array),
    });
    expect(row.dryingOffsetKelvin).toLieWithin(drying.meanCelsius - 48, 0.1);
    expect(row).toMatchObject({ gaps: 1, gapMinutes: 61, spikes: 1 });
    expect(row.frozenMinutes).toLieWithin(89, 2);
    expect(row.sentences.length).toBeGreaterThanOrEqual(4);
  });

  test("says what it cannot know: no set point, no readings", () => {
    const curve = logRelayKiln(kiln, logged);
    const unset = read(curve, { dryingSetCelsius: null });
    expect(unset.dryingOffsetKelvin).toBeNull();
    expect(unset.dryingMeanCelsius).toLieWithin(drying.meanCelsius, 0.1);
    expect(unset.sentences.join(" ")).toMatch(/No set point is logged/);
    const none = new Float64Array();
    const empty = read({
      at: none,
      airOnCelsius: none,
      airOffCelsius: null,
      bedCelsius: null,
      heaterOn: null,
      fanOn: null,
    });
    expect(empty).toMatchObject({ readings: 0, dryingOffsetKelvin: null, cureOffsetKelvin: null });
    expect(Object.values(empty).some((value) => Number.isNaN(value))).toBe(false);
  });

  test("takes the logger's error off and carries the uncertainty of its check", () => {
    const curve = logRelayKiln(kiln, logged);
    const hot = { ...curve, airOnCelsius: curve.airOnCelsius.map((air) => air + 1.2) };
    const session = {
      at: -10 * 86_400_000,
      errorKelvin: 1.2,
      aboutCelsius: 50,
      errorPerKelvin: 0,
      errorUncertainty: 0.15,
      slopeUncertainty: 0.005,
      correctsHot: true,
      era: 0,
    };
    const row = summariseLoad(hot, load, { sessions: [session], steps: [] });
    expect(row.dryingOffsetKelvin).toLieWithin(drying.meanCelsius - 48, 0.06);
    expect(row.dryingLoggerErrorKelvin).toLieWithin(1.2, 1e-9);
    expect(row.dryingCheckUncertaintyKelvin).toLieWithin(0.15, 0.001);
    expect(row.daysSinceCheck).toLieWithin(10, 1e-9);
    expect(read(hot).dryingOffsetKelvin).toLieWithin(drying.meanCelsius - 48 + 1.2, 0.06);
    expect(read(hot).sentences.join(" ")).toMatch(/as logged/);
  });
});

/** The readings table that files holding these rows one after the other would make. */
function tableOf(curve: KilnReadings, rows: readonly number[]): Table {
  const take = (column: Float64Array): Float64Array => Float64Array.from(rows, (row) => column[row] as number);
  const silent = new Float64Array(rows.length).fill(Number.NaN);
  const columns = new Map<string, ColumnValues>([
    ["kiln", rows.map(() => "K1")],
    ["at", take(curve.at)],
    ["air_on_c", take(curve.airOnCelsius)],
    ["air_off_c", silent],
    ["bed_c", silent],
    ["heater_on", take(curve.heaterOn as Float64Array)],
  ]);
  return {
    name: "readings",
    rowCount: rows.length,
    columns,
    writtenUnits: new Map(),
    unknownColumns: new Map(),
    files: ["a.csv"],
    fileOfRow: new Uint16Array(rows.length),
    lineOfRow: new Int32Array(rows.length),
  };
}
