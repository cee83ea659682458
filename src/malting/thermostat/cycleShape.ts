import { middleOf } from "./kilnReadings.ts";
import type { Cycle } from "./wholeCycles.ts";

/** Below this the readings say nothing certain of switch points, swing and period. */
export const FEWEST_READINGS_A_CYCLE = 8;
/** Fewer cycles than this give no median worth the name. */
export const FEWEST_CYCLES_FOR_SHAPE = 5;

/** What a typical cycle of a hold looks like: medians over its cycles. */
export interface CycleShape {
  /** Furthest air either way: beyond the switch points where air answers late. */
  readonly highCelsius: number;
  readonly lowCelsius: number;
  readonly swingKelvin: number;
  readonly periodMinutes: number;
  readonly onMinutes: number;
  readonly offMinutes: number;
  /** Air when the heater switched, from heater_on; where that is not logged, the turning points themselves. */
  readonly switchOffCelsius: number;
  readonly switchOnCelsius: number;
}

const median = (cycles: readonly Cycle[], of: (cycle: Cycle) => number): number =>
  middleOf(Float64Array.from(cycles, of));
const mean = (cycles: readonly Cycle[], of: (cycle: Cycle) => number): number =>
  cycles.reduce((sum, cycle) => sum + of(cycle), 0) / cycles.length;

/**
 * The shape of the cycles. Temperatures are medians, which one odd cycle does not move; times are means, since single times
 * come in whole steps of the logger and only their mean has more digits.
 *
 * @throws {RangeError} for no cycles
 */
export function cycleShape(cycles: readonly Cycle[]): CycleShape {
  if (cycles.length === 0) throw new RangeError("cycleShape requires at least one cycle; got none");
  const highCelsius = median(cycles, (c) => c.highCelsius);
  const lowCelsius = median(cycles, (c) => c.lowCelsius);
  const periodMinutes = mean(cycles, (c) => c.to - c.from) / 60_000;
  const onMinutes = mean(cycles, (c) => c.onTime) / 60_000;
  return {
    highCelsius,
    lowCelsius,
    swingKelvin: highCelsius - lowCelsius,
    periodMinutes,
    onMinutes,
    offMinutes: periodMinutes - onMinutes,
    switchOffCelsius: median(cycles, (c) => c.switchOffCelsius ?? c.highCelsius),
    switchOnCelsius: median(cycles, (c) => c.switchOnCelsius ?? c.lowCelsius),
  };
}

/** Readings a cycle, on average; null without cycles. */
export function readingsACycle(cycles: readonly Cycle[]): number | null {
  return cycles.length === 0 ? null : mean(cycles, (cycle) => cycle.readings);
}
