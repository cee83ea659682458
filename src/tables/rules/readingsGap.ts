import { numbersOf } from "./columns.ts";
import { type LoadReadings, loadReadings } from "./loadReadings.ts";
import type { Rule, RuleFault } from "./rule.ts";

/** A silence counts from here, or from five usual steps of the logger, whichever is longer: a limit of ours. */
const SILENT_MINUTES = 20;
const SILENT_STEPS = 5;

function medianStep(at: Float64Array, { from, to }: LoadReadings): number {
  const steps = Float64Array.from(
    { length: Math.max(0, to - from - 1) },
    (_, i) => (at[from + i + 1] as number) - (at[from + i] as number),
  );
  return steps.length === 0 ? 0 : (steps.sort()[steps.length >> 1] as number);
}

/** A load that the logger slept through in part, its beginning and end included. One note a load. */
export const readingsGap: Rule = (context) => {
  const readings = context.tables.get("readings");
  if (!readings) return [];
  const at = numbersOf(readings, "at");
  const faults: RuleFault[] = [];
  for (const load of loadReadings(context)) {
    const { from, to, run, loadedAt, unloadedAt } = load;
    const limit = Math.max(SILENT_MINUTES * 60_000, SILENT_STEPS * medianStep(at, load));
    let gaps = 0;
    let silent = 0;
    let first = -1;
    const look = (start: number, end: number, row: number): void => {
      if (end - start <= limit) return;
      gaps++;
      silent += end - start;
      if (first < 0) first = row;
    };
    look(loadedAt, at[from] as number, from);
    for (let row = from + 1; row < to; row++) look(at[row - 1] as number, at[row] as number, row);
    look(at[to - 1] as number, unloadedAt, to - 1);
    if (gaps === 0) continue;
    faults.push({
      table: "readings",
      row: first,
      columns: [],
      rule: "readings-gap",
      message: `The logger is silent for ${(silent / 3_600_000).toFixed(1)} h of this load's ${((unloadedAt - loadedAt) / 3_600_000).toFixed(1)} h (${gaps} ${gaps === 1 ? "gap" : "gaps"}).`,
      hint: "See whether a file of the logger is missing, or its battery was low.",
      effect: "note",
      run,
    });
  }
  return faults;
};
