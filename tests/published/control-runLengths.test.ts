import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { cusumRunLength } from "../../src/analysis/controlCharts/cusumRunLength.ts";
import { ewmaRunLength } from "../../src/analysis/controlCharts/ewmaRunLength.ts";
import { falseSignalRunLength } from "../../src/analysis/controlCharts/falseSignalRunLength.ts";
import { ruleChoice } from "../../src/analysis/controlCharts/ruleChoice.ts";
import { runLength } from "../../src/analysis/controlCharts/runLength.ts";
import { beyondLimitsRunLength, zoneRunLength } from "../../src/analysis/controlCharts/runRuleRunLength.ts";
import type { RuleName } from "../../src/analysis/controlCharts/signal.ts";
import { zoneChain } from "../../src/analysis/controlCharts/zoneChain.ts";

const reference = JSON.parse(readFileSync(new URL("reference/arl.json", import.meta.url), "utf8"));
const shifts: readonly number[] = reference.shifts;
const at = (shift: number, spread = 1) => ({ shift, spread });
const meanOf = (...rules: RuleName[]) => runLength(ruleChoice(rules)).distribution.mean;

test("beyondLimitsRunLength and the chain agree with 1/(2Φ(−3)) = 370.4 and its grid of shifts", () => {
  // Computed in R from the closed form, 7 digits: reference/arl.json.
  for (const shift of shifts) {
    const expected: number = reference.shewhart3sigma_computed[String(shift)];
    expect(beyondLimitsRunLength(3, at(shift))).toAgreeWithin(expected, 1e-6);
    expect(zoneRunLength(zoneChain(["beyondLimits"]), at(shift)).mean).toAgreeWithin(expected, 1e-6);
  }
});

test("a run of eight on one side alone comes after 255 runs", () => {
  // 2⁸ − 1: the waiting time for eight heads or eight tails in a row; exact.
  expect(meanOf("eightOnOneSide")).toAgreeWithin(255, 1e-9);
});

describe("zone rules", () => {
  const beyond = "beyondLimits";
  const two = "twoOfThreeBeyondTwoThirds";
  const four = "fourOfFiveBeyondOneThird";
  const eight = "eightOnOneSide";
  // Champ and Woodall (1987), Technometrics 29, 393–399: 91.75 read in a second copy, the others from memory, all
  // within 0.2 % of 400,000 simulated runs of an unrelated program (reference/arl.json).
  test.each<{ rules: RuleName[]; published: number }>([
    { rules: [beyond, two], published: 225.44 },
    { rules: [beyond, four], published: 166.05 },
    { rules: [beyond, eight], published: 152.73 },
    { rules: [beyond, two, four], published: 132.89 },
    { rules: [beyond, two, eight], published: 122.05 },
    { rules: [beyond, four, eight], published: 105.78 },
    { rules: [beyond, two, four, eight], published: 91.75 },
  ])("$rules have the published run length $published", ({ rules, published }) => {
    expect(meanOf(...rules)).toLieWithin(published, 0.0051);
  });

  test("all four see a shift of one sigma after 9.22 runs", () => {
    // Champ and Woodall (1987), from memory; 9.227 with standard error 0.014 simulated.
    expect(runLength(ruleChoice([beyond, two, four, eight]), at(1)).distribution.mean).toLieWithin(9.22, 0.0051);
  });
});

test("six steadily rising or falling, alone, come after 421 runs, whatever the shift", () => {
  // 421.3 with standard error 0.7 at no shift, 422.7 with 0.9 at one sigma: 400,000 runs simulated by an unrelated program.
  expect(meanOf("sixRisingOrFalling")).toLieWithin(421.314, 3 * 0.658);
  const shifted = runLength(ruleChoice(["sixRisingOrFalling"]), at(1)).distribution.mean;
  expect(shifted).toLieWithin(422.676, 3 * 0.933);
});

test("the weighted mean has the run lengths of Lucas and Saccucci's designs", () => {
  // (1990), Technometrics 32, 1–12: designs for 500, read in a second copy. The grid was computed by an integral equation of
  // 80 Gauss–Legendre nodes in an unrelated program, printed to two decimals.
  for (const { lam, L, arl } of reference.ewma_computed_at_LucasSaccucci1990_design_points) {
    shifts.forEach((shift, i) => {
      const design = { weight: lam, limit: L, steady: true };
      expect(ewmaRunLength(design, zoneChain([]), at(shift)).mean).toLieWithin(arl[i], 0.0051);
    });
    expect(arl[0]).toLieWithin(500, 0.5);
  }
});

test("cumulative sums have the run lengths of the usual designs", () => {
  // k 0.5, h 4, 4.77 and 5: Montgomery chapter 9 and Hawkins (1993), from memory, recomputed to three decimals in arl.json.
  for (const { h, arl } of reference["cusum_two_sided_k0.5_computed"]) {
    shifts.forEach((shift, i) => {
      expect(cusumRunLength({ reference: 0.5, decision: h }, at(shift)).mean).toLieWithin(arl[i], 5.1e-4);
    });
  }
  // Hawkins's pairs near 370, from memory, recomputed.
  const pairs = [
    [0.25, 8.01, 370.33],
    [0.5, 4.77, 368.56],
    [0.75, 3.34, 370.57],
    [1, 2.52, 372.82],
  ] as const;
  for (const [k, h, expected] of pairs) {
    expect(cusumRunLength({ reference: k, decision: h }, at(0)).mean).toLieWithin(expected, 0.0051);
  }
});

test.each([
  { runs: 12, low: 11.46, high: 62713 },
  { runs: 24, low: 26.53, high: 11325 },
  { runs: 60, low: 63.67, high: 2912 },
])("limits from $runs runs give a run length somewhere between $low and $high, not 370", ({ runs, low, high }) => {
  // 5th and 95th percentile of 1/(Φ(−3s + c) + Φ(−3s − c)) over 200,000 baselines of normal values simulated in R 4.2.2,
  // c and s their mean and average moving range / d₂. Ours takes the moving range's distribution as a chi-square.
  const range = falseSignalRunLength(ruleChoice(["beyondLimits"]), runs);
  expect(range.known.distribution.mean).toLieWithin(370.4, 0.0051);
  expect(range.low).toAgreeWithin(low, 0.07);
  expect(range.high).toAgreeWithin(high, runs < 24 ? 0.2 : 0.07);
});
