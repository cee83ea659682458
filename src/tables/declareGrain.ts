import { massFamily } from "../units/suffix.ts";
import type { TableDeclaration } from "./declarations.ts";

const PERCENT_OF_MASS = "% of mass";

export const grainLots: TableDeclaration = {
  name: "grain-lots",
  place: "grain-lots.csv",
  meaning: "Grain as it was received, one row a lot.",
  columns: [
    { stem: "lot", kind: "id", needed: true, meaning: "the house's own name for the lot; leading zeros stay" },
    { stem: "grain", kind: "id", needed: true, meaning: "barley, wheat, rye, oats …" },
    { stem: "variety", kind: "id", needed: true, meaning: "variety as the grower named it" },
    { stem: "crop_year", kind: "count", range: [1990, 2100], unit: "year", meaning: "year of harvest" },
    { stem: "grower", kind: "text", meaning: "who grew it; never on a customer's page unless the house says so" },
    { stem: "received_on", kind: "date", meaning: "day of arrival" },
    { stem: "mass", kind: "number", family: massFamily, range: [0.1, 500_000], meaning: "mass received" },
    {
      stem: "moisture_pct",
      kind: "number",
      range: [3, 30],
      unit: PERCENT_OF_MASS,
      meaning: "moisture of the grain as received; stands in where the steeping log has none",
    },
    {
      stem: "protein_dry_pct",
      kind: "number",
      range: [4, 25],
      unit: "% of dry mass",
      meaning: "protein of the grain, dry basis",
    },
    {
      stem: "germinative_energy_pct",
      kind: "number",
      range: [0, 100],
      unit: "% of kernels",
      meaning: "kernels that germinate in the test",
    },
    {
      stem: "plump_pct",
      kind: "number",
      range: [0, 100],
      unit: PERCENT_OF_MASS,
      meaning: "share held by the sieve that the house counts as plump",
    },
    { stem: "don_mg_kg", kind: "number", range: [0, 50], unit: "mg/kg", meaning: "deoxynivalenol, by a laboratory" },
    { stem: "note", kind: "text", meaning: "anything else; kept in the house" },
  ],
};
