import { frozenStretches } from "./frozenStretches.ts";
import {
  type KilnReadings,
  MINUTE,
  middleOf,
  requireInOrder,
  type SoundReadings,
  type TimeSpan,
} from "./kilnReadings.ts";

/** What the logger's record of one load is worth. Nothing is taken out of the readings: it is marked. */
export interface ReadingQuality {
  readonly readings: number;
  /** Without a value for air on. */
  readonly silent: number;
  /** Median time between readings, minutes; null below two. */
  readonly usualStepMinutes: number | null;
  /** More than a tenth of the steps are over half as long again, or under half as long, as the usual one. */
  readonly irregular: boolean;
  /** Smallest difference between two values of air on, K; null where all are alike. */
  readonly resolutionKelvin: number | null;
  /** Spread from reading to reading that no smooth course explains, K (standard deviation); at coarse sampling too large. */
  readonly noiseKelvin: number;
  /** Silence longer than {@link gapLength} between readings of air on. */
  readonly gaps: readonly TimeSpan[];
  /** Air on stands still though the kiln does not. */
  readonly frozen: readonly TimeSpan[];
  /** Up to three readings that leap away and back. */
  readonly spikes: readonly TimeSpan[];
  /** By place: 1 where air on can be worked with. */
  readonly sound: Uint8Array;
}

/** Silence of this many usual steps is a gap, as the check of the logs has it. */
const GAP_STEPS = 5;
/** A fast logger that leaves out less than this has missed nothing of a kiln. */
const SHORTEST_GAP = 5 * MINUTE;

/** How long a silence must last to be a gap: five usual steps, and five minutes at least; all in milliseconds. */
export function gapLength(usualStep: number): number {
  return Math.max(SHORTEST_GAP, GAP_STEPS * usualStep);
}
/** A leap of this much and back; at coarse sampling three times what readings usually move, where that is more. */
const SPIKE_KELVIN = 5;
const LONGEST_SPIKE = 3;

/**
 * Marks what is wrong with the air-on readings of one load: silence, gaps, frozen stretches, spikes, irregular or coarse
 * sampling.
 *
 * @throws {RangeError} when the columns differ in length or time runs backwards
 */
export function readingQuality(readings: KilnReadings): ReadingQuality {
  requireInOrder(readings, "readingQuality");
  const { at, airOnCelsius } = readings;
  const places: number[] = [];
  for (let i = 0; i < at.length; i++) if (!Number.isNaN(airOnCelsius[i])) places.push(i);
  const time = Float64Array.from(places, (place) => at[place] as number);
  const air = Float64Array.from(places, (place) => airOnCelsius[place] as number);
  const steps = differences(time);
  const usual = steps.length === 0 ? null : middleOf(steps);
  const sound = new Uint8Array(at.length);
  for (const place of places) sound[place] = 1;

  const spikes = findSpikes(air);
  for (const { first, last } of spikes) for (let k = first; k <= last; k++) sound[places[k] as number] = 0;
  const resolutionKelvin = smallestStep(air);
  const frozen = frozenStretches(readings, resolutionKelvin);
  for (const { start, end } of frozen) sound.fill(0, start, end);

  const gaps: TimeSpan[] = [];
  let odd = 0;
  for (let k = 0; usual !== null && k < steps.length; k++) {
    const step = steps[k] as number;
    if (step > gapLength(usual)) gaps.push({ from: time[k] as number, to: time[k + 1] as number });
    if (step > 1.5 * usual || step < 0.5 * usual) odd++;
  }
  return {
    readings: at.length,
    silent: at.length - places.length,
    usualStepMinutes: usual === null ? null : usual / MINUTE,
    irregular: odd > 0.1 * steps.length,
    resolutionKelvin,
    noiseKelvin: noiseOf(air),
    gaps,
    frozen: frozen.map(({ start, end }) => ({ from: at[start] as number, to: at[end - 1] as number })),
    spikes: spikes.map(({ first, last }) => ({ from: time[first] as number, to: time[last] as number })),
    sound,
  };
}

/** The readings that {@link readingQuality} found sound, for working with; what was left out stands in its marks. */
export function soundReadings(readings: KilnReadings, { sound }: ReadingQuality): SoundReadings {
  if (sound.every((mark) => mark === 1)) return readings;
  const take = (column: Float64Array): Float64Array => column.filter((_, place) => sound[place] === 1);
  return {
    at: take(readings.at),
    airOnCelsius: take(readings.airOnCelsius),
    heaterOn: readings.heaterOn && take(readings.heaterOn),
    fanOn: readings.fanOn && take(readings.fanOn),
  };
}

function differences(values: Float64Array): Float64Array {
  const steps = new Float64Array(Math.max(0, values.length - 1));
  for (let k = 0; k < steps.length; k++) steps[k] = (values[k + 1] as number) - (values[k] as number);
  return steps;
}

/** Binary fractions of one value and the next in the log differ by far less than this. */
const SAME_KELVIN = 1e-6;

function smallestStep(values: Float64Array): number | null {
  const ordered = Float64Array.from(values).sort();
  let least = Number.POSITIVE_INFINITY;
  for (let k = 1; k < ordered.length; k++) {
    const step = (ordered[k] as number) - (ordered[k - 1] as number);
    if (step > SAME_KELVIN && step < least) least = step;
  }
  return Number.isFinite(least) ? least : null;
}

/**
 * From second differences, whose spread is √6 times that of the noise and in which a straight course drops out; by
 * their median size, so that switch points do not count, over 0.6745, the median size of a standard normal value.
 */
function noiseOf(values: Float64Array): number {
  if (values.length < 3) return 0;
  const bends = new Float64Array(values.length - 2);
  for (let k = 0; k < bends.length; k++) {
    bends[k] = Math.abs((values[k] as number) - 2 * (values[k + 1] as number) + (values[k + 2] as number));
  }
  return middleOf(bends) / 0.6745 / Math.sqrt(6);
}

function findSpikes(air: Float64Array): { readonly first: number; readonly last: number }[] {
  const moves = differences(air);
  if (moves.length < 4) return [];
  const sizes = moves.map(Math.abs).sort();
  const leap = Math.max(SPIKE_KELVIN, 3 * (sizes[Math.floor(0.9 * sizes.length)] as number));
  const found: { first: number; last: number }[] = [];
  for (let k = 0; k < moves.length; k++) {
    const out = moves[k] as number;
    if (!(Math.abs(out) > leap)) continue;
    for (let back = k + 1; back <= k + LONGEST_SPIKE && back < moves.length; back++) {
      const home = (air[back + 1] as number) - (air[k] as number);
      if (-(moves[back] as number) * Math.sign(out) > leap && Math.abs(home) < leap) {
        found.push({ first: k + 1, last: back });
        k = back;
        break;
      }
    }
  }
  return found;
}
