/**
 * One batch on its way from steep to malt, all stages joined: what the SQL of `engine/sql` yields, in SI and UTC
 * milliseconds. `null` is *not recorded*, never 0.
 */
export interface RunRow {
  readonly run: string;
  readonly lot: string | null;
  /** All lots, where several tanks drew on different ones. */
  readonly lots: string | null;
  readonly grain: string | null;
  readonly variety: string | null;
  readonly grower: string | null;
  readonly cropYear: number | null;
  readonly grainInKilograms: number | null;
  readonly grainMoisturePercent: number | null;
  readonly grainProteinDryPercent: number | null;

  readonly steepStartedAt: number | null;
  readonly steepEndedAt: number | null;
  readonly steepWaterCelsius: number | null;
  readonly steepWetHours: number | null;
  readonly steepAirRestHours: number | null;
  readonly steepOutKilograms: number | null;
  readonly steepOutMoisturePercent: number | null;
  /** `measured` or `from mass gain`. */
  readonly steepOutMoistureBasis: string | null;
  readonly chittedPercent: number | null;
  readonly tanks: number | null;

  readonly germinationStartedAt: number | null;
  readonly germinationEndedAt: number | null;
  readonly bedMeanCelsius: number | null;
  readonly bedMaxCelsius: number | null;
  readonly roomCelsius: number | null;
  readonly turns: number | null;
  readonly greenMoisturePercent: number | null;
  /** Mean relative acrospire length, fraction of kernel length, overgrown counted 1.125. */
  readonly acrospireMean: number | null;
  readonly acrospireOvergrownPercent: number | null;
  readonly acrospireCounted: number | null;
  readonly beds: number | null;

  /** The kiln load it was dried in (the first, where it was split). */
  readonly load: string | null;
  readonly loads: number;
  readonly kiln: string | null;
  readonly loadedAt: number | null;
  readonly cureStartedAt: number | null;
  readonly heatOffAt: number | null;
  readonly unloadedAt: number | null;
  readonly kilnHours: number | null;
  readonly dryingHours: number | null;
  readonly bedDepthMetres: number | null;
  readonly greenLoadKilograms: number | null;
  readonly finalMoisturePercent: number | null;
  /** `logged`, `mean of n samples` or `laboratory`. */
  readonly finalMoistureBasis: string | null;
  readonly maltOutKilograms: number | null;
  /** Malt used in the yield: `cleaned`, `as unloaded less rootlets` or `as unloaded`. */
  readonly maltKilograms: number | null;
  readonly maltBasis: string | null;
  readonly rootletsKilograms: number | null;
  readonly dryMatterYieldPercent: number | null;
  readonly asIsYieldPercent: number | null;
  readonly waterRemovedKilograms: number | null;
  readonly energyKilowattHours: number | null;
  readonly bagCode: string | null;
  readonly notes: string | null;
}
