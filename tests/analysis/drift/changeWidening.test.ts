import { describe, expect, it } from "vitest";
import { changeWidening } from "../../../src/analysis/drift/changeWidening.ts";
import { fitDriftModels } from "../../../src/analysis/drift/driftModels.ts";
import type { DriftSeries } from "../../../src/analysis/drift/driftSeries.ts";
import { isFitFault, sayFitFault } from "../../../src/analysis/fitFault.ts";
import { fitLeastSquares } from "../../../src/analysis/fitLeastSquares.ts";
import { seededRandom } from "../../../src/analysis/seededRandom.ts";
import { gaussian } from "../gaussian.ts";
import { creeping, scattered, unevenDays } from "./series.ts";

const LOADS = 80;
const ONSET = 200;
const SLOPE = -0.01;
const SCATTER = 0.12;
const CHECK_ERROR = 0.12;

/** Between checks every 90 days the logger's correction is a straight line: what one check's error makes of each load. */
function checkColumns(days: Float64Array): readonly number[][] {
  const checks = Array.from({ length: 7 }, (_, at) => 90 * at);
  return checks.map((check) => Array.from(days, (day) => CHECK_ERROR * Math.max(0, 1 - Math.abs(day - check) / 90)));
}

/** How many of 300 creeps have their onset and slope within the intervals. */
function held(seriesOf: (days: Float64Array, seed: number) => Omit<DriftSeries, "days">) {
  let [onsets, slopes] = [0, 0];
  for (let seed = 1; seed <= 300; seed += 1) {
    const days = unevenDays(LOADS, seed);
    const models = fitDriftModels({ days, ...seriesOf(days, seed) });
    if (isFitFault(models)) throw new Error(sayFitFault(models));
    const { onsetDay, slopePerDay } = models.creep ?? {};
    if (onsetDay && onsetDay.low <= ONSET && ONSET <= onsetDay.high) onsets += 1;
    if (slopePerDay && slopePerDay.low <= SLOPE && SLOPE <= slopePerDay.high) slopes += 1;
  }
  return { onsets, slopes };
}

describe("changeWidening(series, kind, onsetDay, variance)", () => {
  const days = unevenDays(LOADS);
  const values = scattered(creeping(days, 0, ONSET, SLOPE), SCATTER);

  it("is 1 for independent loads without shared errors", () => {
    expect(changeWidening({ days, values }, "creep", ONSET, SCATTER ** 2)).toBe(1);
  });

  it("is not raised by an error that all loads have in common, which moves the level alone", () => {
    const sharedErrors = [new Float64Array(LOADS).fill(0.5)];
    expect(changeWidening({ days, values, sharedErrors }, "creep", ONSET, SCATTER ** 2)).toAgreeWithin(1, 1e-9);
  });

  it("is raised by an error along the step by its square over the step's own variance", () => {
    const stepped = days.map((day) => (day >= ONSET ? 1 : 0));
    const noisy = scattered(stepped, SCATTER);
    const fit = fitLeastSquares([{ name: "moved", values: stepped }], noisy);
    const own = (fit.terms[1]?.standardError ?? Number.NaN) ** 2;
    const variance = fit.residualStandardDeviation ** 2;
    const error = 0.3;
    const series = { days, values: noisy, sharedErrors: [stepped.map((one) => error * one)] };
    expect(changeWidening(series, "step", ONSET, variance)).toAgreeWithin(1 + error ** 2 / own, 1e-9);
  });

  it("makes 93 of 100 intervals hold what checks of the logger blur, where without it fewer than 90 do", () => {
    const blurred = (at: Float64Array, seed: number): Float64Array => {
      const errors = gaussian(seededRandom(90_000 + seed), 7);
      const plain = scattered(creeping(at, 0, ONSET, SLOPE), SCATTER, 1000 + seed);
      const shared = checkColumns(at);
      const blur = (load: number): number =>
        shared.reduce((sum, one, check) => sum + (errors[check] as number) * (one[load] as number), 0);
      return plain.map((value, load) => value + blur(load));
    };
    const narrow = held((at, seed) => ({ values: blurred(at, seed) }));
    const wide = held((at, seed) => ({ values: blurred(at, seed), sharedErrors: checkColumns(at) }));
    for (const count of Object.values(narrow)) expect(count).toBeLessThan(0.9 * 300);
    for (const count of Object.values(wide)) expect(count).toBeGreaterThanOrEqual(0.93 * 300);
  });

  it("makes 88 of 100 intervals hold where half of each load's scatter is its neighbour's", () => {
    const { onsets, slopes } = held((at, seed) => {
      const draws = gaussian(seededRandom(70_000 + seed), at.length);
      let before = 0;
      const values = creeping(at, 0, ONSET, SLOPE).map((value, load) => {
        before = 0.5 * before + SCATTER * (draws[load] as number);
        return value + before;
      });
      return { values };
    });
    expect(onsets).toBeGreaterThanOrEqual(0.88 * 300);
    expect(slopes).toBeGreaterThanOrEqual(0.88 * 300);
  });
});
