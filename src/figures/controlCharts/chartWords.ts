import type { ChartedMeasure, ChartedRun, ControlChart } from "../../report/controlChartResult.ts";
import { printDate } from "../../units/instant.ts";
import { print } from "../../units/print.ts";
import type { FigureSettings } from "../figureSettings.ts";
import type { DataCell } from "../figureSpec.ts";

const NAMES: Readonly<Record<ChartedMeasure, string>> = {
  dry_yield_pct: "dry-matter yield",
  final_moisture_pct: "final moisture",
};

/** A spread narrower than this, in points, needs a second decimal to be seen in the numbers. */
const FINE = 0.5;

/** How one chart's measure is named and its numbers are printed. */
export interface ChartWords {
  /** `dry-matter yield`. */
  readonly measure: string;
  /** Begins the ids of the chart's figures. */
  readonly id: string;
  readonly decimals: number;
  /** `81.4 %`. */
  readonly value: (percent: number) => string;
  readonly bareValue: (percent: number) => string;
  /** `+0.6 points`, always signed. */
  readonly difference: (points: number) => string;
  readonly bareDifference: (points: number) => string;
  /** `0.6 points`, of a size that has no direction. */
  readonly size: (points: number) => string;
  readonly bareSize: (points: number) => string;
}

/** @param finer decimals more than single batches need, for means of many */
export function chartWords(
  chart: Pick<ControlChart, "measure" | "runs">,
  { units }: FigureSettings,
  { finer = 0 }: { readonly finer?: number } = {},
): ChartWords {
  const measure = NAMES[chart.measure];
  const sigma = chart.runs.findLast((run) => run.sigma !== null)?.sigma ?? null;
  const decimals = (sigma !== null && sigma < FINE ? 2 : 1) + finer;
  return {
    measure,
    id: measure.replaceAll(" ", "-"),
    decimals,
    value: (percent) => print(percent, "percent", units, { decimals }),
    bareValue: (percent) => print(percent, "percent", units, { decimals, bare: true }),
    difference: (points) => print(points, "percentagePoints", units, { decimals, signed: true }),
    bareDifference: (points) => print(points, "percentagePoints", units, { decimals, signed: true, bare: true }),
    size: (points) => print(Math.abs(points), "percentagePoints", units, { decimals }),
    bareSize: (points) => print(Math.abs(points), "percentagePoints", units, { decimals, bare: true }),
  };
}

/** A run in a table, as a link to its page. */
export const runCell = (run: string, settings: FigureSettings): DataCell => ({
  text: run,
  href: settings.runHref(run),
});

/** What a pointer resting on a batch is told: run, date, variety, and whatever else the figure is about. */
export function batchHint(run: ChartedRun, { timeZone }: FigureSettings, rest: string): string {
  const left = run.leftOut === null ? "" : `; not in the baseline: ${run.leftOut}`;
  return `${run.run}, ${printDate(run.at, timeZone)}, ${run.variety}: ${rest}${left}`;
}

/** `a, b and c`. */
export function listed(items: readonly string[]): string {
  return items.length < 2 ? items.join("") : `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`;
}

export const capitalised = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
