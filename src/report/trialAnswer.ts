import type { ChangedMeasure, TrialRow } from "./changesResult.ts";

/** What the page says of the trial that a reader has in mind. */
export type TrialAnswer =
  | { readonly kind: "runs"; readonly measure: ChangedMeasure; readonly row: TrialRow }
  | { readonly kind: "refusal"; readonly sentence: string };
