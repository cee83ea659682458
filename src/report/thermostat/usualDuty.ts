import { findFitFault } from "../../analysis/findFitFault.ts";
import { fitLeastSquares } from "../../analysis/fitLeastSquares.ts";
import { mean } from "../../analysis/summary.ts";
import { cycleLean } from "../../malting/thermostat/cycleLean.ts";
import type { OffsetPoint } from "../thermostatResult.ts";

/** Fewer pairs of neighbours tell nothing of duty. */
const FEWEST_PAIRS = 20;

/** Readings do not resolve a duty nearer to 0 or to 1. */
const LEAST_DUTY = 0.02;

const lean = (duty: number): number => cycleLean(Math.min(1 - LEAST_DUTY, Math.max(LEAST_DUTY, duty)));

/** What goes with duty by the physics of the cycle: dead time moves its middle, and its sides bend (see {@link cycleLean}). */
export const dutyColumns = (duties: readonly number[]) => [
  { name: "duty", values: duties },
  { name: "lean", label: "lean of the cycle", values: duties.map(lean) },
];

/**
 * The offsets as they would read at the house's usual heater duty. Dead time makes the middle of a thermostat's cycle move
 * with the heater's power, so that a cold week reads like a changed thermostat.
 *
 * How much is taken from neighbouring loads, each pair's change of offset on its change of duty and of lean: a creep moves
 * neighbours too little to be taken for duty, while levels months apart would be. Where the pairs are too few, or duty
 * explains nothing that chance would not, the offsets stay as they are; so does a load without a duty.
 */
export function atUsualDuty(points: readonly OffsetPoint[]): readonly OffsetPoint[] {
  const known = points.filter(({ duty }) => duty !== null);
  const columns = dutyColumns(known.map(({ duty }) => duty ?? 0));
  const pairs = known.flatMap((point, index) =>
    index > 0 && known[index - 1]?.stretch === point.stretch ? [index] : [],
  );
  const change = (values: readonly number[]): number[] =>
    pairs.map((index) => (values[index] ?? 0) - (values[index - 1] ?? 0));
  const offsets = change(known.map(({ offsetKelvin }) => offsetKelvin));
  const changes = columns.map((column) => ({ ...column, values: change(column.values) }));
  if (findFitFault(changes, offsets, FEWEST_PAIRS) !== null) return points;
  const fit = fitLeastSquares(changes, offsets);
  if (fit.fPValue > 0.05) return points;
  const [, perDuty = 0, perLean = 0] = fit.terms.map(({ estimate }) => estimate);
  const usual = mean(columns[0]?.values ?? [0]);
  const shift = (duty: number): number => perDuty * (duty - usual) + perLean * (lean(duty) - lean(usual));
  return points.map((point) =>
    point.duty === null ? point : { ...point, offsetKelvin: point.offsetKelvin - shift(point.duty) },
  );
}
