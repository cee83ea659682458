import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { changeSums } from "../../src/analysis/drift/changeSums.ts";
import { fitCreep } from "../../src/analysis/drift/creepFit.ts";
import { fitDriftModels } from "../../src/analysis/drift/driftModels.ts";
import { mannKendall } from "../../src/analysis/drift/mannKendall.ts";
import { pettitt } from "../../src/analysis/drift/pettitt.ts";
import { theilSen } from "../../src/analysis/drift/theilSen.ts";
import { isFitFault } from "../../src/analysis/fitFault.ts";

type Name = "nhtemp" | "LakeHuron" | "JohnsonJohnson";
type Answers = { readonly days: readonly number[]; readonly values: readonly number[] } & {
  readonly [answer: string]: number;
};

// R 4.2.2 on its own data sets, by other ways than the project's: optimize() and uniroot() on deviance(lm()), ranks by signs.
const series: Readonly<Record<Name, Answers>> = JSON.parse(
  readFileSync(new URL("reference/drift-series.json", import.meta.url), "utf8"),
);

describe.each(["nhtemp", "LakeHuron", "JohnsonJohnson"] as const)("R's %s", (name) => {
  const r = series[name];
  const answer = (key: string): number => r[key] as number;

  test("mannKendall agrees with R, ties included", () => {
    const found = mannKendall(r.days, r.values);
    expect(found?.s).toBe(answer("s"));
    expect(found?.variance).toAgreeWithin(answer("variance"), 1e-13);
    expect(found?.z).toAgreeWithin(answer("z"), 1e-13);
    expect(found?.p).toAgreeWithin(answer("p"), 1e-11);
    expect(found?.tau).toAgreeWithin(answer("tauB"), 1e-12);
  });

  test("theilSen agrees with R's median of pairs and Sen's ranks", () => {
    const found = theilSen(r.days, r.values)?.slopePerDay;
    expect(found?.estimate).toAgreeWithin(answer("senSlope"), 1e-10);
    expect(found?.low).toAgreeWithin(answer("senLow"), 1e-10);
    expect(found?.high).toAgreeWithin(answer("senHigh"), 1e-10);
  });

  test("pettitt agrees with R's sums of signs", () => {
    const found = pettitt(r.values);
    expect(found?.k).toBe(answer("pettittK"));
    expect(found?.loadsBefore).toBe(answer("pettittAt"));
    expect(found?.p).toAgreeWithin(answer("pettittP"), 1e-11);
  });

  test("fitDriftModels agrees with R's deviance, onset, slope and profile intervals", () => {
    const models = fitDriftModels({ days: r.days, values: r.values });
    if (isFitFault(models)) throw new Error(models.kind);
    const bic = (model: string) => models.scores.find((score) => score.model === model)?.bic;
    expect(bic("constant")).toAgreeWithin(answer("constantBic"), 1e-12);
    expect(bic("step")).toAgreeWithin(answer("stepBic"), 1e-12);
    expect(models.step?.firstAfter).toBe(answer("stepAt"));
    // R takes the values for independent, as the fit does before neighbours that are alike widen it.
    const creep = fitCreep(changeSums({ days: r.days, values: r.values }), 0.95);
    if (creep === null) throw new Error("no creep");
    expect(bic("creep")).toAgreeWithin(answer("creepBic"), 1e-11);
    expect(creep.residualSquares).toAgreeWithin(answer("creepRss"), 1e-10);
    // optimize() stops within about 1e-6 of a minimum; uniroot() on the profile within 1e-6 of the slope, over a grid of
    // 4,000 onsets.
    expect(creep.onsetDay.estimate).toLieWithin(answer("creepOnset"), 1e-5);
    expect(creep.slopePerDay.estimate).toAgreeWithin(answer("creepSlope"), 1e-5);
    expect(creep.levelBefore.estimate).toAgreeWithin(answer("creepLevel"), 1e-5);
    expect(creep.slopePerDay.low).toAgreeWithin(answer("creepSlopeLow"), 1e-4);
    expect(creep.slopePerDay.high).toAgreeWithin(answer("creepSlopeHigh"), 1e-4);
    expect(creep.onsetDay.high).toLieWithin(answer("creepOnsetHigh"), 1e-6);
    const low = r.creepOnsetLow as number | null;
    expect(creep.mayRiseFromTheStart).toBe(low === null);
    expect(creep.onsetDay.low).toLieWithin(low ?? (r.days[0] as number), 1e-6);
  });
});

test("LakeHuron, whose years follow each other, has its intervals widened; nhtemp, whose hardly do, does not", () => {
  for (const [name, isWidened] of [
    ["LakeHuron", true],
    ["nhtemp", false],
  ] as const) {
    const { days, values } = series[name];
    const models = fitDriftModels({ days, values });
    if (isFitFault(models) || models.creep === null) throw new Error("no creep");
    const independent = fitCreep(models.sums, 0.95);
    expect(models.creep.slopePerDay.estimate).toBe(independent?.slopePerDay.estimate);
    expect(models.creep.variance > 2 * (independent?.variance ?? Number.NaN)).toBe(isWidened);
    if (!isWidened) expect(models.creep.slopePerDay).toEqual(independent?.slopePerDay);
  }
});
