import { describe, expect, test } from "vitest";
import { qualitySentences } from "../../../src/malting/thermostat/qualitySentences.ts";
import { gapLength, readingQuality, soundReadings } from "../../../src/malting/thermostat/readingQuality.ts";
import { fireRelayKiln, logRelayKiln, MINUTE, slowPlant } from "./relayKiln.ts";

const minutes = 8 * 60;
const kiln = fireRelayKiln({ plant: slowPlant, startCelsius: 15, minutes });
const clean = logRelayKiln(kiln, { stepSeconds: 60, minutes, noiseKelvin: 0.08, resolutionKelvin: 0.1, heater: true });
const changed = (change: (air: Float64Array) => void) => {
  const airOnCelsius = clean.airOnCelsius.slice();
  change(airOnCelsius);
  return { ...clean, airOnCelsius };
};

describe("readingQuality", () => {
  test("finds nothing wrong with readings a minute apart, and how fine and how noisy they are", () => {
    const quality = readingQuality(clean);
    expect(quality).toMatchObject({
      silent: 0,
      gaps: [],
      frozen: [],
      spikes: [],
      irregular: false,
      usualStepMinutes: 1,
    });
    expect(quality.resolutionKelvin).toLieWithin(0.1, 1e-9);
    // 0.08 K of noise and a step of 0.1 K, whose rounding adds 0.1/√12; the turns of the cycle add a little.
    expect(quality.noiseKelvin).toLieWithin(Math.hypot(0.08, 0.1 / Math.sqrt(12)), 0.05);
    expect(qualitySentences(quality)).toEqual([]);
    expect(soundReadings(clean, quality)).toBe(clean);
  });

  test("marks a gap and keeps every reading", () => {
    const keep = (column: Float64Array): Float64Array => column.filter((_, i) => i < 200 || i >= 260);
    const readings = { ...clean, at: keep(clean.at), airOnCelsius: keep(clean.airOnCelsius), heaterOn: null };
    const quality = readingQuality(readings);
    expect(quality.gaps).toEqual([{ from: 199 * MINUTE, to: 260 * MINUTE }]);
    expect(soundReadings(readings, quality).at.length).toBe(readings.at.length);
    expect(qualitySentences(quality)).toEqual(["The logger was silent once, for 61 minutes in all."]);
  });

  test("counts silence as a gap from five usual steps and five minutes on", () => {
    expect(gapLength(MINUTE)).toBe(5 * MINUTE);
    expect(gapLength(5000)).toBe(5 * MINUTE);
    expect(gapLength(5 * MINUTE)).toBe(25 * MINUTE);
  });

  test("marks air that stands still for 40 minutes while the heater switches, and leaves it out of the sound readings", () => {
    const readings = changed((air) => air.fill(air[150] as number, 150, 190));
    const quality = readingQuality(readings);
    expect(quality.frozen).toHaveLength(1);
    expect(quality.frozen[0]?.from).toLieWithin(150 * MINUTE, MINUTE);
    expect(quality.frozen[0]?.to).toLieWithin(189 * MINUTE, MINUTE);
    expect(soundReadings(readings, quality).at.length).toBeLessThanOrEqual(readings.at.length - 40);
  });

  test("marks it where the other probes stand as still, and not where they move", () => {
    const readings = changed((air) => air.fill(air[150] as number, 150, 190));
    const moving = Float64Array.from(clean.at, (t) => 20 + t / MINUTE / 60);
    const still = moving.slice();
    still.fill(still[150] as number, 150, 190);
    const without = { ...readings, heaterOn: null };
    expect(readingQuality({ ...without, bedCelsius: moving }).frozen).toHaveLength(0);
    expect(readingQuality({ ...without, bedCelsius: still }).frozen).toHaveLength(1);
  });

  test("does not call a coarse logger frozen because it shows one value for half an hour", () => {
    const steady = Float64Array.from(clean.at, (_, i) => (i < 30 ? 20 + i : i < 90 ? 50 : 51));
    expect(readingQuality({ ...clean, airOnCelsius: steady, heaterOn: null, bedCelsius: steady }).frozen.length).toBe(
      1,
    );
    const short = Float64Array.from(clean.at, (_, i) => (i < 30 ? 20 + i : 50 + Math.floor(i / 40)));
    expect(readingQuality({ ...clean, airOnCelsius: short, heaterOn: null, bedCelsius: short }).frozen).toEqual([]);
  });

  test.each([1, 2, 3])("marks a leap of %d readings away and back, and no cycle at 5-minute readings", (length) => {
    const readings = changed((air) => air.fill(93.4, 300, 300 + length));
    const quality = readingQuality(readings);
    expect(quality.spikes).toEqual([{ from: 300 * MINUTE, to: (299 + length) * MINUTE }]);
    expect(soundReadings(readings, quality).airOnCelsius.includes(93.4)).toBe(false);
    const coarse = logRelayKiln(kiln, { stepSeconds: 300, minutes });
    expect(readingQuality(coarse).spikes).toEqual([]);
  });

  test("counts silent readings and calls uneven times irregular", () => {
    const silent = changed((air) => air.fill(Number.NaN, 100, 103));
    expect(readingQuality(silent).silent).toBe(3);
    const uneven = logRelayKiln(kiln, { stepSeconds: 20, minutes, droppedShare: 0.6, seed: 3 });
    expect(readingQuality(uneven).irregular).toBe(true);
  });

  test("refuses readings out of order and columns of different lengths", () => {
    expect(() => readingQuality({ ...clean, at: clean.at.slice().reverse() })).toThrow(RangeError);
    expect(() => readingQuality({ ...clean, airOnCelsius: new Float64Array(3) })).toThrow(RangeError);
  });

  test("says of no readings at all that there are none", () => {
    const none = { ...clean, at: new Float64Array(), airOnCelsius: new Float64Array(), heaterOn: null };
    expect(readingQuality(none)).toMatchObject({ readings: 0, usualStepMinutes: null, resolutionKelvin: null });
  });
});
