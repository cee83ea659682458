import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { twoSample } from "../../src/analysis/beforeAfter/twoSample.ts";
import { brownForsythe } from "../../src/analysis/brownForsythe.ts";
import { foretell } from "../../src/analysis/consistency/consistency.ts";
import { predictiveMargin } from "../../src/analysis/consistency/predictiveMargin.ts";
import { studentTQuantile } from "../../src/analysis/distributions.ts";
import { falseDiscoveryAdjusted } from "../../src/analysis/falseDiscovery.ts";
import { holmAdjusted } from "../../src/analysis/holmAdjusted.ts";
import { spreadRatio } from "../../src/analysis/spreadRatio.ts";
import { mean, sampleStandardDeviation } from "../../src/analysis/summary.ts";
import { varianceSplit } from "../../src/analysis/varianceSplit.ts";
import { withinGroups } from "../../src/analysis/withinGroups.ts";

const read = <T>(name: string): T =>
  JSON.parse(readFileSync(new URL(`reference/${name}.json`, import.meta.url), "utf8")) as T;

interface Anova {
  readonly certified: {
    readonly between: { readonly df: number; readonly ms: number; readonly F: number };
    readonly within: { readonly df: number; readonly ms: number };
    readonly rSquared: number;
    readonly residualSD: number;
  };
  readonly group: readonly number[];
  readonly y: readonly number[];
}

/** R 4.2.2, made by reference/varieties.R. */
interface FromR {
  readonly brownForsythe: readonly {
    readonly set: string;
    readonly group: readonly number[];
    readonly y: readonly number[];
    readonly fAndDfAndP: readonly [number, number, number, number];
  }[];
  readonly adjusted: readonly {
    readonly p: readonly number[];
    readonly benjaminiHochberg: readonly number[];
    readonly holm: readonly number[];
  }[];
  readonly sleep: {
    readonly first: readonly number[];
    readonly second: readonly number[];
    readonly varianceRatio: readonly [number, number, number];
    readonly welch: readonly [number, number, number, number];
  };
  readonly prediction: {
    readonly y: readonly number[];
    readonly level: number;
    readonly interval: readonly [number, number, number];
    readonly chance850to1000: number;
  };
  readonly fixedEffects: {
    readonly first: readonly number[];
    readonly second: readonly number[];
    readonly coefficients: readonly [number, number];
    readonly p: readonly [number, number];
    readonly low: readonly [number, number];
    readonly jointP: number;
  };
}
const r = read<FromR>("varieties");

function grouped(group: readonly number[], y: readonly number[]): number[][] {
  return [...new Set(group)].map((name) => y.filter((_, at) => group[at] === name));
}

describe("varianceSplit(groups)", () => {
  // NIST StRD, one-way analysis of variance. SmLs01 is made so that ten digits of each value do not vary.
  it.each([
    ["SiRstv", 1e-10],
    ["SmLs01", 1e-10],
  ])("agrees with NIST's certified values of %s", (name, tolerance) => {
    const { certified, group, y } = read<Anova>(name);
    const split = varianceSplit(grouped(group, y));
    expect(split.meanSquareBetween).toAgreeWithin(certified.between.ms, 1e-8);
    expect(split.meanSquareWithin).toAgreeWithin(certified.within.ms, 1e-8);
    expect(split.f).toAgreeWithin(certified.between.F, tolerance);
    expect(split.rSquared).toAgreeWithin(certified.rSquared, tolerance);
    expect(split.within.estimate).toAgreeWithin(certified.residualSD, tolerance);
    expect([split.groups - 1, split.values - split.groups]).toEqual([certified.between.df, certified.within.df]);
    // Groups of equal size n: the variance between is (MSB − MSW) / n by definition.
    const size = y.length / split.groups;
    const variance = (certified.between.ms - certified.within.ms) / size;
    expect(split.between.estimate).toAgreeWithin(Math.sqrt(variance), 1e-8);
  });
});

describe("brownForsythe(groups)", () => {
  it.each(r.brownForsythe)("agrees with R on $set", ({ group, y, fAndDfAndP: [f, between, within, p] }) => {
    const test = brownForsythe(grouped(group, y));
    expect(test?.f).toAgreeWithin(f, 1e-12);
    expect(test?.degreesOfFreedom).toEqual([between, within]);
    expect(test?.p).toAgreeWithin(p, 1e-10);
  });
});

describe("probabilities corrected for looking at many", () => {
  // The first list is the worked example of Benjamini and Hochberg 1995 (from memory); corrected by R's p.adjust.
  it.each(r.adjusted)("agree with R's p.adjust", ({ p, benjaminiHochberg, holm }) => {
    const [discovered, familywise] = [falseDiscoveryAdjusted(p), holmAdjusted(p)];
    for (const at of p.keys()) {
      expect(discovered[at]).toAgreeWithin(benjaminiHochberg[at] ?? Number.NaN, 1e-12);
      expect(familywise[at]).toAgreeWithin(holm[at] ?? Number.NaN, 1e-12);
    }
  });

  it("call the first four of Benjamini and Hochberg's fifteen real, of which Holm's way leaves three", () => {
    const p = r.adjusted[0]?.p ?? [];
    expect(falseDiscoveryAdjusted(p).filter((value) => value <= 0.05)).toHaveLength(4);
    expect(holmAdjusted(p).filter((value) => value <= 0.05)).toHaveLength(3);
  });
});

describe("two samples", () => {
  const { first, second, varianceRatio, welch } = r.sleep;
  it("spreadRatio(first, second) agrees with the root of R's var.test", () => {
    const ratio = spreadRatio(first, second);
    expect(ratio?.estimate).toAgreeWithin(Math.sqrt(varianceRatio[0]), 1e-12);
    expect(ratio?.low).toAgreeWithin(Math.sqrt(varianceRatio[1]), 1e-10);
    expect(ratio?.high).toAgreeWithin(Math.sqrt(varianceRatio[2]), 1e-10);
  });

  it("twoSample(second, first) agrees with R's t.test", () => {
    const { estimate, low, high, p } = twoSample(second, first);
    for (const [at, value] of [estimate, low, high, p].entries())
      expect(value).toAgreeWithin(welch[at] ?? Number.NaN, 1e-10);
  });
});

describe("predictiveMargin(count, mean, spread)", () => {
  const { y, level, interval, chance850to1000 } = r.prediction;
  const spread = { variance: sampleStandardDeviation(y) ** 2, degreesOfFreedom: y.length - 1 };
  const margin = predictiveMargin(y.length, mean(y), spread);
  it("gives R's prediction interval of the next value (Michelson's first run)", () => {
    const reach = studentTQuantile(0.5 + level / 2, margin.degreesOfFreedom) * margin.scale;
    for (const [at, value] of [margin.centre, margin.centre - reach, margin.centre + reach].entries()) {
      expect(value).toAgreeWithin(interval[at] ?? Number.NaN, 1e-12);
    }
  });

  it("gives R's chance that it lies between two limits", () => {
    const seen = { count: y.length, mean: mean(y), squares: spread.variance * spread.degreesOfFreedom };
    const limits = { low: 850, high: 1000, below: 75, above: 75, leastSpread: 0 };
    const forecast = foretell([seen], [{ squares: 0, degreesOfFreedom: 0 }], [limits], [1], 2039);
    expect(forecast?.measures[0]?.onTarget).toAgreeWithin(chance850to1000, 1e-10);
    // The joint chance of one measure is that measure's own, but for the lattice.
    expect(forecast?.onTarget).toLieWithin(chance850to1000, 3e-4);
  });

  it("agrees with the printed factors of two-sided prediction intervals for one more value", () => {
    // t(0.975; n − 1) √(1 + 1/n): 3.04 for n = 5 and 2.37 for n = 10 (Hahn and Meeker 1991, Table A.13; from memory).
    const factor = (n: number): number =>
      studentTQuantile(0.975, n - 1) * predictiveMargin(n, 0, { variance: 1, degreesOfFreedom: n - 1 }).scale;
    expect(factor(5)).toLieWithin(3.04, 0.005);
    expect(factor(10)).toLieWithin(2.37, 0.005);
  });
});

describe("withinGroups(group, columns, response)", () => {
  it("agrees with R's lm with a level for each group", () => {
    const chicks = r.brownForsythe.find(({ set }) => set === "chickwts");
    const { first, second, coefficients, p, low, jointP } = r.fixedEffects;
    const fit = withinGroups(chicks?.group ?? [], [first, second], chicks?.y ?? []);
    expect(fit?.coefficients[0]).toAgreeWithin(coefficients[0], 1e-10);
    expect(fit?.coefficients[1]).toAgreeWithin(coefficients[1], 1e-10);
    expect(fit?.effect([1, 0]).p).toAgreeWithin(p[0], 1e-10);
    expect(fit?.effect([0, 1]).low).toAgreeWithin(low[1], 1e-10);
    expect(fit?.p).toAgreeWithin(jointP, 1e-10);
  });
});
