import { describe, expect, test } from "vitest";
import { type HoldReadings, powerLimitedShare } from "../../src/malting/heaterLimit.ts";

const MINUTE = 60_000;
const HOURS = 60;
const SET = 48;

/** Readings a minute apart from a rule for the air and one for the heater, by minutes since loading. */
function readings(
  minutes: number,
  air: (minute: number) => number,
  heater: ((minute: number) => number) | null,
): HoldReadings {
  const at = Float64Array.from({ length: minutes }, (_, m) => m * MINUTE);
  return {
    at,
    airOnCelsius: at.map((t) => air(t / MINUTE)),
    heaterOn: heater ? at.map((t) => heater(t / MINUTE)) : null,
  };
}

/** Warms up in half an hour, then swings 2 K about the middle every 14 minutes. */
const cycling =
  (middle: number) =>
  (m: number): number =>
    m < 30 ? 15 + ((middle - 15) * m) / 30 : middle + 2 * Math.sin((2 * Math.PI * m) / 14);
const cyclingHeater = (m: number): number => (m < 30 || Math.cos((2 * Math.PI * m) / 14) > 0 ? 1 : 0);

describe("powerLimitedShare", () => {
  test("is 0 for a kiln that cycles about its set point, with or without heater_on", () => {
    expect(powerLimitedShare(readings(8 * HOURS, cycling(SET), cyclingHeater), SET, 0, 8 * HOURS * MINUTE)).toBe(0);
    expect(powerLimitedShare(readings(8 * HOURS, cycling(SET), null), SET, 0, 8 * HOURS * MINUTE)).toBe(0);
  });

  test("is 0 for a thermostat that cycles 5 K too low: that is drift, not want of power", () => {
    expect(powerLimitedShare(readings(8 * HOURS, cycling(43), cyclingHeater), SET, 0, 8 * HOURS * MINUTE)).toBe(0);
    expect(powerLimitedShare(readings(8 * HOURS, cycling(43), null), SET, 0, 8 * HOURS * MINUTE)).toBe(0);
  });

  test("is near 1 for a heater that is on all night and never gets there", () => {
    const air = (m: number): number => 42 - 30 * Math.exp(-m / 15) + 0.3 * Math.sin(m / 50);
    for (const heater of [(): number => 1, null]) {
      const share = powerLimitedShare(readings(8 * HOURS, air, heater), SET, 0, 8 * HOURS * MINUTE);
      expect(share).toLieWithin(1, 0.01);
    }
  });

  test("measures the part of the hold that was short of heat", () => {
    // Cycles for four hours; then a cold night for four hours.
    const air = (m: number): number => (m < 4 * HOURS ? cycling(SET)(m) : 44);
    const heater = (m: number): number => (m < 4 * HOURS ? cyclingHeater(m) : 1);
    const share = powerLimitedShare(readings(8 * HOURS, air, heater), SET, 0, 8 * HOURS * MINUTE);
    // The warm-up ends when the air first comes within 2 K of set point, half an hour after loading.
    expect(share).toLieWithin(4 / 7.5, 0.02);
  });

  test("does not count a heater that is off while the air is cold: that is a fault or a door, not power", () => {
    const air = (m: number): number => (m < 4 * HOURS ? cycling(SET)(m) : 40);
    const heater = (m: number): number => (m < 4 * HOURS ? cyclingHeater(m) : 0);
    expect(powerLimitedShare(readings(8 * HOURS, air, heater), SET, 0, 8 * HOURS * MINUTE)).toBe(0);
  });

  test("is null where the readings are too few, cover too little, or stop before the hold", () => {
    const hold = 8 * HOURS * MINUTE;
    expect(powerLimitedShare(readings(20, cycling(SET), null), SET, 0, hold)).toBeNull();
    expect(powerLimitedShare(readings(3 * HOURS, cycling(SET), null), SET, 0, hold)).toBeNull();
    expect(powerLimitedShare(readings(8 * HOURS, cycling(SET), null), SET, 2 * hold, 3 * hold)).toBeNull();
    expect(
      powerLimitedShare(
        readings(8 * HOURS, () => Number.NaN, null),
        SET,
        0,
        hold,
      ),
    ).toBeNull();
  });

  test("refuses a hold that ends before it starts", () => {
    expect(() => powerLimitedShare(readings(60, cycling(SET), null), SET, 10, 10)).toThrow(RangeError);
  });
});
