import { powerLimitedShare } from "../heaterLimit.ts";
import {
  type CycleShape,
  cycleShape,
  FEWEST_CYCLES_FOR_SHAPE,
  FEWEST_READINGS_A_CYCLE,
  readingsACycle,
} from "./cycleShape.ts";
import { cyclesWithFan, cyclesWithoutDelays, FEWEST_CYCLES, isAliased } from "./fitCycles.ts";
import { MINUTE, placesIn, type SoundReadings, type TimeSpan } from "./kilnReadings.ts";
import { shareOn } from "./shareOn.ts";
import { meanOverCycles, meanOverHold, type TimeMean } from "./timeMean.ts";
import { type Cycle, type CycleSetting, findWholeCycles } from "./wholeCycles.ts";

/** What the readings must be known for before a hold can be judged. */
export interface HoldSetting extends CycleSetting {
  /** Null where it is not logged: then no offset, but the cycles all the same. */
  readonly setCelsius: number | null;
  /** How fast air first rose to this hold, K a minute; null where it was not seen. Tells a cycle from its alias. */
  readonly firstRiseKelvinPerMinute: number | null;
}

/** What one thermostat did over one hold. Null is *cannot be said*, and the sentences say why. */
export interface HoldOffset {
  /** Time mean of air on over whole cycles less set point, K. */
  readonly offsetKelvin: number | null;
  readonly standardErrorKelvin: number | null;
  /** The mean itself, °C. */
  readonly meanCelsius: number | null;
  readonly wholeCycles: number;
  readonly readingsACycle: number | null;
  /** Share of the whole cycles with the heater on: the covariate of the offset, since dead time moves the mean with it. */
  readonly duty: number | null;
  readonly shape: CycleShape | null;
  /** Share of the hold in which the heater could not satisfy the thermostat; null where that cannot be told. */
  readonly powerLimitedShare: number | null;
  readonly powerLimited: boolean;
  readonly sentences: readonly string[];
}

/** Over this share of the hold short of heat, no offset is claimed: this project's own choice, as for the kiln hours. */
export const POWER_LIMITED_HOLD_SHARE = 0.1;
/** A heater on for more than this has nothing left to switch with. */
const FULL_DUTY = 0.95;
/** From this step on a cycle of ten minutes may be too fast to follow, and the mean over all of the hold has to do. */
const COARSE_STEP = 4 * MINUTE;

/**
 * Offset of the thermostat over one hold, with the shape of its cycles where the readings allow it.
 *
 * The offset is the time mean over whole cycles less the set point; the middle between the switch points is not used,
 * because dead time moves it with the heater's power. Swing, period and switch points are claimed only from 8 readings a
 * cycle and 5 cycles on. Where readings are too far apart to show cycles at all, the mean over the hold is taken.
 *
 * @param hold from `findHolds`
 */
export function holdOffset(readings: SoundReadings, hold: TimeSpan, setting: HoldSetting): HoldOffset {
  const { at, airOnCelsius } = readings;
  const sentences: string[] = [];
  const found = findWholeCycles(readings, hold, setting);
  const blown = cyclesWithFan(readings, found.cycles, setting.longestStep);
  const cycles = cyclesWithoutDelays(blown);
  const perCycle = readingsACycle(cycles);
  const aliased = isAliased(cycles, setting.usualStep, setting.firstRiseKelvinPerMinute);
  const shaped = perCycle !== null && perCycle >= FEWEST_READINGS_A_CYCLE && !aliased;
  const duty =
    dutyOf(cycles, found.readFrom, shaped) ?? shareOn(readings, readings.heaterOn, hold, setting.longestStep);

  const span = placesIn(at, hold);
  const coarse = setting.usualStep >= COARSE_STEP || aliased;
  const mean: TimeMean | null =
    cycles.length >= FEWEST_CYCLES && !aliased
      ? meanOverCycles(cycles)
      : coarse && span.end - span.start >= FEWEST_READINGS_A_CYCLE
        ? meanOverHold(at, airOnCelsius, span, setting.longestStep)
        : null;

  const short =
    setting.setCelsius === null ? null : powerLimitedShare(readings, setting.setCelsius, hold.from, hold.to);
  const full = duty !== null && duty > FULL_DUTY;
  const powerLimited = (short !== null && short > POWER_LIMITED_HOLD_SHARE) || full;

  if (blown.length < found.cycles.length) {
    sentences.push(
      `The fan stood still in ${found.cycles.length - blown.length} of ${found.cycles.length} cycles; they are left out.`,
    );
  }
  if (setting.setCelsius === null) sentences.push("No set point is logged, so no offset can be given.");
  if (powerLimited) {
    sentences.push("The heater could not satisfy the thermostat in this hold, so its offset is not claimed.");
  } else if (mean === null) {
    sentences.push(
      `The hold shows ${cycles.length === 0 ? "no whole cycle" : `only ${cycles.length} whole ${cycles.length === 1 ? "cycle" : "cycles"}`} of the thermostat; its offset needs ${FEWEST_CYCLES}.`,
    );
  } else if (!shaped) {
    sentences.push(
      aliased || perCycle === null
        ? "The readings are too far apart to follow a cycle: swing, period and switch points are not claimed, the mean is."
        : `The readings are ${perCycle.toFixed(1)} a cycle; swing, period and switch points need ${FEWEST_READINGS_A_CYCLE}, the mean does not.`,
    );
  } else if (cycles.length < FEWEST_CYCLES_FOR_SHAPE) {
    sentences.push(`The hold shows ${cycles.length} whole cycles; swing and period need ${FEWEST_CYCLES_FOR_SHAPE}.`);
  }
  const claims = mean !== null && setting.setCelsius !== null && !powerLimited;
  return {
    offsetKelvin: claims ? mean.mean - (setting.setCelsius as number) : null,
    standardErrorKelvin: claims ? mean.standardError : null,
    meanCelsius: mean?.mean ?? null,
    wholeCycles: aliased ? 0 : cycles.length,
    readingsACycle: aliased ? null : perCycle,
    duty,
    shape: shaped && cycles.length >= FEWEST_CYCLES_FOR_SHAPE ? cycleShape(cycles) : null,
    powerLimitedShare: short,
    powerLimited,
    sentences,
  };
}

function dutyOf(cycles: readonly Cycle[], readFrom: "heater" | "air", shaped: boolean): number | null {
  if (cycles.length < FEWEST_CYCLES || (readFrom === "air" && !shaped)) return null;
  let [on, all] = [0, 0];
  for (const { from, to, onTime } of cycles) {
    on += onTime;
    all += to - from;
  }
  return on / all;
}
