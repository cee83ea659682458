import type { ChangedMeasure } from "../changesResult.ts";

/**
 * What a change can have touched, by its scope, the nearest first. Comparing everything with everything would find a
 * difference by chance in one change out of three.
 */
const TOUCHED: Readonly<Record<string, readonly ChangedMeasure[]>> = {
  // Another grain takes up water, grows and dries at its own pace.
  grain: ["steep_out_moisture_pct", "acrospire_mean", "dry_yield_pct", "kiln_hours"],
  // Water taken up in the steep is what the grain grows on, and what the kiln must carry off.
  steep: ["steep_out_moisture_pct", "acrospire_mean", "dry_yield_pct", "kiln_hours"],
  // Growth is what germination is for; what is respired and what goes into rootlets is lost to the yield.
  germination: ["acrospire_mean", "dry_yield_pct"],
  // The kiln takes water off: how long, how far and at what cost. Dry matter passes it whole.
  kiln: ["kiln_hours", "final_moisture_pct", "energy_kwh"],
  thermostat: ["kiln_hours", "final_moisture_pct", "energy_kwh"],
  // A logger reads and moves nothing.
  logger: [],
  // What is weighed makes the yield, and the moisture that is taken from the gain in mass.
  scale: ["dry_yield_pct", "steep_out_moisture_pct"],
  // Rootlets left on, or malt lost with them.
  cleaning: ["dry_yield_pct"],
  // The laboratory's own figures are not among these.
  laboratory: [],
  other: [
    "kiln_hours",
    "final_moisture_pct",
    "dry_yield_pct",
    "energy_kwh",
    "steep_out_moisture_pct",
    "acrospire_mean",
  ],
};

/** Scopes that read the malt and do not make it: what they change is a number, for neither better nor worse. */
const ONLY_READS: ReadonlySet<string> = new Set(["scale", "logger", "laboratory"]);

export const onlyReads = (scope: string): boolean => ONLY_READS.has(scope);

export const touchedBy = (scope: string): readonly ChangedMeasure[] => TOUCHED[scope] ?? [];

/** Whether two scopes can move the same measure. */
export const touchTheSame = (scope: string, measures: readonly ChangedMeasure[]): boolean =>
  touchedBy(scope).some((measure) => measures.includes(measure));

/**
 * The difference that is worth telling, in the measure's unit: this project's choice, about what a maltster would act on. An
 * hour of a night, a third of a point of moisture, a point of yield or of steep-out moisture, a tenth of a kernel's length.
 */
const TELLABLE: Readonly<Record<Exclude<ChangedMeasure, "energy_kwh">, number>> = {
  kiln_hours: 1,
  final_moisture_pct: 0.35,
  dry_yield_pct: 1,
  steep_out_moisture_pct: 1,
  acrospire_mean: 0.1,
};

/** Of energy a tenth of what a load takes. */
const TELLABLE_SHARE_OF_ENERGY = 0.1;

export const tellableOf = (measure: ChangedMeasure, usual: number): number =>
  measure === "energy_kwh" ? TELLABLE_SHARE_OF_ENERGY * Math.abs(usual) : TELLABLE[measure];

/** Which way is better; null where there is an aim to be met. */
export const betterWay = (measure: ChangedMeasure): "less" | "more" | null =>
  measure === "kiln_hours" || measure === "energy_kwh" ? "less" : measure === "dry_yield_pct" ? "more" : null;
