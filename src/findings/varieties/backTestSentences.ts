import type { BackTest, VarietiesResult } from "../../report/varietiesResult.ts";
import { printNumber, printSigned } from "../../units/print.ts";
import { counted } from "../counted.ts";
import { type Sentence, strong } from "../sentence.ts";

/** The numbers that were put to the test, and the event that each speaks of. */
export type TestedNumber = "onTarget" | "even";

const EVENT: Readonly<Record<TestedNumber, string>> = {
  onTarget: "On target: did the next batch meet every tolerance?",
  even: "Even: did it lie within as much room about the variety’s centre so far?",
};

/** How well past scores foretold their event in the next batch, against always saying the share so far. */
export function backTestSentence(
  { forecasts, brierScore, brierOfBaseRate, difference }: BackTest,
  of: TestedNumber,
): Sentence {
  const { estimate, low, high } = difference;
  const range = `${printSigned(estimate, 3)} (${printSigned(low, 3)} to ${printSigned(high, 3)})`;
  const verdict =
    high < 0
      ? "the scores foretold better than the share so far"
      : low > 0
        ? "the scores foretold worse than the share so far: take them as a description, not as a forecast"
        : "these logs do not tell the two apart";
  return [
    `${EVENT[of]} In ${counted(forecasts, "forecast")} made from the past alone, one a batch, the mean squared error (Brier score; 0 is perfect) was `,
    strong(printNumber(brierScore, 3)),
    `, against ${printNumber(brierOfBaseRate, 3)} for always saying the share of all batches so far; difference ${range}: ${verdict}.`,
  ];
}

/**
 * How far the score may be trusted, for those who unfold nothing: whether past scores foretold better than the plain share
 * so far, and where what came lies clear of what was foretold.
 */
export function trustSentence({ forecasts, difference, groups }: BackTest): Sentence {
  const put = `Put to the test on ${counted(forecasts, "batch", "batches")}, each foretold from those before it, the score `;
  const verdict =
    difference.high < 0
      ? "did better than always saying the share that had met every tolerance so far."
      : `did ${difference.low > 0 ? "worse" : "no better"} than always saying the share that had met every tolerance so far: read it as how the batches have come out, not as a promise of the next.`;
  const hundred = (share: number): string => printNumber(100 * share, 0);
  const astray = groups.filter(({ said, seen }) => said < seen.low || said > seen.high);
  const where = astray.map(({ said, seen }, at) => {
    const came = `${hundred(seen.estimate)}${at === 0 ? " came" : ""} (${hundred(seen.low)} to ${hundred(seen.high)})`;
    return `about ${hundred(said)}${at === 0 ? "\u00a0in\u00a0100" : ""}, ${came}`;
  });
  return [put, verdict, ...(where.length === 0 ? [] : [` Where it foretold ${where.join("; ")}.`])];
}

/** Why there is no test of past scores. Empty where there is one. */
export function noBackTestSentence({ backTest, followed }: VarietiesResult): Sentence {
  if (backTest !== null) return [];
  return followed
    ? ["Too few batches lie behind one another for a test of past scores."]
    : ["Intervals and a test of past scores are still being worked out."];
}
