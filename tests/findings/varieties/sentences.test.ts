import { describe, expect, test } from "vitest";
import { plainText, type Sentence } from "../../../src/findings/sentence.ts";
import {
  backTestSentence,
  noBackTestSentence,
  trustSentence,
} from "../../../src/findings/varieties/backTestSentences.ts";
import {
  besideSentence,
  dragSentence,
  scoreSentence,
  toleranceWords,
} from "../../../src/findings/varieties/chanceSentences.ts";
import { extractAsIsOf, labSentence, methodGroups } from "../../../src/findings/varieties/labSentences.ts";
import { lotsSentences, splitAdvice, splitSentence } from "../../../src/findings/varieties/lotSentences.ts";
import { periodsSentence } from "../../../src/findings/varieties/periodSentences.ts";
import { quartersSentence } from "../../../src/findings/varieties/quarterSentences.ts";
import { reasonSentence } from "../../../src/findings/varieties/reasonSentences.ts";
import { chanceInHundred } from "../../../src/findings/varieties/scoreWords.ts";
import { toleranceSentence } from "../../../src/findings/varieties/toleranceSentence.ts";
import {
  leastEven,
  varietiesAnswer,
  varietiesGrounds,
  varietiesStart,
} from "../../../src/findings/varieties/varietiesAnswer.ts";
import { varietyAnswer, varietyGrounds, withoutLotSentence } from "../../../src/findings/varieties/varietyAnswer.ts";
import type {
  VarietiesResult,
  VarietyDetail,
  VarietyReason,
  VarietyScore,
} from "../../../src/report/varietiesResult.ts";
import { certificate, madeUpVarieties } from "../../support/madeUpVarieties.ts";

const said = (sentence: Sentence): string => plainText(sentence).replaceAll("\u00a0", " ");
const reader = { units: "metric", timeZone: "UTC" } as const;
const result = madeUpVarieties();

/** @throws {RangeError} where the made-up house lacks it */
function scoreOf(variety: string, from: VarietiesResult = result): VarietyScore {
  const found = from.scores.find((score) => score.variety === variety);
  if (found === undefined) throw new RangeError(`no variety ${variety}`);
  return found;
}

function detailOf(variety: string): VarietyDetail {
  const found = result.details.find((detail) => detail.variety === variety);
  if (found === undefined) throw new RangeError(`no variety ${variety}`);
  return found;
}

const amber = detailOf("Amber");

describe("varietiesAnswer(result)", () => {
  test("names the lowest variety with its chance and interval, and then the lot where it starts", () => {
    expect(said(varietiesAnswer(result))).toBe(
      "Amber is the least even and the least on target: the next batch meets every tolerance with a chance of 46 in 100 (34 to 58).",
    );
    expect(said(varietiesStart(result))).toBe("In Amber it starts with grain lot AL4, in final moisture.");
  });

  test("falls back on the measure that drags most where no lot stands out", () => {
    const quiet = madeUpVarieties({ details: [{ ...amber, reasons: [] }] });
    expect(said(varietiesStart(quiet))).toContain(
      "it starts with final moisture, which alone is met with a chance of 51 in 100",
    );
  });

  test("names another variety that is about as uneven, since the number said is the other one", () => {
    const near = { ...scoreOf("Brindle"), even: { estimate: 53, low: 40, high: 65 } };
    expect(said(varietiesAnswer(madeUpVarieties({ scores: [scoreOf("Amber"), near] })))).toMatch(
      /^Amber is the least on target and, with Brindle, the least even: the next batch meets every tolerance with a chance of 46 in 100/,
    );
  });

  test("counts the other measures that a lot is uneven in", () => {
    const [split] = amber.splits;
    const [reason] = amber.reasons;
    if (split === undefined || reason === undefined)
      throw new RangeError("the made-up variety has a split and a reason");
    const lots = split.lots.map((lot) => ({ ...lot, uneven: lot.lot === "AL4" }));
    const uneven: VarietyDetail = {
      ...amber,
      reasons: [{ ...reason, how: "spread", size: null }],
      splits: [
        { ...split, lots },
        { ...split, lots, measure: "dry_yield_pct" },
      ],
    };
    expect(said(varietiesStart(madeUpVarieties({ details: [uneven] })))).toContain(
      "it starts with grain lot AL4, uneven in itself, in final moisture and 1 other measure.",
    );
  });

  test("tells a wrong aim from an uneven variety", () => {
    const beside = { ...scoreOf("Amber"), even: { estimate: 85, low: 75, high: 92 } };
    const steady = { ...scoreOf("Brindle"), even: { estimate: 89, low: 80, high: 95 } };
    expect(said(varietiesAnswer(madeUpVarieties({ scores: [beside, steady] })))).toMatch(
      /^Amber is the least sure, and more beside its target than uneven: /,
    );
  });

  test("names the least even and the least on target, each with its own number, where they are two varieties", () => {
    const beside = { ...scoreOf("Brindle"), onTarget: { estimate: 40, low: 30, high: 52 } };
    const scores = [beside, scoreOf("Amber")];
    expect(said(varietiesAnswer(madeUpVarieties({ scores })))).toBe(
      "Amber is the least even, 52 in 100 (40 to 64); Brindle is the least on target, 40 in 100 (30 to 52), more by its aim than by its spread.",
    );
    const grounds = varietiesGrounds(madeUpVarieties({ scores })).map(said).join(" ");
    expect(grounds).toContain("In Amber it starts with grain lot AL4, in final moisture.");
    expect(grounds).toContain("How even: the interval of Amber lies below that of Brindle.");
    expect(grounds).toContain("On target: that of Brindle overlaps with that of Amber");
    const near = { ...scoreOf("Amber"), even: { estimate: 52, low: 20, high: 75 } };
    const overlapping = varietiesGrounds(madeUpVarieties({ scores: [beside, near] })).map(said);
    expect(overlapping[2]).toMatch(/^Both intervals overlap with those of all other varieties/);
  });

  test("blames no lot without which the score does not rise: it may stand out by being better", () => {
    const better = { ...amber, withoutLot: { lot: "AL4", onTarget: 45, batches: 20 } };
    const answer = said(varietiesStart(madeUpVarieties({ details: [better] })));
    expect(answer).not.toContain("AL4");
    expect(answer).toContain("it starts with final moisture");
    expect(said(varietyAnswer("Amber", scoreOf("Amber"), better))).not.toContain("AL4");
  });

  test("of varieties about as uneven names the one that gains most without a lot", () => {
    const near = { ...scoreOf("Brindle"), even: { estimate: 51, low: 40, high: 62 } };
    expect(leastEven(madeUpVarieties({ scores: [scoreOf("Amber"), near] }))?.variety).toBe("Amber");
    const apart = { ...near, even: { estimate: 45, low: 35, high: 56 } };
    expect(leastEven(madeUpVarieties({ scores: [scoreOf("Amber"), apart] }))?.variety).toBe("Brindle");
  });

  test("speaks of no early variety while one with an interval is there", () => {
    const early = { ...scoreOf("Cresset"), onTarget: { estimate: 20, low: null, high: null } };
    expect(said(varietiesAnswer(madeUpVarieties({ scores: [early, scoreOf("Brindle")] })))).toMatch(/^Brindle/);
  });

  test("finds no fault where even the lowest is high", () => {
    const high = { ...scoreOf("Brindle"), onTarget: { estimate: 94, low: 90, high: 97 } };
    expect(said(varietiesAnswer(madeUpVarieties({ scores: [high, scoreOf("Cresset")] })))).toMatch(
      /^Every variety comes out alike/,
    );
  });

  test("says what is lacking where there is no score", () => {
    expect(said(varietiesAnswer(madeUpVarieties({ scores: [scoreOf("Dunlin")] })))).toContain("five batches");
    const none = madeUpVarieties({ scores: [], tooLittle: "No batch of a known variety is off the kiln yet." });
    expect(said(varietiesAnswer(none))).toBe("No batch of a known variety is off the kiln yet.");
  });
});

describe("varietiesGrounds(result)", () => {
  test("says that intervals lie apart, and names the early and those without a score", () => {
    const grounds = varietiesGrounds(result).map(said).join(" ");
    expect(grounds).toContain("The interval of Amber lies below that of Brindle.");
    expect(grounds).toContain("Early, and so without interval: Cresset (8 batches). Without a score yet: Dunlin.");
  });

  test("says that overlapping intervals tell nothing apart", () => {
    const near = { ...scoreOf("Brindle"), onTarget: { estimate: 60, low: 50, high: 70 } };
    const grounds = varietiesGrounds(madeUpVarieties({ scores: [scoreOf("Amber"), near] })).map(said);
    expect(grounds[2]).toBe(
      "The interval of Amber overlaps with that of Brindle, so these logs do not tell them apart for certain.",
    );
  });
});

describe("sentences of one variety", () => {
  test("scoreSentence(score) gives both numbers, never one for the other, and what was seen", () => {
    expect(said(scoreSentence(scoreOf("Amber")))).toBe(
      "Amber: on target 46 in 100 (34 to 58), even 52 in 100 (40 to 64); 11 of 24 (28 to 65 %) so far met every tolerance.",
    );
    expect(said(scoreSentence(scoreOf("Cresset")))).toContain("Early, from 8 batches: no interval yet.");
    expect(said(scoreSentence(scoreOf("Dunlin")))).toBe(
      "Dunlin: no score. 3 batches with every measure; a score needs 5.",
    );
  });

  test("dragSentence(score) names measures in order of what they cost", () => {
    expect(said(dragSentence(scoreOf("Amber")))).toBe(
      "Amber: final moisture costs most (alone met with a chance of 51 in 100), then dry-matter yield (93); 1 other costs less.",
    );
  });

  test("besideSentence(score) keeps laboratory results of a few batches beside the score", () => {
    expect(said(besideSentence(scoreOf("Amber")))).toContain("colour (82)");
    expect(besideSentence({ ...scoreOf("Amber"), beside: [] })).toEqual([]);
  });

  test("toleranceWords(…) says a range, a least or a most, in the reader's units", () => {
    const words = (measure: string, low: number | null, high: number | null, units: "metric" | "us" = "metric") =>
      toleranceWords({ tolerance: { measure, low, target: null, high } }, units).replaceAll("\u00a0", " ");
    expect(words("final_moisture_pct", 3.6, 5)).toBe("3.6 to 5.0 %");
    expect(words("dry_yield_pct", 89.5, null)).toBe("at least 89.5 %");
    expect(words("colour_ebc", 1.97, 3.94, "us")).toBe("1.0 to 2.0 SRM");
  });

  test("varietyAnswer(…) says so where the choice holds no batch of it", () => {
    expect(said(varietyAnswer("Amber", undefined, undefined))).toBe("This choice holds no batch of Amber.");
    expect(varietyGrounds(undefined, undefined)).toEqual([]);
  });

  test("withoutLotSentence(…) says where the score goes once the lot is left out", () => {
    expect(said(withoutLotSentence(scoreOf("Amber"), amber))).toBe(
      "With lot AL4 left out, on target rises to 71 in 100, from 20 batches: no more than a guide, since the lot was picked by its own batches.",
    );
  });

  test("reasonSentence(…) tells a lot from grain and process, with its size", () => {
    const [lot, grain] = amber.reasons;
    if (lot === undefined || grain === undefined) throw new RangeError("the made-up variety has reasons");
    const words = (reason: VarietyReason): string => said(reasonSentence(reason, "metric"));
    expect(words(lot)).toBe(
      "Grain lot AL4: final moisture lies off that of the other lots by +0.42 points (+0.22 to +0.62).",
    );
    expect(words({ ...lot, how: "spread", size: null })).toMatch(/^Grain lot AL4 is uneven in itself: /);
    expect(words(grain)).toMatch(/^Grain lot AL4 has the highest grain protein of its lots\./);
    const size = { estimate: -0.3, low: -0.5, high: -0.1 };
    expect(words({ ...grain, lot: null, size, goesWith: "grain protein" })).toBe(
      "Final moisture goes with grain protein: −0.30 points (−0.50 to −0.10) from the lowest to the highest lot.",
    );
    expect(words({ ...grain, kind: "process", lot: null, size, goesWith: "fan belt changed" })).toBe(
      "Final moisture goes with fan belt changed: −0.30 points (−0.50 to −0.10).",
    );
  });
});

describe("sentences of lots and quarters", () => {
  test("lotsSentences(…) tells another level from a lot that is uneven in itself", () => {
    const sentences = lotsSentences(amber.splits, "metric").map(said);
    expect(sentences).toHaveLength(2);
    expect(sentences[0]).toMatch(
      /^Lot AL2 is uneven in itself: its final moisture \(spread 0\.60 points, p = 0\.012\) spreads /,
    );
    expect(sentences[1]).toMatch(/^Lot AL4 has another level: mean final moisture 4\.95 % /);
  });

  test("lotsSentences(…) says a lot that is uneven in several measures once", () => {
    const [split] = amber.splits;
    if (split === undefined) throw new RangeError("the made-up variety has a split");
    const uneven = [split, { ...split, measure: "dry_yield_pct" }];
    const sentences = lotsSentences(uneven, "metric").map(said);
    expect(sentences.filter((sentence) => sentence.includes("uneven in itself"))).toHaveLength(1);
    expect(sentences[0]).toContain(
      "dry-matter yield (spread 0.60 points, p = 0.012) spread more than in the other lots",
    );
    expect(lotsSentences(detailOf("Brindle").splits, "metric")).toEqual([]);
  });

  test("splitSentence(…) and splitAdvice(…) say how much lies between lots, and where to look first", () => {
    const [split] = amber.splits;
    if (split === undefined) throw new RangeError("the made-up variety has a split");
    expect(said(splitSentence(split, "metric"))).toContain("17 % of its spread lies between lots (1 to 46 %)");
    const closed = { ...split, shareBetween: { estimate: 0, low: 0, high: 0 } };
    expect(said(splitSentence(closed, "metric"))).toMatch(/^Final moisture: none of its spread is seen between lots/);
    expect(said(splitAdvice([split]))).toBe(
      "More within lots than between, but with a lot uneven in itself (AL2): final moisture. Look at that lot first.",
    );
    expect(said(splitAdvice(detailOf("Brindle").splits.slice(0, 1)))).toBe(
      "More within lots than between: final moisture. Look at the house first, not at the grain.",
    );
    expect(said(splitAdvice([{ ...split, shareBetween: { estimate: 0.8, low: 0.55, high: 0.95 } }]))).toContain(
      "Look at the grain first",
    );
    expect(said(splitAdvice([{ ...split, shareBetween: { estimate: 0.5, low: 0.1, high: 0.9 } }]))).toContain(
      "For no measure is it certain",
    );
  });

  test("quartersSentence(…) says how many columns were looked at, and calls nothing a cause", () => {
    const sentence = said(quartersSentence(amber));
    expect(sentence).toContain("They differ in grain protein, dry basis.");
    expect(sentence).toContain("not yet what causes it");
    expect(sentence).toContain("14 columns were looked at");
  });

  test("periodsSentence(…) names what moved with its interval, and how much chance alone would show", () => {
    const sentence = said(periodsSentence(result.periods, "metric"));
    expect(sentence).toContain("Amber: final moisture 0.31 points (0.11 to 0.51) higher than in the quarter before.");
    expect(sentence).not.toContain("Brindle");
    expect(sentence).toContain("6 comparisons of means and spreads: by chance alone about 0.3");
  });
});

describe("sentences of trust", () => {
  test("backTestSentence(…) says which forecast was better only where the interval does", () => {
    const test = result.backTest;
    if (test === null) throw new RangeError("the made-up house has a back-test");
    expect(said(backTestSentence(test, "onTarget"))).toContain("foretold better than the share so far");
    const unsure = { ...test, difference: { estimate: -0.01, low: -0.05, high: 0.03 } };
    expect(said(backTestSentence(unsure, "even"))).toContain("do not tell the two apart");
    const worse = { ...test, difference: { estimate: 0.05, low: 0.01, high: 0.09 } };
    expect(said(backTestSentence(worse, "onTarget"))).toContain("take them as a description");
  });

  test("trustSentence(…) promises nothing where the test does not bear it, and says where the score was astray", () => {
    const test = result.backTest;
    if (test === null) throw new RangeError("the made-up house has a back-test");
    expect(said(trustSentence(test))).toBe(
      "Put to the test on 41 batches, each foretold from those before it, the score did better than always saying the share that had met every tolerance so far.",
    );
    const [first] = test.groups;
    if (first === undefined) throw new RangeError("the made-up back-test has groups");
    const seen = { estimate: 0.74, low: 0.54, high: 0.87 };
    const unsure = { ...test, difference: { estimate: 0.02, low: -0.01, high: 0.06 }, groups: [{ ...first, seen }] };
    expect(said(trustSentence(unsure))).toMatch(/ did no better than .* not as a promise of the next\. /);
    expect(said(trustSentence(unsure))).toMatch(/ Where it foretold about 42 in 100, 74 came \(54 to 87\)\.$/);
    const two = { ...unsure, groups: [...unsure.groups, { ...first, said: 0.49, seen }] };
    expect(said(trustSentence(two))).toMatch(/ 74 came \(54 to 87\); about 49, 74 \(54 to 87\)\.$/);
    const worse = { ...unsure, difference: { estimate: 0.05, low: 0.01, high: 0.09 } };
    expect(said(trustSentence(worse))).toContain(" did worse than ");
  });

  test("noBackTestSentence(…) tells too few batches from numbers that are still to come", () => {
    expect(said(noBackTestSentence(madeUpVarieties({ backTest: null })))).toContain("Too few");
    expect(said(noBackTestSentence(madeUpVarieties({ backTest: null, followed: false })))).toContain(
      "still being worked out",
    );
  });

  test("toleranceSentence(…) says where tolerances come from", () => {
    expect(said(toleranceSentence(result))).toContain("Tolerances come from targets.csv");
    expect(said(toleranceSentence(madeUpVarieties({ tolerancesFrom: ["targets.csv", "house.toml"] })))).toContain(
      "targets.csv and [tolerances] in house.toml",
    );
  });

  test("chanceInHundred(…) rounds nothing to a certainty", () => {
    expect(chanceInHundred(0.9991).replaceAll("\u00a0", " ")).toBe("over 99 in 100");
    expect(chanceInHundred(0.001).replaceAll("\u00a0", " ")).toBe("under 1 in 100");
    expect(chanceInHundred(1).replaceAll("\u00a0", " ")).toBe("100 in 100");
  });
});

describe("certificates", () => {
  test("methodGroups(lab) keeps sets of methods apart, the one with the latest certificate first", () => {
    expect(methodGroups(amber.lab).map(({ methodSet, rows }) => [methodSet, rows.map(({ run }) => run)])).toEqual([
      ["EBC", ["A3", "A9", "A14"]],
      ["ASBC", ["A2", "A6"]],
    ]);
  });

  test("labSentence(…) says methods, and extract of dry mass and as is", () => {
    const [first] = amber.lab;
    if (first === undefined) throw new RangeError("the made-up variety has a certificate");
    expect(said(labSentence([first], reader))).toContain(
      "extract 81.0 % of dry mass, 77.0 % as is; colour 3.9 EBC; diastatic power 250 °WK",
    );
    expect(said(labSentence([first], { ...reader, units: "us" }))).toContain("colour 2.0 SRM; diastatic power 76 °L");
    expect(said(labSentence(amber.lab, reader))).toContain("Results of different methods are not compared");
    expect(said(labSentence([], reader))).toContain("No batch of this variety was tested");
  });

  test("extractAsIsOf(row) is null where extract or moisture was not tested", () => {
    expect(extractAsIsOf(certificate("A1", 1, "EBC", { extract_fine_dry_pct: 81, moisture_pct: 5 }))).toAgreeWithin(
      76.95,
      1e-12,
    );
    expect(extractAsIsOf(certificate("A1", 1, "EBC", { extract_fine_dry_pct: 81, moisture_pct: null }))).toBeNull();
    expect(extractAsIsOf(certificate("A1", 1, "EBC", {}))).toBeNull();
  });
});
