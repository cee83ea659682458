const KILOJOULES_PER_KILOWATT_HOUR = 3600;

/**
 * Heat, kJ, that evaporates one kilogram of free water at this temperature: the floor under what any kiln can use.
 *
 * λ = 2501 − 2.36 T, the usual straight line through the steam tables (from memory), for 0 to 100 °C.
 *
 * @throws {RangeError} outside 0 to 100 °C
 */
export function latentHeatKilojoulesPerKilogram(celsius: number): number {
  if (!(celsius >= 0 && celsius <= 100)) {
    throw new RangeError(`latent heat is stated for 0 to 100 °C; got ${celsius}`);
  }
  return 2501 - 2.36 * celsius;
}

/** As {@link latentHeatKilojoulesPerKilogram}, in kWh: about 0.67. */
export function latentHeatKilowattHoursPerKilogram(celsius: number): number {
  return latentHeatKilojoulesPerKilogram(celsius) / KILOJOULES_PER_KILOWATT_HOUR;
}
