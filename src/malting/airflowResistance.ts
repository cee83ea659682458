/**
 * What a bed of grain holds against the air, by Shedd's equation as in ASAE D272: ΔP/L = a·Q²/ln(1 + b·Q).
 *
 * The constants are from memory and for clean, dry, loosely filled grain. A note to ASAE D272.3 gives damp grain
 * (equilibrium humidity above 85 %) four fifths of the resistance, and packing up to half as much again. Green malt with
 * rootlets differs: use the shape of the curve, not its height.
 */
export type ResistanceGrain = "barley" | "wheat";

const SHEDD: Readonly<Record<ResistanceGrain, { readonly a: number; readonly b: number }>> = {
  barley: { a: 2.14e4, b: 13.2 },
  wheat: { a: 2.7e4, b: 8.77 },
};

/** Factor for damp grain (note to ASAE D272.3). */
export const DAMP_GRAIN_FACTOR = 0.8;

/** The air speeds that the equation was fitted over, m³/s for each m² of floor. */
export const SHEDD_RANGE: readonly [low: number, high: number] = [0.0056, 0.203];

/**
 * Pressure lost in a metre of bed, Pa/m.
 *
 * @param airSpeed m³ of air a second through each m² of floor; the fit holds over {@link SHEDD_RANGE}
 * @throws {RangeError} for a speed of 0 or below
 */
export function pressureDropPerMetre(grain: ResistanceGrain, airSpeed: number): number {
  if (!(airSpeed > 0)) throw new RangeError(`pressureDropPerMetre needs an air speed above 0; got ${airSpeed}`);
  const { a, b } = SHEDD[grain];
  return (a * airSpeed ** 2) / Math.log(1 + b * airSpeed);
}
