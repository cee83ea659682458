import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { packReport } from "../../src/report/packReport.ts";
import { formatReport, parseReport } from "../../src/report/reportJson.ts";
import { unpackReport } from "../../src/report/unpackReport.ts";

/** JSON has no negative zero. */
const plainZero = (n: number): number => (Object.is(n, -0) ? 0 : n);
const number = fc.oneof(
  fc.double().map(plainZero),
  fc.integer(),
  fc.integer({ min: 20_000_000, max: 30_000_000 }).map((minutes) => minutes * 60_000),
);
const column = fc.array(number, { maxLength: 12 }).map((values) => Float64Array.from(values));
const scalar = fc.oneof(fc.string(), fc.boolean(), fc.constant(null));
const interval = fc.record({ estimate: number, low: number, name: scalar });
/** Shapes as reports have them: alike rows with gaps, lists of lists, few words, odd mixtures. */
const report = fc.record({
  number,
  scalar,
  column,
  same: column,
  numbers: fc.array(fc.option(number)),
  words: fc.array(fc.constantFrom("wheat", "barley", null)),
  texts: fc.array(fc.string()),
  rows: fc.array(
    fc.record({ at: number, load: fc.string(), runs: fc.array(fc.string()), ahead: fc.option(interval), fit: column }),
  ),
  gaps: fc.array(fc.option(interval)),
  lists: fc.array(fc.array(fc.array(number))),
  mixed: fc.array(fc.oneof(scalar, number, fc.array(number), interval, column)),
  unlike: fc.array(fc.oneof(fc.record({ kind: fc.constant("a"), x: number }), fc.record({ kind: fc.constant("b") }))),
});

describe("packReport(report)", () => {
  it("unpackReport(packReport(report)) gives plain data back to the last bit", () => {
    fc.assert(
      fc.property(report, (data) => {
        expect(unpackReport(packReport(data))).toEqual(data);
      }),
    );
  });

  it("keeps a column once, however many fields it stands in", () => {
    const fitted = Float64Array.of(14.2, 15.1, 13.9);
    const loads = Array.from(fitted, (hours, i) => ({ load: `F${i}`, hours }));
    const { columns, texts } = packReport({ fit: { fitted, again: fitted.slice() }, loads, loadsAgain: loads });
    expect(columns).toEqual([fitted]);
    expect(texts).toEqual([["F0", "F1", "F2"]]);
  });

  it("hands over columns of its own, so that transferring them leaves the report whole", () => {
    const fitted = Float64Array.of(14.2, 15.1);
    const { columns } = packReport({ fitted });
    structuredClone(columns, { transfer: columns.map(({ buffer }) => buffer) });
    expect(fitted).toEqual(Float64Array.of(14.2, 15.1));
  });

  it("throws a RangeError on what is no plain data", () => {
    expect(() => packReport({ curves: new Map() })).toThrow(RangeError);
    expect(() => packReport({ at: [new Date(0)] })).toThrow(RangeError);
  });
});

describe("a report as JSON", () => {
  it("parseReport(formatReport(report)) keeps every number to the last bit, number columns and blanks included", () => {
    fc.assert(
      fc.property(report, (data) => {
        expect(parseReport(formatReport(data))).toEqual(data);
      }),
    );
  });

  it("writes moments of whole minutes as steps of minutes", () => {
    const at = [29_833_333, 29_833_393, 29_833_513].map((minutes) => minutes * 60_000);
    expect(formatReport({ at })).toContain('{"unit":60000,"steps":[29833333,60,120]}');
    const gaps = { at: [null, at[0], null, at[2]] };
    expect(parseReport(formatReport(gaps))).toEqual(gaps);
  });

  it("unpackReport throws a RangeError where a column is missing", () => {
    expect(() => unpackReport({ columns: [], texts: [], packed: ["numbers", 0] })).toThrow(RangeError);
  });
});
