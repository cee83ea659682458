import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { guardedCell, guardedCsv } from "../../src/tables/guardedCsv.ts";

describe("guardedCell(value)", () => {
  // The characters of OWASP ASVS 5.0, 1.2.10, and of CWE-1236.
  it.each(["=1+1", "+1+1", "-1+1", "@SUM(A1)", "\tx", "\r=x", "\n=x", "\0x", "-cmd|' /C calc'!A0"])(
    "puts an apostrophe before %j",
    (value) => {
      expect(guardedCell(value).replaceAll('"', "")).toMatch(/^'/);
    },
  );

  it.each(["-12.5", "0", "-3e-7", "61", "K1", "a=b", ""])("leaves %j as it is", (value) => {
    expect(guardedCell(value)).toBe(value);
  });
});

describe("guardedCsv(rows)", () => {
  it("is read back by another reader as it was written, whatever the cells hold", () => {
    const cell = fc.string({ minLength: 1 }).filter((text) => !/^[=+\-@\t\r\n\0]/.test(text));
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 2 }), { minLength: 1 }), (rows) => {
        expect(parse(guardedCsv(rows), { record_delimiter: "\r\n" })).toEqual(rows);
      }),
    );
  });
});
