import type { FittedLoad, Stretch } from "../report/kilnHoursResult.ts";
import { printDate, printDateInFull } from "../units/instant.ts";
import { print } from "../units/print.ts";
import type { FigureSettings } from "./figureSettings.ts";
import type { DataCell } from "./figureSpec.ts";
import { countOf } from "./listedRows.ts";

/** What a pointer resting on a load is told. */
export function loadHint(load: FittedLoad, { units, timeZone }: FigureSettings): string {
  const over = print(load.residualHours, "hours", units, { signed: true });
  return `${load.runs.join(", ")}, ${printDate(load.loadedAt, timeZone)}: ${print(load.hours, "hours", units)}, ${over} over fitted`;
}

/** Where a mark of a load leads: the page of its first run. */
export const loadHref = (runs: readonly string[], load: string, settings: FigureSettings): string =>
  settings.runHref(runs[0] ?? load);

/** A load in a table: its first run as a link, the others named. */
export function loadCell(runs: readonly string[], load: string, settings: FigureSettings): DataCell {
  return { text: runs.length > 0 ? runs.join(", ") : load, href: loadHref(runs, load, settings) };
}

/** `7 loads about 1.5 h slow`. */
export function stretchLabel(stretch: Stretch, settings: FigureSettings): string {
  const hours = print(Math.abs(stretch.meanResidualHours), "hours", settings.units);
  return `${countOf(stretch.loads.length, "load")} about ${hours} ${stretch.meanResidualHours > 0 ? "slow" : "fast"}`;
}

/** `7 loads from 20 April 2026 to 28 May 2026 took about 1.5 h longer than weather and bed account for`. */
export function stretchSentence(stretch: Stretch, { units, timeZone }: FigureSettings): string {
  const hours = print(Math.abs(stretch.meanResidualHours), "hours", units);
  const way = stretch.meanResidualHours > 0 ? "longer" : "less";
  const from = printDateInFull(stretch.from, timeZone);
  const to = printDateInFull(stretch.to, timeZone);
  return `${countOf(stretch.loads.length, "load")} from ${from} to ${to} took about ${hours} ${way} than weather and bed account for`;
}
