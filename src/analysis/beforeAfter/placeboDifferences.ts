import { spansOf } from "./withinStretches.ts";

/** The mean of the next few values less the mean of the last few, at one row. */
export interface PlaceboDifference {
  /** The first row after it. */
  readonly row: number;
  readonly size: number;
}

/**
 * The same difference at every row that has `each` rows before and after it within its own stretch. All are made of as many
 * rows, so that a house whose level wanders shows at other dates just what it shows at a change.
 *
 * @param values what covariates explain taken out, in time order
 * @param stretches of each row; null: no date there is tried
 * @throws RangeError for lengths that differ, or no row a side
 */
export function placeboDifferences(
  values: ArrayLike<number>,
  stretches: readonly (number | null)[],
  each: number,
): readonly PlaceboDifference[] {
  if (stretches.length !== values.length) {
    throw new RangeError(`placeboDifferences requires a stretch a row; got ${stretches.length} for ${values.length}`);
  }
  if (!(Number.isInteger(each) && each >= 1)) {
    throw new RangeError(`placeboDifferences requires a row or more a side; got ${each}`);
  }
  return spansOf(stretches).flatMap(({ from, to }) => {
    const found: PlaceboDifference[] = [];
    // The difference of two sums moves by three values from one row to the next.
    let difference = 0;
    for (let row = from; row < from + each && row + each < to; row += 1) {
      difference += (values[row + each] as number) - (values[row] as number);
    }
    for (let row = from + each; row + each <= to; row += 1) {
      found.push({ row, size: difference / each });
      if (row + each < to) {
        difference += (values[row + each] as number) - 2 * (values[row] as number) + (values[row - each] as number);
      }
    }
    return found;
  });
}

/** How many dates {@link placeboDifferences} tries. */
export const placeboDates = (stretches: readonly (number | null)[], each: number): number =>
  spansOf(stretches).reduce((sum, { from, to }) => sum + Math.max(0, to - from - 2 * each + 1), 0);
