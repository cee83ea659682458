import { describe, expect, test } from "vitest";
import type { KilnReadings } from "../../../src/malting/thermostat/kilnReadings.ts";
import {
  daysSinceCheck,
  isCheckStale,
  type LoggerCheck,
  loggerHistory,
} from "../../../src/malting/thermostat/loggerChecks.ts";
import {
  correctReadings,
  errorAtReading,
  errorUncertainty,
  loggerErrorAt,
} from "../../../src/malting/thermostat/loggerCorrection.ts";

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const check = (day: number, referenceCelsius: number, error: number, hour = 9): LoggerCheck => ({
  kiln: "K1",
  at: day * DAY + hour * HOUR,
  probe: "air_on",
  referenceCelsius,
  readingCelsius: referenceCelsius + error,
});
const history = (checks: readonly LoggerCheck[], eventDays: readonly number[] = []) =>
  loggerHistory(
    checks,
    "K1",
    "air_on",
    eventDays.map((day) => day * DAY),
  );
const errorOn = (checks: readonly LoggerCheck[], day: number, reading: number, events: readonly number[] = []) => {
  const error = loggerErrorAt(history(checks, events), day * DAY + 9 * HOUR);
  return error && errorAtReading(error, reading);
};

describe("loggerErrorAt", () => {
  const twice = [check(0, 50, 0), check(100, 50, 1)];

  test("is linear in time between checks, constant before the first and after the last, with its age", () => {
    expect(errorOn(twice, 25, 50)).toLieWithin(0.25, 1e-9);
    expect(errorOn(twice, 50, 50)).toLieWithin(0.5, 1e-9);
    expect(errorOn(twice, -30, 50)).toBe(0);
    expect(errorOn(twice, 160, 50)).toBe(1);
    const after = loggerErrorAt(history(twice), 160 * DAY + 9 * HOUR);
    expect(after).toMatchObject({ basis: "after the last check", ageDays: 60 });
    expect(loggerErrorAt(history(twice), -30 * DAY)?.basis).toBe("before the first check");
  });

  test("is linear in temperature where one sitting went through two temperatures", () => {
    const warm = [check(0, 0, 0.9), check(0, 50, 1.2, 10)];
    expect(errorOn(warm, 5, 0.9)).toLieWithin(0.9, 1e-9);
    expect(errorOn(warm, 5, 51.2)).toLieWithin(1.2, 1e-9);
    expect(errorOn(warm, 5, 81.38)).toLieWithin(1.2 + (0.3 / 50.3) * 30.18, 1e-9);
  });

  test("never corrects hot readings from an ice point alone", () => {
    expect(errorOn([check(0, 0, 0.8)], 5, 50)).toBeNull();
    const mixed = [check(0, 50, 0.2), check(10, 0, 5), check(20, 50, 0.4)];
    expect(errorOn(mixed, 10, 50)).toLieWithin(0.3, 1e-9);
  });

  test("steps where the logger was set: as found before, as left after, between the two sittings of that day", () => {
    const set = [check(-100, 50, 1), check(0, 0, 1, 9), check(0, 50, 1.2, 10), check(0, 0, 0, 12), check(0, 50, 0, 13)];
    const { steps, sessions } = history(set, [0]);
    expect(steps).toEqual([11 * HOUR]);
    expect(sessions.map(({ era }) => era)).toEqual([0, 0, 1]);
    expect(errorOn(set, -50, 51, [0])).toBeGreaterThan(1);
    expect(errorOn(set, 3, 51, [0])).toLieWithin(0, 1e-9);
    // Without the event the same checks are one sitting, and nothing steps.
    expect(history(set).steps).toEqual([]);
  });

  test("takes a lone check on the day of an event as found, and for both sides where it found nothing wrong", () => {
    const wrong = [check(0, 50, 1.4), check(100, 50, 0.1)];
    expect(errorOn(wrong, -10, 50, [0])).toLieWithin(1.4, 1e-9);
    expect(errorOn(wrong, 10, 50, [0])).toLieWithin(0.1, 1e-9);
    const right = [check(0, 50, 0.1)];
    expect(errorOn(right, -10, 50, [0])).toLieWithin(0.1, 1e-9);
    expect(errorOn(right, 10, 50, [0])).toLieWithin(0.1, 1e-9);
  });

  test("steps at an event without a check, and then knows nothing of the new era", () => {
    expect(errorOn([check(0, 50, 1)], 40, 50, [30])).toBeNull();
    expect(errorOn([check(0, 50, 1)], 20, 50, [30])).toBe(1);
  });

  test("carries the uncertainty of the check, and more of it away from the temperatures checked", () => {
    const at = (checks: readonly LoggerCheck[], reading: number): number => {
      const error = loggerErrorAt(loggerHistory(checks, "K1", "air_on", [], 0.2), 5 * DAY);
      if (error === null) throw new Error("no error");
      return errorUncertainty(error, reading);
    };
    expect(at([check(0, 50, 0)], 50)).toLieWithin(0.2, 1e-9);
    expect(at([check(0, 50, 0)], 80)).toBeGreaterThan(0.2);
    const both = [check(0, 0, 0), check(0, 50, 0, 10)];
    // A line through two checks has at either end the uncertainty of that check, and 1.6 times as far out this much:
    expect(at(both, 50)).toLieWithin(0.2, 1e-9);
    expect(at(both, 80)).toLieWithin(0.2 * Math.hypot(1.6, 0.6), 1e-9);
    // Two checks of one reference are no better than one.
    expect(at([check(0, 50, 0), check(10, 50, 0)], 50)).toLieWithin(0.2, 1e-9);
  });

  test("looks at its own kiln and probe only", () => {
    const other = { ...check(0, 50, 3), kiln: "K2" };
    const bed = { ...check(0, 50, 3), probe: "bed" as const };
    expect(history([other, bed]).sessions).toEqual([]);
  });
});

describe("correctReadings", () => {
  const readings = (fromDay: number, hours: number): KilnReadings => ({
    at: Float64Array.from({ length: hours + 1 }, (_, h) => fromDay * DAY + h * HOUR),
    airOnCelsius: new Float64Array(hours + 1).fill(50),
    airOffCelsius: new Float64Array(hours + 1).fill(30),
    bedCelsius: null,
    heaterOn: null,
    fanOn: null,
  });

  test("takes the error off air on, reading by reading, and leaves the rest", () => {
    const logged = readings(40, 12);
    const corrected = correctReadings(logged, history([check(0, 50, 0), check(100, 50, 1)]));
    const share = (40 * DAY + 12 * HOUR - 9 * HOUR) / (100 * DAY);
    expect(corrected.readings.airOnCelsius[12]).toLieWithin(50 - share, 1e-9);
    expect(corrected.readings.airOffCelsius).toBe(logged.airOffCelsius);
    expect(logged.airOnCelsius[12]).toBe(50);
  });

  test("steps inside a load where the logger was set while it was in the kiln", () => {
    const checks = [check(0, 50, 1, 9), check(0, 50, 0, 11)];
    const { airOnCelsius } = correctReadings(readings(0, 20), history(checks, [0])).readings;
    expect(airOnCelsius[8]).toLieWithin(49, 1e-9);
    expect(airOnCelsius[12]).toLieWithin(50, 1e-9);
  });

  test("leaves readings as they are where no hot check speaks for them, and says so by a null error", () => {
    const logged = readings(0, 5);
    expect(correctReadings(logged, history([check(0, 0, 2)]))).toEqual({ readings: logged, error: null });
  });
});

test("daysSinceCheck counts from the last check before, an ice point too; isCheckStale compares with the house's days", () => {
  const checks = history([check(0, 50, 0), check(60, 0, 0)]);
  expect(daysSinceCheck(checks, 100 * DAY + 9 * HOUR)).toLieWithin(40, 1e-9);
  expect(daysSinceCheck(checks, 50 * DAY + 9 * HOUR)).toLieWithin(50, 1e-9);
  expect(daysSinceCheck(checks, -DAY)).toBeNull();
  expect(isCheckStale(40, 90)).toBe(false);
  expect(isCheckStale(91, 90)).toBe(true);
  expect(isCheckStale(null, 90)).toBe(true);
});
