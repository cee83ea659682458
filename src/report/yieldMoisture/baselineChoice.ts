import type { NamedBaseline } from "../../tables/house.ts";
import { nextDay, printDate, printIsoDate, startOfLocalDay } from "../../units/instant.ts";
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

/** From one instant to before another: days of the house's own calendar. */
interface Span {
  readonly from: number;
  readonly before: number;
}

const spanOf = (first: string, last: string, timeZone: string): Span => ({
  from: startOfLocalDay(first, timeZone),
  before: startOfLocalDay(nextDay(last), timeZone),
});

/** An event's date is a day of the calendar, kept as its UTC midnight. */
function dayOf({ on }: EventRow, timeZone: string): Span {
  const date = printIsoDate(on, "UTC");
  return spanOf(date, date, timeZone);
}

/** Says which runs a named baseline speaks of. Dates are turned into instants once, since runs come by the thousand. */
function namesRun(baseline: NamedBaseline, timeZone: string): (run: MeasuredRun) => boolean {
  const { variety, runs, from, to } = baseline;
  const span = from === null || to === null ? null : spanOf(from, to, timeZone);
  return ({ row, at }) => {
    if (variety !== "any" && variety !== row.variety && variety !== row.grain) return false;
    if (runs !== null) return runs.includes(row.run);
    return span !== null && at >= span.from && at < span.before;
  };
}

/** An incident on a day between the run's steep and its unloading speaks of that run. */
function incidentsOf(
  events: readonly EventRow[],
  timeZone: string,
): ({ row, at }: MeasuredRun) => EventRow | undefined {
  const incidents = events
    .filter(({ kind }) => kind === "incident")
    .map((event) => ({ event, day: dayOf(event, timeZone) }));
  return ({ row, at }) =>
    incidents.find(({ day }) => (row.steepStartedAt ?? row.loadedAt ?? at) < day.before && at >= day.from)?.event;
}

export function baselineChoice(
  runs: readonly MeasuredRun[],
  { events, baselines, without, timeZone }: BaselineDecisions,
): BaselineChoice {
  const named = new Set<number>();
  const leftOut = new Map<number, string>();
  const names = baselines.map((baseline) => namesRun(baseline, timeZone));
  const incidentOf = incidentsOf(events, timeZone);
  runs.forEach((run, index) => {
    if (names.some((speaksOf) => speaksOf(run))) named.add(index);
    const incident = incidentOf(run);
    if (without.has(run.run)) leftOut.set(index, "left out by hand");
    else if (incident) leftOut.set(index, `${incident.what} (${printDate(incident.on, "UTC")})`);
  });
  const phases = events
    .filter(({ kind }) => kind === "new-baseline")
    .flatMap((event) => {
      // The first batch loaded on that day or later is the first of the new order.
      const day = dayOf(event, timeZone);
      const from = runs.findIndex(({ row, at }) => (row.loadedAt ?? at) >= day.from);
      return from <= 0 ? [] : [{ from, event }];
    });
  return { named: named.size === 0 ? null : named, leftOut, phases };
}
