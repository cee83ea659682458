import { mean } from "../analysis/summary.ts";
import type { FigureSpec } from "../figures/figureSpec.ts";
import { formerBatchesFigure } from "../figures/formerBatches.ts";
import { counted } from "../findings/counted.ts";
import { maltMeasure } from "../units/maltMeasure.ts";
import type { UnitSystem } from "../units/unitSystem.ts";
import { NOT_TESTED } from "./batchWords.ts";
import { printMeasureBoth } from "./bothUnits.ts";
import { FEWEST_FOR_SPREAD } from "./formerBatches.ts";
import type { SharedBatch } from "./sharedSite.ts";

/** Measures that a brewer plans with, drawn before the others. */
const PLANNED = ["extract_fine_dry_pct", "colour_ebc", "final_moisture_pct", "protein_dry_pct", "diastatic_power_wk"];
/** More strips than these crowd a page; the table has the rest. */
const MOST_STRIPS = 5;

/** A batch among the customer's former ones of its variety as a figure; null where none went before. */
export function formerFigure({ former, spec, run }: SharedBatch, units: UnitSystem): FigureSpec | null {
  const order = (measure: string): number => (PLANNED.indexOf(measure) + PLANNED.length + 1) % (PLANNED.length + 1);
  const sorted = former.toSorted((a, b) => order(a.measure) - order(b.measure));
  const strips = sorted.filter(({ measure }) => PLANNED.includes(measure)).slice(0, MOST_STRIPS);
  const count = Math.max(0, ...former.map((one) => one.former.length));
  const bands = strips.filter(({ next }) => next !== null).length;
  const expect =
    bands === 0
      ? `A spread to expect is said from ${FEWEST_FOR_SPREAD} batches on.`
      : `The band is where 9 in 10 further batches would lie if they come about like these; a new crop or lot may differ.${
          bands < strips.length ? ` No band from fewer than ${FEWEST_FOR_SPREAD} batches.` : ""
        }`;
  const ticks = strips.some(({ measure }) => spec[measure] !== undefined)
    ? " Ticks, where a line reaches that far, are limits of the spec."
    : "";
  const summary = `Ringed: this batch. Dots: your ${counted(count, "former batch", "former batches")} of ${run.variety ?? "this grain"}. ${expect}${ticks}`;
  return formerBatchesFigure(
    strips.map(({ measure, value, former: values, next }) => {
      const found = maltMeasure(measure);
      const limits = spec[measure];
      return {
        name: found.words,
        value,
        former: values,
        next,
        limits: [limits?.low ?? null, limits?.high ?? null].filter((limit) => limit !== null),
        say: (shown: number) => printMeasureBoth(found, shown, units),
      };
    }),
    {
      summary,
      rows: sorted.map(({ measure, value, former: values, next }) => {
        const found = maltMeasure(measure);
        const both = (shown: number): string => printMeasureBoth(found, shown, units);
        return [
          found.words,
          value === null ? NOT_TESTED : both(value),
          counted(values.length, "batch", "batches"),
          both(mean(values)),
          `${both(Math.min(...values))} to ${both(Math.max(...values))}`,
          next === null ? "too few to say" : `${both(next.low)} to ${both(next.high)}`,
        ];
      }),
    },
  );
}
