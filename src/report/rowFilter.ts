import { startOfLocalDay } from "../units/instant.ts";
import type { View } from "./view.ts";

/** Which rows a view lets through, in the engine's terms. Runs left out by hand are not among them: the pages list those. */
export interface RowFilter {
  /** Milliseconds UTC, inclusive; null: no bound. */
  readonly loadedFrom: number | null;
  /** Milliseconds UTC, exclusive. */
  readonly loadedBefore: number | null;
  readonly variety: string | null;
  readonly kiln: string | null;
}

const DAY = 86_400_000;

/** The day after a local date, by the calendar: a day of a clock change is not 24 hours long. */
function nextDay(isoDate: string): string {
  return new Date(Date.parse(`${isoDate}T00:00:00Z`) + DAY).toISOString().slice(0, 10);
}

export function rowFilter(view: View, timeZone: string): RowFilter {
  return {
    loadedFrom: view.from === null ? null : startOfLocalDay(view.from, timeZone),
    loadedBefore: view.to === null ? null : startOfLocalDay(nextDay(view.to), timeZone),
    variety: view.variety,
    kiln: view.kiln,
  };
}
