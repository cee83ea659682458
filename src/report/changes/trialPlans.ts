import { runsEachSide } from "../../analysis/beforeAfter/trialPower.ts";
import { mean } from "../../analysis/summary.ts";
import type { ChangedMeasure, TrialPlan } from "../changesResult.ts";
import type { ComparedRow } from "./comparedRow.ts";
import type { PlaceboBook } from "./placeboBook.ts";

/** A spread from fewer runs is itself a guess. */
const FEWEST_RUNS = 12;

export const plannedMeasures: readonly ChangedMeasure[] = [
  "kiln_hours",
  "energy_kwh",
  "final_moisture_pct",
  "dry_yield_pct",
  "steep_out_moisture_pct",
  "acrospire_mean",
];

/** Differences that a house may want to tell, in the measure's unit; of energy as shares of what a load takes. */
const DIFFERENCES: Readonly<Record<ChangedMeasure, readonly number[]>> = {
  kiln_hours: [0.5, 1, 2],
  energy_kwh: [0.025, 0.05, 0.1],
  final_moisture_pct: [0.1, 0.2, 0.5],
  dry_yield_pct: [0.5, 1, 2],
  steep_out_moisture_pct: [0.5, 1, 2],
  acrospire_mean: [0.05, 0.1, 0.2],
};

/** Runs needed on each side of the next trial, for each measure that this house logs, at its own spread. */
export function trialPlans(
  rowsOf: (measure: ChangedMeasure) => readonly ComparedRow[],
  placebos: PlaceboBook,
): readonly TrialPlan[] {
  return plannedMeasures.flatMap((measure) => {
    const rows = rowsOf(measure);
    if (rows.length < FEWEST_RUNS) return [];
    const found = placebos.spreadOf(measure);
    if (found === null || found.runs < FEWEST_RUNS || !(found.spread > 0)) return [];
    const usual = mean(rows.map(({ value }) => value));
    const { spread, runs } = found;
    return [
      {
        measure,
        spread,
        runs,
        rows: DIFFERENCES[measure].map((wanted) => {
          const difference = measure === "energy_kwh" ? Math.max(1, Math.round(wanted * usual)) : wanted;
          return { difference, ...runsFor(difference, spread) };
        }),
      },
    ];
  });
}

/** Whole runs on each side, for a chance of 80 and of 90 in 100 to tell the difference; for the plan and for *what if*. */
export function runsFor(
  difference: number,
  spread: number,
): { readonly runsEachSide80: number | null; readonly runsEachSide90: number | null } {
  const whole = (power: number): number | null => {
    const runs = runsEachSide({ difference, spread, power });
    return runs === null ? null : Math.ceil(runs - 1e-6);
  };
  return { runsEachSide80: whole(0.8), runsEachSide90: whole(0.9) };
}
