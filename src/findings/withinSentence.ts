import type { ControlChart } from "../report/controlChartResult.ts";
import { printNumber } from "../units/print.ts";
import { exactPoints } from "./chartWords.ts";
import { counted } from "./counted.ts";
import { type Sentence, strong } from "./sentence.ts";

/** How even the beds are, from the samples of each batch: another question than how even the months are. */
export function withinSentence({ within }: ControlChart): Sentence {
  if (within === null) return [];
  const batches = within.points.filter(({ standardDeviation }) => standardDeviation !== null).length;
  const uneven = within.unevenRuns.length;
  const usual: Sentence = [
    "Samples of one batch differ by ",
    strong(exactPoints(within.sigma)),
    ` (standard deviation; ${counted(within.baselineRuns, "batch", "batches")} in the baseline). `,
  ];
  if (uneven === 0)
    return [
      ...usual,
      `In none of ${counted(batches, "batch", "batches")} was the bed less even than that lets one expect.`,
    ];
  return [
    ...usual,
    strong(counted(uneven, "batch", "batches")),
    ` of ${printNumber(batches, 0)} came off the bed less even than that lets one expect. An uneven bed is another fault than an uneven month: look at levelling, turning and air through the bed, not at hours and settings.`,
  ];
}

/** How often a bed that is no worse than the others is called uneven. Empty where no batch has two samples. */
export function withinChanceSentence({ within }: ControlChart): Sentence {
  const expected = (within?.points ?? []).reduce((sum, { falseSignalChance }) => sum + (falseSignalChance ?? 0), 0);
  if (within === null || expected === 0) return [];
  const about = expected < 0.1 ? "hardly any" : `about ${printNumber(expected, expected < 0.95 ? 1 : 0)}`;
  return [`By chance alone ${about} would be called uneven.`];
}

/** Why batch means stand on a chart of single values. Empty where that cannot be said. */
export function narrowerSentence({ within }: ControlChart): Sentence {
  if (within?.narrowerBy == null || within.narrowerBy < 1.05) return [];
  return [
    `Limits made from the spread within batches alone would lie ${printNumber(within.narrowerBy, 1)} times closer and would signal on good batches; so the mean of each batch stands as one value.`,
  ];
}
