import { fanThermostat } from "./fanThermostat.ts";
import { type HoldOffset, type HoldSetting, holdOffset } from "./holdOffset.ts";
import { findHolds, type Hold, type LoggedTimes } from "./holds.ts";
import { type KilnReadings, MINUTE, placesIn, type SoundReadings } from "./kilnReadings.ts";
import { loadRises } from "./loadRises.ts";
import { daysSinceCheck, type LoggerHistory } from "./loggerChecks.ts";
import { correctReadings, errorAtReading, errorUncertainty, type LoggerError } from "./loggerCorrection.ts";
import { cureProbeSpan, dryingProbeSpan, type OtherProbeChecks, otherProbes } from "./otherProbes.ts";
import { qualitySentences } from "./qualitySentences.ts";
import { gapLength, readingQuality, soundReadings } from "./readingQuality.ts";
import type { RiseRate } from "./riseRate.ts";
import { shareOn } from "./shareOn.ts";
import type { ThermostatLoad } from "./thermostatLoad.ts";
import { turnProminence } from "./turningPoints.ts";

/** A load as it is logged. */
export interface SummarisedLoad extends LoggedTimes {
  readonly load: string;
  readonly kiln: string;
  readonly fanSetCelsius: number | null;
}

/**
 * Reads one load: quality of the readings, holds, offset and shape of the cycles in drying hold and cure, rise, fan, and what
 * the logger's checks take off. Loads are read one at a time, so that ten years of readings need the memory of one.
 *
 * @param curve the readings from loading to unloading, in time order
 * @param history checks of the air-on probe of this load's kiln, from `loggerHistory`
 * @param otherChecks of the probes over and in the bed
 * @throws {RangeError} when the columns differ in length or time runs backwards
 */
export function summariseLoad(
  curve: KilnReadings,
  load: SummarisedLoad,
  history: LoggerHistory,
  otherChecks: OtherProbeChecks | null = null,
): ThermostatLoad {
  const quality = readingQuality(curve);
  const corrected = correctReadings(curve, history);
  const readings = soundReadings(corrected.readings, quality);
  const usualStep = (quality.usualStepMinutes ?? 0) * MINUTE;
  const longestStep = gapLength(usualStep);
  const prominenceKelvin = turnProminence(quality.resolutionKelvin, quality.noiseKelvin);
  const holds = findHolds(readings, load, prominenceKelvin);

  const { warmUp, ramp } = loadRises(readings, load, holds, longestStep);
  const judged = (hold: Hold | null, setCelsius: number | null, rise: RiseRate | null): HoldOffset | null => {
    const setting: HoldSetting = {
      setCelsius,
      prominenceKelvin,
      longestStep,
      usualStep,
      firstRiseKelvinPerMinute: rise?.kelvinPerMinute ?? null,
    };
    return hold && holdOffset(readings, hold, setting);
  };
  const fanShareOfWarmUp =
    holds.warmUpEndsAt === null
      ? null
      : shareOn(readings, readings.fanOn, { from: load.loadedAt, to: holds.warmUpEndsAt }, longestStep);
  const fanBlew = fanShareOfWarmUp === null || fanShareOfWarmUp > 0.99;
  const drying = judged(holds.drying, load.dryingSetCelsius, fanBlew ? warmUp.rise : null);
  const cure = judged(holds.cure, load.cureSetCelsius, ramp.rise);
  const fan = fanThermostat(readings, holds.drying, load.fanSetCelsius, longestStep);
  const peak = holds.rampTo === null ? null : (airAt(readings, holds.rampTo) ?? null);
  const usualPeak = cure?.shape?.highCelsius ?? null;
  const { error } = corrected;
  const dryingProbes = otherProbes(curve, holds.drying && dryingProbeSpan(holds.drying), otherChecks);
  const cureProbes = otherProbes(curve, holds.cure && cureProbeSpan(holds.cure), otherChecks);

  return {
    load: load.load,
    kiln: load.kiln,
    loadedAt: load.loadedAt,
    warmUpEndsAt: holds.warmUpEndsAt,
    dryingFrom: holds.drying?.from ?? null,
    dryingTo: holds.drying?.to ?? null,
    rampFrom: holds.rampFrom,
    rampIs: holds.rampIs,
    cureFrom: holds.cure?.from ?? null,
    cureTo: holds.cure?.to ?? null,

    dryingSetCelsius: load.dryingSetCelsius,
    dryingOffsetKelvin: drying?.offsetKelvin ?? null,
    dryingStandardErrorKelvin: drying?.standardErrorKelvin ?? null,
    dryingMeanCelsius: drying?.meanCelsius ?? null,
    dryingCycles: drying?.wholeCycles ?? null,
    dryingReadingsACycle: drying?.readingsACycle ?? null,
    dryingDuty: drying?.duty ?? null,
    dryingSwingKelvin: drying?.shape?.swingKelvin ?? null,
    dryingPeriodMinutes: drying?.shape?.periodMinutes ?? null,
    dryingSwitchOffCelsius: drying?.shape?.switchOffCelsius ?? null,
    dryingSwitchOnCelsius: drying?.shape?.switchOnCelsius ?? null,
    dryingPowerLimitedShare: drying?.powerLimitedShare ?? null,
    dryingPowerLimited: drying?.powerLimited ?? false,

    cureSetCelsius: load.cureSetCelsius,
    cureOffsetKelvin: cure?.offsetKelvin ?? null,
    cureStandardErrorKelvin: cure?.standardErrorKelvin ?? null,
    cureMeanCelsius: cure?.meanCelsius ?? null,
    cureCycles: cure?.wholeCycles ?? null,
    cureReadingsACycle: cure?.readingsACycle ?? null,
    cureDuty: cure?.duty ?? null,
    cureSwingKelvin: cure?.shape?.swingKelvin ?? null,
    curePeriodMinutes: cure?.shape?.periodMinutes ?? null,
    cureSwitchOffCelsius: cure?.shape?.switchOffCelsius ?? null,
    cureSwitchOnCelsius: cure?.shape?.switchOnCelsius ?? null,
    curePowerLimitedShare: cure?.powerLimitedShare ?? null,
    curePowerLimited: cure?.powerLimited ?? false,
    cureOvershootKelvin: difference(peak, load.cureSetCelsius),
    cureOvershootBeyondCyclesKelvin: difference(peak, usualPeak),

    dryingAirOffCelsius: dryingProbes.airOffCelsius,
    dryingBedCelsius: dryingProbes.bedCelsius,
    cureAirOffCelsius: cureProbes.airOffCelsius,
    cureBedCelsius: cureProbes.bedCelsius,

    minutesToDryingSet: warmUp.minutesToSet,
    minutesToCureSet: ramp.minutesToSet,
    warmUpRiseKelvinPerMinute: warmUp.rise?.kelvinPerMinute ?? null,
    warmUpRiseFromCelsius: warmUp.rise?.fromCelsius ?? null,
    warmUpRiseToCelsius: warmUp.rise?.toCelsius ?? null,
    rampRiseKelvinPerMinute: ramp.rise?.kelvinPerMinute ?? null,
    rampRiseFromCelsius: ramp.rise?.fromCelsius ?? null,
    rampRiseToCelsius: ramp.rise?.toCelsius ?? null,

    fanShareOfWarmUp,
    fanShareOfHold: fan?.shareOfHold ?? null,
    fanSwitchOnCelsius: fan?.switchOnCelsius ?? null,
    fanSwitchOffCelsius: fan?.switchOffCelsius ?? null,
    fanOffsetKelvin: fan?.offsetKelvin ?? null,
    fanStandardErrorKelvin: fan?.standardErrorKelvin ?? null,

    readings: quality.readings,
    usualStepMinutes: quality.usualStepMinutes,
    irregular: quality.irregular,
    resolutionKelvin: quality.resolutionKelvin,
    gaps: quality.gaps.length,
    gapMinutes: minutesOf(quality.gaps),
    frozenMinutes: minutesOf(quality.frozen),
    spikes: quality.spikes.length,

    dryingLoggerErrorKelvin: errorFor(error, load.dryingSetCelsius),
    cureLoggerErrorKelvin: errorFor(error, load.cureSetCelsius),
    dryingCheckUncertaintyKelvin: uncertaintyFor(error, load.dryingSetCelsius),
    cureCheckUncertaintyKelvin: uncertaintyFor(error, load.cureSetCelsius),
    correctionAgeDays: error?.ageDays ?? null,
    daysSinceCheck: daysSinceCheck(history, load.loadedAt),

    sentences: [
      ...qualitySentences(quality),
      ...(holds.dryingReason === null ? [] : [holds.dryingReason]),
      ...(drying?.sentences ?? []).map((sentence) => `Drying: ${sentence}`),
      ...(holds.cureReason === null ? [] : [holds.cureReason]),
      ...(cure?.sentences ?? []).map((sentence) => `Cure: ${sentence}`),
      ...(fan?.sentences ?? []),
      ...(error === null
        ? ["No hot check of the logger's air-on probe covers this load: its readings are as logged."]
        : []),
    ],
  };
}

const airAt = ({ at, airOnCelsius }: SoundReadings, moment: number): number | undefined =>
  airOnCelsius[placesIn(at, { from: moment, to: moment }).start];

const difference = (a: number | null, b: number | null): number | null => (a === null || b === null ? null : a - b);

const minutesOf = (spans: readonly { readonly from: number; readonly to: number }[]): number =>
  spans.reduce((sum, { from, to }) => sum + (to - from), 0) / MINUTE;

const errorFor = (error: LoggerError | null, celsius: number | null): number | null =>
  error === null || celsius === null ? null : errorAtReading(error, celsius);

const uncertaintyFor = (error: LoggerError | null, celsius: number | null): number | null =>
  error === null || celsius === null ? null : errorUncertainty(error, celsius);
