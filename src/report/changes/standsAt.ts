import type { ChangedMeasure } from "../changesResult.ts";
import type { ComparedRow } from "./comparedRow.ts";

/** When a row meets a change: a change holds for what begins after it. */
export interface StandsAt {
  readonly at: number;
  /** Where the stage that the change touches is one of days, its end: what lay in it that day is neither before nor after. */
  readonly until: number | null;
}

/** When the stage that a change of this scope touches began for a row; null where that is not logged. */
export function standsAt({ run, load }: ComparedRow, scope: string, measure: ChangedMeasure): StandsAt | null {
  const moment = (at: number | null | undefined, until: number | null = null): StandsAt | null =>
    at === null || at === undefined ? null : { at, until };
  if (scope === "grain" || scope === "steep") return moment(run?.steepStartedAt);
  if (scope === "germination") return moment(run?.germinationStartedAt, run?.germinationEndedAt ?? null);
  switch (measure) {
    case "kiln_hours":
    case "energy_kwh":
      return moment(load?.loadedAt);
    case "final_moisture_pct":
      return moment(run?.loadedAt ?? load?.loadedAt);
    // Malt is cleaned and weighed as it comes off the kiln, and green malt is counted as it leaves the floor.
    case "dry_yield_pct":
      return moment(scope === "kiln" || scope === "thermostat" ? run?.loadedAt : run?.unloadedAt);
    case "steep_out_moisture_pct":
      return moment(run?.steepEndedAt ?? run?.steepStartedAt);
    case "acrospire_mean":
      return moment(run?.germinationEndedAt);
  }
}

export interface DatedRow extends StandsAt {
  readonly row: ComparedRow;
}

/** Rows that know when they meet a change of this scope, in time order. */
export function datedRows(rows: readonly ComparedRow[], scope: string, measure: ChangedMeasure): readonly DatedRow[] {
  const dated: DatedRow[] = [];
  for (const row of rows) {
    const stood = standsAt(row, scope, measure);
    if (stood !== null) dated.push({ row, ...stood });
  }
  return dated.sort((a, b) => a.at - b.at || (a.row.name < b.row.name ? -1 : 1));
}
