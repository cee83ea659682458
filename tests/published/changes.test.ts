import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { noncentralTUpperTail } from "../../src/analysis/beforeAfter/noncentralT.ts";
import { stepEffect } from "../../src/analysis/beforeAfter/stepEffect.ts";
import { runsEachSide, trialPower } from "../../src/analysis/beforeAfter/trialPower.ts";
import { twoSample } from "../../src/analysis/beforeAfter/twoSample.ts";
import { withinStretches } from "../../src/analysis/beforeAfter/withinStretches.ts";
import { isFitFault } from "../../src/analysis/fitFault.ts";

interface TestOfTwo {
  readonly t: number;
  readonly df: number;
  readonly p: number;
  readonly low: number;
  readonly high: number;
  readonly standardError: number;
}

/** Computed with R 4.2.2 and sandwich 3.0.2 by reference/changes.R, which stands beside it. */
interface Reference {
  readonly sleep: {
    readonly first: readonly number[];
    readonly second: readonly number[];
    readonly welch: TestOfTwo;
    readonly pooled: TestOfTwo;
  };
  readonly stepTerm: {
    readonly mpg: readonly number[];
    readonly wt: readonly number[];
    readonly hp: readonly number[];
    readonly am: readonly number[];
    readonly estimate: number;
    readonly standardError: number;
    readonly hc3: number;
    readonly neweyWestOrdered: number;
    readonly df: number;
    readonly sigma: number;
    readonly levels: readonly [number, number];
    readonly levelsHc3: readonly [number, number];
  };
  /** Cylinders of each car, coefficients of weight and power beside a level a count of cylinders. */
  readonly stretches: {
    readonly stretches: readonly number[];
    readonly wt: number;
    readonly hp: number;
    readonly residualSpread: number;
    readonly degreesOfFreedom: number;
  };
  readonly power: {
    readonly power: readonly { n: number; delta: number; sd: number; level: number; power: number }[];
    readonly sample: readonly { power: number; delta: number; sd: number; n: number }[];
  };
  readonly noncentralT: { readonly cases: readonly { t: number; df: number; ncp: number; upper: number }[] };
}

const reference: Reference = JSON.parse(readFileSync("tests/published/reference/changes.json", "utf8"));
const { sleep, stepTerm, power, noncentralT } = reference;

describe("twoSample against R's t.test on Student's sleep data (Student 1908), computed", () => {
  test.each([
    ["with Welch's degrees of freedom", false, sleep.welch],
    ["with pooled spread", true, sleep.pooled],
  ])("%s", (_, pooled, theirs) => {
    const ours = twoSample(sleep.first, sleep.second, { pooled });
    // R takes the first less the second.
    expect(ours.t).toAgreeWithin(-theirs.t, 1e-12);
    expect(ours.degreesOfFreedom).toAgreeWithin(theirs.df, 1e-12);
    expect(ours.p).toAgreeWithin(theirs.p, 1e-10);
    expect(ours.standardError).toAgreeWithin(theirs.standardError, 1e-12);
    expect(ours.low).toAgreeWithin(-theirs.high, 1e-9);
    expect(ours.high).toAgreeWithin(-theirs.low, 1e-9);
  });

  test("as R's documentation prints them: t 1.8608, df 17.776, p 0.07939 and df 18, p 0.07919 (from memory)", () => {
    const [welch, pooled] = [false, true].map((both) => twoSample(sleep.first, sleep.second, { pooled: both }));
    expect(welch?.t).toLieWithin(1.8608, 5e-5);
    expect(welch?.degreesOfFreedom).toLieWithin(17.776, 5e-4);
    expect(welch?.p).toLieWithin(0.07939, 5e-6);
    expect(pooled?.degreesOfFreedom).toBe(18);
    expect(pooled?.p).toLieWithin(0.07919, 5e-6);
  });
});

describe("stepEffect against R's lm(mpg ~ wt + hp + am) and sandwich on mtcars (Henderson and Velleman 1981), computed", () => {
  const covariates = [
    { name: "wt", values: stepTerm.wt },
    { name: "hp", values: stepTerm.hp },
  ];
  const found = stepEffect(
    covariates,
    stepTerm.mpg,
    stepTerm.am.map((am) => am === 1),
  );
  if (isFitFault(found)) throw new Error("mtcars carries the fit");

  test("step, plain error, degrees of freedom and residual spread", () => {
    expect(found.step.estimate).toAgreeWithin(stepTerm.estimate, 1e-11);
    expect(found.step.standardError).toAgreeWithin(stepTerm.standardError, 1e-11);
    expect(found.degreesOfFreedom).toBe(stepTerm.df);
    expect(found.residualStandardDeviation).toAgreeWithin(stepTerm.sigma, 1e-11);
  });

  test("HC3 errors of the step and of both levels", () => {
    expect(found.step.robustStandardError).toAgreeWithin(stepTerm.hc3, 1e-10);
    [found.before, found.after].forEach((level, side) => {
      expect(level.estimate).toAgreeWithin(stepTerm.levels[side] as number, 1e-11);
      expect(level.robustStandardError).toAgreeWithin(stepTerm.levelsHc3[side] as number, 1e-10);
    });
  });

  test("Newey–West errors of the step where neighbours are alike, and none where they are not seen to be", () => {
    expect(found.step.serialStandardError).toBeNull();
    const order = stepTerm.mpg.map((_, row) => row).sort((a, b) => (stepTerm.mpg[a] ?? 0) - (stepTerm.mpg[b] ?? 0));
    const ordered = (values: readonly number[]): number[] => order.map((row) => values[row] as number);
    const related = stepEffect(
      covariates.map(({ name, values }) => ({ name, values: ordered(values) })),
      ordered(stepTerm.mpg),
      ordered(stepTerm.am).map((am) => am === 1),
    );
    if (isFitFault(related)) throw new Error("mtcars carries the fit");
    expect(related.step.serialStandardError).toAgreeWithin(stepTerm.neweyWestOrdered, 1e-10);
  });
});

test("withinStretches against lm(mpg ~ wt + hp + factor(cyl)) on mtcars ordered by cylinders, computed with R", () => {
  const { stretches, residualSpread, degreesOfFreedom, wt, hp } = reference.stretches;
  const order = stretches.map((_, row) => row).sort((a, b) => (stretches[a] ?? 0) - (stretches[b] ?? 0));
  const ordered = (values: readonly number[]): number[] => order.map((row) => values[row] as number);
  const mpg = ordered(stepTerm.mpg);
  const columns = [
    { name: "wt", values: ordered(stepTerm.wt) },
    { name: "hp", values: ordered(stepTerm.hp) },
  ];
  const found = withinStretches(columns, mpg, ordered(stretches));
  if (isFitFault(found)) throw new Error("mtcars carries the fit");
  expect(found.residualStandardDeviation).toAgreeWithin(residualSpread, 1e-11);
  expect(found.degreesOfFreedom).toBe(degreesOfFreedom);
  found.adjusted.forEach((value, row) => {
    const explained = wt * (columns[0]?.values[row] ?? 0) + hp * (columns[1]?.values[row] ?? 0);
    expect(value).toLieWithin((mpg[row] ?? 0) - explained, 1e-10);
  });
});

describe("noncentralTUpperTail against R's pt(ncp), computed", () => {
  test.each(noncentralT.cases)("beyond $t with $df degrees of freedom and ncp $ncp", ({ t, df, ncp, upper }) => {
    // R itself sums its series to about 1e-11 (its help page, from memory).
    expect(noncentralTUpperTail(t, df, ncp)).toAgreeWithin(upper, 1e-9);
  });
});

describe("power and sample size against R's power.t.test", () => {
  test("its own examples: 20 a side give 0.8689528; power 0.90 needs 22.02110 (R's documentation, from memory)", () => {
    expect(trialPower(20, { difference: 1, spread: 1 })).toLieWithin(0.8689528, 5e-8);
    expect(runsEachSide({ difference: 1, spread: 1, power: 0.9 })).toLieWithin(22.0211, 5e-6);
  });

  test.each(power.power)("power of $n a side for $delta at spread $sd, level $level, computed", (one) => {
    const ours = trialPower(one.n, { difference: one.delta, spread: one.sd, level: one.level });
    expect(ours).toAgreeWithin(one.power, 1e-9);
  });

  test.each(power.sample)("runs each side for power $power, $delta at spread $sd, computed", (one) => {
    const ours = runsEachSide({ difference: one.delta, spread: one.sd, power: one.power });
    expect(ours).toAgreeWithin(one.n, 1e-8);
  });
});
