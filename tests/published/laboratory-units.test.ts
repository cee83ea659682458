import { describe, expect, test } from "vitest";
import { extractAsIs, extractOfDryMass } from "../../src/units/extractBasis.ts";
import { fromShown, toShown } from "../../src/units/quantity.ts";

describe("diastatic power, °WK = 3.5 °Lintner − 16", () => {
  // From memory of the usage of ASBC and EBC; the pairs are worked out by hand from that line.
  test.each([
    [334, 100],
    [250, 76],
    [200, 61.7],
    [317, 95.1],
  ])("%d °WK is %d °Lintner", (wk, lintner) => {
    expect(toShown(wk, "diastaticPower", "us")).toLieWithin(lintner, 0.05);
    expect(fromShown(lintner, "diastaticPower", "us")).toLieWithin(wk, 0.2);
  });
});

describe("colour, EBC = 1.97 SRM, both at 430 nm", () => {
  // From memory of the modern usage of ASBC and EBC; a pale malt of 2 °SRM is 3.94 EBC units.
  test("2 °SRM is 3.94 EBC units", () => {
    expect(toShown(3.94, "colour", "us")).toAgreeWithin(2, 1e-12);
  });
});

describe("extract as is = extract of dry mass × (1 − moisture)", () => {
  // By definition of the basis; worked by hand.
  test("81.0 % of dry mass at 5 % moisture is 76.95 % as is", () => {
    expect(extractAsIs(81, 5)).toAgreeWithin(76.95, 1e-12);
  });

  test("76.5 % as is at 4.5 % moisture is 80.105 % of dry mass", () => {
    expect(extractOfDryMass(76.5, 4.5)).toLieWithin(80.105, 0.0005);
  });
});
