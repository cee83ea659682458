import type { PassedLimits } from "./projection.ts";

/** Where a value stands to its spec. */
export type Standing = "within" | "below" | "above";

/** A limit itself is within; conversions between units round, so a hair beyond it still is. */
const HAIR = 1e-9;

/** `null` where there are no limits. */
export function standingOf(value: number, limits: PassedLimits | undefined): Standing | null {
  if (limits === undefined || (limits.low === null && limits.high === null)) return null;
  const slack = HAIR * Math.max(1, Math.abs(value));
  if (limits.low !== null && value < limits.low - slack) return "below";
  if (limits.high !== null && value > limits.high + slack) return "above";
  return "within";
}
