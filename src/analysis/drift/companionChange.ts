import { studentTQuantile } from "../distributions.ts";
import { findFitFault } from "../findFitFault.ts";
import type { FitFault } from "../fitFault.ts";
import { fitLeastSquares } from "../fitLeastSquares.ts";
import type { Interval, RegressionFit, RegressionTerm } from "../regressionFit.ts";
import { fewestLoads } from "./fewestLoads.ts";

/** How far another measure of the same loads moved along with the drift. */
export interface CompanionChange {
  readonly loads: number;
  /** Its level before the drift. */
  readonly before: Interval;
  /** By the last load, signed, in its own unit. */
  readonly change: Interval;
  readonly p: number;
  /** Neighbouring loads resemble each other beyond the drift, and the interval was widened for it (Newey–West). */
  readonly isSerial: boolean;
}

/**
 * Regression of a companion measure (swing, rise rate, duty) on the drift's course: what it was before, and how far it has
 * moved by the last load. Loads without the measure (null) are left out. The course is taken as known, so that the interval is of
 * the companion alone.
 *
 * @returns a fault, which `sayFitFault` says as a sentence, for fewer than eight loads with the measure, or where they leave
 * nothing to tell
 * @throws RangeError for lengths that differ
 */
export function companionChange(values: readonly (number | null)[], shape: Float64Array): CompanionChange | FitFault {
  if (values.length !== shape.length) {
    throw new RangeError(`companionChange requires a value or null a load; got ${values.length} for ${shape.length}`);
  }
  const kept = values.flatMap((value, at) => (value === null ? [] : [{ value, course: shape[at] as number }]));
  const response = kept.map(({ value }) => value);
  const columns = [{ name: "course", label: "course of the drift", values: kept.map(({ course }) => course) }];
  const fault = findFitFault(columns, response, fewestLoads);
  if (fault) return fault;
  const fit = fitLeastSquares(columns, response);
  const [before, change] = fit.terms as [RegressionTerm, RegressionTerm];
  return {
    loads: fit.observations,
    before: serialInterval(before, fit),
    change: serialInterval(change, fit),
    p: change.p,
    isSerial: change.serialStandardError !== null,
  };
}

/** A coefficient's 95 % interval, by the serial standard error where that is called for and larger. */
export function serialInterval(term: RegressionTerm, { degreesOfFreedom }: RegressionFit): Interval {
  const { estimate, standardError, serialStandardError } = term;
  const reach = studentTQuantile(0.975, degreesOfFreedom) * Math.max(standardError, serialStandardError ?? 0);
  return { estimate, low: estimate - reach, high: estimate + reach };
}
