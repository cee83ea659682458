import { placesIn, type SoundReadings, type TimeSpan } from "./kilnReadings.ts";

/**
 * Share (0 to 1) of a stretch with a logged switch on, each reading standing for the time to the next one.
 *
 * @param state heater_on or fan_on
 * @param longestStepMilliseconds steps over this are left out
 * @returns null where it is not recorded, or nothing is left
 */
export function shareOn(
  { at }: SoundReadings,
  state: Float64Array | null,
  span: TimeSpan,
  longestStepMilliseconds: number,
): number | null {
  if (state === null) return null;
  const { start, end } = placesIn(at, span);
  let [on, all] = [0, 0];
  for (let i = start + 1; i < end; i++) {
    const step = (at[i] as number) - (at[i - 1] as number);
    const value = state[i - 1] as number;
    if (Number.isNaN(value) || step > longestStepMilliseconds) continue;
    all += step;
    if (value === 1) on += step;
  }
  return all > 0 ? on / all : null;
}
