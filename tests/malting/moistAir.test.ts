import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dryingPower } from "../../src/malting/dryingPower.ts";
import {
  dewPoint,
  humidityRatio,
  humidityRatioAtWetBulb,
  pressureAtAltitude,
  saturationPressure,
  wetBulb,
} from "../../src/malting/moistAir.ts";

const celsius = fc.double({ min: -30, max: 80, noNaN: true });
const percent = fc.double({ min: 1, max: 100, noNaN: true });
const altitude = fc.double({ min: 0, max: 3000, noNaN: true });

describe("wetBulb", () => {
  test("lies between dew point and dry bulb, and gives back the humidity ratio it came from", () => {
    fc.assert(
      fc.property(celsius, percent, altitude, (t, rh, z) => {
        const p = pressureAtAltitude(z);
        fc.pre((rh / 100) * saturationPressure(t) < 0.9 * p);
        const w = humidityRatio(t, rh, p);
        const wet = wetBulb(t, w, p);
        expect(wet).toBeLessThanOrEqual(t);
        // The equations jump by a few parts in 10⁴ where ice turns to water: no exact root exists just there.
        if (Math.abs(wet) > 0.02) {
          expect(humidityRatioAtWetBulb(t, wet, p)).toLieWithin(w, 1e-11);
          if (wet > 0.02) expect(wet).toBeGreaterThanOrEqual(dewPoint((rh / 100) * saturationPressure(t)) - 1e-6);
        }
      }),
    );
  });

  test("of saturated air is the air's own temperature", () => {
    expect(wetBulb(18, humidityRatio(18, 100, 101_325), 101_325)).toLieWithin(18, 1e-6);
  });

  test("refuses more vapour than the air can hold, and says how much it got", () => {
    expect(() => wetBulb(10, 0.02, 101_325)).toThrow(/at 10 °C air holds at most/);
  });
});

test("dewPoint inverts saturationPressure", () => {
  fc.assert(
    fc.property(fc.double({ min: -40, max: 120, noNaN: true }), (t) => {
      expect(dewPoint(saturationPressure(t))).toLieWithin(t, 0.005);
      if (Math.abs(t) > 0.02) expect(dewPoint(saturationPressure(t))).toLieWithin(t, 1e-8);
    }),
  );
});

describe("dryingPower", () => {
  test("falls with humidity and rises with the set point", () => {
    const of = (rh: number, set: number): number =>
      dryingPower({ celsius: 15, relativeHumidityPercent: rh, heatedToCelsius: set, pressurePascals: 100_000 });
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 90 }), fc.integer({ min: 30, max: 80 }), (rh, set) => {
        expect(of(rh + 5, set)).toBeLessThan(of(rh, set));
        expect(of(rh, set + 2)).toBeGreaterThan(of(rh, set));
      }),
    );
  });

  test("tells cold damp air from warm damp air at the same relative humidity", () => {
    const of = (t: number): number =>
      dryingPower({ celsius: t, relativeHumidityPercent: 90, heatedToCelsius: 48, pressurePascals: 101_325 });
    expect(of(2)).toBeGreaterThan(1.3 * of(26));
  });

  test("refuses air that would be cooled", () => {
    const air = { celsius: 50, relativeHumidityPercent: 10, heatedToCelsius: 48, pressurePascals: 101_325 };
    expect(() => dryingPower(air)).toThrow(/heated to 50 °C or more; got 48/);
  });
});

test("pressureAtAltitude, saturationPressure and humidityRatio say what they got when it is out of range", () => {
  expect(() => pressureAtAltitude(20_000)).toThrow(/got 20000/);
  expect(() => saturationPressure(Number.NaN)).toThrow(/got NaN/);
  expect(() => humidityRatio(20, 104, 101_325)).toThrow(/got 104/);
});
