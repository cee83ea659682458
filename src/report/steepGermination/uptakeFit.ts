import type { RegressionFit } from "../../analysis/regressionFit.ts";
import type { SteepRun } from "../steepGerminationResult.ts";
import type { WithinVarieties } from "./withinVarieties.ts";

/** A steep as the fit sees it. */
export interface UptakeBatch {
  readonly run: string;
  readonly variety: string;
  readonly wetHours: number;
  readonly waterCelsius: number | null;
  readonly percent: number;
  readonly target: SteepRun["target"];
}

/** The fit, and how a point of it is named. */
export interface UptakeFit {
  readonly fit: RegressionFit;
  readonly batches: readonly UptakeBatch[];
  readonly within: WithinVarieties;
  /** The house's usual water; null where water temperature is not in the fit. */
  readonly usualWater: number | null;
  /** The predictors of a variety after so many wet hours in the usual water, intercept first. */
  readonly point: (variety: string, wetHours: number) => readonly number[];
}
