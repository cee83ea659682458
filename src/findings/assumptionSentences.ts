import type { Interval } from "../analysis/regressionFit.ts";
import type { ControlChart } from "../report/controlChartResult.ts";
import { printNumber, printPValue } from "../units/print.ts";
import { exactPoints, measureName } from "./chartWords.ts";
import { counted } from "./counted.ts";
import { type Sentence, strong } from "./sentence.ts";

type Assumptions = NonNullable<ControlChart["assumptions"]>;

const interval = ({ estimate, low, high }: Interval): string =>
  `${printNumber(estimate, 2)} (${printNumber(low, 2)} to ${printNumber(high, 2)})`;
const holdsZero = ({ low, high }: Interval): boolean => low <= 0 && high >= 0;

/** A meter too coarse for limits: said beside the chart, not under it. Empty where it is fine enough. */
export function coarseMeterSentence({ assumptions, measure, phases }: ControlChart): Sentence {
  if (assumptions?.coarseStep == null) return [];
  const spreads = (phases.at(-1)?.centres ?? []).map((centre) => centre.sigma.estimate);
  const sigma = spreads.length === 0 ? null : Math.max(...spreads);
  return [
    strong(
      `${measureName[measure].replace(/^./, (c) => c.toUpperCase())} is read in steps of ${exactPoints(assumptions.coarseStep)}`,
    ),
    sigma === null ? "" : `, coarse beside a spread of ${exactPoints(sigma)}`,
    ": limits and signals mean little until a finer meter is used.",
  ];
}

/** What the chart runs on where a batch takes after the one before it. Empty where batches stand for themselves. */
export function residualsSentence({ assumptions }: ControlChart): Sentence {
  if (assumptions === null || !assumptions.onResiduals) return [];
  return [
    "A batch takes after the one before it here, so signals are looked for in what is left once that likeness is taken off; sizes are still those of the batches themselves.",
  ];
}

/** Whether neighbours are alike, and what the chart does about it. */
export function likenessSentence({ lagOne, onResiduals }: Assumptions): Sentence {
  const value = `Correlation of each batch with the one before (lag-1): ${interval(lagOne)}. `;
  if (holdsZero(lagOne)) return [value, "The interval holds 0: the rules take each batch as it is."];
  if (onResiduals) {
    return [
      value,
      "The interval keeps clear of 0: the rules run on what this likeness leaves of each batch, since plain limits would cry wolf more often than said.",
    ];
  }
  return [
    value,
    "The interval keeps clear of 0, yet the rules run on the batches as they are: signals come at other rates than said.",
  ];
}

/** A skewness that chance gives less often than this is called a lean. */
const LEAN_BELOW = 0.05;

/** Whether values lean to one side, and what that does to signals. */
export function leanSentence({ skewness }: Assumptions): Sentence {
  if (skewness === null) return ["Too few batches in the baseline to say whether values lean to one side."];
  const value = `Skewness of the baseline: ${printNumber(skewness.skewness, 2)} (chance of one so far from 0 in a normal process: ${printPValue(skewness.p)}). `;
  if (skewness.p >= LEAN_BELOW) return [value, "No lean to one side is seen."];
  const side = skewness.skewness > 0 ? "above" : "below";
  return [
    value,
    `The values lean: expect more false signals ${side} the centre than said, and fewer on the other side.`,
  ];
}

/** How many different values the meter gave. */
export function distinctSentence({ distinctValues, coarseStep, normalPlot }: Assumptions): Sentence {
  const batches = normalPlot.length;
  const value = `${printNumber(distinctValues, 0)} different values in ${counted(batches, "batch", "batches")} of the baseline. `;
  return [value, coarseStep === null ? "They are fine enough for limits." : "They are too coarse for limits."];
}
