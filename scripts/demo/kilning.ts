import { humidityRatio, specificVolume } from "../../src/malting/moistAir.ts";
import { PRESSURE_PASCALS } from "./airTable.ts";
import { airAt, type Weather } from "./climate.ts";
import { HOUR, MINUTE, toFiveMinutes } from "./clock.ts";
import { bedMoisturePercent, type DryingBed, LAYERS, passAir } from "./dryingBed.ts";
import { fanFlow, KILN } from "./fan.ts";
import type { Planted } from "./plant.ts";
import type { RandomStream } from "./random.ts";
import { THERMOSTAT_HALF_DIFFERENTIAL } from "./truths.ts";

const STEP_SECONDS = 20;
const STEP = STEP_SECONDS * 1000;
const STEPS_A_MINUTE = 60 / STEP_SECONDS;

/** Plenum of masonry over the heater: its heat, kJ/K, and what leaks through its walls, kW/K. It sets the cycle's length. */
const PLENUM_HEAT = 1250;
const PLENUM_LEAK = 0.06;
/** The thermostat's bulb follows the air with this delay, s. */
const BULB_SECONDS = 80;
/** For the cure the damper is closed to this share of the air, this long after the kiln is turned up. */
const CURE_AIR_SHARE = 0.6;
const DAMPER_AFTER = 40 * MINUTE;
/** The bed is raked through when it is turned up and again at the damper and before the first sample: each layer comes this near to the bed's mean. */
const RAKED_SHARE = 0.8;
/** The meter's word on which the heat goes off, %; while the bed cools it gives up some more. */
const DRY_ENOUGH = 5.25;
/**
 * The kiln card of this house: from this long after the kiln is turned up nearly dry will do, since the morning's work
 * waits and long heat colours the malt (common practice). A sound kiln is hardly ever that late.
 */
const LATE_AFTER = 270 * MINUTE;
const NEARLY_DRY = 5.8;
/** A kiln that cannot do it is not waited for: so long after loading it is turned up, or its heat turned off, come what may. */
const TURNED_UP_BY = 26 * HOUR;
const HEAT_OFF_BY = 38 * HOUR;
/** The fan's own thermostat switches this far above and below its set point. */
const FAN_HALF_DIFFERENTIAL = 0.5;

/** One firing as it is set up, before anybody knows how long it will take. */
export interface Firing {
  readonly loadedAt: number;
  readonly bed: DryingBed;
  readonly bedDepthMetres: number;
  readonly dryingSetCelsius: number;
  readonly cureSetCelsius: number;
  /** What the thermostat's switch points are off by. */
  readonly thermostatOffset: number;
  /** Set point of the fan's own thermostat; null when the fan simply runs. */
  readonly fanSetCelsius: number | null;
  /** Share of the fan's air that comes through, until the kiln is turned up and from then on: belt, and how evenly the bed was spread. */
  readonly airShare: number;
  readonly cureAirShare: number;
  /** Of a trouble planted in the kiln: heater, switch, meter and habit; its air and set point stand above already. */
  readonly planted: Planted;
}

/** What the sensors saw, minute by minute from loading: true values, before the logger's own errors. */
export interface Trace {
  readonly airOn: number[];
  readonly airOff: number[];
  readonly bed: number[];
  readonly heaterOn: number[];
  readonly fanOn: number[];
}

export interface Fired {
  readonly cureStartedAt: number;
  readonly heatOffAt: number;
  readonly unloadedAt: number;
  readonly energyKilowattHours: number;
  readonly finalMoisturePercent: number;
  /** Moisture of each layer at the end, floor first, %. */
  readonly layerMoisturePercent: readonly number[];
  /** Share of the time between warm-up and cure with the heater on. */
  readonly holdDuty: number;
  /** Share of the same time with the fan on. */
  readonly holdFanShare: number;
  readonly trace: Trace | null;
}

/**
 * Dry one bed. The maltster turns it up some while after the break shows in the air above the bed, takes samples from
 * the third hour of the cure on, turns the heat off when the meter says dry (when it is late: nearly dry), and unloads when
 * the bed has cooled.
 *
 * @param person draws of this load alone: how soon the break is seen, the meter's errors, the pace of unloading
 */
export function fire(firing: Firing, weather: Weather, person: RandomStream, keepTrace: boolean): Fired {
  const { bed, loadedAt, planted } = firing;
  const heaterKilowatts = KILN.heaterKilowatts * planted.heaterShare;
  const halfDifferential = THERMOSTAT_HALF_DIFFERENTIAL + planted.halfDifferentialKelvin;
  const seenAtCelsius = 35 + 0.8 * person.normal();
  const seenLate = (8 + 14 * person.exponential()) * MINUTE;
  const firstSampleAfter = (165 + 5 * person.normal()) * MINUTE;
  const coolTime = (30 + 5 * person.normal()) * MINUTE;
  const meterErrors = Array.from({ length: 40 }, () => 0.1 * person.normal());

  const trace: Trace | null = keepTrace ? { airOn: [], airOff: [], bed: [], heaterOn: [], fanOn: [] } : null;
  let plenum = airAt(weather, loadedAt).celsius * 0.4 + 12;
  let bulb = plenum;
  let heater = true;
  let fan = firing.fanSetCelsius === null;
  let damped = false;
  let seenAt = Number.NaN;
  let cureStartedAt = Number.NaN;
  let nextSample = Number.NaN;
  let samples = 0;
  let heatOffAt = Number.NaN;
  let unloadedAt = Number.NaN;
  let heaterSeconds = 0;
  let fanSeconds = 0;
  let holdSteps = 0;
  let holdHeating = 0;
  let holdBlowing = 0;
  let flow = 0;
  let dryAirPerSecond = 0;
  let intakeCelsius = 0;
  let intakeRatio = 0;

  for (let step = 0; ; step++) {
    const now = loadedAt + step * STEP;
    const curing = now >= cureStartedAt;
    const off = now >= heatOffAt;
    if (step % (5 * STEPS_A_MINUTE) === 0) {
      const outside = airAt(weather, now);
      intakeCelsius = outside.celsius;
      intakeRatio = humidityRatio(outside.celsius, outside.relativeHumidityPercent, PRESSURE_PASCALS);
      const wetness = Math.min(1, bedMoisturePercent(bed) / 44);
      const share = (curing ? firing.cureAirShare : firing.airShare) * (damped && !off ? CURE_AIR_SHARE : 1);
      flow = fanFlow(bed.grain, firing.bedDepthMetres, wetness, share);
      dryAirPerSecond = flow / specificVolume(intakeCelsius, intakeRatio, PRESSURE_PASCALS);
    }

    // Thermostats look at the bulb; the heater's switches off when warm, the fan's when cool.
    const set = (curing ? firing.cureSetCelsius : firing.dryingSetCelsius) + firing.thermostatOffset;
    if (bulb >= set + halfDifferential) heater = false;
    else if (bulb <= set - halfDifferential) heater = true;
    if (off) heater = false;
    if (firing.fanSetCelsius !== null && !off) {
      if (bulb >= firing.fanSetCelsius + FAN_HALF_DIFFERENTIAL) fan = true;
      else if (bulb <= firing.fanSetCelsius - FAN_HALF_DIFFERENTIAL) fan = false;
    } else fan = true;

    const air = fan ? dryAirPerSecond : 0;
    const airHeat = air * (1.006 + 1.86 * intakeRatio);
    const gain = heater ? heaterKilowatts : 0;
    const conduct = airHeat + PLENUM_LEAK;
    const towards = intakeCelsius + gain / conduct;
    plenum = towards + (plenum - towards) * Math.exp((-STEP_SECONDS * conduct) / PLENUM_HEAT);
    bulb += (plenum - bulb) * (1 - Math.exp(-STEP_SECONDS / BULB_SECONDS));
    if (fan) passAir(bed, plenum, intakeRatio, air * STEP_SECONDS, STEP_SECONDS);

    if (heater) heaterSeconds += STEP_SECONDS;
    if (fan) fanSeconds += STEP_SECONDS;
    const airOff = bed.celsius[LAYERS - 1] as number;
    if (trace && step % STEPS_A_MINUTE === 0) {
      trace.airOn.push(plenum);
      trace.airOff.push(airOff);
      trace.bed.push(bed.celsius[LAYERS / 2] as number);
      trace.heaterOn.push(heater ? 1 : 0);
      trace.fanOn.push(fan ? 1 : 0);
    }

    if (Number.isNaN(cureStartedAt)) {
      if (now > loadedAt + 60 * MINUTE) {
        holdSteps++;
        if (heater) holdHeating++;
        if (fan) holdBlowing++;
        if (Number.isNaN(seenAt) && airOff >= seenAtCelsius) seenAt = now;
      }
      if (now >= seenAt + seenLate || now >= loadedAt + TURNED_UP_BY) {
        cureStartedAt = toFiveMinutes(now);
        nextSample = cureStartedAt + firstSampleAfter;
        rake(bed);
      }
    } else if (Number.isNaN(heatOffAt)) {
      if (!damped && now >= cureStartedAt + DAMPER_AFTER) {
        damped = true;
        rake(bed);
      }
      if (now >= nextSample) {
        if (samples === 0) rake(bed);
        const read = bedMoisturePercent(bed) + (meterErrors[samples] ?? 0) + planted.meterPoints;
        samples++;
        const dryEnough = (now >= cureStartedAt + LATE_AFTER ? NEARLY_DRY : DRY_ENOUGH) + planted.dryEnoughPoints;
        if (read <= dryEnough || samples >= meterErrors.length || now >= loadedAt + HEAT_OFF_BY) {
          heatOffAt = toFiveMinutes(now);
          unloadedAt = toFiveMinutes(now + coolTime);
        } else nextSample += 15 * MINUTE;
      }
    } else if (now >= unloadedAt) break;
    // A kiln that never dries would be a fault of this simulation.
    if (step > 48 * 60 * STEPS_A_MINUTE) throw new Error(`the bed loaded at ${loadedAt} was not dry after 48 h`);
  }

  return {
    cureStartedAt,
    heatOffAt,
    unloadedAt,
    energyKilowattHours: (heaterSeconds * heaterKilowatts + fanSeconds * KILN.fanKilowatts) / 3600,
    finalMoisturePercent: bedMoisturePercent(bed),
    layerMoisturePercent: Array.from(bed.moisture, (m) => (100 * m) / (1 + m)),
    holdDuty: holdSteps === 0 ? 1 : holdHeating / holdSteps,
    holdFanShare: holdSteps === 0 ? 1 : holdBlowing / holdSteps,
    trace,
  };
}

function rake(bed: DryingBed): void {
  let sum = 0;
  for (const m of bed.moisture) sum += m;
  for (let i = 0; i < LAYERS; i++) {
    bed.moisture[i] = (1 - RAKED_SHARE) * (bed.moisture[i] as number) + (RAKED_SHARE * sum) / LAYERS;
  }
}
