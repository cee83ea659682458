import fc from "fast-check";
import { expect, test } from "vitest";
import { limitsOfAgreement } from "../../src/analysis/limitsOfAgreement.ts";

const differences = fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 3, maxLength: 40 });

test("limitsOfAgreement(differences) moves with a shift and turns over with the sign", () => {
  fc.assert(
    fc.property(differences, fc.double({ min: -3, max: 3, noNaN: true }), (all, shift) => {
      const own = limitsOfAgreement(all);
      const shifted = limitsOfAgreement(all.map((value) => value + shift));
      const turned = limitsOfAgreement(all.map((value) => -value));
      expect(shifted.limits[0]).toLieWithin(own.limits[0] + shift, 1e-9);
      expect(shifted.bias.high).toLieWithin(own.bias.high + shift, 1e-9);
      expect(turned.limits[0]).toLieWithin(-own.limits[1], 1e-9);
      expect(turned.bias.low).toLieWithin(-own.bias.high, 1e-9);
    }),
  );
});

test("limitsOfAgreement(differences) refuses one pair and what is not a number", () => {
  expect(() => limitsOfAgreement([1])).toThrow("at least two differences; got 1");
  expect(() => limitsOfAgreement([1, Number.NaN])).toThrow(RangeError);
});
