/** Air at the kiln's intake. */
export interface IntakeAir {
  readonly relativeHumidityPercent: number;
  readonly celsius: number | null;
  /** `weather` (from weather/) or `logged` (written in kilning.csv). */
  readonly source: "weather" | "logged";
}

/** One firing of one kiln: the unit that hours and weather belong to. May hold several runs. */
export interface LoadRow {
  readonly load: string;
  readonly kiln: string;
  readonly runs: readonly string[];
  /** The variety where all its runs share one; null for a mixed load. */
  readonly variety: string | null;
  readonly grain: string | null;
  readonly loadedAt: number;
  readonly cureStartedAt: number | null;
  readonly heatOffAt: number | null;
  readonly unloadedAt: number | null;
  readonly kilnHours: number | null;
  readonly dryingHours: number | null;
  readonly bedDepthMetres: number | null;
  readonly grainInKilograms: number | null;
  readonly grainMoisturePercent: number | null;
  readonly greenLoadKilograms: number | null;
  readonly greenMoisturePercent: number | null;
  /** Known when the kiln was loaded. */
  readonly airAtLoading: IntakeAir | null;
  /** Averaged over the load. */
  readonly airOverLoad: IntakeAir | null;
  readonly dryingSetCelsius: number | null;
  readonly cureSetCelsius: number | null;
  readonly finalMoisturePercent: number | null;
  readonly maltOutKilograms: number | null;
  readonly waterRemovedKilograms: number | null;
  readonly energyKilowattHours: number | null;
  /**
   * Share of the drying hold, after warm-up, in which the heater could not satisfy the thermostat; null without
   * readings.
   */
  readonly powerLimitedShare: number | null;
  /** True where that share is over the stated limit: such a load is shown but not pooled into the fits. */
  readonly powerLimited: boolean;
  /**
   * Share (0 to 1) of the drying hold in which the fan ran, from the readings' fan_on; null where that is not logged, as of a fan
   * that simply runs.
   */
  readonly fanShareOfHold: number | null;
  /** Where the readings of this load can be fetched, relative to the tables' folder; null without readings. */
  readonly readingsFile: string | null;
}
