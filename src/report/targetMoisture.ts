import { median } from "../analysis/summary.ts";
import type { TargetRow } from "./targetRow.ts";

/** Pale malt is dried to 4 to 5 % (common practice); taken where targets.csv names nothing. */
export const USUAL_TARGET_MOISTURE_PERCENT = 4.5;

/** What a target aims at: its target, else the middle of what it accepts. */
export const aimOf = ({ low, target, high }: Pick<TargetRow, "low" | "target" | "high">): number | null =>
  target ?? (low !== null && high !== null ? (low + high) / 2 : null);

/** The final moisture this house dries to, per cent: targets.csv's line for `any`, else the middle of its varieties. */
export function targetMoisture(targets: readonly TargetRow[]): number {
  const own = targets.filter((target) => target.measure === "final_moisture_pct");
  const general = own.find((target) => target.variety === "any");
  const all = own.map(aimOf).filter((value) => value !== null);
  return (general && aimOf(general)) ?? (all.length > 0 ? median(all) : USUAL_TARGET_MOISTURE_PERCENT);
}
