import { colourFamily, diastaticPowerFamily, type UnitFamily } from "../../units/suffix.ts";
import { nearestTarget, type TargetRow } from "../targetRow.ts";
import type { Tolerance } from "../varietiesResult.ts";

/** A tolerance and where its limits were written. */
export interface FoundTolerance {
  readonly tolerance: Tolerance;
  readonly from: "targets.csv" | "house.toml";
}

export interface FoundTolerances {
  /** In the order of their names. */
  readonly found: readonly FoundTolerance[];
  readonly notCounted: readonly { readonly measure: string; readonly reason: string }[];
}

/** Around 0 by what it is. */
export const HOURS_OVER = "kiln_hours_over_expected";

const families: Readonly<Record<string, UnitFamily>> = { colour: colourFamily, diastatic_power: diastaticPowerFamily };

/** A row of targets.csv may speak in any unit that lab.csv may; inside there is one. */
export function insideTarget(row: TargetRow): TargetRow {
  for (const [stem, { inside, suffixes }] of Object.entries(families)) {
    const written = suffixes.find(({ suffix }) => row.measure === `${stem}_${suffix}`);
    if (written === undefined || written.suffix === inside) continue;
    const convert = (value: number | null): number | null =>
      value === null ? null : value * written.factor + written.offset;
    const { low, target, high } = row;
    return { ...row, measure: `${stem}_${inside}`, low: convert(low), target: convert(target), high: convert(high) };
  }
  return row;
}

/**
 * What the batches of a variety are accepted by: the nearest row of targets.csv with a limit on one side or both, else its
 * target with the half-width that house.toml gives on either side.
 *
 * @param targets with their measures as they are named inside ({@link insideTarget})
 * @param halfWidths by measure, from house.toml
 */
export function tolerancesOf(
  variety: string,
  grain: string | null,
  targets: readonly TargetRow[],
  halfWidths: Readonly<Record<string, number>>,
): FoundTolerances {
  const found: FoundTolerance[] = [];
  const notCounted: { measure: string; reason: string }[] = [];
  const names = new Set([...targets.map(({ measure }) => measure), ...Object.keys(halfWidths)]);
  for (const measure of [...names].sort()) {
    const row = nearestTarget(targets, measure, variety, grain);
    const halfWidth = halfWidths[measure];
    const target = row?.target ?? (measure === HOURS_OVER ? 0 : null);
    if (row !== null && (row.low !== null || row.high !== null)) {
      const { low, high } = row;
      if (low !== null && high !== null && low >= high) {
        notCounted.push({ measure, reason: "its limits leave no room between them" });
      } else found.push({ tolerance: { measure, low, target, high }, from: "targets.csv" });
    } else if (halfWidth !== undefined && target !== null) {
      const limits = { measure, low: target - halfWidth, target, high: target + halfWidth };
      found.push({ tolerance: limits, from: "house.toml" });
    } else if (halfWidth !== undefined) {
      notCounted.push({ measure, reason: "house.toml has a tolerance for it, targets.csv no target" });
    } else if (row !== null) notCounted.push({ measure, reason: "targets.csv sets no limit for it" });
  }
  return { found, notCounted };
}
