import { describe, expect, it } from "vitest";
import { falseSignalSentence } from "../../src/findings/falseSignalSentence.ts";
import { plainText, type Sentence } from "../../src/findings/sentence.ts";
import { type SignalGroup, signalGroups } from "../../src/findings/signalGroups.ts";
import { besideSentence, raisedSentence, signalSentence } from "../../src/findings/signalSentence.ts";
import type { ChartSignal } from "../../src/report/controlChartResult.ts";
import { interval, madeUpChart, madeUpPhase, madeUpSignal, runName } from "../support/madeUpChart.ts";

const said = (sentence: Sentence): string => plainText(sentence).replaceAll("\u00a0", " ");
const VALUES = Array.from({ length: 40 }, () => 91);

function groupsOf(...signals: ChartSignal[]): readonly SignalGroup[] {
  return signalGroups(madeUpChart(VALUES, { signals }));
}

function onlyGroup(...signals: ChartSignal[]): SignalGroup {
  const groups = groupsOf(...signals);
  const [group] = groups;
  if (group === undefined || groups.length > 1) throw new RangeError(`these signals make ${groups.length} groups`);
  return group;
}

describe("signalGroups(chart)", () => {
  it("gathers signals that overlap and point the same way, and keeps apart those that do not", () => {
    const up = madeUpSignal("weightedMean", 10, 20, 0.8);
    const within = madeUpSignal("beyondLimits", 15, 15, 1.9);
    const down = madeUpSignal("beyondLimits", 16, 16, -2);
    const later = madeUpSignal("beyondLimits", 30, 30, 1.9);
    const groups = groupsOf(later, down, within, up);
    expect(groups.map(({ from, to, signals }) => [from, to, signals.length])).toEqual([
      [10, 20, 2],
      [16, 16, 1],
      [30, 30, 1],
    ]);
  });

  it("takes its size from the signal over most batches, and from a trend only where there is no other", () => {
    const trend = madeUpSignal("sixRisingOrFalling", 10, 19, 3, { direction: "rising" });
    const level = madeUpSignal("beyondLimits", 18, 18, 1.9);
    expect(onlyGroup(trend, level).main).toBe(level);
    expect(onlyGroup(trend).main).toBe(trend);
    const long = madeUpSignal("weightedMean", 12, 19, 1.1);
    expect(onlyGroup(level, long).main).toBe(long);
  });
});

describe("signalSentence(group, measure, timeZone)", () => {
  it("names a single batch with its day", () => {
    expect(said(signalSentence(onlyGroup(madeUpSignal("beyondLimits", 3, 3, -4.13)), "dry_yield_pct", "UTC"))).toBe(
      "Yield of 24-004, on 9 Apr 2024, lay 4.1 points below its centre.",
    );
  });

  it("counts the batches of a lasting shift", () => {
    const group = onlyGroup(madeUpSignal("weightedMean", 0, 6, 0.42));
    expect(said(signalSentence(group, "final_moisture_pct", "UTC"))).toBe(
      "Moisture lay 0.4 points above its centre over 7 batches, from 25 Mar 2024 to 24 Apr 2024.",
    );
  });

  it("does not give the size of some batches to all", () => {
    const signals = [madeUpSignal("weightedMean", 0, 6, 0.42), madeUpSignal("fourOfFiveBeyondOneThird", 4, 8, 0.6)];
    expect(said(signalSentence(onlyGroup(...signals), "final_moisture_pct", "UTC"))).toContain("over 7 of 9 batches");
  });

  it("says a trend as one", () => {
    const group = onlyGroup(madeUpSignal("sixRisingOrFalling", 0, 5, -0.7, { direction: "falling" }));
    expect(said(signalSentence(group, "final_moisture_pct", "UTC"))).toMatch(
      /^Moisture fell by 0\.7 points over 6 batches/,
    );
  });
});

describe("raisedSentence(group), besideSentence(group)", () => {
  it("say what raised it first and what saw it later, each rule once", () => {
    const group = onlyGroup(
      madeUpSignal("beyondLimits", 12, 12, 2),
      madeUpSignal("weightedMean", 10, 16, 1.2, { raisedAt: runName(14) }),
      madeUpSignal("beyondLimits", 15, 15, 2),
    );
    expect(said(raisedSentence(group))).toBe(
      "raised at 24-013 by a batch beyond the limits, then by the running mean beyond its limits at 24-015.",
    );
  });

  it("list what was logged once, or say that nothing was", () => {
    const beside = ["12 Sep 2024: scale set right"];
    const group = onlyGroup(
      madeUpSignal("beyondLimits", 12, 12, 2, { beside }),
      madeUpSignal("weightedMean", 10, 16, 1.2, { beside: [...beside, "kiln K2, before it K1"] }),
    );
    expect(said(besideSentence(group))).toBe(
      "Logged about those days: 12 Sep 2024: scale set right; kiln K2, before it K1.",
    );
    expect(said(besideSentence(onlyGroup(madeUpSignal("beyondLimits", 1, 1, 2))))).toBe(
      "Nothing is logged about those days.",
    );
  });
});

describe("falseSignalSentence(chart)", () => {
  const falseSignals = {
    rules: ["beyondLimits", "weightedMean"] as const,
    knownLimits: 193.4,
    low: 58.7,
    high: 912,
    expected: interval(40 / 193.4, 40 / 912, 40 / 58.7),
  };

  it("says how often a quiet house would signal, over what the baseline leaves uncertain", () => {
    expect(said(falseSignalSentence(madeUpChart(VALUES, { falseSignals })))).toBe(
      "On a quiet house this set cries wolf about once in 190 batches (anything from 59 to 910, since the limits rest on 24 batches): expect fewer than one (0 to 1) in the 40 batches judged.",
    );
  });

  it("says how many batches each variety's limits rest on", () => {
    const [centre] = madeUpPhase().centres;
    if (centre === undefined) throw new RangeError("the made-up phase has a centre");
    const phases = [madeUpPhase({ centres: [centre, { ...centre, variety: "Brindle", baselineRuns: 14 }] })];
    expect(said(falseSignalSentence(madeUpChart(VALUES, { falseSignals, phases })))).toContain(
      "rest on 14 to 24 batches a variety",
    );
  });

  it("says while it is worked out that it is, and nothing where there are no limits", () => {
    expect(said(falseSignalSentence(madeUpChart(VALUES, { falseSignals: "to come" })))).toContain(
      "is being worked out",
    );
    expect(falseSignalSentence(madeUpChart(VALUES))).toEqual([]);
  });
});
