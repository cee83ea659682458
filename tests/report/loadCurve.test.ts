import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type LoadCurve, parseLoadReadings, writeLoadCurve } from "../../src/report/loadCurve.ts";

const loadedAt = Date.UTC(2026, 0, 12, 4);
const hundredths = fc.integer({ min: -5000, max: 25_000 }).map((value) => value / 100);
const reading = fc.option(hundredths, { nil: Number.NaN });
const flag = fc.constantFrom(0, 1, Number.NaN);

const curves: fc.Arbitrary<LoadCurve> = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 86_400 }), hundredths, reading, reading, reading, flag, flag), {
    minLength: 1,
    maxLength: 30,
  })
  .map((rows) => {
    const column = (index: number): Float64Array => Float64Array.from(rows, (row) => row[index] as number);
    const orNull = (values: Float64Array): Float64Array | null =>
      values.every((value) => Number.isNaN(value)) ? null : values;
    return {
      at: column(0).map((seconds) => loadedAt + seconds * 1000),
      airOnCelsius: column(1),
      airOffCelsius: column(2),
      bedCelsius: column(3),
      airOffHumidityPercent: orNull(column(4)),
      heaterOn: orNull(column(5)),
      fanOn: orNull(column(6)),
    };
  });

describe("parseLoadReadings", () => {
  test("gives back what writeLoadCurve wrote, to the hundredth of a degree", () => {
    fc.assert(
      fc.property(curves, (curve) => {
        expect(parseLoadReadings(writeLoadCurve(curve, loadedAt))).toEqual(curve);
      }),
    );
  });

  test.for(["", "at,air_on_c\n1,2\n", "seconds since yesterday,air_on_c\n0,20\n"])("refuses %j", (text) => {
    expect(() => parseLoadReadings(text)).toThrow(RangeError);
  });
});

test("writeLoadCurve leaves out probes that were silent throughout", () => {
  const silent = Float64Array.of(Number.NaN, Number.NaN);
  const text = writeLoadCurve(
    {
      at: Float64Array.of(loadedAt, loadedAt + 60_000),
      airOnCelsius: Float64Array.of(20, 47.777777),
      airOffCelsius: silent,
      bedCelsius: silent,
      airOffHumidityPercent: null,
      heaterOn: Float64Array.of(1, Number.NaN),
      fanOn: null,
    },
    loadedAt,
  );
  expect(text).toBe("seconds since 2026-01-12T04:00:00.000Z,air_on_c,heater_on\n0,20,1\n60,47.78,\n");
});
