import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { turningPoints, turnProminence } from "../../../src/malting/thermostat/turningPoints.ts";

const whole = (values: Float64Array) => ({ start: 0, end: values.length });

describe("turningPoints", () => {
  test("finds highs and lows in turn and leaves the ends out", () => {
    const air = Float64Array.of(46, 48, 50, 48, 46, 48, 50, 48, 47);
    expect(turningPoints(air, whole(air), 0.5)).toEqual([
      { kind: "high", place: 2 },
      { kind: "low", place: 4 },
      { kind: "high", place: 6 },
    ]);
  });

  test("does not count a wobble below the prominence", () => {
    const air = Float64Array.of(46, 47, 46.8, 48, 50, 49.8, 49.9, 48, 46, 47);
    expect(turningPoints(air, whole(air), 0.3).map(({ place }) => place)).toEqual([4, 8]);
    expect(turningPoints(air, whole(air), 0.15).map(({ place }) => place)).toEqual([1, 2, 4, 8]);
  });

  test("keeps a cycle of five readings whole, which a median of three would flatten", () => {
    const air = Float64Array.from({ length: 50 }, (_, i) => [48, 50, 48, 46, 46.5][i % 5] as number);
    const turns = turningPoints(air, whole(air), 0.3);
    expect(turns.filter(({ kind }) => kind === "high").every(({ place }) => air[place] === 50)).toBe(true);
    expect(turns.filter(({ kind }) => kind === "low").every(({ place }) => air[place] === 46)).toBe(true);
    expect(turns.length).toBeGreaterThan(17);
  });

  test("alternates, in time order, whatever the series", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 40, max: 60, noNaN: true }), { maxLength: 80 }), (values) => {
        const air = Float64Array.from(values);
        const turns = turningPoints(air, whole(air), 0.5);
        for (let k = 1; k < turns.length; k++) {
          const [before, turn] = [turns[k - 1], turns[k]];
          if (!before || !turn) continue;
          expect(turn.kind).not.toBe(before.kind);
          expect(turn.place).toBeGreaterThan(before.place);
          expect(Math.abs((air[turn.place] as number) - (air[before.place] as number))).toBeGreaterThanOrEqual(0.5);
        }
      }),
    );
  });

  test("refuses a prominence that is not positive", () => {
    expect(() => turningPoints(Float64Array.of(1, 2), { start: 0, end: 2 }, 0)).toThrow(RangeError);
  });
});

test("turnProminence is 0.3 K, three steps of the logger or six times its noise, and noise is believed up to 0.2 K", () => {
  expect(turnProminence(0.01, 0)).toBe(0.3);
  expect(turnProminence(0.5, 0)).toBe(1.5);
  expect(turnProminence(0.1, 0.1)).toLieWithin(0.6, 1e-12);
  expect(turnProminence(0.1, 3)).toLieWithin(1.2, 1e-12);
  expect(turnProminence(null, 0)).toBe(0.3);
});
