import type { AcrospireCounts } from "../../malting/acrospire.ts";

/** The classes of acrospire length in order of growth, as the drawings and tables of the floor name them. */
export const ACROSPIRE_CLASSES: readonly { readonly key: keyof AcrospireCounts; readonly name: string }[] = [
  { key: "none", name: "none" },
  { key: "toQuarter", name: "to ¼" },
  { key: "toHalf", name: "¼ to ½" },
  { key: "toThreeQuarters", name: "½ to ¾" },
  { key: "toFull", name: "¾ to full" },
  { key: "over", name: "overgrown" },
];

/** Shares of the classes from the shortest up to and with each, 0 to 1, so that the last is 1. */
export function cumulativeShares(counts: AcrospireCounts, counted: number): readonly number[] {
  if (!(counted > 0)) throw new RangeError(`cumulativeShares requires counted kernels; got ${counted}`);
  let sum = 0;
  return ACROSPIRE_CLASSES.map(({ key }) => {
    sum += counts[key];
    return sum / counted;
  });
}
