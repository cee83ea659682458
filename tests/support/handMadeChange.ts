import type { ChangeEffect, ChangePoint, ChangeResult } from "../../src/report/changesResult.ts";

const DAY = 86_400_000;
export const CHANGED_AT = Date.UTC(2026, 4, 18);

const points: readonly ChangePoint[] = Array.from({ length: 20 }, (_, row) => ({
  run: `26-${String(row).padStart(3, "0")}`,
  at: CHANGED_AT + (row - 8) * 5 * DAY + 3_600_000,
  value: 14 + (row % 3) / 2 - (row >= 8 ? 1 : 0),
  adjusted: 13.8 + (row % 3) / 4 - (row >= 8 ? 1 : 0),
  isAfter: row >= 8,
}));

/** An hour saved, told by its interval and by no other date. */
export const handMadeEffect: ChangeEffect = {
  measure: "kiln_hours",
  before: { estimate: 14, low: 13.6, high: 14.4 },
  after: { estimate: 13, low: 12.7, high: 13.3 },
  runsBefore: 8,
  runsAfter: 12,
  total: { estimate: -1, low: -1.5, high: -0.5 },
  plain: { estimate: -0.9, low: -1.6, high: -0.2 },
  beyond: null,
  placebo: { dates: 44, asLarge: 0, sizes: [0.6, -0.5, 0.4, 0.1], runsEachSide: 8, own: -1.1 },
  verdict: "helped",
  doubtedByPlacebo: false,
  noBiggerThan: 1.5,
  tellable: 1,
  moreRuns: null,
  moreRunsAtLeast: null,
  whyNoMore: null,
  adjustedFor: ["humidity", "variety"],
  spread: 0.4,
  isSerial: false,
  aim: null,
  points,
};

export const handMadeChange: ChangeResult = {
  event: {
    on: CHANGED_AT,
    kind: "change",
    scope: "kiln",
    what: "green malt carried in from the other door",
    alters: null,
  },
  altered: null,
  id: "change-2026-05-18",
  at: CHANGED_AT,
  from: CHANGED_AT - 60 * DAY,
  to: CHANGED_AT + 365 * DAY,
  effects: [handMadeEffect],
  lacking: [],
  warnings: [],
  beside: [],
  tooLittle: null,
};
