import type { KilnHoursResult, Stretch } from "../kilnHoursResult.ts";

/** The result with the stretches found in its kiln hours; nobody asks for those of drying hours. */
export function withStretches(result: KilnHoursResult, stretches: readonly Stretch[]): KilnHoursResult {
  return { ...result, kilnHours: { ...result.kilnHours, stretches } };
}
