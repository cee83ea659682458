import { type PrintOptions, print } from "./print.ts";
import { type Quantity, shownAs } from "./quantity.ts";
import type { UnitSystem } from "./unitSystem.ts";

/** What a batch is judged by: a measure of the house's own logs or a column of lab.csv. */
export interface MaltMeasure {
  /** As targets.csv has it: `final_moisture_pct`. */
  readonly name: string;
  /** Inside a sentence: `final moisture`. */
  readonly words: string;
  readonly quantity: Quantity;
  /** What a difference or a spread of it is counted in. */
  readonly difference: Quantity;
  /** True of what a laboratory found, whose number depends on the method. */
  readonly fromLaboratory: boolean;
}

const own = (words: string, quantity: Quantity, difference = quantity) => ({
  words,
  quantity,
  difference,
  fromLaboratory: false,
});
const share = (words: string) => own(words, "percent", "percentagePoints");
const tested = (words: string, quantity: Quantity, difference = quantity) => ({
  words,
  quantity,
  difference,
  fromLaboratory: true,
});
const testedShare = (words: string) => tested(words, "percent", "percentagePoints");

/** In the order in which a certificate is read; the laboratory's after the house's own. */
const known: Readonly<Record<string, Omit<MaltMeasure, "name">>> = {
  final_moisture_pct: share("final moisture"),
  dry_yield_pct: share("dry-matter yield"),
  kiln_hours: own("kiln hours", "hours"),
  energy_kwh: own("energy a load", "energy"),
  kiln_hours_over_expected: own("kiln hours over the expected", "hours"),
  steep_out_moisture_pct: share("steep-out moisture"),
  acrospire_mean: own("mean acrospire length", "fraction"),
  acrospire_overgrown_pct: share("overgrown acrospires"),
  moisture_pct: testedShare("moisture in the laboratory"),
  extract_fine_dry_pct: testedShare("extract, dry basis"),
  extract_coarse_dry_pct: testedShare("coarse extract, dry basis"),
  colour_ebc: tested("colour", "colour"),
  diastatic_power_wk: tested("diastatic power", "diastaticPower", "diastaticPowerDifference"),
  alpha_amylase_du: tested("alpha-amylase", "alphaAmylase"),
  protein_dry_pct: testedShare("protein, dry basis"),
  soluble_total_protein_pct: testedShare("soluble over total protein"),
  fan_mg_l: tested("free amino nitrogen", "wortContent"),
  beta_glucan_mg_l: tested("beta-glucan", "wortContent"),
  friability_pct: testedShare("friability"),
  viscosity_mpa_s: tested("viscosity", "viscosity"),
  ph: tested("pH of the wort", "fraction"),
  don_mg_kg: tested("deoxynivalenol", "traceContent"),
};

/** The measures of a certificate, in the order in which one is read. */
export const laboratoryMeasures: readonly string[] = Object.keys(known).filter((name) => known[name]?.fromLaboratory);

/** How a measure is called and counted. One that nobody declared keeps its own name and has no unit. */
export function maltMeasure(name: string): MaltMeasure {
  const found = Object.hasOwn(known, name) ? known[name] : undefined;
  return { name, ...(found ?? own(name.replaceAll("_", " "), "fraction")) };
}

/** A value of a measure: `4.6 %`, `3.5 EBC`, or `1.8 SRM` for a reader of US customary units. */
export const printMeasure = (
  { quantity }: MaltMeasure,
  value: number,
  units: UnitSystem,
  options: PrintOptions = {},
): string => print(value, quantity, units, options);

/** A difference or a spread: `0.21 points`. One decimal more than single values have, since it is smaller than they are. */
export function printMeasureDifference(
  { quantity, difference }: MaltMeasure,
  value: number,
  units: UnitSystem,
  options: PrintOptions = {},
): string {
  return print(value, difference, units, { decimals: shownAs(quantity, units).decimals + 1, ...options });
}

/** The unit as a heading names it; empty where there is none. */
export const measureUnit = ({ quantity }: MaltMeasure, units: UnitSystem): string => shownAs(quantity, units).unit;

/** A mean of several batches: one decimal more than a single value has. */
export function printMeasureMean(
  { quantity }: MaltMeasure,
  value: number,
  units: UnitSystem,
  options: PrintOptions = {},
): string {
  return print(value, quantity, units, { decimals: shownAs(quantity, units).decimals + 1, ...options });
}

/** `final moisture, %`: for the head of a column or a strip. */
export function measureWithUnit(measure: MaltMeasure, units: UnitSystem): string {
  const unit = measureUnit(measure, units);
  return unit === "" ? measure.words : `${measure.words}, ${unit}`;
}
