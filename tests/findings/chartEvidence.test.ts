import { describe, expect, it } from "vitest";
import {
  coarseMeterSentence,
  distinctSentence,
  leanSentence,
  likenessSentence,
  residualsSentence,
} from "../../src/findings/assumptionSentences.ts";
import { balanceSentence, negativeSentence } from "../../src/findings/balanceSentence.ts";
import { points, roughly, sharePercent } from "../../src/findings/chartWords.ts";
import {
  fillingSentence,
  leftOutOfBaseline,
  phaseSentence,
  signalledInBaseline,
  spreadSentence,
} from "../../src/findings/limitSentences.ts";
import { costBasisSentence, moistureCostSentence } from "../../src/findings/moistureCostSentence.ts";
import { plainText, type Sentence } from "../../src/findings/sentence.ts";
import { specSentence, specWords } from "../../src/findings/specSentences.ts";
import { narrowerSentence, withinChanceSentence, withinSentence } from "../../src/findings/withinSentence.ts";
import type { ControlChart } from "../../src/report/controlChartResult.ts";
import {
  interval,
  madeUpBalance,
  madeUpCapability,
  madeUpChart,
  madeUpCost,
  madeUpPhase,
  madeUpSignal,
} from "../support/madeUpChart.ts";

const said = (sentence: Sentence): string => plainText(sentence).replaceAll("\u00a0", " ");
const VALUES = Array.from({ length: 40 }, () => 91);
const chart = (changes: Partial<ControlChart> = {}): ControlChart => madeUpChart(VALUES, changes);
const [centre] = madeUpPhase().centres;
if (centre === undefined) throw new RangeError("the made-up phase has a centre");

describe("points, roughly, sharePercent", () => {
  it("give no more digits than a number deserves, and never round something to nothing", () => {
    expect(points(-0.34)).toBe("0.3\u00a0points");
    expect(points(0.04)).toBe("0.04\u00a0points");
    expect([1.4, 59.6, 193.4, 1512, 18_499].map(roughly)).toEqual(["1", "60", "190", "1500", "18\u202f000"]);
    expect([0, 0.02, 0.34, 12.4].map(sharePercent)).toEqual([
      "0\u00a0%",
      "under 0.1\u00a0%",
      "0.3\u00a0%",
      "12\u00a0%",
    ]);
    expect(() => roughly(Number.POSITIVE_INFINITY)).toThrow(RangeError);
  });
});

describe("phaseSentence, spreadSentence, leftOutOfBaseline", () => {
  it("say what the limits rest on and how well it is known", () => {
    expect(said(phaseSentence(madeUpPhase(), "dry_yield_pct"))).toBe(
      "Since the first batch: the limits of yield rest on 24 batches and lie 1.50 points either side of the centre (1.20 to 2.10 points by what so many batches can tell).",
    );
    const provisional = madeUpPhase({ provisional: true, centres: [{ ...centre, baselineRuns: 7 }], baselineRuns: 7 });
    expect(said(phaseSentence(provisional, "dry_yield_pct"))).toContain(
      "They are provisional: the baseline has only 7 batches",
    );
    expect(said(phaseSentence(madeUpPhase({ centres: [], baselineRuns: 2 }), "dry_yield_pct"))).toContain(
      "no limits yet, since 2 batches cannot carry them",
    );
  });

  it("give the range where each variety has its own spread", () => {
    const own = madeUpPhase({
      sigma: null,
      reach: null,
      centres: [centre, { ...centre, variety: "Brindle", reach: 1.1 }],
    });
    expect(said(phaseSentence(own, "dry_yield_pct"))).toContain(
      "lie 1.10 to 1.50 points either side of each variety’s own centre, by variety.",
    );
    expect(said(spreadSentence(own))).toContain("Each variety has its own spread");
  });

  it("say why varieties share a spread", () => {
    const shared = madeUpPhase({
      pooled: true,
      centres: [centre, { ...centre, variety: "Brindle", baselineRuns: 12 }],
    });
    expect(said(spreadSentence(shared))).toBe(
      "The varieties share one spread, measured within each: Brindle has fewer than 20 batches in the baseline.",
    );
    expect(spreadSentence(madeUpPhase())).toEqual([]);
  });

  it("say whether new batches still move the limits", () => {
    expect(said(fillingSentence(chart(), 0))).toBe("Later batches move no limit.");
    const filling = { ...centre, frozen: false };
    const young = { ...madeUpChart(VALUES.slice(0, 12)), phases: [madeUpPhase({ centres: [filling] })] };
    expect(said(fillingSentence(young, 0))).toBe(
      "The baseline is still filling, so each new batch moves the limits a little.",
    );
    expect(fillingSentence({ ...young, phases: [...young.phases, madeUpPhase()] }, 0)).toEqual([]);
    const phases = [madeUpPhase({ centres: [centre, { ...filling, variety: "Brindle" }] })];
    expect(said(fillingSentence({ ...young, phases }, 0))).toBe(
      "Brindle is still filling a baseline, so each new batch moves its limits a little.",
    );
  });

  it("name the batches beyond the limits that helped to set them, of the latest phase alone", () => {
    const signals = [
      madeUpSignal("beyondLimits", 3, 3, -3),
      madeUpSignal("weightedMean", 4, 9, 1),
      madeUpSignal("beyondLimits", 30, 30, 3),
    ];
    expect(signalledInBaseline(chart({ signals }))).toEqual(["24-004"]);
    expect(signalledInBaseline(chart({ signals, phases: [madeUpPhase(), madeUpPhase()] }))).toEqual([]);
  });

  it("gather what was left out by its reason", () => {
    const left = chart();
    const runs = left.runs.map((run, i) => ({
      ...run,
      leftOut: i === 3 || i === 5 ? "left out by hand" : i === 4 ? "water off" : null,
    }));
    expect(leftOutOfBaseline({ ...left, runs })).toEqual([
      { reason: "left out by hand", runs: ["24-004", "24-006"] },
      { reason: "water off", runs: ["24-005"] },
    ]);
  });
});

describe("withinSentence(chart)", () => {
  const point = {
    count: 3,
    standardDeviation: 0.2,
    centre: 0.19,
    low: 0,
    high: 0.45,
    falseSignalChance: 0.006,
    chance: 0.006,
  };
  const single = {
    count: 1,
    standardDeviation: null,
    centre: null,
    low: null,
    high: null,
    falseSignalChance: null,
    chance: null,
  };
  const within = { sigma: 0.21, baselineRuns: 24, points: [point, point, single], unevenRuns: [], narrowerBy: 2.1 };

  it("counts only batches with two samples or more, and tells an uneven bed from an uneven month", () => {
    expect(said(withinSentence(chart({ within })))).toBe(
      "Samples of one batch differ by 0.21 points (standard deviation; 24 batches in the baseline). In none of 2 batches was the bed less even than that lets one expect.",
    );
    const uneven = said(withinSentence(chart({ within: { ...within, unevenRuns: ["24-003"] } })));
    expect(uneven).toContain("1 batch of 2 came off the bed less even");
    expect(uneven).toContain("another fault than an uneven month");
    expect(said(withinChanceSentence(chart({ within })))).toBe("By chance alone hardly any would be called uneven.");
    expect(withinSentence(chart())).toEqual([]);
  });

  it("says how much closer the limits would lie only where they would", () => {
    expect(said(narrowerSentence(chart({ within })))).toContain("would lie 2.1 times closer");
    expect(narrowerSentence(chart({ within: { ...within, narrowerBy: 0.9 } }))).toEqual([]);
  });
});

describe("what the limits take for granted", () => {
  const assumptions = {
    lagOne: interval(0.12, -0.08, 0.31),
    onResiduals: false,
    skewness: { skewness: 0.3, z: 0.9, p: 0.37 },
    normalPlot: VALUES.map(() => ({ expected: 0, seen: 0 })),
    coarseStep: null,
    distinctValues: 31,
  };

  it("follows the intervals, and says what the chart does", () => {
    expect(said(likenessSentence(assumptions))).toContain("0.12 (−0.08 to 0.31). The interval holds 0");
    const alike = { ...assumptions, lagOne: interval(0.5, 0.2, 0.7) };
    expect(said(likenessSentence({ ...alike, onResiduals: true }))).toContain(
      "the rules run on what this likeness leaves",
    );
    expect(said(likenessSentence(alike))).toContain("yet the rules run on the batches as they are");
    expect(said(leanSentence(assumptions))).toContain("No lean");
    expect(said(leanSentence({ ...assumptions, skewness: null }))).toContain("Too few batches");
    expect(said(leanSentence({ ...assumptions, skewness: { skewness: -1, z: -2.9, p: 0.004 } }))).toContain(
      "more false signals below the centre",
    );
    expect(said(distinctSentence(assumptions))).toBe(
      "31 different values in 40 batches of the baseline. They are fine enough for limits.",
    );
  });

  it("warns of a coarse meter and of residuals beside the chart", () => {
    const coarse = chart({
      measure: "final_moisture_pct",
      assumptions: { ...assumptions, coarseStep: 0.5, distinctValues: 4 },
    });
    expect(said(coarseMeterSentence(coarse))).toBe(
      "Moisture is read in steps of 0.50 points, coarse beside a spread of 0.50 points: limits and signals mean little until a finer meter is used.",
    );
    expect(coarseMeterSentence(chart({ assumptions }))).toEqual([]);
    expect(residualsSentence(chart({ assumptions }))).toEqual([]);
    expect(said(residualsSentence(chart({ assumptions: { ...assumptions, onResiduals: true } })))).toContain(
      "takes after the one before",
    );
  });
});

describe("specSentence(chart), specWords(row)", () => {
  it("put what is expected beside what is seen, and name the variety closest to its limit", () => {
    const rows = [
      madeUpCapability(),
      madeUpCapability({ variety: "Brindle", runs: 60, seenOutside: 0, expectedOutsidePercent: interval(6, 3, 11) }),
    ];
    expect(said(specSentence(chart({ measure: "final_moisture_pct", capability: rows })))).toBe(
      "Of moisture, 2 of 100 batches lie outside the spec; going by mean and spread one would expect about 4. Closest to its limit is Brindle: 6.0 % of its batches to be expected outside (3.0 % to 11 %).",
    );
    expect(said(specSentence(chart()))).toContain("Nothing can be said of yield");
  });

  it("say a spec with one limit as one", () => {
    expect(specWords({ low: 3.6, high: 5 })).toBe("3.6 to 5.0\u00a0%");
    expect(specWords({ low: 89.5, high: null })).toBe("at least 89.5\u00a0%");
    expect(specWords({ low: null, high: 5 })).toBe("at most 5.0\u00a0%");
  });
});

describe("moistureCostSentence(cost, units), costBasisSentence(cost)", () => {
  it("says masses in the reader's units", () => {
    expect(said(moistureCostSentence(madeUpCost(), "metric"))).toBe(
      "Malt dried below the target of 4.4 % gives away 100 kg a year that could have been sold, and takes 90 kWh to dry it off. 6 batches came off above the highest moisture accepted: 800 kg a year to dry again or to sell as something else.",
    );
    // 100 kg / 0.45359237 kg a pound = 220.46 lb; 800 kg = 1763.7 lb (NIST SP 811, B.8).
    const us = said(moistureCostSentence(madeUpCost(), "us"));
    expect(us).toContain("220 lb a year");
    expect(us).toContain("1764 lb a year");
    expect(us).not.toMatch(/ kg\b/);
  });

  it("says nothing lost as nothing, and energy unknown as unknown", () => {
    const none = madeUpCost({ driedAwayKilogramsPerYear: 0, refusedBatches: 0, refusedKilogramsPerYear: 0 });
    expect(said(moistureCostSentence(none, "metric"))).toBe(
      "No batch came off below the target of 4.4 %. No batch came off above the highest moisture accepted.",
    );
    expect(said(moistureCostSentence(madeUpCost({ energyKilowattHoursPerYear: null }), "metric"))).toContain(
      "energy is not logged",
    );
    expect(said(moistureCostSentence(madeUpCost({ refusedBatches: 1 }), "metric"))).toContain("1 batch came off above");
  });

  it("says what a year is made from", () => {
    expect(said(costBasisSentence(madeUpCost()))).toContain("180 batches in 2.5 years");
    expect(said(costBasisSentence(madeUpCost({ years: 0.4 })))).toContain("Less than a year is logged");
  });
});

describe("balanceSentence(rows, units), negativeSentence(rows)", () => {
  it("parts the grain's dry matter, each variety weighing by its batches", () => {
    const rows = [
      madeUpBalance(),
      madeUpBalance({
        variety: "Brindle",
        batches: 120,
        dryMatterYieldPercent: 89,
        rootletsPercent: 4.5,
        steepAndRespirationPercent: 6.5,
      }),
    ];
    // (40 × 91 + 120 × 89) / 160 = 89.5
    expect(said(balanceSentence(rows, "metric"))).toBe(
      "Of 100 kg of the grain’s dry matter 89.5 kg leave as malt, 4.3 kg as rootlets, and 6.2 kg in steep and by respiration, by difference.",
    );
    expect(said(balanceSentence(rows, "us"))).not.toMatch(/ kg\b/);
  });

  it("does not part the loss where rootlets are not weighed throughout", () => {
    const rows = [
      madeUpBalance(),
      madeUpBalance({ variety: "Brindle", rootletsPercent: null, steepAndRespirationPercent: null }),
    ];
    expect(said(balanceSentence(rows, "metric"))).toContain(
      "9.0 kg are lost. Rootlets are not weighed for every variety",
    );
    expect(said(balanceSentence([], "metric"))).toContain("nothing is balanced yet");
  });

  it("explains what stands below 0, and only then", () => {
    expect(said(negativeSentence([madeUpBalance({ negative: 1 })]))).toContain(
      "In 1 batch steep and respiration come out below 0",
    );
    expect(negativeSentence([madeUpBalance()])).toEqual([]);
  });
});
