import fc from "fast-check";
import { expect, test } from "vitest";
import { extractAsIs, extractOfDryMass } from "../../src/units/extractBasis.ts";

test("extractOfDryMass(…) undoes extractAsIs(…)", () => {
  const moisture = fc.double({ min: 0, max: 40, noNaN: true });
  fc.assert(
    fc.property(fc.double({ min: 40, max: 100, noNaN: true }), moisture, (dry, water) => {
      expect(extractOfDryMass(extractAsIs(dry, water), water)).toAgreeWithin(dry, 1e-12);
    }),
  );
});

test("a point more moisture takes about 0.8 points off extract as is", () => {
  expect(extractAsIs(81, 4) - extractAsIs(81, 5)).toLieWithin(0.81, 1e-9);
});

test("extractAsIs(…) refuses a moisture that is none", () => {
  expect(() => extractAsIs(81, 100)).toThrow(RangeError);
  expect(() => extractAsIs(81, -1)).toThrow(/got -1/);
  expect(() => extractOfDryMass(76, Number.NaN)).toThrow(RangeError);
});
