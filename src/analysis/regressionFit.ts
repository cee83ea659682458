/** An estimate with its 95 % interval, in the unit of whatever it estimates. */
export interface Interval {
  readonly estimate: number;
  readonly low: number;
  readonly high: number;
}

/** One coefficient of a least-squares fit and how far it can be trusted. */
export interface RegressionTerm extends Interval {
  /** As given by the caller: `intercept`, `ambientRelativeHumidityPercent`, `bedDepthMetres`. */
  readonly name: string;
  readonly standardError: number;
  readonly t: number;
  readonly p: number;
  /** Heteroskedasticity-consistent standard error, form HC3, and the interval it gives. */
  readonly robustStandardError: number;
  readonly robustLow: number;
  readonly robustHigh: number;
  /** Newey–West standard error; null where the residuals' lag-1 interval includes 0 and so none is called for. */
  readonly serialStandardError: number | null;
  /** Variance inflation factor; null for the intercept. */
  readonly varianceInflation: number | null;
}

/** An ordinary least-squares fit with the diagnostics of one observation each in the order the rows came. */
export interface RegressionFit {
  readonly terms: readonly RegressionTerm[];
  readonly observations: number;
  readonly degreesOfFreedom: number;
  readonly residualStandardDeviation: number;
  readonly rSquared: number;
  readonly adjustedRSquared: number;
  readonly f: number;
  readonly fDegreesOfFreedom: readonly [number, number];
  readonly fPValue: number;
  /** Leave-one-out root mean square error (from PRESS). */
  readonly leaveOneOutRootMeanSquare: number;
  readonly fitted: Float64Array;
  readonly residuals: Float64Array;
  readonly leverage: Float64Array;
  /** Externally studentised residuals. */
  readonly studentisedResiduals: Float64Array;
  readonly cooksDistance: Float64Array;
  /** Lag-1 autocorrelation of the residuals in the order given, with its 95 % interval. */
  readonly lagOneAutocorrelation: Interval;
  readonly durbinWatson: number;
  /** Koenker's studentised form. */
  readonly breuschPagan: { readonly statistic: number; readonly degreesOfFreedom: number; readonly p: number };
  /** Row-major covariance of the coefficients, `terms.length` squared. */
  readonly covariance: Float64Array;
  /**
   * Row-major inverse R⁻¹ of the triangular factor of the design, `terms.length` squared: (X′X)⁻¹ = R⁻¹R⁻ᵀ. Standard
   * errors of predictions are taken from it and not from `covariance`, whose sums cancel.
   */
  readonly inverseFactor: Float64Array;
}

/** What a fit says of one new observation. */
export interface Prediction extends Interval {
  readonly meanStandardError: number;
  readonly predictionStandardError: number;
  /** How far from the fit's own experience: x′(X′X)⁻¹x. */
  readonly leverage: number;
}
