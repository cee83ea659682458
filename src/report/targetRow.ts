/** What the house aims at for one measure, and what it will accept; a side without a limit is null. */
export interface TargetRow {
  /** A variety, a grain, or `any`. */
  readonly variety: string;
  readonly measure: string;
  readonly low: number | null;
  readonly target: number | null;
  readonly high: number | null;
}

/** The nearest target wins: the variety's own, else its grain's, else the one for any. */
export function nearestTarget(
  targets: readonly TargetRow[],
  measure: string,
  variety: string | null,
  grain: string | null,
): TargetRow | null {
  const own = targets.filter((target) => target.measure === measure);
  for (const name of [variety, grain, "any"]) {
    const found = own.find((target) => target.variety === name);
    if (found) return found;
  }
  return null;
}
