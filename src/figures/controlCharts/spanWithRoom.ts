import { type Label, lineHeight } from "../labelLayer.ts";

/** Clear paper at the edge of a chart, px. */
const EDGE = 8;

const highest = (labels: readonly Label[]): number => Math.max(0, ...labels.map(({ lines }) => lines.length));

/** Room above the highest batch for the words of signals upwards, px. */
export const wordsOver = (labels: readonly Label[], size: number): number =>
  EDGE + highest(labels.filter(({ prefer }) => prefer === 270)) * lineHeight(size);

/** Room below the lowest batch for the words of signals downwards, px. */
export const wordsUnder = (labels: readonly Label[], size: number): number =>
  EDGE + highest(labels.filter(({ prefer }) => prefer === 90)) * lineHeight(size);

/**
 * The span of an axis of `height` px that holds `values` with room in px left over and under them.
 *
 * @throws {RangeError} when there is no value or the room leaves no height
 */
export function spanWithRoom(
  values: readonly number[],
  height: number,
  { over, under }: { readonly over: number; readonly under: number },
): readonly [number, number] {
  const left = height - over - under;
  if (values.length === 0 || !(left > 0)) {
    throw new RangeError(`spanWithRoom requires a value and room for it; got ${values.length} and ${left} px`);
  }
  const low = Math.min(...values);
  const high = Math.max(...values);
  const perPixel = Math.max(high - low, 1e-6) / left;
  return [low - under * perPixel, high + over * perPixel];
}
