import { colourFamily, diastaticPowerFamily } from "../units/suffix.ts";
import type { Column, TableDeclaration } from "./declarations.ts";

const value = (stem: string, low: number, high: number, unit: string, meaning: string): Column => ({
  stem,
  kind: "number",
  range: [low, high],
  unit,
  meaning,
});

export const lab: TableDeclaration = {
  name: "lab",
  place: "lab.csv",
  meaning: "Certificates, one row a run and test. Results of different method sets are never mixed on one chart.",
  columns: [
    { stem: "run", kind: "id", needed: true, meaning: "the batch that was tested" },
    { stem: "tested_on", kind: "date", needed: true, meaning: "date of the certificate" },
    { stem: "laboratory", kind: "text", meaning: "who tested it" },
    { stem: "method_set", kind: "text", meaning: "whose methods: ASBC, EBC, MEBAK, IOB …" },
    value("moisture_pct", 0, 40, "% of mass", "moisture"),
    value("extract_fine_dry_pct", 40, 100, "% of dry mass", "extract, fine grind, dry basis"),
    value("extract_coarse_dry_pct", 40, 100, "% of dry mass", "extract, coarse grind, dry basis"),
    { stem: "colour", kind: "number", family: colourFamily, range: [0, 3000], meaning: "colour of the wort" },
    {
      stem: "diastatic_power",
      kind: "number",
      family: diastaticPowerFamily,
      range: [-16, 1000],
      meaning: "diastatic power",
    },
    value("alpha_amylase_du", 0, 250, "dextrinising units", "alpha-amylase"),
    value("protein_dry_pct", 4, 25, "% of dry mass", "total protein, dry basis"),
    value("soluble_total_protein_pct", 10, 90, "% of total protein", "soluble over total protein"),
    value("fan_mg_l", 0, 600, "mg/L of wort", "free amino nitrogen"),
    value("beta_glucan_mg_l", 0, 3000, "mg/L of wort", "beta-glucan"),
    value("friability_pct", 0, 100, "% of mass", "friability; says little of wheat"),
    value("viscosity_mpa_s", 1, 10, "mPa s", "viscosity of the wort"),
    value("ph", 4, 8, "pH", "pH of the wort"),
    value("don_mg_kg", 0, 50, "mg/kg", "deoxynivalenol"),
  ],
};
