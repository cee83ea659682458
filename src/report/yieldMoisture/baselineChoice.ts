import type { NamedBaseline } from "../../tables/house.ts";
import { printDate, printIsoDate } from "../../units/instant.ts";
import type { EventRow } from "../eventRow.ts";
import type { MeasuredRun } from "./measuredRuns.ts";

/** What decides the limits of a chart, as indices of its runs. Nothing here looks at a run's value. */
export interface BaselineChoice {
  /** The runs that settings name; null where they name none. */
  readonly named: ReadonlySet<number> | null;
  /** Runs that no baseline may use, and why. */
  readonly leftOut: ReadonlyMap<number, string>;
  /** Where a new baseline begins, and the event that says so. */
  readonly phases: readonly { readonly from: number; readonly event: EventRow }[];
}

export interface BaselineDecisions {
  readonly events: readonly EventRow[];
  readonly baselines: readonly NamedBaseline[];
  readonly without: ReadonlySet<string>;
  readonly timeZone: string;
}

const localDate = (instant: number, timeZone: string): string => printIsoDate(instant, timeZone);
/** An event's date is a day of the calendar, kept as its UTC midnight. */
const eventDate = (event: EventRow): string => printIsoDate(event.on, "UTC");

function isNamed(run: MeasuredRun, baseline: NamedBaseline, timeZone: string): boolean {
  const { row } = run;
  const speaksOf = baseline.variety === "any" || baseline.variety === row.variety || baseline.variety === row.grain;
  if (!speaksOf) return false;
  if (baseline.runs !== null) return baseline.runs.includes(row.run);
  const date = localDate(run.at, timeZone);
  return baseline.from !== null && baseline.to !== null && date >= baseline.from && date <= baseline.to;
}

/** An incident on a day between the run's steep and its unloading speaks of that run. */
function incidentOf(run: MeasuredRun, events: readonly EventRow[], timeZone: string): EventRow | null {
  const first = localDate(run.row.steepStartedAt ?? run.row.loadedAt ?? run.at, timeZone);
  const last = localDate(run.at, timeZone);
  const spoils = ({ kind }: EventRow): boolean => kind === "incident";
  return events.find((event) => spoils(event) && eventDate(event) >= first && eventDate(event) <= last) ?? null;
}

export function baselineChoice(
  runs: readonly MeasuredRun[],
  { events, baselines, without, timeZone }: BaselineDecisions,
): BaselineChoice {
  const named = new Set<number>();
  const leftOut = new Map<number, string>();
  runs.forEach((run, index) => {
    if (baselines.some((baseline) => isNamed(run, baseline, timeZone))) named.add(index);
    const incident = incidentOf(run, events, timeZone);
    if (without.has(run.row.run)) leftOut.set(index, "left out by hand");
    else if (incident) leftOut.set(index, `${incident.what} (${printDate(incident.on, "UTC")})`);
  });
  const phases = events
    .filter(({ kind }) => kind === "new-baseline")
    .flatMap((event) => {
      // The first batch loaded on that day or later is the first of the new order.
      const from = runs.findIndex(({ row, at }) => localDate(row.loadedAt ?? at, timeZone) >= eventDate(event));
      return from <= 0 ? [] : [{ from, event }];
    });
  return { named: named.size === 0 ? null : named, leftOut, phases };
}
