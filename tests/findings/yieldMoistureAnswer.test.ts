import { describe, expect, it } from "vitest";
import { plainText, type Sentence } from "../../src/findings/sentence.ts";
import { signalGroups } from "../../src/findings/signalGroups.ts";
import {
  lackingSentence,
  roughDate,
  usualLevel,
  withinSpec,
  yieldMoistureAnswer,
  yieldMoistureGrounds,
} from "../../src/findings/yieldMoistureAnswer.ts";
import type { ControlChart } from "../../src/report/controlChartResult.ts";
import { interval, madeUpCapability, madeUpChart, madeUpPhase, madeUpSignal } from "../support/madeUpChart.ts";

const said = (sentence: Sentence): string => plainText(sentence).replaceAll("\u00a0", " ");
const answer = (...charts: ControlChart[]): string =>
  said(yieldMoistureAnswer({ charts, moistureCost: null, balance: [] }, "UTC"));
const grounds = (...charts: ControlChart[]): string =>
  yieldMoistureGrounds({ charts, moistureCost: null, balance: [] }, "UTC").map(said).join(" ");

/** Twenty batches at 91, then `shifted` more at 91 plus `shift`. */
const yields = (shifted: number, shift: number): number[] => [
  ...Array.from({ length: 20 }, () => 91),
  ...Array.from({ length: shifted }, () => 91 + shift),
];
const moisture = (changes: Partial<ControlChart> = {}): ControlChart =>
  madeUpChart(
    Array.from({ length: 20 }, () => 4.5),
    { measure: "final_moisture_pct", ...changes },
  );

describe("yieldMoistureAnswer(result, timeZone)", () => {
  it("says where a quiet measure holds, yield on its basis", () => {
    expect(answer(madeUpChart(yields(0, 0)), moisture())).toBe(
      "Yield holds at 91.0 % of the grain’s dry matter; moisture holds at 4.50 %.",
    );
  });

  it("says no more than so far of few batches", () => {
    expect(answer(madeUpChart(Array.from({ length: 11 }, () => 91)))).toBe(
      "Yield holds at 91.0 % of the grain’s dry matter so far.",
    );
  });

  it("says how far off, which way and since about when, while the latest batches are off", () => {
    const chart = madeUpChart(yields(6, 0.34), { signals: [madeUpSignal("weightedMean", 20, 25, 0.34)] });
    expect(answer(chart)).toBe("Yield runs 0.3 points high since the beginning of July.");
    const low = madeUpChart(yields(6, -0.06), { signals: [madeUpSignal("weightedMean", 20, 25, -0.06)] });
    expect(answer(low)).toBe("Yield runs 0.06 points low since the beginning of July.");
  });

  it("counts no shift that the batches since have left behind", () => {
    const values = [...yields(6, 2), 91, 91, 91];
    const chart = madeUpChart(values, { signals: [madeUpSignal("weightedMean", 20, 25, 2)] });
    expect(answer(chart)).toBe("Yield holds at 91.0 % of the grain’s dry matter.");
  });

  it("names a single batch, and says when it is the latest", () => {
    const last = madeUpChart(yields(1, -4), { signals: [madeUpSignal("beyondLimits", 20, 20, -4)] });
    expect(answer(last)).toBe("Yield of the latest batch, 24-021, was 4.0 points low.");
    const before = madeUpChart([...yields(1, -4), 91], { signals: [madeUpSignal("beyondLimits", 20, 20, -4)] });
    expect(answer(before)).toBe("Yield of batch 24-021 was 4.0 points low.");
  });

  it("says a trend as a trend", () => {
    const signal = madeUpSignal("sixRisingOrFalling", 15, 20, -1.4, { direction: "falling" });
    expect(answer(madeUpChart(yields(1, -1.4), { signals: [signal] }))).toMatch(/^Yield has fallen 1\.4 points since/);
  });

  it("says how many batches met the spec, over the varieties that have one", () => {
    const capability = [madeUpCapability(), madeUpCapability({ variety: "Brindle", runs: 20, seenOutside: 0 })];
    expect(withinSpec(moisture({ capability }))).toEqual({ met: 58, of: 60 });
    expect(answer(moisture({ capability }))).toContain("Moisture met its spec in 58 of 60 batches.");
    const all = [madeUpCapability({ seenOutside: 0 })];
    expect(answer(madeUpChart(yields(0, 0), { capability: all }), moisture({ capability }))).toContain(
      "Yield met its spec in all 40 batches, moisture in 58 of 60.",
    );
    expect(withinSpec(moisture())).toBeNull();
  });

  it("says what is lacking where there is too little, for one measure or for all", () => {
    const tooLittle = "3 batches have a final moisture; limits need at least five that are not all the same.";
    expect(answer(moisture({ tooLittle }))).toBe(tooLittle);
    expect(answer(madeUpChart(yields(0, 0)), moisture({ tooLittle }))).toBe(
      `Yield holds at 91.0 % of the grain’s dry matter. ${tooLittle}`,
    );
    expect(answer()).toBe("These logs hold no yield and no final moisture yet.");
  });
});

describe("usualLevel(chart, groups)", () => {
  it("is the mean of the latest phase's batches that no signal speaks of", () => {
    const chart = madeUpChart([90, 92, 99, 99], { signals: [madeUpSignal("weightedMean", 2, 3, 8)] });
    expect(usualLevel(chart, signalGroups(chart))).toBe(91);
    const all = madeUpChart([99, 99], { signals: [madeUpSignal("weightedMean", 0, 1, 8)] });
    expect(usualLevel(all, signalGroups(all))).toBeNull();
  });
});

describe("roughDate(at, now, timeZone)", () => {
  it("parts a month in three, and names the year where it is another", () => {
    const now = Date.UTC(2026, 9, 31);
    expect(roughDate(Date.UTC(2026, 8, 10), now, "UTC")).toBe("the beginning of September");
    expect(roughDate(Date.UTC(2026, 8, 11), now, "UTC")).toBe("the middle of September");
    expect(roughDate(Date.UTC(2026, 8, 21), now, "UTC")).toBe("the end of September");
    expect(roughDate(Date.UTC(2025, 8, 21), now, "UTC")).toBe("the end of September 2025");
  });
});

describe("yieldMoistureGrounds(result, timeZone)", () => {
  it("says what was looked for where nothing signalled", () => {
    expect(grounds(madeUpChart(yields(0, 0)), moisture())).toBe(
      "Looked for: a batch beyond the limits and the running mean beyond its limits. Nothing signalled, in 20 batches of yield and 20 batches of moisture.",
    );
  });

  it("counts signals of the same batches once", () => {
    const signals = [madeUpSignal("weightedMean", 18, 20, 1), madeUpSignal("beyondLimits", 20, 20, 2)];
    expect(grounds(madeUpChart(yields(1, 2), { signals }), moisture())).toBe(
      "Signals: 1 of yield, on 3 Jul 2024; none of moisture.",
    );
  });

  it("says how uncertain provisional limits are", () => {
    const phases = [madeUpPhase({ provisional: true, baselineRuns: 8, reach: interval(1.5, 0.8, 3.9) })];
    expect(grounds(madeUpChart(yields(0, 0), { phases }))).toContain(
      "Limits are provisional: ±0.8 to 3.9 points for yield.",
    );
  });
});

describe("lackingSentence(chart)", () => {
  it("counts the batches that are not on the chart, by reason", () => {
    const one = madeUpChart(yields(0, 0), { lacking: [{ reason: "not off the kiln yet", count: 1 }] });
    expect(said(lackingSentence(one))).toBe("One other batch is not on the chart: not off the kiln yet.");
    const two = madeUpChart([], {
      lacking: [
        { reason: "no malt mass", count: 1 },
        { reason: "no final moisture", count: 3 },
      ],
    });
    expect(said(lackingSentence(two))).toBe(
      "Four batches are not on the chart: no final moisture (3) and no malt mass (1).",
    );
    expect(lackingSentence(moisture())).toEqual([]);
  });
});
