import { describe, expect, test } from "vitest";
import {
  bedDepthFamily,
  colourFamily,
  diastaticPowerFamily,
  massFamily,
  temperatureFamily,
  type UnitFamily,
} from "../../src/units/suffix.ts";

function inside(family: UnitFamily, suffix: string, value: number): number {
  const found = family.suffixes.find((candidate) => candidate.suffix === suffix);
  if (!found) throw new RangeError(`no suffix ${suffix}`);
  return value * found.factor + found.offset;
}

describe("unit suffixes", () => {
  // Exact by definition: NIST SP 811 (2008), appendix B.8 (pound, inch) and B.8 temperature formulas.
  test.each([
    [massFamily, "lb", 1, 0.45359237],
    [bedDepthFamily, "in", 1, 0.0254],
    [bedDepthFamily, "cm", 15, 0.15],
    [temperatureFamily, "f", 212, 100],
    [temperatureFamily, "f", -40, -40],
  ])("convert by the definition of the unit (case %#)", (family, suffix, value, expected) => {
    expect(inside(family, suffix, value)).toAgreeWithin(expected, 1e-12);
  });

  test("puts the ice point at 0", () => {
    expect(inside(temperatureFamily, "f", 32)).toLieWithin(0, 1e-12);
  });

  // From memory of ASBC and EBC usage, printed to the unit or tenth: 100 °L = 334 °WK; 250 °WK = 76.0 °L; 200 = 61.7; 317 = 95.1.
  test.each([
    [100, 334],
    [76.0, 250],
    [61.7, 200],
    [95.1, 317],
  ])("turn %f °L into %f °WK", (lintner, windischKolbach) => {
    expect(inside(diastaticPowerFamily, "lintner", lintner)).toLieWithin(windischKolbach, 0.05 * 3.5 + 1e-9);
  });

  // From memory: EBC = 1.97 SRM, so that 2 SRM is 3.94 EBC.
  test("turn 2 SRM into 3.94 EBC", () => {
    expect(inside(colourFamily, "srm", 2)).toAgreeWithin(3.94, 1e-12);
  });

  test("name the unit kept inside as a suffix that changes nothing, but for bed depth, which is kept in metres", () => {
    for (const family of [massFamily, temperatureFamily, colourFamily, diastaticPowerFamily]) {
      expect(inside(family, family.inside, 7.5)).toBe(7.5);
    }
    expect(bedDepthFamily.suffixes.map(({ suffix }) => suffix)).not.toContain(bedDepthFamily.inside);
  });
});
