/**
 * Durbin and Watson's statistic Σ(eᵢ − eᵢ₋₁)² / Σeᵢ² of residuals in time order: about 2 where neighbours are unrelated,
 * towards 0 where they resemble each other, towards 4 where they alternate. Residuals that are all 0 give 2: they speak
 * for no relation.
 *
 * @throws RangeError for fewer than 2 residuals
 */
export function durbinWatson(residuals: ArrayLike<number>): number {
  const count = residuals.length;
  if (count < 2) throw new RangeError(`durbinWatson requires at least two residuals; got ${count}`);
  let squares = 0;
  let steps = 0;
  for (let row = 0; row < count; row += 1) {
    const residual = residuals[row] as number;
    squares += residual * residual;
    if (row > 0) steps += (residual - (residuals[row - 1] as number)) ** 2;
  }
  return squares === 0 ? 2 : steps / squares;
}
