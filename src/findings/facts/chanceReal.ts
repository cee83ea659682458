/** An effect as it was seen: with the ends of its 95 % interval. */
export interface SeenEffect {
  readonly estimate: number;
  readonly low: number;
  readonly high: number;
}

/** What is believed before looking. */
export interface BeforeLooking {
  /** Share of months in which such a trouble is there at all. */
  readonly share: number;
  /** How large it is where it is there: the standard deviation of true effects, in the effect's unit. */
  readonly size: number;
}

const normalDensity = (x: number, deviation: number): number => Math.exp(-0.5 * (x / deviation) ** 2) / deviation;

const HALF_WIDTHS = 2 * 1.959_963_984_540_054;

/**
 * The chance, 0 to 1, that an effect is there and not a play of chance: the two-groups model (Efron 2008, Statistical
 * Science 23, 1–22; from memory). Either nothing is there and the estimate scatters by its standard error alone, or a true
 * effect is there and adds its own spread.
 *
 * @throws {RangeError} for a share outside 0 to 1, or a size that is not positive
 */
export function chanceReal({ estimate, low, high }: SeenEffect, { share, size }: BeforeLooking): number {
  if (!(share > 0 && share < 1)) throw new RangeError(`chanceReal requires a share between 0 and 1; got ${share}`);
  if (!(size > 0)) throw new RangeError(`chanceReal requires a positive size; got ${size}`);
  const error = Math.max((high - low) / HALF_WIDTHS, size / 1e6);
  const there = share * normalDensity(estimate, Math.hypot(error, size));
  const chance = (1 - share) * normalDensity(estimate, error);
  return there / (there + chance);
}

/**
 * The same for an alarm of known rates: `false` of them to expect in the time looked at, and a chance `power` that one would
 * have been raised had the trouble been there.
 */
export function chanceAlarmReal(expectedFalse: number, { share, power }: { share: number; power: number }): number {
  const byChance = (1 - share) * (1 - Math.exp(-expectedFalse));
  return (share * power) / (share * power + byChance);
}
