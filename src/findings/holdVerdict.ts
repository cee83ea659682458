import type { HoldJudgement, StretchAlarm, StretchModels, ThermostatStretch } from "../report/thermostatResult.ts";

/**
 * What one hold comes to on its latest stretch. Only the two charts raise an alarm; where they raised none nothing is called
 * a change, whatever the models prefer; nor where the last of them has ended.
 */
export type HoldVerdict =
  | { readonly kind: "none" }
  | { readonly kind: "tooFew"; readonly stretch: ThermostatStretch }
  /** `ended`: an alarm was raised and ended by itself, long back inside. */
  | { readonly kind: "steady"; readonly stretch: ThermostatStretch; readonly ended: EndedAlarm | null }
  /** An alarm that no model explains better than a level that never moved. */
  | { readonly kind: "unexplained"; readonly stretch: ThermostatStretch; readonly direction: "up" | "down" }
  | {
      readonly kind: "creep" | "step";
      readonly stretch: ThermostatStretch;
      readonly models: StretchModels;
      /** From the level before the change to the last load, K. */
      readonly movedKelvin: number;
    };

/** Milliseconds UTC. */
export interface EndedAlarm {
  readonly raisedAt: number;
  readonly endedAt: number;
}

function lastEnded({ alarms }: StretchAlarm): EndedAlarm | null {
  const ends = alarms.flatMap(({ raisedAt, endedAt }) => (endedAt === null ? [] : [{ raisedAt, endedAt }]));
  return ends.toSorted((a, b) => a.endedAt - b.endedAt).at(-1) ?? null;
}

export type ChangeVerdict = Extract<HoldVerdict, { readonly movedKelvin: number }>;

/** Sorts what charts and models say of a hold into the one thing that a page says first. */
export function holdVerdict(judgement: HoldJudgement | null): HoldVerdict {
  const stretch = judgement?.stretches.at(-1);
  if (judgement === null || stretch === undefined || judgement.points.length === 0) return { kind: "none" };
  const { alarm, models } = stretch;
  if (alarm === null) return { kind: "tooFew", stretch };
  const raised = alarm.alarms.findLast(({ endedAt }) => endedAt === null);
  if (raised === undefined) return { kind: "steady", stretch, ended: lastEnded(alarm) };
  const end = models?.line.at(-1);
  if (models === null || models.winner === "constant" || end === undefined) {
    return { kind: "unexplained", stretch, direction: raised.direction };
  }
  return { kind: models.winner, stretch, models, movedKelvin: end.kelvin - models.levelKelvin.estimate };
}

/** Is this hold one that somebody should look at? */
export const isAlarmed = (verdict: HoldVerdict): boolean =>
  verdict.kind === "creep" || verdict.kind === "step" || verdict.kind === "unexplained";
