import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { advanceWidths, measuredCharacters } from "../../src/figures/advanceWidths.ts";
import { fitText, textWidth } from "../../src/figures/textWidth.ts";

describe("textWidth(text, size, weight)", () => {
  test("has one width a measured character at each weight", () => {
    expect(advanceWidths[400]).toHaveLength([...measuredCharacters].length);
    expect(advanceWidths[600]).toHaveLength([...measuredCharacters].length);
  });

  test("gives all digits, plus and minus one width, since tabular figures are on", () => {
    for (const weight of [400, 600] as const) {
      const widths = new Set([..."0123456789+−"].map((digit) => textWidth(digit, 1000, weight)));
      expect(widths.size).toBe(1);
    }
  });

  test("sets letters no narrower in semi-bold than in regular", () => {
    for (const letter of "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789") {
      expect(textWidth(letter, 1000, 600)).toBeGreaterThanOrEqual(textWidth(letter, 1000, 400));
    }
  });

  test("adds up over concatenation and scales with size", () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), fc.integer({ min: 1, max: 40 }), (a, b, size) => {
        expect(textWidth(a + b, size)).toLieWithin(textWidth(a, size) + textWidth(b, size), 1e-9);
        expect(textWidth(a, 2 * size)).toLieWithin(2 * textWidth(a, size), 1e-9);
      }),
    );
  });
});

describe("fitText(text, width, size)", () => {
  test("keeps what fits and cuts the rest to the width with an ellipsis", () => {
    expect(fitText("fan belt", 200, 14)).toBe("fan belt");
    fc.assert(
      fc.property(fc.lorem({ maxCount: 12 }), fc.integer({ min: 40, max: 200 }), (text, width) => {
        const fitted = fitText(text, width, 14);
        expect(textWidth(fitted, 14)).toBeLessThanOrEqual(width);
        if (fitted !== text) expect(fitted.endsWith("…")).toBe(true);
      }),
    );
  });
});
