import { numbersOf, rowsBy } from "./columns.ts";
import type { Rule, RuleContext, RuleFault } from "./rule.ts";

const MS_AN_HOUR = 3_600_000;

/** Limits of ours, wide of what a house that knows its business would log: *common practice*, no source. */
const stages = [
  { table: "steeping", start: "started_at", end: "ended_at", said: "steep", longestHours: 144 },
  { table: "germination", start: "started_at", end: "ended_at", said: "germination", longestHours: 336 },
  { table: "kilning", start: "loaded_at", end: "unloaded_at", said: "kilning", longestHours: 96 },
] as const;
const OVERLAP_HOURS = 1;
const LONGEST_GAP_HOURS = 48;

interface Span {
  /** Row of the first start. */
  readonly row: number;
  readonly start: number;
  /** Of the part that was out first; NaN while all are under way. */
  readonly firstEnd: number;
  readonly lastEnd: number;
}

function spansOf({ tables }: RuleContext, stage: (typeof stages)[number]): ReadonlyMap<string, Span> {
  const table = tables.get(stage.table);
  const spans = new Map<string, Span>();
  if (!table) return spans;
  const starts = numbersOf(table, stage.start);
  const ends = numbersOf(table, stage.end);
  for (const [run, rows] of rowsBy(table, "run")) {
    const row = rows.reduce((a, b) => ((starts[b] as number) < (starts[a] as number) ? b : a));
    const known = rows.map((r) => ends[r] as number).filter((end) => !Number.isNaN(end));
    spans.set(run, {
      row,
      start: starts[row] as number,
      firstEnd: known.length > 0 ? Math.min(...known) : Number.NaN,
      lastEnd: known.length === rows.length ? Math.max(...known) : Number.NaN,
    });
  }
  return spans;
}

const hours = (milliseconds: number): string => `${(milliseconds / MS_AN_HOUR).toFixed(1)} h`;

/** Stages of one run that overlap, lie days apart, or last longer than any batch does. Kept, with a note. */
export const stagesOutOfStep: Rule = (context) => {
  const faults: RuleFault[] = [];
  const note = (stage: (typeof stages)[number], row: number, rule: string, message: string): void => {
    const hint = "Look up the times of both stages, and the run's name in both logs.";
    faults.push({ table: stage.table, row, columns: [stage.start], rule, message, hint, effect: "note" });
  };
  const spans = stages.map((stage) => spansOf(context, stage));
  stages.forEach((stage, index) => {
    for (const [run, span] of spans[index] as ReadonlyMap<string, Span>) {
      if (span.lastEnd - span.start > stage.longestHours * MS_AN_HOUR) {
        note(
          stage,
          span.row,
          "stage-too-long",
          `The ${stage.said} of run ${run} lasts ${hours(span.lastEnd - span.start)}.`,
        );
      }
      for (let before = index - 1; before >= 0; before--) {
        const earlier = spans[before]?.get(run);
        const other = stages[before];
        if (!earlier || !other) continue;
        // Vessels of one batch may follow each other, so that only a start before anything was out is an overlap.
        if (span.start < earlier.start || earlier.firstEnd - span.start > OVERLAP_HOURS * MS_AN_HOUR) {
          note(
            stage,
            span.row,
            "stages-overlap",
            `The ${stage.said} of run ${run} begins before its ${other.said} is over.`,
          );
        } else if (before === index - 1 && span.start - earlier.lastEnd > LONGEST_GAP_HOURS * MS_AN_HOUR) {
          note(
            stage,
            span.row,
            "stages-apart",
            `Between the ${other.said} and the ${stage.said} of run ${run} lie ${hours(span.start - earlier.lastEnd)}.`,
          );
        }
        break;
      }
    }
  });
  return faults;
};
