import { asItIs, logarithm, logOddsOfPercent, type MeasureScale } from "../../analysis/consistency/measureScale.ts";

/**
 * The scale that each measure is judged on. It follows from what the measure is, and never from the values of a house: a
 * share that nature bounds at none or all takes log odds, an amount that cannot fall below nothing and has a long upper
 * tail takes a logarithm, all else stands as it is. Starts of the logarithms are half of the step that laboratories usually
 * report, for deoxynivalenol half of the usual least amount (common practice, no source).
 */
const scales: Readonly<Record<string, MeasureScale>> = {
  acrospire_overgrown_pct: logOddsOfPercent(),
  friability_pct: logOddsOfPercent(),
  colour_ebc: logarithm(0.05),
  // Degrees Windisch-Kolbach are 3.5 × degrees Lintner − 16: on Lintner's scale nothing is 0.
  diastatic_power_wk: logarithm(16),
  alpha_amylase_du: logarithm(0.5),
  fan_mg_l: logarithm(0.5),
  beta_glucan_mg_l: logarithm(0.5),
  don_mg_kg: logarithm(0.05),
};

export const scaleOf = (measure: string): MeasureScale => scales[measure] ?? asItIs;
