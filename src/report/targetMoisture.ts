import { median } from "../analysis/summary.ts";
import type { Database } from "../engine/database.ts";

/** Pale malt is dried to 4 to 5 % (common practice); taken where targets.csv names nothing. */
export const USUAL_TARGET_MOISTURE_PERCENT = 4.5;

interface TargetRow {
  readonly variety: string | null;
  readonly low: number | null;
  readonly target: number | null;
  readonly high: number | null;
}

/** The final moisture this house dries to, per cent: targets.csv's line for `any`, else the middle of its varieties. */
export async function readTargetMoisture(database: Database): Promise<number> {
  const rows = await database.query<TargetRow>(
    `SELECT variety, low, target, high FROM targets WHERE measure = 'final_moisture_pct' ORDER BY variety`,
  );
  const aim = ({ low, target, high }: TargetRow): number | null =>
    target ?? (low !== null && high !== null ? (low + high) / 2 : null);
  const general = rows.find((row) => row.variety === "any");
  const all = rows.map(aim).filter((value) => value !== null);
  return (general && aim(general)) ?? (all.length > 0 ? median(all) : USUAL_TARGET_MOISTURE_PERCENT);
}
