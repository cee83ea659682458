import type { DryingAir } from "./dryingPower.ts";
import { humidityRatio, wetBulb } from "./moistAir.ts";

/**
 * Wet bulb of outside air after the heater, °C: where wet grain stands, and the air that leaves it.
 *
 * Source: adiabatic saturation, ASHRAE Fundamentals 2017, ch. 1, eq. 33.
 *
 * @throws {RangeError} outside what moist air allows
 */
export function heatedWetBulb({
  celsius,
  relativeHumidityPercent,
  heatedToCelsius,
  pressurePascals,
}: DryingAir): number {
  return wetBulb(heatedToCelsius, humidityRatio(celsius, relativeHumidityPercent, pressurePascals), pressurePascals);
}

/**
 * How far that wet bulb moves for each kelvin that the air is heated more, K/K: 0.28 at 48 °C, 0.21 at 80 °C. Wet grain
 * stands at the wet bulb, dry grain at the air's own temperature: whatever its moisture, a bed moves by no less than this for a
 * kelvin at air on, and by no more than one.
 *
 * @throws {RangeError} outside what moist air allows
 */
export function wetBulbGain(air: DryingAir): number {
  const { heatedToCelsius } = air;
  return (
    heatedWetBulb({ ...air, heatedToCelsius: heatedToCelsius + 0.5 }) -
    heatedWetBulb({ ...air, heatedToCelsius: heatedToCelsius - 0.5 })
  );
}
