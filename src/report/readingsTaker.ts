import type { ThermostatLoad } from "../malting/thermostat/thermostatLoad.ts";
import type { Table } from "../tables/table.ts";
import type { LoadRow } from "./loadRow.ts";
import { monthTeller } from "./logsCoverage.ts";
import { type PublishedLoad, publishLoad } from "./publishReadings.ts";
import { curvesByLoad } from "./readingsByLoad.ts";
import { loadSummariser, type SummaryGround } from "./thermostat/summariseLoads.ts";

/** What is kept of the readings: nothing of it grows with a reading but the loads' own files. */
export interface TakenReadings {
  /** By loading time. */
  readonly loads: readonly PublishedLoad[];
  readonly summaries: readonly ThermostatLoad[];
  /** Rows by month, `2026-10`. */
  readonly byMonth: ReadonlyMap<string, number>;
}

/**
 * Takes readings part by part, as `readLogsInParts` hands them over, and makes of each load its file and its summary.
 *
 * @param loads every load, in time order
 * @param onLoad hears how many loads have been summed up, of all that there are: not every load has readings
 */
export function readingsTaker(
  loads: readonly LoadRow[],
  ground: SummaryGround,
  onLoad: (summed: number, total: number) => void = () => {},
): { readonly take: (part: Table) => void; readonly taken: () => TakenReadings } {
  const summarise = loadSummariser(ground);
  const monthOf = monthTeller(ground.timeZone);
  const byMonth = new Map<string, number>();
  const made = new Map<string, { readonly published: PublishedLoad; readonly summary: ThermostatLoad }>();
  return {
    take(part) {
      for (const at of (part.columns.get("at") as Float64Array | undefined) ?? []) {
        const month = monthOf(at);
        byMonth.set(month, (byMonth.get(month) ?? 0) + 1);
      }
      for (const [load, curve] of curvesByLoad(part, loads)) {
        const summary = summarise(load, curve);
        made.set(load.load, { summary, published: publishLoad(load, curve, summary.fanShareOfHold) });
        onLoad(made.size, loads.length);
      }
    },
    taken() {
      const inOrder = loads.flatMap(({ load }) => made.get(load) ?? []);
      return {
        loads: inOrder.map(({ published }) => published),
        summaries: inOrder.map(({ summary }) => summary),
        byMonth,
      };
    },
  };
}
