import type { BackTest } from "../../report/varietiesResult.ts";
import { printNumber, printSigned } from "../../units/print.ts";
import { counted } from "../counted.ts";
import { type Sentence, strong } from "../sentence.ts";

/** How well past scores foretold whether the next batch met every tolerance, against always saying the share so far. */
export function backTestSentence({ forecasts, brierScore, brierOfBaseRate, difference }: BackTest): Sentence {
  const { estimate, low, high } = difference;
  const range = `${printSigned(estimate, 3)} (${printSigned(low, 3)} to ${printSigned(high, 3)})`;
  const verdict =
    high < 0
      ? "the scores foretold better than the share so far"
      : low > 0
        ? "the scores foretold worse than the share so far: take them as a description, not as a forecast"
        : "these logs do not tell the two apart";
  return [
    `In ${counted(forecasts, "forecast")} made from the past alone, one a batch, the mean squared error (Brier score; 0 is perfect) was `,
    strong(printNumber(brierScore, 3)),
    `, against ${printNumber(brierOfBaseRate, 3)} for always saying the share of all batches so far; difference ${range}: ${verdict}.`,
  ];
}
