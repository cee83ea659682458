import { describe, expect, test } from "vitest";
import { asItIs } from "../../../src/analysis/consistency/measureScale.ts";
import { seededRandom } from "../../../src/analysis/seededRandom.ts";
import { batchesOf } from "../../../src/report/varieties/batches.ts";
import { type LotsOfMeasure, lotSpreads } from "../../../src/report/varieties/lotSpreads.ts";
import type { SpreadSplit } from "../../../src/report/varietiesResult.ts";
import { gaussian } from "../../analysis/gaussian.ts";
import { bareRun } from "../../support/madeUpReport.ts";

const MEASURES = 8;
const HOUSES = 300;

/** Lots of these sizes whose batches differ by chance alone; `wide` stretches one lot. */
function lotsOf(sizes: readonly number[], seed: number, wide: (lot: number) => number): readonly LotsOfMeasure[] {
  const total = sizes.reduce((sum, size) => sum + size, 0);
  const draws = gaussian(seededRandom(seed), total * MEASURES);
  const [batch] = batchesOf([{ ...bareRun, variety: "Plain", unloadedAt: Date.UTC(2025, 0, 1) }], {
    samples: new Map(),
    hoursOver: new Map(),
    lab: new Map(),
    without: new Set(),
  });
  if (batch === undefined) throw new RangeError("one run makes one batch");
  let next = 0;
  return Array.from(
    { length: MEASURES },
    (_, measure): LotsOfMeasure => ({
      held: {
        at: measure,
        tolerance: { measure: `measure ${measure}`, low: -2, target: 0, high: 2 },
        limits: { low: -2, high: 2, below: 2, above: 2, leastSpread: 0 },
        scale: asItIs,
      },
      variety: "Plain",
      house: new Map(),
      seasonTakenOut: false,
      lots: sizes.map((size, lot) => ({
        lot: `L${lot}`,
        values: Array.from({ length: size }, () => {
          const value = (draws[next++] as number) * wide(lot);
          return { batch, raw: value, scaled: value, adjusted: value };
        }),
      })),
    }),
  );
}

const alike = (): number => 1;

/** In how many of many houses anything at all is found. */
function housesWith(
  sizes: readonly number[],
  found: (splits: readonly SpreadSplit[]) => boolean,
  wide: (lot: number) => number = alike,
): number {
  let count = 0;
  for (let house = 1; house <= HOUSES; house += 1)
    count += found(lotSpreads(lotsOf(sizes, 7919 * house, wide))) ? 1 : 0;
  return count;
}
const namesLevel = (splits: readonly SpreadSplit[]): boolean =>
  splits.some(({ lots }) => lots.some(({ differs }) => differs));
const namesUneven = (splits: readonly SpreadSplit[]): boolean =>
  splits.some(({ lots }) => lots.some(({ uneven }) => uneven));

/** Holm's promise is 5 in 100, here 15 houses; 26 lie three standard errors above. */
const MOST = 26;

describe("lotSpreads(measures) of batches that differ by chance alone", () => {
  test.each([
    ["a few batches each", [4, 2, 4, 2, 4, 2, 4, 1]],
    ["three batches each", [3, 3, 3, 3, 3, 3, 3, 3]],
    ["five batches each", [5, 5, 5, 5, 5, 5, 5, 5]],
    ["lots of all sizes", [8, 7, 5, 6, 11, 7, 3]],
  ])("finds something in no more than 5 houses of 100: %s", (_, sizes) => {
    expect(housesWith(sizes, namesLevel)).toBeLessThanOrEqual(MOST);
    expect(housesWith(sizes, namesUneven)).toBeLessThanOrEqual(MOST);
  });

  test("does not take a lot that spreads four times as far for one at another level, and finds it uneven", () => {
    const wide = (lot: number): number => (lot === 4 ? 4 : 1);
    const sizes = [8, 7, 5, 6, 11, 7, 3];
    expect(housesWith(sizes, namesLevel, wide)).toBeLessThanOrEqual(MOST);
    expect(housesWith(sizes, namesUneven, wide)).toBeGreaterThan(0.9 * HOUSES);
  });
});
