import { studentTQuantile } from "../distributions.ts";
import type { PredictorColumn } from "../factorisation.ts";
import { findFitFault } from "../findFitFault.ts";
import type { FitFault } from "../fitFault.ts";
import { fitLeastSquares } from "../fitLeastSquares.ts";
import type { Interval, RegressionFit, RegressionTerm } from "../regressionFit.ts";
import { fewestLoads } from "./fewestLoads.ts";

/** How far another measure of the same loads moved along with the drift. */
export interface CompanionChange {
  readonly loads: number;
  /** Its level before the drift; at the mean of what stands beside it. */
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
 * @param beside what else moves the companion, a value a load, such as the air outside: the change is then at equal values of it
 * @returns a fault, which `sayFitFault` says as a sentence, for fewer than eight loads with the measure, or where they leave
 * nothing to tell
 * @throws RangeError for lengths that differ
 */
export function companionChange(
  values: readonly (number | null)[],
  shape: Float64Array,
  beside: PredictorColumn | null = null,
): CompanionChange | FitFault {
  if (values.length !== shape.length) {
    throw new RangeError(`companionChange requires a value or null a load; got ${values.length} for ${shape.length}`);
  }
  if (beside !== null && beside.values.length !== shape.length) {
    throw new RangeError(
      `companionChange requires a value beside a load; got ${beside.values.length} for ${shape.length}`,
    );
  }
  const kept = values.flatMap((value, at) =>
    value === null ? [] : [{ value, course: shape[at] as number, other: beside?.values[at] ?? 0 }],
  );
  const response = kept.map(({ value }) => value);
  const course = { name: "course", label: "course of the drift", values: kept.map((load) => load.course) };
  const middle = kept.reduce((sum, { other }) => sum + other, 0) / Math.max(1, kept.length);
  // Taken from its mean, so that the level is that of an ordinary load.
  const columns = beside === null ? [course] : [course, { ...beside, values: kept.map(({ other }) => other - middle) }];
  const fault = findFitFault(columns, response, fewestLoads + columns.length - 1);
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
