import type { MonthReview } from "../../report/reviewResult.ts";
import { printMonth, printShortMonth } from "../../units/instant.ts";
import { print } from "../../units/print.ts";
import { counted, listed } from "../counted.ts";
import type { Finding } from "../finding.ts";
import { joinSentences, plainText } from "../sentence.ts";
import { earlierEventsWords, eventInFull, noEventsSentence } from "./eventSentences.ts";
import { FINDINGS_SHOWN, lookedAtSentence, monthAnswer } from "./monthAnswer.ts";
import { namedOf } from "./namedOf.ts";
import { logHealthSentence, openSentence } from "./openSentences.ts";
import { ordersEyeSentence } from "./ordersEye.ts";
import { overdueSentence, paceSentence, promisedAnswer, startNextSentence } from "./promisedSentences.ts";
import type { ReviewReader } from "./reader.ts";
import { findingInWords } from "./reviewFinding.ts";
import { partSums, totalLines, yieldLine } from "./totalsLine.ts";

/** As wide as a plain terminal, or a mail that no reader folds again. */
const WIDTH = 80;

/**
 * Text in lines of at most 80 characters, broken between words; a longer word stands alone. Blanks that do not break on a
 * page become plain ones.
 */
export function wrapped(text: string, indent = ""): string {
  const lines: string[] = [];
  let line = "";
  for (const word of text.replace(/[\u00a0\u202f]/g, " ").split(/\s+/)) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && indent.length + longer.length > WIDTH) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line].map((each) => `${indent}${each}`).join("\n");
}

const heading = (title: string): string => `\n${title}\n${"-".repeat(title.length)}`;

type Row = readonly string[];

/** Columns under each other: the first flush left, the others flush right. */
function columns(rows: readonly Row[]): string {
  const count = Math.max(...rows.map(({ length }) => length));
  const widths = Array.from({ length: count }, (_, i) => Math.max(...rows.map((row) => (row[i] ?? "").length)));
  return rows
    .map((row) =>
      row
        .map((cell, i) => (i === 0 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0)))
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}

function totalsText(review: MonthReview, reader: ReviewReader): readonly string[] {
  const { totals, lastMonth, sameMonthLastYear } = review;
  const heads = [lastMonth, sameMonthLastYear].map((month) => (month === null ? null : printShortMonth(month.month)));
  const row = (name: string, now: string, beside: readonly (readonly [string, string])[]): Row => [
    name,
    now,
    ...beside.flatMap((pair, i) => (heads[i] === null ? [] : pair.map((text) => text || "-"))),
  ];
  const rows = [
    row(
      "",
      printShortMonth(totals.month),
      heads.map((head) => [head ?? "", "change"] as const),
    ),
    ...totalLines(review, reader.units).map((line) =>
      row(line.name, line.now || "-", [
        [line.lastMonth, line.onLastMonth],
        [line.lastYear, line.onLastYear],
      ]),
    ),
  ].map((cells) => cells.map((cell) => cell.replace(/[\u00a0\u202f]/g, " ")));
  const note = plainText(joinSentences([yieldLine(review), partSums(review)]));
  return [columns(rows), ...(note === "" ? [] : [wrapped(note)])];
}

function evidenceText({ evidence }: Finding): string {
  return evidence
    .map(({ seen, runs, runCount, beside, path }, i) => {
      const named = namedOf(runs, runCount);
      const which = runs.length === 0 ? "" : `${named.words} ${named.runs.join(", ")}`;
      const said = i === 0 ? "" : ` ${plainText(seen)}`;
      const about = beside.length === 0 ? "" : ` Logged about then: ${listed(beside.slice(0, 3))}.`;
      return `${path}${which === "" ? "" : `: ${which}`}.${said}${about}`;
    })
    .join(" ");
}

function findingText(finding: Finding, number: number): string {
  const indent = "   ";
  const lead = `${number}.`.padEnd(indent.length);
  return [
    `\n${lead}${wrapped(plainText(finding.what), indent).trimStart()}`,
    wrapped(plainText(joinSentences([finding.cost, finding.howSure])), indent),
    wrapped(`Seen: ${evidenceText(finding)}`, indent),
    wrapped(`Check first: ${finding.checkFirst.join(" ")}`, indent),
  ].join("\n");
}

function promisedText(review: MonthReview, reader: ReviewReader): readonly string[] {
  const { promised } = review;
  if (promised === null) return [];
  const mass = (kilograms: number): string => print(kilograms, "mass", reader.units).replace(/[\u00a0\u202f]/g, " ");
  const rows: readonly Row[] = [
    ["variety", "owed", "in store", "coming", "short", "loads"],
    ...promised.varieties.map((one) => [
      one.variety,
      mass(one.owedKilograms),
      mass(one.storeKilograms),
      mass(one.comingKilograms),
      mass(one.shortKilograms),
      String(one.loadsNeeded),
    ]),
  ];
  const beside = joinSentences([
    startNextSentence(promised, reader),
    overdueSentence(promised, reader),
    paceSentence(promised, reader),
  ]);
  return [
    heading("Promised against made"),
    wrapped(plainText(promisedAnswer(promised, reader))),
    "",
    columns(rows),
    "",
    wrapped(plainText(beside)),
  ];
}

export interface Titled {
  readonly house: string;
  readonly invented: boolean;
  /** `31 October 2026`. */
  readonly logsTo: string | null;
}

/** A month's review as plain text of 80 columns, in the words of the page. */
export function reviewText(review: MonthReview, reader: ReviewReader, { house, invented, logsTo }: Titled): string {
  const findings = review.findings.map((finding) => findingInWords(finding, reader));
  const more = findings.length - FINDINGS_SHOWN;
  const eye = plainText(ordersEyeSentence(review));
  const rests = plainText(joinSentences([logHealthSentence(review), lookedAtSentence(review)]));
  const line = (text: string): string => wrapped(text, "- ").replaceAll("\n- ", "\n  ");
  return [
    wrapped(`${house}${invented ? " (an invented house)" : ""}: ${printMonth(review.totals.month)} in review`),
    ...(logsTo === null ? [] : [`Made of run logs to ${logsTo}`]),
    "",
    wrapped(plainText(monthAnswer(review, reader))),
    ...(eye === "" ? [] : [wrapped(`${eye} See “Promised against made”.`)]),
    "",
    ...totalsText(review, reader),
    ...(findings.length === 0 ? [] : [heading("To look at")]),
    ...findings.slice(0, FINDINGS_SHOWN).map((finding, i) => findingText(finding, i + 1)),
    ...(more > 0 ? ["", `${counted(more, "more thing")} on the page and in --json.`.replace("\u00a0", " ")] : []),
    ...(review.open.length === 0 ? [] : [heading("Open last month")]),
    ...review.open.map((question) => line(plainText(openSentence(question, reader)))),
    ...promisedText(review, reader),
    heading("Changed and repaired"),
    ...(review.events.length === 0
      ? [wrapped(plainText(noEventsSentence(review)))]
      : review.events.map((event) => line(plainText(eventInFull(event, reader))))),
    ...(review.eventsBefore.length === 0 ? [] : ["", `${earlierEventsWords}:`]),
    ...review.eventsBefore.map((event) => line(plainText(eventInFull(event, reader)))),
    ...(rests === "" ? [] : [heading("What this rests on"), wrapped(rests)]),
  ].join("\n");
}
