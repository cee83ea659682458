/**
 * Properties of moist air. Temperatures in degrees Celsius, pressures in pascals, humidity ratios W in kilograms of
 * water vapour per kilogram of dry air.
 *
 * Source: ASHRAE Handbook, Fundamentals 2017 (SI), chapter 1; equation numbers stand at each function. The ideal-gas
 * relations used here lie about 0.5 % below the tabulated real-gas humidity ratios, by design of the chapter.
 */

/** Ratio of the molar masses of water and dry air (ASHRAE 2017, ch. 1, eq. 20). */
const MOLAR_MASS_RATIO = 0.621945;
const KELVIN_AT_ZERO_CELSIUS = 273.15;
/** Triple point of water: below it the vapour is in balance with ice. */
const TRIPLE_POINT_CELSIUS = 0.01;

export const STANDARD_PRESSURE_PASCALS = 101_325;

/**
 * Pressure of the standard atmosphere at a height above the sea, for a house with no barometer.
 *
 * ASHRAE 2017, ch. 1, eq. 3, for −5 000 to 11 000 m.
 *
 * @throws {RangeError} outside that range
 */
export function pressureAtAltitude(altitudeMetres: number): number {
  if (!(altitudeMetres >= -5000 && altitudeMetres <= 11_000)) {
    throw new RangeError(`pressureAtAltitude holds from -5000 to 11000 m; got ${altitudeMetres}`);
  }
  return STANDARD_PRESSURE_PASCALS * (1 - 2.25577e-5 * altitudeMetres) ** 5.2559;
}

/**
 * Pressure of saturated water vapour, Pa, over ice up to the triple point and over water above it.
 *
 * ASHRAE 2017, ch. 1, eq. 5 (ice, from −100 °C) and eq. 6 (water, to 200 °C), after Hyland and Wexler 1983.
 *
 * @throws {RangeError} outside −100 to 200 °C
 */
export function saturationPressure(celsius: number): number {
  if (!(celsius >= -100 && celsius <= 200)) {
    throw new RangeError(`saturationPressure holds from -100 to 200 °C; got ${celsius}`);
  }
  const t = celsius + KELVIN_AT_ZERO_CELSIUS;
  if (celsius <= TRIPLE_POINT_CELSIUS) {
    return Math.exp(
      -5.6745359e3 / t +
        6.3925247 +
        t * (-9.677843e-3 + t * (6.2215701e-7 + t * (2.0747825e-9 - 9.484024e-13 * t))) +
        4.1635019 * Math.log(t),
    );
  }
  return Math.exp(
    -5.8002206e3 / t +
      1.3914993 +
      t * (-4.8640239e-2 + t * (4.1764768e-5 - 1.4452093e-8 * t)) +
      6.5459673 * Math.log(t),
  );
}

/** W of air with this vapour pressure (ASHRAE 2017, ch. 1, eq. 20). */
export function humidityRatioAtVapourPressure(vapourPascals: number, pressurePascals: number): number {
  if (!(vapourPascals >= 0 && vapourPascals < pressurePascals)) {
    throw new RangeError(`vapour pressure must lie in 0 to ${pressurePascals} Pa; got ${vapourPascals}`);
  }
  return (MOLAR_MASS_RATIO * vapourPascals) / (pressurePascals - vapourPascals);
}

/** Vapour pressure, Pa, of air with humidity ratio W: the inverse of {@link humidityRatioAtVapourPressure}. */
export function vapourPressure(humidityRatio: number, pressurePascals: number): number {
  if (!(humidityRatio >= 0)) throw new RangeError(`a humidity ratio cannot be below 0; got ${humidityRatio}`);
  return (pressurePascals * humidityRatio) / (MOLAR_MASS_RATIO + humidityRatio);
}

/** W of saturated air (ASHRAE 2017, ch. 1, eq. 21). */
export function saturationHumidityRatio(celsius: number, pressurePascals: number): number {
  return humidityRatioAtVapourPressure(saturationPressure(celsius), pressurePascals);
}

/**
 * W of air at a temperature and relative humidity (ASHRAE 2017, ch. 1, eq. 20 and 12).
 *
 * @param relativeHumidityPercent 0 to 100
 * @throws {RangeError} when it lies outside
 */
export function humidityRatio(celsius: number, relativeHumidityPercent: number, pressurePascals: number): number {
  if (!(relativeHumidityPercent >= 0 && relativeHumidityPercent <= 100)) {
    throw new RangeError(`relative humidity must lie in 0 to 100 %; got ${relativeHumidityPercent}`);
  }
  return humidityRatioAtVapourPressure((relativeHumidityPercent / 100) * saturationPressure(celsius), pressurePascals);
}

/** Relative humidity, %, of air with humidity ratio W (ASHRAE 2017, ch. 1, eq. 12); above 100 where it would be mist. */
export function relativeHumidity(celsius: number, humidityRatio: number, pressurePascals: number): number {
  return (100 * vapourPressure(humidityRatio, pressurePascals)) / saturationPressure(celsius);
}

/** Enthalpy, kJ per kg of dry air, counted from dry air at 0 °C (ASHRAE 2017, ch. 1, eq. 30). */
export function enthalpy(celsius: number, humidityRatio: number): number {
  return 1.006 * celsius + humidityRatio * (2501 + 1.86 * celsius);
}

/** Volume, m³ of moist air per kg of dry air (ASHRAE 2017, ch. 1, eq. 26). */
export function specificVolume(celsius: number, humidityRatio: number, pressurePascals: number): number {
  const kelvin = celsius + KELVIN_AT_ZERO_CELSIUS;
  return (0.287042 * kelvin * (1 + 1.607858 * humidityRatio)) / (pressurePascals / 1000);
}

/** W of air from its dry-bulb and wet-bulb temperatures (ASHRAE 2017, ch. 1, eq. 33; below freezing eq. 35). */
export function humidityRatioAtWetBulb(celsius: number, wetBulbCelsius: number, pressurePascals: number): number {
  const saturated = saturationHumidityRatio(wetBulbCelsius, pressurePascals);
  const depression = celsius - wetBulbCelsius;
  return wetBulbCelsius >= 0
    ? ((2501 - 2.326 * wetBulbCelsius) * saturated - 1.006 * depression) /
        (2501 + 1.86 * celsius - 4.186 * wetBulbCelsius)
    : ((2830 - 0.24 * wetBulbCelsius) * saturated - 1.006 * depression) /
        (2830 + 1.86 * celsius - 2.1 * wetBulbCelsius);
}

/**
 * Where the rising function `f` is 0, to the last digits a double carries.
 *
 * Newton steps kept inside a bracket, and not a plain halving: the end of a halving jumps by its own tolerance when an
 * exponential differs in the last place between two engines, the end of a Newton step does not. Halving takes over after
 * 20 steps, for the small jump of the equations at the freezing point.
 */
function rootBetween(low: number, high: number, f: (x: number) => number): number {
  let below = low;
  let above = high;
  let x = (low + high) / 2;
  for (let step = 0; step < 80; step++) {
    const value = f(x);
    if (value === 0) return x;
    if (value < 0) below = x;
    else above = x;
    const newton = x - (value * 1e-4) / (f(x + 1e-4) - value);
    const next = step < 20 && newton > below && newton < above ? newton : (below + above) / 2;
    if (Math.abs(next - x) < 1e-12) return next;
    x = next;
  }
  return x;
}

/**
 * Wet-bulb temperature, °C, of air with humidity ratio W, by inverting ASHRAE 2017, ch. 1, eq. 33 and 35.
 *
 * This is also the temperature to which air cools on its way through a bed of wet grain (adiabatic saturation).
 *
 * @throws {RangeError} when the air holds more than saturation allows
 */
export function wetBulb(celsius: number, humidityRatio: number, pressurePascals: number): number {
  const pascals = vapourPressure(humidityRatio, pressurePascals);
  const saturated = saturationPressure(celsius);
  // One part in 10⁹ lets 100 % humidity through after it has gone to W and back.
  if (pascals > saturated * (1 + 1e-9)) {
    throw new RangeError(`at ${celsius} °C air holds at most ${saturated} Pa of vapour; got ${pascals}`);
  }
  if (pascals >= saturated) return celsius;
  const low = Math.max(-99, celsius - 120);
  const high = saturated < 0.98 * pressurePascals ? celsius : dewPoint(0.98 * pressurePascals);
  return rootBetween(low, high, (t) => humidityRatioAtWetBulb(celsius, t, pressurePascals) - humidityRatio);
}

/**
 * Dew point, °C, of air with this vapour pressure, by inverting {@link saturationPressure}.
 *
 * @throws {RangeError} for no vapour at all, or more than the equations cover
 */
export function dewPoint(vapourPascals: number): number {
  if (!(vapourPascals > saturationPressure(-99) && vapourPascals < saturationPressure(199))) {
    throw new RangeError(`dewPoint needs a vapour pressure between those at -99 and 199 °C; got ${vapourPascals} Pa`);
  }
  const aim = Math.log(vapourPascals);
  return rootBetween(-99, 199, (t) => Math.log(saturationPressure(t)) - aim);
}

/**
 * Boiling point of water, °C, under this pressure: what a thermometer should read in boiling water, for a logger check.
 * It falls with height, by about 1 K in 300 m.
 */
export function boilingPoint(pressurePascals: number): number {
  return dewPoint(pressurePascals);
}
