import { describe, expect, it } from "vitest";
import {
  basisSentence,
  beyondSentence,
  effectStatement,
  placeboSentence,
} from "../../../src/findings/changes/changeSentences.ts";
import { changesAnswer, changesGrounds } from "../../../src/findings/changes/changesAnswer.ts";
import { mainEffect } from "../../../src/findings/changes/changeWords.ts";
import { trialSentence } from "../../../src/findings/changes/trialSentences.ts";
import { plainText, type Sentence } from "../../../src/findings/sentence.ts";
import type { ChangeEffect, ChangeResult } from "../../../src/report/changesResult.ts";
import { handMadeChange, handMadeEffect } from "../../support/handMadeChange.ts";

const reader = { units: "metric", timeZone: "UTC" } as const;
const said = (sentence: Sentence): string => plainText(sentence).replaceAll("\u00a0", " ");
const answer = (changes: readonly ChangeResult[], tooLittle: string | null = null): string =>
  said(changesAnswer({ changes, plans: [], tooLittle }, reader));
const changed = (effect: Partial<ChangeEffect>, change: Partial<ChangeResult> = {}): ChangeResult => ({
  ...handMadeChange,
  effects: [{ ...handMadeEffect, ...effect }],
  ...change,
});

describe("changesAnswer(result, reader)", () => {
  it("says that the latest change helped, by how much and how surely", () => {
    expect(answer([handMadeChange])).toBe(
      "The latest change, green malt carried in from the other door (18 May 2026), helped: kiln hours fell by 1.0 h (95 % interval 0.5 to 1.5 h).",
    );
  });

  it("says that it did not help where hours rose", () => {
    const worse = changed({ verdict: "hurt", total: { estimate: 0.8, low: 0.3, high: 1.3 } });
    expect(answer([worse])).toContain("did not help: kiln hours rose by 0.8 h (95 % interval 0.3 to 1.3 h)");
  });

  it("says no difference with the largest that the interval leaves", () => {
    const none = changed({ verdict: "no difference", noBiggerThan: 0.66 });
    expect(answer([none])).toContain("made no difference to kiln hours bigger than 0.7 h.");
  });

  it("says that it cannot be told yet, what remains open and how many loads would tell", () => {
    const open = changed({ verdict: "cannot be told", noBiggerThan: 1.8, moreRuns: 9 });
    expect(answer([open])).toContain(
      "cannot be told yet: a difference in kiln hours of up to 1.8 h either way remains open, and 9 more loads would tell a difference of 1.0 h four times in five.",
    );
  });

  it("says why no more runs will tell", () => {
    const closed = changed({ verdict: "cannot be told", whyNoMore: "comparison is closed" });
    expect(answer([closed])).toContain("what came next has closed the comparison");
    const few = changed({ verdict: "cannot be told", whyNoMore: "too few before" });
    expect(answer([few])).toContain("too few loads before it");
    const apart = changed({ verdict: "cannot be told", moreRunsAtLeast: 4 });
    expect(answer([apart])).toContain("it takes at least 4 more loads, in weather and of varieties like those before");
  });

  it("does not put down to the change what other dates show as well", () => {
    const placebo = { dates: 44, asLarge: 18, sizes: [], runsEachSide: 8, own: -0.4 };
    const doubted = changed({ verdict: "cannot be told", doubtedByPlacebo: true, placebo });
    expect(answer([doubted])).toContain(
      "kiln hours fell by 1.0 h (95 % interval 0.5 to 1.5 h), but 18 of 44 dates without a change show as much",
    );
    const other = changed({ verdict: "cannot be told", doubtedByPlacebo: true, placebo: { ...placebo, own: 0.4 } });
    expect(answer([other])).toContain(
      "(95 % interval 0.5 to 1.5 h), but the first 8 loads after it differ the other way",
    );
  });

  it("says what is lacking where nothing was compared, and what to log where no change is", () => {
    const bare = { ...handMadeChange, effects: [], tooLittle: "3 loads before and 2 loads after." };
    expect(answer([bare])).toContain("cannot be judged: 3 loads before and 2 loads after.");
    expect(answer([], "No change is logged.")).toBe("No change is logged.");
  });

  it("prefers the measure that helped or hurt to the one nearest to the scope", () => {
    const none: ChangeEffect = { ...handMadeEffect, verdict: "no difference" };
    const hurt: ChangeEffect = { ...handMadeEffect, measure: "energy_kwh", verdict: "hurt" };
    expect(mainEffect({ ...handMadeChange, effects: [none, hurt] })?.measure).toBe("energy_kwh");
    expect(mainEffect({ ...handMadeChange, effects: [none] })?.measure).toBe("kiln_hours");
  });
});

describe("changesGrounds(result, reader)", () => {
  it("counts what all changes came to", () => {
    const none = changed({ verdict: "no difference" });
    const result = { changes: [handMadeChange, none, none], plans: [], tooLittle: null };
    const grounds = changesGrounds(result, reader).map(said);
    expect(grounds.at(-1)).toBe("Three changes are logged: one helped and two made no difference worth telling.");
  });
});

describe("what is said of one effect", () => {
  it("each verdict as a whole sentence with a capital and a stop", () => {
    for (const verdict of ["helped", "hurt", "moved", "no difference", "cannot be told"] as const) {
      expect(said(effectStatement({ ...handMadeEffect, verdict, moreRuns: 3 }, "metric"))).toMatch(/^[A-Z].*\.$/);
    }
  });

  it("what is left beyond the altered column, or that nothing is seen to be", () => {
    const left = { ...handMadeEffect, beyond: { estimate: -0.6, low: -0.9, high: -0.3 } };
    expect(said(beyondSentence(left, "bed depth", "metric"))).toBe(
      "Beyond what bed depth accounts for, 0.6 h less of kiln hours are left (95 % interval 0.3 to 0.9 h).",
    );
    const none = { ...handMadeEffect, beyond: { estimate: 0.2, low: -0.4, high: 0.8 } };
    expect(said(beyondSentence(none, "bed depth", "metric"))).toContain("Nothing is seen to be left beyond bed depth");
    expect(beyondSentence(handMadeEffect, "bed depth", "metric")).toEqual([]);
    // Of an effect that cannot be told nothing can be said to be left.
    expect(beyondSentence({ ...left, verdict: "cannot be told" }, "bed depth", "metric")).toEqual([]);
  });

  it("how many other dates show as much", () => {
    expect(said(placeboSentence(handMadeEffect, "metric"))).toBe(
      "Between the last 8 loads before it and the first 8 after kiln hours differ by 1.1 h; of 44 dates without a change none shows as much.",
    );
    expect(said(placeboSentence({ ...handMadeEffect, placebo: null }, "metric"))).toContain("No stretch");
  });

  it("what was compared, what it is adjusted for and which errors were taken", () => {
    const basis = said(basisSentence({ ...handMadeEffect, isSerial: true }, "metric"));
    expect(basis).toContain("8 loads before and 12 loads after. Adjusted for humidity and variety");
    expect(basis).toContain("Newey and West");
  });
});

describe("trialSentence(answer, units)", () => {
  it("says the runs on each side, and that none would do where none would", () => {
    const row = { difference: 0.5, runsEachSide80: 16, runsEachSide90: 21 };
    expect(said(trialSentence({ kind: "runs", measure: "kiln_hours", row }, "metric"))).toBe(
      "To tell a difference of 0.5 h in kiln hours, plan 16 loads before and as many after; to be surer of it, 21 and 21.",
    );
    const never = { difference: 0.001, runsEachSide80: null, runsEachSide90: null };
    expect(said(trialSentence({ kind: "runs", measure: "dry_yield_pct", row: never }, "metric"))).toContain(
      "no number of batches",
    );
  });
});
