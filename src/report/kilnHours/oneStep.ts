import type { Interval } from "../../analysis/regressionFit.ts";

/** What a model, knowing only the loads before it, expected of a load; null while those were too few. */
export type OneStep = Interval | null;
