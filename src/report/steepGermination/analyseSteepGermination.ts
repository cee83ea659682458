import type { SteepGerminationResult } from "../steepGerminationResult.ts";

/** Steep and germination floor. */
export function analyseSteepGermination(): SteepGerminationResult {
  const none = "Not worked out yet.";
  return {
    steeps: [],
    steepTooLittle: none,
    bias: null,
    uptake: null,
    uptakeTooLittle: none,
    chitted: null,
    acrospires: [],
    acrospireTooLittle: none,
    beds: { compared: 0, lags: [], byBed: [] },
    growth: null,
    growthTooLittle: none,
    lengthOnTemperature: null,
  };
}
