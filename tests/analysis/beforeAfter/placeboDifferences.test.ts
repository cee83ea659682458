import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { placeboDates, placeboDifferences } from "../../../src/analysis/beforeAfter/placeboDifferences.ts";
import { withinStretches } from "../../../src/analysis/beforeAfter/withinStretches.ts";
import { isFitFault } from "../../../src/analysis/fitFault.ts";
import { fitLeastSquares } from "../../../src/analysis/fitLeastSquares.ts";
import { normalDraws } from "../../../src/analysis/normalDraws.ts";
import { seededRandom } from "../../../src/analysis/seededRandom.ts";
import { mean } from "../../../src/analysis/summary.ts";

const rows = Array.from({ length: 40 }, (_, row) => row);
/** Two stretches with a hole between them in which nothing is tried. */
const stretches = rows.map((row) => (row < 15 ? 0 : row < 20 ? null : 1));
const draw = normalDraws(seededRandom(8));
const weather = rows.map(() => draw());
const depth = rows.map(() => draw());
const value = rows.map((row) => 5 + 2 * (weather[row] ?? 0) - (depth[row] ?? 0) + 0.3 * draw());
const covariates = [
  { name: "weather", values: weather },
  { name: "depth", values: depth },
];

describe("withinStretches(covariates, response, stretches)", () => {
  const found = withinStretches(covariates, value, stretches);
  if (isFitFault(found)) throw new Error("the rows carry the fit");

  test("gives what least squares gives with a column a stretch, over the rows that take part", () => {
    const part = rows.filter((row) => stretches[row] !== null);
    const of = (values: readonly number[]): number[] => part.map((row) => values[row] as number);
    const second = { name: "second stretch", values: part.map((row) => (row < 15 ? 0 : 1)) };
    const fit = fitLeastSquares([...covariates.map((one) => ({ ...one, values: of(one.values) })), second], of(value));
    expect(found.residualStandardDeviation).toAgreeWithin(fit.residualStandardDeviation, 1e-10);
    expect(found.degreesOfFreedom).toBe(fit.degreesOfFreedom);
    const [, perWeather, perDepth] = fit.terms.map(({ estimate }) => estimate);
    rows.forEach((row) => {
      const explained = (perWeather ?? 0) * (weather[row] ?? 0) + (perDepth ?? 0) * (depth[row] ?? 0);
      expect(found.adjusted[row]).toLieWithin((value[row] ?? 0) - explained, 1e-9);
    });
  });

  test("passes over a covariate that has nothing of its own within any stretch", () => {
    const level = { name: "level", values: rows.map((row) => (row < 15 ? 1 : 0)) };
    const same = withinStretches([...covariates, level], value, stretches);
    expect(isFitFault(same) ? null : same.residualStandardDeviation).toAgreeWithin(
      found.residualStandardDeviation,
      1e-12,
    );
  });

  test("returns a fault where covariates follow from each other, or rows are too few", () => {
    const twice = withinStretches([...covariates, { name: "again", values: weather }], value, stretches);
    expect(isFitFault(twice) && twice.kind).toBe("collinear");
    const few = withinStretches(covariates, value.slice(0, 3), [0, 0, 0]);
    expect(isFitFault(few) && few.kind).toBe("too-few");
  });

  test("takes no covariates for an answer", () => {
    const bare = withinStretches([], value, stretches);
    expect(isFitFault(bare) ? [] : Array.from(bare.adjusted)).toEqual(value);
  });
});

describe("placeboDifferences(values, stretches, each)", () => {
  test("are the mean of the next few less the mean of the last few, at every row that has as many within its stretch", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -9, max: 9, noNaN: true }), { minLength: 40, maxLength: 40 }),
        fc.integer({ min: 1, max: 9 }),
        (values, each) => {
          const found = placeboDifferences(values, stretches, each);
          const wanted = rows.filter(
            (row) =>
              rows.filter((other) => other >= row - each && other < row + each && stretches[other] === stretches[row])
                .length ===
                2 * each && stretches[row] !== null,
          );
          expect(found.map(({ row }) => row)).toEqual(wanted);
          expect(placeboDates(stretches, each)).toBe(wanted.length);
          for (const { row, size } of found) {
            expect(size).toLieWithin(mean(values.slice(row, row + each)) - mean(values.slice(row - each, row)), 1e-10);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test("throw on lengths that differ, or no row a side", () => {
    expect(() => placeboDifferences([1, 2], [0], 1)).toThrow(RangeError);
    expect(() => placeboDifferences([1, 2], [0, 0], 0)).toThrow(RangeError);
  });
});
