import { reckoner } from "../../src/bodies/kilnHours/reckoner.ts";
import { meanOf, partedByMonth } from "../../src/figures/review/monthMeans.ts";
import { monthMeasures, monthSpan } from "../../src/figures/review/monthMeasures.ts";
import { pageAnswers } from "../../src/findings/pageAnswers.ts";
import { eventEffect } from "../../src/findings/review/eventSentences.ts";
import { monthAnswer } from "../../src/findings/review/monthAnswer.ts";
import { ordersEyeSentence } from "../../src/findings/review/ordersEye.ts";
import type { ReviewReader } from "../../src/findings/review/reader.ts";
import { findingInWords } from "../../src/findings/review/reviewFinding.ts";
import { plainText } from "../../src/findings/sentence.ts";
import { answerWhatIf } from "../../src/report/kilnHours/whatIf.ts";
import type { Report } from "../../src/report/report.ts";
import type { MonthEvent, MonthReview } from "../../src/report/reviewResult.ts";
import type { AnswerWhatIf } from "../../src/report/whatIfAnswer.ts";

/** Raised where a field is renamed or taken away; a new field raises nothing. */
export const FORMAT = 1;

const iso = (at: number): string => new Date(at).toISOString();

/** Columns of numbers become lists; a number that JSON has no word for becomes null. */
function plain(_key: string, value: unknown): unknown {
  return value instanceof Float64Array ? [...value].map((each) => (Number.isFinite(each) ? each : null)) : value;
}

/** What hangs by the kiln: worked out of the fit for the house's usual air, and in no part of the report. */
function readyReckoner({ kilnHours, house }: Report) {
  const { usual } = kilnHours;
  const answer: AnswerWhatIf = (inputs) => answerWhatIf(kilnHours, inputs, house.units);
  return usual === null ? null : reckoner(usual, house.units, answer);
}

/** The main measures of the month beside the twelve months before it, as the figure of the month draws them. */
function measuresOf({ runs, loads, house, review: { accepted } }: Report, month: string) {
  const span = monthSpan(month, house.timeZone);
  return monthMeasures({ runs, loads, accepted }, span).map((measure) => {
    const { now, before } = partedByMonth(measure, span);
    const { name, quantity } = measure;
    return {
      name,
      quantity,
      month: { mean: meanOf(now), batches: now.length },
      twelveMonthsBefore: { mean: meanOf(before), batches: before.length },
    };
  });
}

/** A month's review with every number of the other pages, as data/README.md describes it. */
export function reviewJson(report: Report, review: MonthReview, reader: ReviewReader): string {
  const { totals, lastMonth, sameMonthLastYear, promised, open, events, eventsBefore, lookedAt, logHealth } = review;
  const { house, choices: _choices, lastLoggedAt, review: _review, ...pages } = report;
  const findings = review.findings.map((finding) => {
    const words = findingInWords(finding, reader);
    return {
      id: words.id,
      cause: finding.cause,
      what: plainText(words.what),
      howSure: plainText(words.howSure),
      chanceReal: words.chanceReal,
      cost: plainText(words.cost),
      costAMonth: words.costAMonth,
      loss: finding.loss,
      checkFirst: words.checkFirst,
      from: iso(words.from),
      to: iso(words.to),
      evidence: words.evidence.map(({ seen, path, runs, beside }) => ({ seen: plainText(seen), path, runs, beside })),
      facts: finding.facts,
    };
  });
  const told = (all: readonly MonthEvent[]) =>
    all.map(({ event, changeId, effect, tooLittle }) => ({
      ...event,
      on: iso(event.on).slice(0, 10),
      changeId,
      came: plainText(eventEffect({ event, changeId, effect, tooLittle }, reader)),
      effect,
    }));
  const json = {
    format: FORMAT,
    house: { name: house.name, timeZone: house.timeZone, units: house.units, invented: house.invented },
    month: totals.month,
    logsTo: lastLoggedAt === null ? null : iso(lastLoggedAt),
    quiet: findings.length + logHealth.filesSetAside.length === 0,
    answer: plainText(monthAnswer(review, reader)),
    worthAnEye: plainText(ordersEyeSentence(review)),
    currency: reader.costs.currency,
    totals,
    lastMonth,
    sameMonthLastYear,
    findings,
    open: open.map(({ id, now }) => ({ id, now })),
    promised,
    events: told(events),
    eventsBefore: told(eventsBefore),
    lookedAt,
    logHealth,
    measures: measuresOf(report, totals.month),
    answers: Object.fromEntries(
      Object.entries(pageAnswers(report, reader)).map(([page, sentence]) => [page, plainText(sentence)]),
    ),
    pages: { ...pages, readyReckoner: readyReckoner(report) },
  };
  return JSON.stringify(json, plain, 2);
}
