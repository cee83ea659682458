import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { numberAt, numberFault } from "../../src/tables/numberText.ts";

const read = (text: string, mark: "." | "," = "."): number => numberAt(text, 0, text.length, mark);

describe("numberAt", () => {
  test("reads decimal text to the very double that the language reads", () => {
    const digits = (most: number) =>
      fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: most }).map((all) => all.join(""));
    fc.assert(
      fc.property(fc.constantFrom("", "-", "+"), digits(18), fc.option(digits(18)), (sign, whole, part) => {
        const text = `${sign}${whole}${part === null ? "" : `.${part}`}`;
        expect(Object.is(read(text), Number(text))).toBe(true);
        expect(Object.is(read(text.replace(".", ","), ","), Number(text))).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  test("reads what String writes, for any finite number", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(read(String(value))).toBe(Number(String(value)));
      }),
      { numRuns: 1000 },
    );
  });

  test("understands the typeset minus and a leading mark", () => {
    expect(read("\u22123.5")).toBe(-3.5);
    expect(read(".5")).toBe(0.5);
  });

  test.each([
    "",
    "-",
    ".",
    "5.",
    "1_000",
    "0x10",
    "inf",
    "Infinity",
    "NaN",
    "1e",
    "1 000",
    "1,5",
    "--1",
    "1.2.3",
    "½",
    "１２",
  ])("refuses %j", (text) => {
    expect(read(text)).toBeNaN();
  });
});

describe("numberFault", () => {
  test.each([
    ["1,234.5", ".", "thousands-mark"],
    ["1 234", ".", "thousands-mark"],
    ["1'234.50", ".", "thousands-mark"],
    ["1.234,5", ",", "thousands-mark"],
    ["12,5", ".", "decimal-mark"],
    ["12.5", ",", "decimal-mark"],
    ["45%", ".", "unit-in-value"],
    ["45 °C", ".", "unit-in-value"],
    ["#DIV/0!", ".", "spreadsheet-error"],
    ["n/a", ".", "not-a-number"],
    ["0x10", ".", "not-a-number"],
  ] as const)("says of %j under a decimal %j: %s", (text, mark, rule) => {
    expect(numberFault(text, mark).rule).toBe(rule);
  });
});
