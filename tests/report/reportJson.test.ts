import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatReport, parseReport } from "../../src/report/reportJson.ts";

describe("a report as JSON", () => {
  it("parseReport(formatReport(report)) keeps every number to the last bit, number columns and blanks included", () => {
    const column = fc
      .float64Array({ noDefaultInfinity: true })
      .map((values) => values.map((n) => (Object.is(n, -0) ? 0 : n)));
    const number = fc.double({ noDefaultInfinity: true, noNaN: true }).map((n) => (Object.is(n, -0) ? 0 : n));
    fc.assert(
      fc.property(fc.record({ n: number, text: fc.string(), blank: fc.constant(null), column }), (report) => {
        expect(parseReport(formatReport(report))).toEqual(report);
      }),
    );
  });

  it("formatReport throws a RangeError on what would be lost", () => {
    expect(() => formatReport({ curves: new Map() })).toThrow(RangeError);
  });
});
