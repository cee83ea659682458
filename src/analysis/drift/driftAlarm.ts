import { type Cusum, cusum } from "../controlCharts/cusum.ts";
import { type Ewma, ewma } from "../controlCharts/ewma.ts";
import { movingRangeSpread } from "../controlCharts/movingRangeSpread.ts";
import { groupSignals } from "../controlCharts/signal.ts";
import { normalCdf, studentTQuantile } from "../distributions.ts";
import type { FitFault } from "../fitFault.ts";
import { mean, median } from "../summary.ts";
import { type DriftAlarmSettings, driftAlarmSettings } from "./driftAlarmSettings.ts";

/** Loads since the last calibration or repair, and what may be known from before it. */
export interface DriftAlarmInput {
  /** One a load, in time order. */
  readonly values: ArrayLike<number>;
  /** Own standard error of each; a load read worse than usual is judged by wider limits. */
  readonly standardErrors?: ArrayLike<number>;
  /** Values of earlier stretches between calibrations, each in time order. They help to tell the spread, never the level. */
  readonly earlier?: readonly ArrayLike<number>[];
}

/** One alarm. Indices are of all loads since the calibration, the baseline's included; both ends are inclusive. */
export interface DriftAlarmRaised {
  /** First load that the charts count to it; the models date the onset better. */
  readonly from: number;
  readonly raisedAt: number;
  readonly to: number;
  /** Load at which it ended, being long back inside with nothing done about it; null while it stands. */
  readonly endedAt: number | null;
  readonly direction: "up" | "down";
  readonly raisedBy: readonly ("weightedMean" | "cumulativeSum")[];
}

/** The charts of one stretch, and what they raised. */
export interface DriftAlarm {
  readonly baseline: {
    readonly loads: number;
    readonly level: number;
    readonly standardError: number;
    /** Standard deviation of a single load about the level. */
    readonly sigma: number;
    readonly degreesOfFreedom: number;
    /** Earlier loads that helped to tell sigma. */
    readonly earlierLoads: number;
  };
  /** One entry a load after the baseline, as deviations from its level; `reach` is the half-width of the limits. */
  readonly weightedMean: Ewma;
  readonly cumulativeSum: Cusum;
  /** In the order in which they were raised. */
  readonly alarms: readonly DriftAlarmRaised[];
}

/**
 * Raises an alarm where the running weighted mean (EWMA) or the cumulative sums (CUSUM) of offsets leave what the first loads
 * after the calibration allow. These two alone alarm; models and tests explain.
 *
 * Limits allow for a small baseline. Its mean is off by sigma/√n, which every later load inherits: the variance of the weighted
 * mean is σ² [λ/(2 − λ) (1 − q²ⁱ) + (1 − qⁱ)²/n] with q = 1 − λ, and the sums' reference grows with 1/√n. Sigma is the
 * average moving range over d₂, which a creep hardly swells, of the baseline and the earlier stretches together; limits are widened
 * from normal to Student's t with its degrees of freedom, the decision in the same proportion.
 *
 * An alarm stands until the next calibration or repair begins a series of its own, or until it has long been back inside.
 *
 * A creep that begins with the calibration is partly taken for the level, and what happens within the baseline is seen after it.
 *
 * @returns a fault, which `sayFitFault` says as a sentence, for fewer loads than the baseline needs and one more, or loads
 * that do not vary
 * @throws RangeError for a broken value, lengths that differ or settings out of range
 */
export function driftAlarm(
  input: DriftAlarmInput,
  settings: DriftAlarmSettings = driftAlarmSettings,
): DriftAlarm | FitFault {
  const values = Float64Array.from(input.values);
  const earlier = (input.earlier ?? []).filter(({ length }) => length > 1);
  requireLoads(values, input);
  const earlierLoads = earlier.reduce((sum, { length }) => sum + length, 0);
  const loads = earlierLoads >= settings.earlierLoads ? settings.baselineLoadsWithEarlier : settings.baselineLoads;
  if (values.length <= loads) return { kind: "too-few", observations: values.length, needed: loads + 1 };
  const first = values.subarray(0, loads);
  const spread = movingRangeSpread([...earlier, first]);
  if (spread === null || spread.sigma === 0) return { kind: "constant-response", observations: loads };

  const { sigma, degreesOfFreedom } = spread;
  const level = mean(first);
  const deviations = values.subarray(loads).map((value) => value - level);
  const usual = input.standardErrors ? median(input.standardErrors) : 0;
  const sigmas = deviations.map((_, at) => {
    const own = input.standardErrors?.[loads + at] ?? 0;
    return Math.sqrt(sigma * sigma + Math.max(0, own * own - usual * usual));
  });
  const widening = studentTQuantile(normalCdf(settings.limit), degreesOfFreedom) / settings.limit;
  const weightedMean = ewma(
    { deviations, sigmas: withBaselineError(sigmas, sigma / Math.sqrt(loads), settings.weight) },
    { weight: settings.weight, limit: settings.limit * widening },
  );
  const cumulativeSum = cusum(
    { deviations, sigmas },
    {
      reference: settings.reference + settings.referencePerBaselineError / Math.sqrt(loads),
      decision: settings.decision * widening,
    },
  );
  const alarms = groupSignals([...weightedMean.signals, ...cumulativeSum.signals]).map(
    (group): DriftAlarmRaised => ({
      from: group.from + loads,
      raisedAt: group.raisedAt + loads,
      to: group.to + loads,
      endedAt: endOf(weightedMean, group.to, settings.endsAfterLoads, loads),
      direction: group.upwards ? "up" : "down",
      raisedBy: (["weightedMean", "cumulativeSum"] as const).filter((rule) =>
        group.signals.some((signal) => signal.rule === rule),
      ),
    }),
  );
  return {
    baseline: { loads, level, standardError: sigma / Math.sqrt(loads), sigma, degreesOfFreedom, earlierLoads },
    weightedMean,
    cumulativeSum,
    alarms: alarms.sort((a, b) => a.raisedAt - b.raisedAt),
  };
}

/** The load at which nothing has been outside for so many loads since the last that counts to the alarm. */
function endOf({ means, reach }: Ewma, last: number, endsAfterLoads: number, baselineLoads: number): number | null {
  let inside = 0;
  for (let at = last + 1; at < means.length; at += 1) {
    inside = Math.abs(means[at] as number) <= (reach[at] as number) ? inside + 1 : 0;
    if (inside === endsAfterLoads) return at + baselineLoads;
  }
  return null;
}

/**
 * Sigmas from which the recursion of `ewma` builds a variance that holds the baseline's error too: what load i adds to
 * (1 − qⁱ)² beyond q² of what was there is λ (1 + q − 2qⁱ).
 */
function withBaselineError(sigmas: Float64Array, baselineError: number, weight: number): Float64Array {
  const keep = 1 - weight;
  let kept = 1;
  return sigmas.map((sigma) => {
    kept *= keep;
    return Math.sqrt(sigma * sigma + (baselineError * baselineError * (1 + keep - 2 * kept)) / weight);
  });
}

function requireLoads(values: Float64Array, { standardErrors, earlier = [] }: DriftAlarmInput): void {
  for (const stretch of [values, ...earlier]) {
    const broken = Array.from(stretch).findIndex((value) => !Number.isFinite(value));
    if (broken >= 0) throw new RangeError(`driftAlarm requires finite values; got ${stretch[broken]} at ${broken}`);
  }
  if (standardErrors === undefined) return;
  if (standardErrors.length !== values.length) {
    throw new RangeError(
      `driftAlarm requires a standard error a load; got ${standardErrors.length} for ${values.length}`,
    );
  }
  const broken = Array.from(standardErrors).findIndex((own) => !(own >= 0 && Number.isFinite(own)));
  if (broken >= 0) {
    throw new RangeError(
      `driftAlarm requires standard errors of 0 or more; got ${standardErrors[broken]} at ${broken}`,
    );
  }
}
