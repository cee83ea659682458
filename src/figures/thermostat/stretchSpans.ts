import type { HoldJudgement, ThermostatStretch } from "../../report/thermostatResult.ts";

/** A stretch between two calibrations or repairs, from where to where it is drawn. */
export interface StretchSpan {
  readonly stretch: ThermostatStretch;
  readonly from: number;
  readonly to: number;
}

/**
 * Where each stretch begins and ends on a drawing: at the event between two of them, which lies between the last load of
 * one and the first of the next whatever its hour. Stretches without a load on the drawing are left out.
 */
export function stretchSpans(judgement: HoldJudgement, x: readonly [number, number]): readonly StretchSpan[] {
  const { stretches, points } = judgement;
  const starts = stretches.map((stretch, index) => {
    if (index === 0) return x[0];
    const before = points.findLast((point) => point.stretch < index)?.at ?? x[0];
    const after = points.find((point) => point.stretch >= index)?.at ?? x[1];
    return Math.min(Math.max(stretch.event?.on ?? stretch.from, before), after);
  });
  return stretches.flatMap((stretch, index) => {
    const from = Math.max(starts[index] ?? x[0], x[0]);
    const to = Math.min(starts[index + 1] ?? x[1], x[1]);
    return to > from ? [{ stretch, from, to }] : [];
  });
}
