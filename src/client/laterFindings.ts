import type { FalseSignals } from "../report/controlChartResult.ts";
import { findStretches } from "../report/kilnHours/stretches.ts";
import { withStretches } from "../report/kilnHours/withStretches.ts";
import type { Stretch } from "../report/kilnHoursResult.ts";
import type { PartName, ReportParts } from "../report/report.ts";
import { followVarieties, type VarietiesFollowUp, withVarietiesFollowUp } from "../report/varieties/followUp.ts";
import { findFalseSignals, withFalseSignals } from "../report/yieldMoisture/falseSignals.ts";

/** What takes longer than all the rest of a report and so comes after it; null where the report has no place for it. */
export interface LaterFindings {
  readonly stretches: readonly Stretch[] | null;
  /** What the rules cost, one a chart. */
  readonly falseSignals: readonly (FalseSignals | null)[] | null;
  /** Intervals of the varieties' scores, and how well past scores foretold. */
  readonly varieties: VarietiesFollowUp | null;
}

type Parts = Partial<ReportParts>;

/** In steps of some milliseconds. One step where nothing is to be found, or where it is known from before. */
export function* findLater({ kilnHours, yieldMoisture, varieties }: Parts): Generator<void, LaterFindings> {
  // Stretches and intervals are never known from before: what is known of the rest must not wait for them.
  if (kilnHours !== undefined || varieties !== undefined) yield;
  return {
    falseSignals: yieldMoisture === undefined ? null : yield* findFalseSignals(yieldMoisture),
    stretches: kilnHours === undefined ? null : yield* findStretches(kilnHours.kilnHours),
    varieties: varieties === undefined ? null : yield* followVarieties(varieties),
  };
}

/** The parts with what has come later. */
export function withLater<Held extends Parts>(report: Held, later: LaterFindings): Held {
  const { stretches, falseSignals } = later;
  const { kilnHours, yieldMoisture, varieties } = report;
  return {
    ...report,
    ...(kilnHours !== undefined && stretches !== null ? { kilnHours: withStretches(kilnHours, stretches) } : {}),
    ...(yieldMoisture !== undefined && falseSignals !== null
      ? { yieldMoisture: withFalseSignals(yieldMoisture, falseSignals) }
      : {}),
    ...(varieties !== undefined && later.varieties !== null
      ? { varieties: withVarietiesFollowUp(varieties, later.varieties) }
      : {}),
  };
}

/** Is anything of these parts still to come? */
export const awaitsLater = ({ kilnHours, yieldMoisture, varieties }: Parts, parts: readonly PartName[]): boolean =>
  (parts.includes("kilnHours") && kilnHours?.kilnHours.stretches === null) ||
  (parts.includes("yieldMoisture") &&
    yieldMoisture?.charts.some((chart) => chart.falseSignals === "to come") === true) ||
  (parts.includes("varieties") && varieties?.followed === false);

/** Does what has come change anything that a page says? No stretch is the rule. */
export const isWorthDrawing = ({ stretches, falseSignals, varieties }: LaterFindings): boolean =>
  falseSignals !== null || varieties !== null || (stretches !== null && stretches.length > 0);
