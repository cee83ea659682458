/**
 * What the thermostats did in one load, flat: one row of a table. Null is *not recorded* or *cannot be said*; `sentences`
 * says why. Offsets are of corrected readings where a check of the logger allows it.
 */
export interface ThermostatLoad {
  readonly load: string;
  readonly kiln: string;
  /** Milliseconds UTC, as all moments. */
  readonly loadedAt: number;

  readonly warmUpEndsAt: number | null;
  readonly dryingFrom: number | null;
  readonly dryingTo: number | null;
  readonly rampFrom: number | null;
  /** `logged`, or `found` in the readings. */
  readonly rampIs: "logged" | "found" | null;
  readonly cureFrom: number | null;
  readonly cureTo: number | null;

  readonly dryingSetCelsius: number | null;
  readonly dryingOffsetKelvin: number | null;
  readonly dryingStandardErrorKelvin: number | null;
  readonly dryingMeanCelsius: number | null;
  readonly dryingCycles: number | null;
  readonly dryingReadingsACycle: number | null;
  readonly dryingDuty: number | null;
  readonly dryingSwingKelvin: number | null;
  readonly dryingPeriodMinutes: number | null;
  readonly dryingSwitchOffCelsius: number | null;
  readonly dryingSwitchOnCelsius: number | null;
  readonly dryingPowerLimitedShare: number | null;
  readonly dryingPowerLimited: boolean;

  readonly cureSetCelsius: number | null;
  readonly cureOffsetKelvin: number | null;
  readonly cureStandardErrorKelvin: number | null;
  readonly cureMeanCelsius: number | null;
  readonly cureCycles: number | null;
  readonly cureReadingsACycle: number | null;
  readonly cureDuty: number | null;
  readonly cureSwingKelvin: number | null;
  readonly curePeriodMinutes: number | null;
  readonly cureSwitchOffCelsius: number | null;
  readonly cureSwitchOnCelsius: number | null;
  readonly curePowerLimitedShare: number | null;
  readonly curePowerLimited: boolean;
  /** First peak of the cure over its set point, and over the usual peak of its cycles, K. */
  readonly cureOvershootKelvin: number | null;
  readonly cureOvershootBeyondCyclesKelvin: number | null;

  /** Of the probes over and in the bed, in the parts of the holds that `otherProbes` takes. */
  readonly dryingAirOffCelsius: number | null;
  readonly dryingBedCelsius: number | null;
  readonly cureAirOffCelsius: number | null;
  readonly cureBedCelsius: number | null;

  readonly minutesToDryingSet: number | null;
  readonly minutesToCureSet: number | null;
  /** At full power between the two temperatures, K a minute. */
  readonly warmUpRiseKelvinPerMinute: number | null;
  readonly warmUpRiseFromCelsius: number | null;
  readonly warmUpRiseToCelsius: number | null;
  readonly rampRiseKelvinPerMinute: number | null;
  readonly rampRiseFromCelsius: number | null;
  readonly rampRiseToCelsius: number | null;

  /** A fan that is off while the kiln warms up makes it rise faster: such loads are compared with their like only. */
  readonly fanShareOfWarmUp: number | null;
  readonly fanShareOfHold: number | null;
  readonly fanSwitchOnCelsius: number | null;
  readonly fanSwitchOffCelsius: number | null;
  readonly fanOffsetKelvin: number | null;
  readonly fanStandardErrorKelvin: number | null;

  readonly readings: number;
  readonly usualStepMinutes: number | null;
  readonly irregular: boolean;
  readonly resolutionKelvin: number | null;
  readonly gaps: number;
  readonly gapMinutes: number;
  readonly frozenMinutes: number;
  readonly spikes: number;

  /** What was taken off the readings at the drying set point and at the cure's, K; null where no check allows it. */
  readonly dryingLoggerErrorKelvin: number | null;
  readonly cureLoggerErrorKelvin: number | null;
  /** Standard uncertainty of the check behind it, K. */
  readonly dryingCheckUncertaintyKelvin: number | null;
  readonly cureCheckUncertaintyKelvin: number | null;
  /** Days to the check that the correction rests on, and since the last check of any kind. */
  readonly correctionAgeDays: number | null;
  readonly daysSinceCheck: number | null;

  readonly sentences: readonly string[];
}
