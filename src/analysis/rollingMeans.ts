/**
 * The mean of all earlier values, for each value in time order: the plainest guess that a regression has to beat. Null
 * where fewer than `minimum` (1 or more) had come.
 */
export function rollingMean(response: ArrayLike<number>, minimum: number): readonly (number | null)[] {
  requireCount(minimum, "rollingMean");
  let sum = 0;
  return Array.from(response, (value, at) => {
    const before = at >= minimum ? sum / at : null;
    sum += value;
    return before;
  });
}

/** The mean of the last `count` values, for each value in time order; null until that many had come. */
export function rollingLastFew(response: ArrayLike<number>, count: number): readonly (number | null)[] {
  requireCount(count, "rollingLastFew");
  return Array.from({ length: response.length }, (_, at) => {
    if (at < count) return null;
    let sum = 0;
    for (let back = at - count; back < at; back += 1) sum += response[back] as number;
    return sum / count;
  });
}

function requireCount(count: number, caller: string): void {
  if (!(Number.isInteger(count) && count > 0)) {
    throw new RangeError(`${caller} requires a positive whole number of values; got ${count}`);
  }
}
