import type { DriftModelName, DriftModels } from "./driftModels.ts";

/** The course of a change over the loads: 0 before it, 1 where it stands at the last load. */
export interface DriftShape {
  /** `constant`: no change was found, and the course is a straight line from the first load to the last. */
  readonly model: DriftModelName;
  readonly values: Float64Array;
}

/**
 * The course that a model gives the change, the winner's where none is named, as a column for a regression: its coefficient is
 * how much something has moved by the last load along with the change.
 */
export function driftShape(models: DriftModels, model: DriftModelName = models.winner): DriftShape {
  const { days } = models.sums;
  const last = days[days.length - 1] as number;
  if (model === "step" && models.step) {
    const { firstAfter } = models.step;
    return { model, values: days.map((_, at) => (at >= firstAfter ? 1 : 0)) };
  }
  const onset = model === "creep" && models.creep ? models.creep.onsetDay.estimate : (days[0] as number);
  const values = days.map((day) => Math.max(0, day - onset) / (last - onset));
  return { model: model === "creep" && models.creep ? "creep" : "constant", values };
}
