/** A scale on which a measure's values scatter evenly about their middle; it rises with the value, so limits go with it. */
export interface MeasureScale {
  readonly kind: "as it is" | "logarithm" | "log odds";
  /** The value on the scale; null where the measure cannot take it, as a share over 100 %. */
  readonly to: (value: number) => number | null;
  readonly from: (scaled: number) => number;
  /** How fast the scale rises at a value: a small step there, times this, is the step on the scale. */
  readonly slope: (value: number) => number;
}

/** For measures that scatter alike about any middle that a malthouse sees. */
export const asItIs: MeasureScale = {
  kind: "as it is",
  to: (value) => value,
  from: (scaled) => scaled,
  slope: () => 1,
};

/**
 * log(value + start), for measures that cannot be negative and have a long upper tail. `start` is about half of the
 * least amount that is told from nothing, so that a zero has a place (a started logarithm: Tukey 1977, Exploratory Data
 * Analysis; from memory).
 *
 * @throws {RangeError} for a start that is not finite
 */
export function logarithm(start: number): MeasureScale {
  if (!Number.isFinite(start)) throw new RangeError(`logarithm requires a finite start; got ${start}`);
  return {
    kind: "logarithm",
    to: (value) => (value + start > 0 ? Math.log(value + start) : null),
    from: (scaled) => Math.exp(scaled) - start,
    slope: (value) => 1 / (value + start),
  };
}

/**
 * log((p + start) / (100 − p + start)) for a share p in per cent: the empirical log odds, with half a kernel in a
 * hundred counted on either side by default, so that none and all have a place (Cox 1970, The Analysis of Binary Data;
 * from memory).
 *
 * @throws {RangeError} for a start that is not positive
 */
export function logOddsOfPercent(start = 0.5): MeasureScale {
  if (!(start > 0)) throw new RangeError(`logOddsOfPercent requires a positive start; got ${start}`);
  return {
    kind: "log odds",
    to: (value) =>
      value + start > 0 && 100 - value + start > 0 ? Math.log((value + start) / (100 - value + start)) : null,
    from: (scaled) => (100 + 2 * start) / (1 + Math.exp(-scaled)) - start,
    slope: (value) => 1 / (value + start) + 1 / (100 - value + start),
  };
}
