/**
 * Where a function with one dip between two ends is smallest, to within `tolerance`, by golden section (Kiefer 1953,
 * Proceedings of the American Mathematical Society 4, 502–506; from memory). Rounding hides the dip's very bottom: about
 * half of a number's digits can be had.
 *
 * @throws RangeError unless `from` lies below `to` and the tolerance above 0
 */
export function smallestBetween(of: (x: number) => number, from: number, to: number, tolerance: number): number {
  if (!(from < to && tolerance > 0)) {
    throw new RangeError(
      `smallestBetween requires ends in order and a tolerance above 0; got ${from}, ${to}, ${tolerance}`,
    );
  }
  const part = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [left, right] = [high - part * (high - low), low + part * (high - low)];
  let [atLeft, atRight] = [of(left), of(right)];
  while (high - low > tolerance) {
    if (atLeft <= atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - part * (high - low);
      atLeft = of(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + part * (high - low);
      atRight = of(right);
    }
  }
  return (low + high) / 2;
}
