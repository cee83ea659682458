import { middleOf, placesIn, type SoundReadings, type TimeSpan } from "./kilnReadings.ts";
import { shareOn } from "./shareOn.ts";

/** A fan on its own thermostat: on when the air is warm, off when it cools, the other way round from the heater's. */
export interface FanThermostat {
  /** Share of the drying hold with the fan on, 0 to 1: air through the bed scales with it. Null without a hold. */
  readonly shareOfHold: number | null;
  /** Median air on when it switched on, and off, between warm-up and heat off; null where it never did. */
  readonly switchOnCelsius: number | null;
  readonly switchOffCelsius: number | null;
  readonly switchesOn: number;
  readonly switchesOff: number;
  /** Middle between its switch points less its set point, K; null with fewer than three switches either way. */
  readonly offsetKelvin: number | null;
  readonly standardErrorKelvin: number | null;
  readonly sentences: readonly string[];
}

const FEWEST_SWITCHES = 3;

function spread(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1) / values.length;
}

/**
 * Reads the fan's thermostat where fan_on is logged.
 *
 * Its switch points are read while air goes up and down slowly in the hold; the one switch of the warm-up comes while air
 * rises fast, so that the bulb lags behind, and does not make an offset.
 *
 * @param hold the drying hold
 * @param fanSetCelsius null where the fan has no thermostat of its own
 * @returns null where fan_on is not logged
 */
export function fanThermostat(
  readings: SoundReadings,
  hold: TimeSpan | null,
  fanSetCelsius: number | null,
  longestStepMilliseconds: number,
): FanThermostat | null {
  const { at, airOnCelsius: air, fanOn } = readings;
  if (fanOn?.some((state) => !Number.isNaN(state)) !== true) return null;
  const on: number[] = [];
  const off: number[] = [];
  if (hold !== null) {
    const { start, end } = placesIn(at, hold);
    for (let i = start + 1; i < end; i++) {
      if ((at[i] as number) - (at[i - 1] as number) > longestStepMilliseconds) continue;
      const change = (fanOn[i] as number) - (fanOn[i - 1] as number);
      const between = ((air[i] as number) + (air[i - 1] as number)) / 2;
      if (change === 1) on.push(between);
      else if (change === -1) off.push(between);
    }
  }
  const switchOnCelsius = on.length > 0 ? middleOf(Float64Array.from(on)) : null;
  const switchOffCelsius = off.length > 0 ? middleOf(Float64Array.from(off)) : null;
  const enough = on.length >= FEWEST_SWITCHES && off.length >= FEWEST_SWITCHES;
  const sentences: string[] = [];
  if (hold !== null && fanSetCelsius !== null && on.length + off.length === 0) {
    sentences.push("The fan did not switch in the hold, so its own thermostat cannot be judged.");
  } else if (hold !== null && fanSetCelsius !== null && !enough) {
    sentences.push(
      `The fan switched on ${on.length} and off ${off.length} times in the hold; its offset needs ${FEWEST_SWITCHES} of each.`,
    );
  }
  if (enough && (switchOnCelsius as number) < (switchOffCelsius as number)) {
    sentences.push(
      "The fan went on when the air was cool and off when it was warm, the wrong way round for a kiln's fan.",
    );
  }
  const claims = enough && fanSetCelsius !== null;
  return {
    shareOfHold: hold && shareOn(readings, fanOn, hold, longestStepMilliseconds),
    switchOnCelsius,
    switchOffCelsius,
    switchesOn: on.length,
    switchesOff: off.length,
    offsetKelvin: claims ? ((switchOnCelsius as number) + (switchOffCelsius as number)) / 2 - fanSetCelsius : null,
    standardErrorKelvin: claims ? Math.sqrt(spread(on) + spread(off)) / 2 : null,
    sentences,
  };
}
