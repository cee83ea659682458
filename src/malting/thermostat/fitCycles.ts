import { FEWEST_CYCLES_FOR_SHAPE } from "./cycleShape.ts";
import { MINUTE, middleOf, type SoundReadings } from "./kilnReadings.ts";
import { shareOn } from "./shareOn.ts";
import type { Cycle } from "./wholeCycles.ts";

/** Below this a hold says nothing of its thermostat. */
export const FEWEST_CYCLES = 3;
/** Longer than this many usual cycles is no cycle of the thermostat: air was kept from its set point meanwhile. */
const LONGEST_CYCLE = 3;
/** No kiln's thermostat cycles so fast that readings closer than this could skip whole cycles. Common practice. */
const ALIASING_STEP = 2 * MINUTE;
/** A cycle that rises this much more slowly than air first did is one that too few readings made up. */
const ALIAS_SLOWNESS = 6;

/**
 * Cycles through which the fan blew, where at least three did: with the fan off the air at the probe stands, and says
 * little of what the thermostat would do in moving air.
 */
export function cyclesWithFan(
  readings: SoundReadings,
  cycles: readonly Cycle[],
  longestStep: number,
): readonly Cycle[] {
  const { fanOn } = readings;
  if (fanOn === null) return cycles;
  const blown = cycles.filter((cycle) => (shareOn(readings, fanOn, cycle, longestStep) ?? 1) === 1);
  return blown.length >= FEWEST_CYCLES ? blown : cycles;
}

/** Cycles without those that took far longer than the usual one, in which the heater was short or a door stood open. */
export function cyclesWithoutDelays(cycles: readonly Cycle[]): readonly Cycle[] {
  if (cycles.length < FEWEST_CYCLES_FOR_SHAPE) return cycles;
  const usual = middleOf(Float64Array.from(cycles, (cycle) => cycle.to - cycle.from));
  return cycles.filter((cycle) => cycle.to - cycle.from <= LONGEST_CYCLE * usual);
}

/**
 * Readings nearly a cycle apart show a slow cycle that is not there. A real one rises about as fast as air did on its first
 * way up through the same temperatures.
 */
export function isAliased(cycles: readonly Cycle[], usualStep: number, firstRise: number | null): boolean {
  if (firstRise === null || cycles.length === 0 || usualStep < ALIASING_STEP) return false;
  const rises = cycles.map((c) => ((c.highCelsius - c.lowCelsius) / c.onTime) * MINUTE);
  return middleOf(Float64Array.from(rises)) < firstRise / ALIAS_SLOWNESS;
}
