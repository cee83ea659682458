import type { Capability, ControlChart } from "../report/controlChartResult.ts";
import { printNumber } from "../units/print.ts";
import { measureName, percent, sharePercent } from "./chartWords.ts";
import { counted } from "./counted.ts";
import { joinSentences, type Sentence, strong } from "./sentence.ts";

/** `3.6 to 5.0 %`, `at least 89.5 %`, `at most 5.0 %`. */
export function specWords({ low, high }: Pick<Capability, "low" | "high">): string {
  if (low !== null && high !== null) return `${printNumber(low, 1)} to ${percent(high)}`;
  if (low !== null) return `at least ${percent(low)}`;
  return high === null ? "no limit" : `at most ${percent(high)}`;
}

/** What is seen against what is expected, for the variety that sits closest to its limit. */
export function specSentence(chart: ControlChart): Sentence {
  const rows = chart.capability;
  const name = measureName[chart.measure];
  if (rows.length === 0) {
    return [
      `Nothing can be said of ${name}: no limit is set for it in targets.csv, or no variety has five batches that differ.`,
    ];
  }
  const of = rows.reduce((sum, { runs }) => sum + runs, 0);
  const outside = rows.reduce((sum, { seenOutside }) => sum + seenOutside, 0);
  const expected = rows.reduce(
    (sum, { runs, expectedOutsidePercent }) => sum + (runs * expectedOutsidePercent.estimate) / 100,
    0,
  );
  const seen: Sentence = [
    `Of ${name}, `,
    strong(`${outside === 0 ? "none" : printNumber(outside, 0)} of ${counted(of, "batch", "batches")}`),
    ` ${outside === 1 ? "lies" : "lie"} outside the spec; going by mean and spread one would expect about ${printNumber(expected, expected < 0.95 ? 1 : 0)}.`,
  ];
  const worst = [...rows].sort((a, b) => b.expectedOutsidePercent.estimate - a.expectedOutsidePercent.estimate)[0];
  if (rows.length < 2 || worst === undefined) return seen;
  const { estimate, low, high } = worst.expectedOutsidePercent;
  return joinSentences([
    seen,
    [
      `Closest to its limit is ${worst.variety}: `,
      strong(sharePercent(estimate)),
      ` of its batches to be expected outside (${sharePercent(low)} to ${sharePercent(high)}).`,
    ],
  ]);
}
