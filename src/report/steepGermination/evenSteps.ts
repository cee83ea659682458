/** `count` values (two or more) from `from` to `to`, both among them, evenly apart: where a drawn line and its band are worked out. */
export function evenSteps(from: number, to: number, count: number): readonly number[] {
  return Array.from({ length: count }, (_, step) => from + ((to - from) * step) / (count - 1));
}
