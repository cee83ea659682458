import { nextDay, startOfLocalDay } from "../units/instant.ts";
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

export function rowFilter(view: View, timeZone: string): RowFilter {
  return {
    loadedFrom: view.from === null ? null : startOfLocalDay(view.from, timeZone),
    loadedBefore: view.to === null ? null : startOfLocalDay(nextDay(view.to), timeZone),
    variety: view.variety,
    kiln: view.kiln,
  };
}
