import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { fitDriftModels } from "../../src/analysis/drift/driftModels.ts";
import { mannKendall } from "../../src/analysis/drift/mannKendall.ts";
import { pettitt } from "../../src/analysis/drift/pettitt.ts";
import { theilSen } from "../../src/analysis/drift/theilSen.ts";
import { isFitFault } from "../../src/analysis/fitFault.ts";

interface Nile {
  readonly firstYear: number;
  readonly y: readonly number[];
  readonly answers: {
    readonly pettitt: { readonly K: number; readonly lastOfFirstPart: number; readonly pApprox: number };
    readonly segmentMeans: readonly [number, number];
    readonly mannKendall: { readonly S: number; readonly variance: number; readonly Z: number; readonly p: number };
    readonly theilSenSlopePerYear: number;
  };
}

// R 4.2.2 datasets::Nile, yearly flow at Aswan 1871 to 1970; that it broke after 1898 is Cobb's finding (1978, Biometrika
// 65, 243–251; from memory). Answers computed in R; tolerances are the digits that the file gives.
const nile: Nile = JSON.parse(readFileSync(new URL("reference/Nile.json", import.meta.url), "utf8"));
const years = nile.y.map((_, at) => nile.firstYear + at);

describe("the Nile's flows, which stepped down after 1898", () => {
  test("pettitt finds the last year of the first part", () => {
    const { K, lastOfFirstPart, pApprox } = nile.answers.pettitt;
    const found = pettitt(nile.y);
    expect(found?.k).toBe(K);
    expect(found?.loadsBefore).toBe(lastOfFirstPart);
    expect(years[lastOfFirstPart - 1]).toBe(1898);
    expect(found?.direction).toBe("down");
    expect(found?.p).toAgreeWithin(pApprox, 2e-6);
  });

  test("mannKendall and theilSen agree with R", () => {
    const { S, variance, Z, p } = nile.answers.mannKendall;
    const found = mannKendall(years, nile.y);
    expect(found?.s).toBe(S);
    expect(found?.variance).toLieWithin(variance, 5e-5);
    expect(found?.z).toLieWithin(Z, 5e-7);
    expect(found?.p).toAgreeWithin(p, 2e-6);
    // tau-b of R's cor(method = "kendall").
    expect(found?.tau).toLieWithin(-0.2807413, 5e-8);
    expect(theilSen(years, nile.y)?.slopePerDay.estimate).toLieWithin(nile.answers.theilSenSlopePerYear, 1e-12);
  });

  test("fitDriftModels calls it a step and not a drift, though the trend test is significant", () => {
    const models = fitDriftModels({ days: years, values: nile.y });
    if (isFitFault(models)) throw new Error(models.kind);
    expect(models.winner).toBe("step");
    expect(models.isClear).toBe(true);
    expect(models.step?.firstAfter).toBe(28);
    expect(models.step?.levelBefore.estimate).toLieWithin(nile.answers.segmentMeans[0], 5e-5);
    expect(models.step?.levelNow.estimate).toLieWithin(nile.answers.segmentMeans[1], 5e-5);
    // R package strucchange prints 1318 and 1270 (from memory), R's sums of squares give the digits.
    const bic = (name: string) => models.scores.find(({ model }) => model === name)?.bic;
    expect(bic("constant")).toLieWithin(1318.242, 5e-4);
    expect(bic("step")).toLieWithin(1270.084, 5e-4);
    expect(models.step?.residualSquares).toAgreeWithin(1597457.1944, 1e-10);
    expect(models.constant.residualSquares).toAgreeWithin(2835156.75, 1e-12);
    const rest = (bic("creep") ?? Number.NaN) - (bic("step") ?? Number.NaN);
    expect(rest).toBeGreaterThan(10);
    expect(mannKendall(years, nile.y)?.p).toBeLessThan(0.001);
  });
});
