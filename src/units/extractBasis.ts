/**
 * Extract as is from extract of dry mass: E = D (1 − M/100). A point more moisture takes about 0.8 points off the extract
 * that a brewer gets out of a sack, so a certificate names its basis and so do pages.
 *
 * @param dryPercent extract, per cent of dry mass
 * @param moisturePercent moisture of the malt as it was weighed, per cent of mass, below 100
 * @returns extract, per cent of mass as is
 * @throws {RangeError} for a moisture outside 0 to 100
 * @example extractAsIs(81, 5) // 76.95
 */
export function extractAsIs(dryPercent: number, moisturePercent: number): number {
  if (!(moisturePercent >= 0 && moisturePercent < 100)) {
    throw new RangeError(`extractAsIs requires a moisture from 0 to below 100; got ${moisturePercent}`);
  }
  return dryPercent * (1 - moisturePercent / 100);
}

/** The inverse of {@link extractAsIs}: 76.5 % as is at 4.5 % moisture are 80.10 % of dry mass. */
export function extractOfDryMass(asIsPercent: number, moisturePercent: number): number {
  if (!(moisturePercent >= 0 && moisturePercent < 100)) {
    throw new RangeError(`extractOfDryMass requires a moisture from 0 to below 100; got ${moisturePercent}`);
  }
  return asIsPercent / (1 - moisturePercent / 100);
}
