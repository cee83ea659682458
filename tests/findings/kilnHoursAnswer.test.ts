import { describe, expect, it } from "vitest";
import type { Interval } from "../../src/analysis/regressionFit.ts";
import { effectOfDepth, effectSentence, verdictOn } from "../../src/findings/kilnEffects.ts";
import {
  dryingHoursAnswer,
  kilnHoursAnswer,
  kilnHoursGrounds,
  kilnHoursKnown,
  stretchesSentence,
} from "../../src/findings/kilnHoursAnswer.ts";
import { plainText } from "../../src/findings/sentence.ts";
import type { HumidityDepthModel, KilnHoursResult } from "../../src/report/kilnHoursResult.ts";
import { madeUpReport } from "../support/madeUpReport.ts";

const interval = (estimate: number, low: number, high: number): Interval => ({ estimate, low, high });
const said = (text: ReturnType<typeof kilnHoursAnswer>): string => plainText(text).replaceAll("\u00a0", " ");

const result = madeUpReport(60).kilnHours;
const model = result.kilnHours.humidityDepth;
if (model === null) throw new RangeError("sixty loads carry a model");

/** The same model with the effects that a test is about. */
const withEffects = (humidity: Interval, depth: Interval): HumidityDepthModel => ({
  ...model,
  hoursPerTenPoints: humidity,
  hoursPerCentimetre: depth,
});

const answerOf = (changes: Partial<KilnHoursResult["kilnHours"]>): string =>
  said(kilnHoursAnswer({ ...result, kilnHours: { ...result.kilnHours, ...changes } }, "metric"));

describe("kilnHoursAnswer(result, units)", () => {
  it("says the usual hours and both effects", () => {
    const humidityDepth = withEffects(interval(0.74, 0.6, 0.88), interval(0.58, 0.48, 0.68));
    expect(answerOf({ medianHours: 13.4, humidityDepth })).toBe(
      "A kiln takes 13.4 h here. Damp air adds 0.74 h for every 10 points of humidity, and each centimetre of bed another 0.58 h.",
    );
  });

  it("says an inch of bed to a reader who counts in inches, 2.54 times a centimetre", () => {
    const depth = interval(1, 0.5, 1.5);
    expect(effectOfDepth(depth, "us")).toEqual(interval(2.54, 1.27, 3.81));
    expect(said(effectSentence(withEffects(interval(1, 0.5, 1.5), depth), "us"))).toContain(
      "each inch of bed another 2.54 h",
    );
  });

  it("claims no effect whose interval holds 0", () => {
    const none = interval(0.2, -0.1, 0.5);
    const clear = interval(0.5, 0.4, 0.6);
    expect(said(effectSentence(withEffects(none, none), "metric"))).toBe(
      "These loads do not show that damp air or a deeper bed changes that.",
    );
    expect(said(effectSentence(withEffects(none, clear), "metric"))).toBe(
      "These loads do not show that damp air matters; each centimetre of bed adds 0.50 h.",
    );
    expect(said(effectSentence(withEffects(clear, none), "metric"))).toBe(
      "Damp air adds 0.50 h for every 10 points of humidity; that bed depth matters they do not show.",
    );
  });

  it("says an effect that goes the other way as one", () => {
    const less = interval(-0.5, -0.6, -0.4);
    expect(said(effectSentence(withEffects(less, interval(1, 0.5, 1.5)), "metric"))).toBe(
      "Damp air goes with 0.50 h less for every 10 points of humidity; each centimetre of bed adds 1.00 h.",
    );
  });

  it("gives few loads no more weight than they carry", () => {
    expect(answerOf({ loadsWithHours: 0, medianHours: null, humidityDepth: null })).toBe(
      "No kiln load in these logs has been timed yet.",
    );
    expect(answerOf({ loadsWithHours: 1, medianHours: 13.4, humidityDepth: null })).toBe(
      "One kiln load has been timed: it took 13.4 h.",
    );
    expect(answerOf({ loadsWithHours: 5, medianHours: 13.4, humidityDepth: null })).toBe(
      "Five kiln loads so far took about 13.4 h.",
    );
  });
});

describe("verdictOn(effect)", () => {
  it("follows the interval, and an end on 0 is no effect", () => {
    expect(verdictOn(interval(1, 0.1, 2))).toBe("adds");
    expect(verdictOn(interval(-1, -2, -0.1))).toBe("takes off");
    expect(verdictOn(interval(1, 0, 2))).toBe("not seen");
    expect(verdictOn(interval(0.1, -2, 2))).toBe("not seen");
  });
});

describe("kilnHoursGrounds(result, units)", () => {
  it("puts the plain intervals beside the answer, and the loads behind it", () => {
    const humidityDepth = withEffects(interval(0.74, 0.6, 0.88), interval(0.58, 0.48, 0.68));
    const fitted = { ...result, kilnHours: { ...result.kilnHours, humidityDepth } };
    const text = said(kilnHoursGrounds(fitted, "metric"));
    expect(text).toContain("0.60 to 0.88 h for 10 points of humidity");
    expect(text).toContain("0.48 to 0.68 h for one centimetre of bed");
    expect(said(kilnHoursKnown(fitted, "metric"))).toContain("60 loads");
  });

  it("says what is lacking where there is no fit", () => {
    const tooLittle = "9 loads with humidity and depth; the estimate needs 12.";
    const kilnHours = { ...result.kilnHours, humidityDepth: null, tooLittle };
    expect(said(kilnHoursGrounds({ ...result, kilnHours }, "metric"))).toBe(tooLittle);
    expect(kilnHoursKnown({ ...result, kilnHours }, "metric")).toEqual([]);
  });
});

describe("stretchesSentence(stretches, timeZone)", () => {
  const stretch = {
    loads: ["a", "b", "c", "d", "e", "f", "g"],
    from: Date.UTC(2026, 3, 3),
    to: Date.UTC(2026, 4, 20),
    meanResidualHours: 1.52,
  };

  it("says which way and by how much", () => {
    expect(said(stretchesSentence([stretch], "UTC"))).toBe(
      "Beyond what air and bed account for, seven loads from 3 Apr 2026 to 20 May 2026 took 1.5 h longer each.",
    );
    expect(said(stretchesSentence([{ ...stretch, meanResidualHours: -1.52 }], "UTC"))).toContain("1.5 h less each");
  });

  it("says nothing where there is none", () => {
    expect(stretchesSentence([], "UTC")).toEqual([]);
  });
});

describe("dryingHoursAnswer(result, units)", () => {
  it("says so where the start of the cure is not logged", () => {
    expect(said(dryingHoursAnswer(result, "metric"))).toBe(
      "The start of the cure is not logged, so nothing is said of when to turn the heat up.",
    );
  });
});
