import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type StepEffect, stepEffect } from "../../../src/analysis/beforeAfter/stepEffect.ts";
import { isFitFault } from "../../../src/analysis/fitFault.ts";
import { normalDraws } from "../../../src/analysis/normalDraws.ts";
import { seededRandom } from "../../../src/analysis/seededRandom.ts";

const ROWS = 40;
const rows = Array.from({ length: ROWS }, (_, row) => row);
const isAfter = rows.map((row) => row >= 17);

/** Weather, a second thing, and a value that both move, with a step of the given size. */
function made(seed: number, step: number, noise: number) {
  const draw = normalDraws(seededRandom(seed));
  const weather = rows.map(() => draw());
  const depth = rows.map((row) => 0.3 * draw() + row / ROWS);
  const value = rows.map(
    (row) => 5 + 2 * (weather[row] ?? 0) - 3 * (depth[row] ?? 0) + (isAfter[row] ? step : 0) + noise * draw(),
  );
  const covariates = [
    { name: "weather", values: weather },
    { name: "depth", values: depth },
  ];
  return { covariates, value };
}

function fitted(covariates: Parameters<typeof stepEffect>[0], value: readonly number[]): StepEffect {
  const found = stepEffect(covariates, value, isAfter);
  if (isFitFault(found)) throw new Error(`no fit: ${found.kind}`);
  return found;
}

describe("stepEffect(covariates, response, isAfter)", () => {
  test("finds a step of known size beside covariates that move the value more than the step does", () => {
    const { covariates, value } = made(1, 0.7, 1e-6);
    expect(fitted(covariates, value).step.estimate).toLieWithin(0.7, 1e-5);
  });

  test("its levels are the means of the adjusted values on each side, and the step their difference", () => {
    const { covariates, value } = made(2, 0.7, 0.5);
    const { before, after, step, adjusted } = fitted(covariates, value);
    const meanOf = (side: boolean): number => {
      const own = Array.from(adjusted).filter((_, row) => isAfter[row] === side);
      return own.reduce((sum, one) => sum + one, 0) / own.length;
    };
    expect(meanOf(false)).toAgreeWithin(before.estimate, 1e-12);
    expect(meanOf(true)).toAgreeWithin(after.estimate, 1e-12);
    expect(after.estimate - before.estimate).toLieWithin(step.estimate, 1e-12);
  });

  test("a shift of all values moves the levels and leaves the step; a change of unit scales everything", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 500 }),
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        (seed, shift, scale) => {
          const { covariates, value } = made(seed, 1, 0.5);
          const plain = fitted(covariates, value);
          const moved = fitted(
            covariates,
            value.map((one) => scale * one + shift),
          );
          expect(moved.step.low).toLieWithin(scale * plain.step.low, 1e-9 * (scale + Math.abs(shift)));
          expect(moved.step.high).toLieWithin(scale * plain.step.high, 1e-9 * (scale + Math.abs(shift)));
          expect(moved.before.estimate).toLieWithin(
            scale * plain.before.estimate + shift,
            1e-9 * (scale + Math.abs(shift)),
          );
        },
      ),
      { numRuns: 30 },
    );
  });

  test("its 95 % interval holds the true step about 95 times in 100", () => {
    const trials = 400;
    let held = 0;
    for (let seed = 1; seed <= trials; seed += 1) {
      const { covariates, value } = made(seed, 1, 0.8);
      const { low, high } = fitted(covariates, value).step;
      if (low <= 1 && 1 <= high) held += 1;
    }
    // Three standard errors of a share of 400 about 0.95.
    expect(held / trials).toLieWithin(0.95, 0.033);
  });

  test("returns a fault where a covariate is the step itself, and where runs are too few", () => {
    const { value } = made(3, 1, 0.5);
    const same = stepEffect([{ name: "same", values: isAfter.map(Number) }], value, isAfter);
    expect(isFitFault(same) && same.kind).toBe("collinear");
    const few = stepEffect([], value.slice(0, 3), [false, true, true]);
    expect(isFitFault(few) && few.kind).toBe("too-few");
  });
});
