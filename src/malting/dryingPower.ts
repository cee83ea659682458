import { humidityRatio, saturationHumidityRatio, wetBulb } from "./moistAir.ts";

export interface DryingAir {
  /** The air at the kiln's intake. */
  readonly celsius: number;
  readonly relativeHumidityPercent: number;
  /** What the heater brings it to: the drying set point. */
  readonly heatedToCelsius: number;
  readonly pressurePascals: number;
}

/**
 * How much water a kilogram of dry air can carry off a bed of wet grain, kg/kg: the saturation humidity ratio at the wet
 * bulb of the heated air, less the humidity ratio that the air came in with.
 *
 * Use it where relative humidity alone would mistake cold damp air (which dries well once heated) for warm damp air
 * (which does not). The saturation humidity ratio at the *heated* temperature would be wrong by a factor of about eight,
 * because evaporation cools the air on its way through the bed.
 *
 * Source: adiabatic saturation, ASHRAE Fundamentals 2017, ch. 1, eq. 33; the difference computed from it.
 *
 * @throws {RangeError} when the air would be cooled rather than heated, or a value lies outside what moist air allows
 * @example dryingPower({ celsius: 10, relativeHumidityPercent: 80, heatedToCelsius: 55, pressurePascals: 101325 }) // 0.01287
 */
export function dryingPower(air: DryingAir): number {
  const { celsius, relativeHumidityPercent, heatedToCelsius, pressurePascals } = air;
  if (!(heatedToCelsius >= celsius)) {
    throw new RangeError(`dryingPower needs air heated to ${celsius} °C or more; got ${heatedToCelsius}`);
  }
  const carriedIn = humidityRatio(celsius, relativeHumidityPercent, pressurePascals);
  const bedCelsius = wetBulb(heatedToCelsius, carriedIn, pressurePascals);
  return saturationHumidityRatio(bedCelsius, pressurePascals) - carriedIn;
}
