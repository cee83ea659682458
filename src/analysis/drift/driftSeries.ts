import type { PredictorColumn } from "../factorisation.ts";

/**
 * What may drift, one value a load in time order, since the last calibration or repair. Intervals in days from any fixed
 * moment; they need not be even, and two loads may share one.
 */
export interface DriftSeries {
  readonly days: ArrayLike<number>;
  /** The offset of each load, in its own unit: kelvins for a thermostat. */
  readonly values: ArrayLike<number>;
  /** How much each load counts, 1 over its variance up to a common factor; all alike where not given. */
  readonly weights?: ArrayLike<number>;
  /** What else moves the value, one column each: heater duty, ambient temperature. */
  readonly covariates?: readonly PredictorColumn[];
  /**
   * Errors that many loads have in common, each as what one standard deviation of it makes of every load: what a check of the
   * logger was itself off by reaches all loads up to the next. They are independent of each other. They widen intervals
   * and move nothing.
   */
  readonly sharedErrors?: readonly ArrayLike<number>[];
}

/** @throws RangeError for lengths that differ, days that run backwards, a weight that is not positive, or a broken number */
export function requireDriftSeries(series: DriftSeries, caller: string): void {
  const { days, values, weights, covariates, sharedErrors } = series;
  requireTimeOrder(days, values, caller);
  if (weights !== undefined && weights.length !== values.length) {
    throw new RangeError(`${caller} requires a weight a load; got ${weights.length} for ${values.length}`);
  }
  for (let at = 0; at < values.length; at += 1) {
    const weight = weights?.[at] ?? 1;
    if (!(weight > 0 && Number.isFinite(weight))) {
      throw new RangeError(`${caller} requires positive weights; got ${weight} at ${at}`);
    }
  }
  for (const { name, values: column } of covariates ?? []) {
    if (column.length !== values.length) {
      throw new RangeError(`${caller} requires a ${name} a load; got ${column.length} for ${values.length}`);
    }
    requireFinite(column, name, caller);
  }
  for (const error of sharedErrors ?? []) {
    if (error.length !== values.length) {
      throw new RangeError(`${caller} requires a shared error a load; got ${error.length} for ${values.length}`);
    }
    requireFinite(error, "shared errors", caller);
  }
}

/** @throws RangeError for lengths that differ, days that run backwards, or a number that is not finite */
export function requireTimeOrder(days: ArrayLike<number>, values: ArrayLike<number>, caller: string): void {
  if (days.length !== values.length) {
    throw new RangeError(`${caller} requires a day a load; got ${days.length} for ${values.length}`);
  }
  requireFinite(values, "values", caller);
  requireFinite(days, "days", caller);
  for (let at = 1; at < days.length; at += 1) {
    if ((days[at] as number) < (days[at - 1] as number)) {
      throw new RangeError(`${caller} requires time order; got day ${days[at]} after ${days[at - 1]}`);
    }
  }
}

function requireFinite(values: ArrayLike<number>, name: string, caller: string): void {
  for (let at = 0; at < values.length; at += 1) {
    if (!Number.isFinite(values[at])) {
      throw new RangeError(`${caller} requires finite ${name}; got ${values[at]} at ${at}`);
    }
  }
}
