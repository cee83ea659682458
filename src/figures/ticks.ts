import { printNumber } from "../units/print.ts";

export interface Tick {
  readonly at: number;
  readonly label: string;
  /** A second line under the first: the year under a month, the day under a clock time. */
  readonly under?: string;
}

/** Round steps of 1, 2 or 5 times a power of ten that give about `count` ticks between `low` and `high`. */
export function roundStep(low: number, high: number, count: number): number {
  if (!(high > low) || !(count >= 1)) throw new RangeError(`roundStep requires low < high; got ${low} and ${high}`);
  const wanted = (high - low) / count;
  let power = 1;
  while (power * 10 <= wanted) power *= 10;
  while (power > wanted) power /= 10;
  const times = wanted / power;
  return power * (times > 7.07 ? 10 : times > 3.16 ? 5 : times > 1.41 ? 2 : 1);
}

/** How many decimals a multiple of `step` needs. */
export function decimalsOf(step: number): number {
  let decimals = 0;
  while (decimals < 6 && Math.abs(step * 10 ** decimals - Math.round(step * 10 ** decimals)) > 1e-6) decimals++;
  return decimals;
}

/** Ticks at round values between `low` and `high`, about `count` of them. */
export function valueTicks(
  low: number,
  high: number,
  count: number,
  print: (value: number, decimals: number) => string = printNumber,
): Tick[] {
  const step = roundStep(low, high, count);
  const decimals = decimalsOf(step);
  const ticks: Tick[] = [];
  for (let n = Math.ceil(low / step - 1e-9); n * step <= high + step * 1e-9; n++) {
    ticks.push({ at: n * step, label: print(n * step, decimals) });
  }
  return ticks;
}

/** The span of `values` widened by `share` of itself on both sides; never empty, so that one point still has an axis. */
export function paddedSpan(values: Iterable<number>, share: number, least = 1): readonly [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  if (low > high) throw new RangeError("paddedSpan requires at least one finite value; got none");
  const pad = Math.max((high - low) * share, (least - (high - low)) / 2, 0);
  return [low - pad, high + pad];
}
