import { seededRandom } from "../../../src/analysis/seededRandom.ts";
import { gaussian } from "../gaussian.ts";

/** Uneven days from 0 on, about five apart. */
export function unevenDays(count: number, seed = 1): Float64Array {
  const random = seededRandom(seed);
  let day = 0;
  return Float64Array.from({ length: count }, () => {
    day += 2 + 6 * random.uniform();
    return day;
  });
}

/** Values of a course with seeded, roughly normal scatter. */
export function scattered(course: ArrayLike<number>, spread: number, seed = 2): Float64Array {
  const noise = gaussian(seededRandom(seed), course.length);
  return Float64Array.from(course, (value, at) => value + spread * (noise[at] as number));
}

export function creeping(days: Float64Array, level: number, onset: number, slope: number): Float64Array {
  return days.map((day) => level + slope * Math.max(0, day - onset));
}
