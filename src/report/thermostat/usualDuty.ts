import { findFitFault } from "../../analysis/findFitFault.ts";
import { fitLeastSquares } from "../../analysis/fitLeastSquares.ts";
import type { Interval } from "../../analysis/regressionFit.ts";
import { mean } from "../../analysis/summary.ts";
import type { OffsetPoint } from "../thermostatResult.ts";

/** How the offset follows the heater's duty in this house, and the duty that offsets are said at. */
export interface UsualDuty {
  /** Kelvins for a duty of 1 more. */
  readonly kelvinPerDuty: Interval;
  readonly duty: number;
}

/** Fewer pairs of neighbours tell no slope. */
const FEWEST_PAIRS = 20;

/**
 * Dead time makes the middle of a thermostat's cycle move with the heater's power, so that a mild week reads like a changed
 * thermostat. The slope is taken from neighbouring loads, each pair's change of offset on its change of duty: a creep moves
 * neighbours too little to be taken for duty, while levels months apart would be.
 *
 * @returns null where pairs are too few or the slope's interval holds 0: then nothing is allowed for
 */
export function usualDuty(points: readonly OffsetPoint[]): UsualDuty | null {
  const offsets: number[] = [];
  const duties: number[] = [];
  points.forEach((point, index) => {
    const before = points[index - 1];
    if (before === undefined || before.stretch !== point.stretch) return;
    if (before.duty === null || point.duty === null) return;
    offsets.push(point.offsetKelvin - before.offsetKelvin);
    duties.push(point.duty - before.duty);
  });
  const columns = [{ name: "duty", values: duties }];
  if (findFitFault(columns, offsets, FEWEST_PAIRS) !== null) return null;
  const slope = fitLeastSquares(columns, offsets).terms[1];
  if (slope === undefined || (slope.low <= 0 && slope.high >= 0)) return null;
  const known = points.flatMap(({ duty }) => (duty === null ? [] : [duty]));
  const { estimate, low, high } = slope;
  return { kelvinPerDuty: { estimate, low, high }, duty: mean(known) };
}

/** The points as they would read at the usual duty; one without a duty stays as it is. */
export function atUsualDuty(points: readonly OffsetPoint[]): readonly OffsetPoint[] {
  const usual = usualDuty(points);
  if (usual === null) return points;
  return points.map((point) =>
    point.duty === null
      ? point
      : { ...point, offsetKelvin: point.offsetKelvin - usual.kelvinPerDuty.estimate * (point.duty - usual.duty) },
  );
}
