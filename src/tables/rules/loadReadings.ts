import type { Table } from "../table.ts";
import { numbersOf, textsOf } from "./columns.ts";
import type { RuleContext } from "./rule.ts";

/** The readings of one finished kiln load, as a stretch of rows of the sorted readings. */
export interface LoadReadings {
  readonly run: string | null;
  readonly loadedAt: number;
  readonly unloadedAt: number;
  readonly from: number;
  /** One past the last. */
  readonly to: number;
}

/** The first row of `at[from..to)` that is not before `moment`. */
function firstFrom(at: Float64Array, moment: number, from: number, to: number): number {
  let low = from;
  let high = to;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((at[middle] as number) < moment) low = middle + 1;
    else high = middle;
  }
  return low;
}

function stretches(readings: Table): ReadonlyMap<string, readonly [number, number]> {
  const found = new Map<string, readonly [number, number]>();
  const kilns = textsOf(readings, "kiln");
  let from = 0;
  for (let row = 1; row <= readings.rowCount; row++) {
    if (row < readings.rowCount && kilns[row] === kilns[from]) continue;
    found.set(kilns[from] as string, [from, row]);
    from = row;
  }
  return found;
}

/** Every finished load that has readings, once, however many runs lay in it. */
export function loadReadings({ tables }: RuleContext): readonly LoadReadings[] {
  const readings = tables.get("readings");
  const kilning = tables.get("kilning");
  if (!readings || !kilning || readings.rowCount === 0) return [];
  const at = numbersOf(readings, "at");
  const byKiln = stretches(readings);
  const loaded = numbersOf(kilning, "loaded_at");
  const unloaded = numbersOf(kilning, "unloaded_at");
  const runs = textsOf(kilning, "run");
  const loads = new Map<string, LoadReadings>();
  for (const [row, kiln] of textsOf(kilning, "kiln").entries()) {
    const stretch = byKiln.get(kiln as string);
    const loadedAt = loaded[row] as number;
    const unloadedAt = unloaded[row] as number;
    const key = `${kiln} ${loadedAt}`;
    if (!stretch || Number.isNaN(unloadedAt) || loads.has(key)) continue;
    const from = firstFrom(at, loadedAt, ...stretch);
    const to = firstFrom(at, unloadedAt, from, stretch[1]);
    if (to > from) loads.set(key, { run: runs[row] ?? null, loadedAt, unloadedAt, from, to });
  }
  return [...loads.values()];
}

/** Probes of the kiln logger, by the names kept inside. */
export const probeColumns = ["air_on_c", "air_off_c", "bed_c"] as const;
