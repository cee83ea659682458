import type { Fact } from "../../src/report/fact.ts";
import type { MonthReview, ReviewFinding } from "../../src/report/reviewResult.ts";
import { handMadeEffect } from "./handMadeChange.ts";
import { everyFact, findingOf, madeUpMonth, madeUpPromised } from "./madeUpReview.ts";

/** As many runs as a finding names at most, with names of the usual length. */
const runs = Array.from({ length: 12 }, (_, at) => `26-${169 + at}`);
const beside = [
  "2 Apr 2026, kiln: fan belt found slack and shiny; new belt, tension set",
  "18 May 2026, kiln: green malt carried in from the other door",
];
const loss = { kilnHours: 12, labourHours: 12, kilowattHours: 310, kilogramsMalt: 38, refusedBatches: 1.3 };

function full(kind: Fact["kind"], changes: object = {}): Fact {
  const found = everyFact.find((fact) => fact.kind === kind);
  if (found === undefined) throw new RangeError(`no made-up fact of ${kind}`);
  return { ...found, runs, runCount: 14, loss, beside, ...changes } as Fact;
}

function joined(cause: ReviewFinding["cause"], ...facts: readonly Fact[]): ReviewFinding {
  const [first] = facts;
  if (first === undefined) throw new RangeError("a finding needs a fact");
  return { ...findingOf(first), id: `${cause} joined`, cause, facts, loss, costAMonth: 412 };
}

/** Seven findings as long as a bad month can make them: causes seen in several places, a dozen runs each. */
const findings: readonly ReviewFinding[] = [
  joined("kiln air", full("kiln hours"), full("chart"), full("energy")),
  joined(
    "thermostat",
    full("thermostat"),
    full("thermostat", { hold: "cure", movedKelvin: -0.9, loggerDoubt: true }),
    full("logger", { runs: [], runCount: 0 }),
  ),
  joined("chart", full("chart", { measure: "dry_yield_pct", size: -1.4 })),
  joined("variety", full("variety")),
  joined("lot", full("lot")),
  joined("timetable", full("timetable")),
  joined("laboratory", full("laboratory")),
];

const event = (on: number, kind: string, what: string) => ({ on, kind, scope: "kiln", what, alters: null });

/** A month with as much to say as two sheets must hold. */
export const fullMonth: MonthReview = madeUpMonth({
  findings,
  open: findings.map((lastMonth, at) => ({ id: lastMonth.id, lastMonth, now: at % 2 === 0 ? "still there" : "gone" })),
  events: [
    {
      event: event(Date.UTC(2026, 9, 14), "change", "bed laid shallower, about 15 cm"),
      changeId: "change-2026-10-14",
      effect: null,
      tooLittle: "21 loads before and 4 loads after can be compared; it takes 5 on each side.",
    },
    {
      event: event(Date.UTC(2026, 9, 20), "incident", "room cooler tripped overnight"),
      changeId: null,
      effect: null,
      tooLittle: null,
    },
  ],
  eventsBefore: [
    {
      event: event(Date.UTC(2026, 8, 2), "repair", "fan belt found slack and shiny; new belt, tension set"),
      changeId: null,
      effect: handMadeEffect,
      tooLittle: null,
    },
    {
      event: event(Date.UTC(2026, 8, 18), "change", "green malt carried in from the other door"),
      changeId: "change-2026-09-18",
      effect: { ...handMadeEffect, verdict: "cannot be told", moreRuns: 9 },
      tooLittle: null,
    },
  ],
  promised: madeUpPromised,
});
