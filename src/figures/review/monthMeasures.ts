import type { LoadRow } from "../../report/loadRow.ts";
import type { Accepted } from "../../report/reviewResult.ts";
import type { RunRow } from "../../report/runRow.ts";
import { monthsOn, startOfMonth } from "../../units/calendarMonth.ts";
import type { Quantity } from "../../units/quantity.ts";

/** A batch or load on one panel; the value in the unit kept inside. */
export interface MeasuredBatch {
  readonly run: string;
  readonly at: number;
  readonly value: number;
  /** Of its variety; null: not set. */
  readonly low: number | null;
  readonly high: number | null;
}

/** One main measure over a month and the twelve before it. */
export interface MonthMeasure {
  readonly name: string;
  readonly quantity: Quantity;
  /** Of a mean. */
  readonly decimals: number;
  /** By time. */
  readonly batches: readonly MeasuredBatch[];
}

export interface MonthSpan {
  /** `2026-10`. */
  readonly month: string;
  /** First moment of the first of the thirteen months, of the month itself, and the first after it. */
  readonly from: number;
  readonly monthFrom: number;
  readonly to: number;
}

/** The month and the twelve before it. */
export const monthSpan = (month: string, timeZone: string): MonthSpan => ({
  month,
  from: startOfMonth(monthsOn(month, -12), timeZone),
  monthFrom: startOfMonth(month, timeZone),
  to: startOfMonth(monthsOn(month, 1), timeZone),
});

interface OfRun {
  readonly measure: string;
  readonly name: string;
  readonly quantity: Quantity;
  readonly decimals: number;
  readonly of: (run: RunRow) => number | null;
}

const OF_RUNS: readonly OfRun[] = [
  {
    measure: "final_moisture_pct",
    name: "final moisture",
    quantity: "percent",
    decimals: 2,
    of: (run) => run.finalMoisturePercent,
  },
  {
    measure: "dry_yield_pct",
    name: "dry-matter yield",
    quantity: "percent",
    decimals: 1,
    of: (run) => run.dryMatterYieldPercent,
  },
  {
    measure: "steep_out_moisture_pct",
    name: "steep-out moisture",
    quantity: "percent",
    decimals: 1,
    of: (run) => run.steepOutMoisturePercent,
  },
  {
    measure: "acrospire_mean",
    name: "mean acrospire length",
    quantity: "fraction",
    decimals: 2,
    of: (run) => run.acrospireMean,
  },
];

function energyPerWater({ energyKilowattHours, waterRemovedKilograms }: LoadRow): number | null {
  return energyKilowattHours === null || !waterRemovedKilograms ? null : energyKilowattHours / waterRemovedKilograms;
}

interface Rows {
  readonly runs: readonly RunRow[];
  readonly loads: readonly LoadRow[];
  readonly accepted: readonly Accepted[];
}

/** The main measures of the batches that left the kiln in a span, in the order of the stages; what nobody logged falls out. */
export function monthMeasures({ runs, loads, accepted }: Rows, { from, to }: MonthSpan): readonly MonthMeasure[] {
  const isWithin = (at: number | null): at is number => at !== null && at >= from && at < to;
  const ofLoads = (pick: (load: LoadRow) => number | null): readonly MeasuredBatch[] =>
    loads
      .flatMap((load) => {
        const value = pick(load);
        return value !== null && isWithin(load.unloadedAt)
          ? [{ run: load.runs[0] ?? load.load, at: load.unloadedAt, value, low: null, high: null }]
          : [];
      })
      .toSorted((a, b) => a.at - b.at);
  const ofRuns = ({ measure, of }: OfRun): readonly MeasuredBatch[] =>
    runs
      .flatMap((row) => {
        const value = of(row);
        const spec = accepted.find((one) => one.measure === measure && one.variety === row.variety);
        return value !== null && isWithin(row.unloadedAt)
          ? [{ run: row.run, at: row.unloadedAt, value, low: spec?.low ?? null, high: spec?.high ?? null }]
          : [];
      })
      .toSorted((a, b) => a.at - b.at);
  const kiln: readonly MonthMeasure[] = [
    { name: "kiln hours", quantity: "hours", decimals: 1, batches: ofLoads(({ kilnHours }) => kilnHours) },
  ];
  const energy: readonly MonthMeasure[] = [
    { name: "energy for the water", quantity: "energyPerMass", decimals: 2, batches: ofLoads(energyPerWater) },
  ];
  const [moisture, dryYield, steepOut, acrospire] = OF_RUNS.map((measured): MonthMeasure => {
    const { name, quantity, decimals } = measured;
    return { name, quantity, decimals, batches: ofRuns(measured) };
  });
  return [...kiln, moisture, dryYield, ...energy, steepOut, acrospire].filter(
    (measure): measure is MonthMeasure => measure !== undefined && measure.batches.length > 0,
  );
}
