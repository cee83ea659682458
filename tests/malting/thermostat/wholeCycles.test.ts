import { describe, expect, test } from "vitest";
import { holdOffset } from "../../../src/malting/thermostat/holdOffset.ts";
import type { SoundReadings } from "../../../src/malting/thermostat/kilnReadings.ts";
import { relayCycle } from "../../../src/malting/thermostat/relayCycle.ts";
import { findWholeCycles } from "../../../src/malting/thermostat/wholeCycles.ts";
import { examplePlant, fireRelayKiln, logRelayKiln, MINUTE } from "./relayKiln.ts";

const minutes = 10 * 60;
const kiln = fireRelayKiln({ plant: examplePlant, startCelsius: 20, minutes });
const hold = { from: 30 * MINUTE, to: minutes * MINUTE };
const expected = relayCycle(examplePlant);
const setting = { prominenceKelvin: 0.3, longestStep: 5 * MINUTE, usualStep: 30_000 };
const without = (readings: SoundReadings, from: number, to: number): SoundReadings => {
  const keep = (column: Float64Array): Float64Array =>
    column.filter((_, i) => (readings.at[i] as number) < from * MINUTE || (readings.at[i] as number) > to * MINUTE);
  return {
    at: keep(readings.at),
    airOnCelsius: keep(readings.airOnCelsius),
    heaterOn: readings.heaterOn && keep(readings.heaterOn),
    fanOn: null,
  };
};

describe("findWholeCycles", () => {
  test.each([false, true])(
    "cuts a hold into cycles that join up, each with the closed form's mean (heater: %s)",
    (heater) => {
      const { cycles, readFrom } = findWholeCycles(
        logRelayKiln(kiln, { stepSeconds: 10, minutes, heater }),
        hold,
        setting,
      );
      expect(readFrom).toBe(heater ? "heater" : "air");
      expect(cycles.length).toBeGreaterThan(110);
      for (const [k, cycle] of cycles.entries()) {
        expect(cycle.to - cycle.from).toAgreeWithin(expected.periodMinutes * MINUTE, 0.02);
        expect(cycle.meanCelsius).toLieWithin(expected.meanCelsius, 0.03);
        if (k > 0) expect(cycle.from).toBe(cycles[k - 1]?.to);
      }
    },
  );

  test.each([2.5, 4, 30])("makes no cycle out of a silence of %d minutes", (length) => {
    for (const heater of [false, true]) {
      for (let start = 200; start < 205; start += 0.5) {
        const whole = logRelayKiln(kiln, { stepSeconds: 30, minutes, heater });
        const { cycles } = findWholeCycles(without(whole, start, start + length), hold, setting);
        const all = findWholeCycles(whole, hold, setting).cycles;
        const lost = all.length - cycles.length;
        expect(lost).toBeGreaterThanOrEqual(1);
        expect(lost).toBeLessThanOrEqual(length / expected.periodMinutes + 4);
        for (const { from, to } of cycles) expect(to - from).toAgreeWithin(expected.periodMinutes * MINUTE, 0.1);
      }
    }
  });

  test("finds nothing in air that stands or only rises", () => {
    const at = Float64Array.from({ length: 600 }, (_, m) => m * MINUTE);
    const still = { at, airOnCelsius: new Float64Array(600).fill(48), heaterOn: null, fanOn: null };
    expect(findWholeCycles(still, hold, setting).cycles).toEqual([]);
    const rising = { ...still, airOnCelsius: at.map((t) => 20 + t / MINUTE / 20) };
    expect(findWholeCycles(rising, hold, setting).cycles).toEqual([]);
  });
});

describe("holdOffset at readings a little more than a cycle apart", () => {
  // One reading every 5.4 min of a cycle of 4.85: they walk through it in some 48 minutes, nine readings at a time.
  const readings = logRelayKiln(kiln, { stepSeconds: 324, minutes });
  const coarse = { setCelsius: 65, prominenceKelvin: 0.3, longestStep: 27 * MINUTE, usualStep: 324_000 };

  test("knows from the first rise that the slow cycle is not there, and gives the mean alone", () => {
    const firstRiseKelvinPerMinute = 10 / (30 * Math.log((120 - 50) / (120 - 60)));
    const found = holdOffset(readings, hold, { ...coarse, firstRiseKelvinPerMinute });
    expect(found).toMatchObject({ shape: null, readingsACycle: null, wholeCycles: 0 });
    expect(found.sentences.join(" ")).toMatch(/too far apart to follow a cycle/);
    const error = Math.abs((found.meanCelsius as number) - expected.meanCelsius);
    expect(error).toBeLessThan(3 * (found.standardErrorKelvin as number) + 0.02);
  });

  test("would be taken in without it: the same readings then look like nine a cycle", () => {
    const found = holdOffset(readings, hold, { ...coarse, firstRiseKelvinPerMinute: null });
    expect(found.readingsACycle as number).toBeGreaterThan(8);
  });
});
