import { describe, expect, test } from "vitest";
import { minutesToSetPoint, riseRate } from "../../../src/malting/thermostat/riseRate.ts";
import { MINUTE } from "./relayKiln.ts";

const readings = (air: readonly number[], heater?: readonly number[]) => ({
  at: Float64Array.from(air, (_, i) => i * MINUTE),
  airOnCelsius: Float64Array.from(air),
  heaterOn: heater ? Float64Array.from(heater) : null,
  fanOn: null,
});
const whole = (air: readonly number[]) => ({ start: 0, end: air.length });
const straight = Array.from({ length: 60 }, (_, m) => 15 + 0.7 * m);

describe("riseRate", () => {
  test("is the slope of a straight rise over the span that it names", () => {
    const rise = riseRate(readings(straight), whole(straight), 33, 43, 5 * MINUTE);
    expect(rise?.kelvinPerMinute).toAgreeWithin(0.7, 1e-9);
    expect(rise).toMatchObject({ fromCelsius: 33, toCelsius: 43 });
  });

  test("is null where the heater was off on the way, a gap lies in it, or air did not pass through both", () => {
    const off = straight.map((_, m) => (m === 30 ? 0 : 1));
    expect(riseRate(readings(straight, off), whole(straight), 33, 43, 5 * MINUTE)).toBeNull();
    expect(riseRate(readings(straight), whole(straight), 33, 43, 0.5 * MINUTE)).toBeNull();
    expect(riseRate(readings(straight), whole(straight), 10, 43, 5 * MINUTE)).toBeNull();
    expect(riseRate(readings(straight), whole(straight), 33, 80, 5 * MINUTE)).toBeNull();
  });

  test("times the last way up, not one broken off by an open door", () => {
    const door = [...straight.slice(0, 35), 20, ...Array.from({ length: 40 }, (_, m) => 20.5 + 0.5 * m)];
    expect(riseRate(readings(door), whole(door), 25, 39, 5 * MINUTE)?.kelvinPerMinute).toAgreeWithin(0.5, 0.2);
  });

  test("refuses a span that does not rise", () => {
    expect(() => riseRate(readings(straight), whole(straight), 43, 33, MINUTE)).toThrow(RangeError);
  });
});

test("minutesToSetPoint is interpolated between readings, 0 where air starts above, null where it never gets there", () => {
  expect(minutesToSetPoint(readings(straight), whole(straight), 0, 48)).toAgreeWithin(33 / 0.7, 1e-9);
  expect(minutesToSetPoint(readings(straight), whole(straight), 0, 10)).toBe(0);
  expect(minutesToSetPoint(readings(straight), whole(straight), 0, 99)).toBeNull();
});
