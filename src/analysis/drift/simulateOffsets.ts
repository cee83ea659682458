import { normalDraws } from "../normalDraws.ts";
import { seededRandom } from "../seededRandom.ts";

/** What happens to the thermostat of a simulated house. Rates in the value's unit a month of 30.44 days. */
export type DriftTruth =
  | { readonly kind: "quiet" }
  | { readonly kind: "creep"; readonly perMonth: number }
  | { readonly kind: "slip"; readonly size: number };

export interface SimulationOptions {
  /** Standard deviation of a load. */
  readonly noise: number;
  readonly loadsPerMonth: number;
  /** Loads from the calibration to the earliest onset, and to the latest. */
  readonly quietLoads: readonly [number, number];
  readonly loads: number;
  /** Loads of an earlier, quiet stretch. */
  readonly earlierLoads: number;
}

/** Offsets of one simulated house since its calibration. */
export interface SimulatedOffsets {
  readonly days: Float64Array;
  readonly values: Float64Array;
  readonly earlier: readonly Float64Array[];
  /** Null where nothing happens. */
  readonly onsetDay: number | null;
  /** First load on or after the onset; all loads where nothing happens. */
  readonly firstAfter: number;
}

export const daysInMonth = 30.44;

/**
 * Offsets of loads at uneven intervals, from two fifths of the mean interval to eight fifths of it, with independent normal
 * scatter about 0 until the onset, which lies anywhere in its range. The same seed gives the same house whatever happens to it.
 */
export function simulateOffsets(seed: number, truth: DriftTruth, options: SimulationOptions): SimulatedOffsets {
  const random = seededRandom(seed);
  const draw = normalDraws(random);
  const { noise, quietLoads, loads } = options;
  const interval = daysInMonth / options.loadsPerMonth;
  const share = random.uniform();
  const earlier =
    options.earlierLoads === 0 ? [] : [Float64Array.from({ length: options.earlierLoads }, () => noise * draw())];
  let day = 0;
  const days = Float64Array.from({ length: loads }, () => {
    day += interval * (0.4 + 1.2 * random.uniform());
    return day;
  });
  const [least, most] = quietLoads;
  const place = least - 1 + share * (most - least);
  const before = Math.floor(place);
  const from = days[before] as number;
  const onset = from + (place - before) * ((days[before + 1] as number) - from);
  const values = days.map((at) => {
    const after = Math.max(0, at - onset);
    const moved =
      truth.kind === "creep"
        ? (truth.perMonth / daysInMonth) * after
        : truth.kind === "slip" && after > 0
          ? truth.size
          : 0;
    return moved + noise * draw();
  });
  return {
    days,
    values,
    earlier,
    onsetDay: truth.kind === "quiet" ? null : onset,
    firstAfter: truth.kind === "quiet" ? loads : days.findIndex((at) => at > onset),
  };
}
