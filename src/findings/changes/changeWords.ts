import type { ChangedMeasure, ChangeEffect, ChangeResult } from "../../report/changesResult.ts";
import { printDate } from "../../units/instant.ts";
import { maltMeasure } from "../../units/maltMeasure.ts";

/** What a measure is called inside a sentence. */
export const measureWords = (measure: ChangedMeasure): string => maltMeasure(measure).words;

const OF_LOADS: ReadonlySet<ChangedMeasure> = new Set<ChangedMeasure>(["kiln_hours", "energy_kwh"]);

/** What a comparison of it counts. */
export const countedAs = (measure: ChangedMeasure): readonly [string, string] =>
  OF_LOADS.has(measure) ? ["load", "loads"] : ["batch", "batches"];

/** `green malt carried in from the other door (18 May 2026)`. */
export const namedChange = ({ event, at }: ChangeResult, timeZone: string): string =>
  `${event.what} (${printDate(at, timeZone)})`;

const RANK: readonly ChangeEffect["verdict"][] = ["helped", "hurt", "moved"];

/** The effect that a change is summed up by: the first that helped or hurt, else that moved, else the nearest to its scope. */
export function mainEffect({ effects }: ChangeResult): ChangeEffect | null {
  for (const verdict of RANK) {
    const found = effects.find((effect) => effect.verdict === verdict);
    if (found !== undefined) return found;
  }
  return effects[0] ?? null;
}
