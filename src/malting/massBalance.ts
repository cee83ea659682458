/**
 * Where the grain's dry matter goes. Moistures are in % of the mass as it is, masses in kilograms; dry matter is taken to
 * stay constant through steep and kiln, and what malting costs is read from grain in and malt out.
 */

function requireMoisture(name: string, percent: number): void {
  if (!(percent >= 0 && percent < 100)) throw new RangeError(`${name} must lie in 0 to 100 %; got ${percent}`);
}

function requireMass(name: string, kilograms: number): void {
  if (!(kilograms > 0)) throw new RangeError(`${name} must be above 0 kg; got ${kilograms}`);
}

/** Kilograms of dry matter in `kilograms` at `moisturePercent`. */
export function dryMatterKilograms(kilograms: number, moisturePercent: number): number {
  requireMoisture("moisture", moisturePercent);
  return kilograms * (1 - moisturePercent / 100);
}

/** Kilograms of water to a kilogram of dry matter: 44 % as is → 0.7857. */
export function dryBasisMoisture(moisturePercent: number): number {
  requireMoisture("moisture", moisturePercent);
  return moisturePercent / (100 - moisturePercent);
}

/**
 * Steep-out moisture, %, from the gain in mass: 100 − W₀(100 − M₀)/W₁.
 *
 * Drain first: water on the surface makes it read high. Dry matter leached away makes it read low, by about 0.55 point at
 * 44 % for one per cent leached (computed).
 *
 * @throws {RangeError} on masses not above 0, a moisture outside 0 to 100 %, or a steep-out mass below the dry matter
 */
export function steepOutMoisturePercent(
  grainInKilograms: number,
  grainMoisturePercent: number,
  steepOutKilograms: number,
): number {
  requireMass("grain in", grainInKilograms);
  requireMass("steep out", steepOutKilograms);
  const dryMatter = dryMatterKilograms(grainInKilograms, grainMoisturePercent);
  if (dryMatter > steepOutKilograms) {
    throw new RangeError(`steep out (${steepOutKilograms} kg) is below the grain's dry matter (${dryMatter} kg)`);
  }
  return 100 * (1 - dryMatter / steepOutKilograms);
}

/** The steep-out mass, kg, at which the grain will stand at `wantedMoisturePercent`: W₀(100 − M₀)/(100 − M₁). */
export function steepOutMassAt(
  grainInKilograms: number,
  grainMoisturePercent: number,
  wantedMoisturePercent: number,
): number {
  requireMoisture("wanted moisture", wantedMoisturePercent);
  return dryMatterKilograms(grainInKilograms, grainMoisturePercent) / (1 - wantedMoisturePercent / 100);
}

/** Malt made and the grain it was made from. */
export interface GrainAndMalt {
  readonly grainInKilograms: number;
  readonly grainMoisturePercent: number;
  readonly maltKilograms: number;
  readonly maltMoisturePercent: number;
}

/** Malt out over grain in, %, both as they are: what the scale says, and what a change of moisture alone can move. */
export function asIsYieldPercent(grainInKilograms: number, maltKilograms: number): number {
  requireMass("grain in", grainInKilograms);
  return (100 * maltKilograms) / grainInKilograms;
}

/**
 * Dry matter of the malt over dry matter of the grain, %: the yield to compare batches by.
 * May exceed 100 when a scale or a meter is wrong; that is for a rule to report, not for this to hide.
 */
export function dryMatterYieldPercent(batch: GrainAndMalt): number {
  requireMass("grain in", batch.grainInKilograms);
  return (
    (100 * dryMatterKilograms(batch.maltKilograms, batch.maltMoisturePercent)) /
    dryMatterKilograms(batch.grainInKilograms, batch.grainMoisturePercent)
  );
}

export interface MaltingLoss {
  /** 100 less the dry-matter yield. */
  readonly totalPercent: number;
  /** Dry matter in the rootlets, % of the grain's; null where they were not weighed. */
  readonly rootletsPercent: number | null;
  /** Steep, respiration and every weighing error together, by difference; may be negative and is shown so. */
  readonly restPercent: number | null;
}

/**
 * Malting loss, % of the grain's dry matter, split into rootlets and the rest.
 *
 * @param rootlets their mass and moisture; null where they were not weighed
 */
export function maltingLoss(
  batch: GrainAndMalt,
  rootlets: { readonly kilograms: number; readonly moisturePercent: number } | null,
): MaltingLoss {
  const totalPercent = 100 - dryMatterYieldPercent(batch);
  if (!rootlets) return { totalPercent, rootletsPercent: null, restPercent: null };
  const rootletsPercent =
    (100 * dryMatterKilograms(rootlets.kilograms, rootlets.moisturePercent)) /
    dryMatterKilograms(batch.grainInKilograms, batch.grainMoisturePercent);
  return { totalPercent, rootletsPercent, restPercent: totalPercent - rootletsPercent };
}

/** Kilograms of water that leave `dryMatterKg` of grain between two moistures: dry matter × (M₁′ − M₂′), dry basis. */
export function waterRemovedKilograms(
  dryMatterKg: number,
  fromMoisturePercent: number,
  toMoisturePercent: number,
): number {
  return dryMatterKg * (dryBasisMoisture(fromMoisturePercent) - dryBasisMoisture(toMoisturePercent));
}
