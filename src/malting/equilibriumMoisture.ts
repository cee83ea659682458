import { saturationPressure } from "./moistAir.ts";

/**
 * Moisture that grain settles at in air of a given temperature and humidity, by the two equations of ASABE D245.
 *
 * The constants are from memory of ASABE D245 and were not read in the original; one secondary copy prints barley's A
 * as 457.12 (likely two digits swapped), which moves the result by about a quarter of a point. There are no constants
 * for malt: barley stands in as a proxy. At curing temperatures equilibrium does not set the final moisture, time does.
 */
export interface EquilibriumConstants {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

export type EquilibriumGrain = "barley" | "wheat-hard" | "wheat-soft";

/** rh = exp[−A/(T+C) · exp(−B·M)], M in % dry basis, T in °C. */
export const CHUNG_PFOST: Readonly<Record<EquilibriumGrain, EquilibriumConstants>> = {
  barley: { a: 475.12, b: 0.14843, c: 71.996 },
  "wheat-hard": { a: 529.43, b: 0.17609, c: 50.998 },
  "wheat-soft": { a: 726.49, b: 0.23607, c: 35.662 },
};

/** 1 − rh = exp[−A·(T+C)·M^B], M in % dry basis, T in °C. */
export const HENDERSON: Readonly<Record<EquilibriumGrain, EquilibriumConstants>> = {
  barley: { a: 2.2919e-5, b: 2.0123, c: 195.267 },
  "wheat-hard": { a: 2.3007e-5, b: 2.2857, c: 55.815 },
  "wheat-soft": { a: 1.2299e-5, b: 2.5558, c: 64.346 },
};

function requireFraction(relativeHumidity: number): void {
  if (!(relativeHumidity > 0 && relativeHumidity < 1)) {
    throw new RangeError(`relative humidity must lie between 0 and 1, ends excluded; got ${relativeHumidity}`);
  }
}

/**
 * Equilibrium moisture, % dry basis, by the modified Chung–Pfost equation. Never below 0: in the very dry air of a cure
 * the equation itself goes negative.
 *
 * @param relativeHumidity a fraction between 0 and 1, ends excluded
 * @throws {RangeError} outside
 */
export function equilibriumMoistureChungPfost(
  grain: EquilibriumGrain,
  celsius: number,
  relativeHumidity: number,
): number {
  requireFraction(relativeHumidity);
  const { a, b, c } = CHUNG_PFOST[grain];
  return Math.max(0, -Math.log((-(celsius + c) * Math.log(relativeHumidity)) / a) / b);
}

/** The inverse: relative humidity (0 to 1) of air in balance with grain at `moistureDryPercent`. */
export function equilibriumHumidityChungPfost(
  grain: EquilibriumGrain,
  celsius: number,
  moistureDryPercent: number,
): number {
  if (!(moistureDryPercent >= 0)) throw new RangeError(`moisture cannot be below 0; got ${moistureDryPercent}`);
  const { a, b, c } = CHUNG_PFOST[grain];
  return Math.exp((-a / (celsius + c)) * Math.exp(-b * moistureDryPercent));
}

/**
 * Equilibrium moisture, % dry basis, by the modified Henderson equation. The two equations differ by about two points
 * for barley at room temperature: choose one and keep to it.
 *
 * @throws {RangeError} when `relativeHumidity` lies outside 0 to 1
 */
export function equilibriumMoistureHenderson(
  grain: EquilibriumGrain,
  celsius: number,
  relativeHumidity: number,
): number {
  requireFraction(relativeHumidity);
  const { a, b, c } = HENDERSON[grain];
  return (-Math.log(1 - relativeHumidity) / (a * (celsius + c))) ** (1 / b);
}

/**
 * How much more heat the last, bound water takes than free water: the ratio of the two latent heats, 1 in wet grain and
 * rising as it dries. Derived from Chung–Pfost by the Clausius–Clapeyron relation, with no data of its own.
 */
export function boundWaterHeatRatio(grain: EquilibriumGrain, celsius: number, moistureDryPercent: number): number {
  const { c } = CHUNG_PFOST[grain];
  const logHumidity = Math.log(equilibriumHumidityChungPfost(grain, celsius, moistureDryPercent));
  const step = 0.01;
  const slope = (saturationPressure(celsius + step) - saturationPressure(celsius - step)) / (2 * step);
  return 1 - (logHumidity / (celsius + c)) * (saturationPressure(celsius) / slope);
}
