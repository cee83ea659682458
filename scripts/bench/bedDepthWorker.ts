import { parentPort, workerData } from "node:worker_threads";
import { studentTQuantile } from "../../src/analysis/distributions.ts";
import { analyseKilnHours } from "../../src/report/kilnHours/analyseKilnHours.ts";
import { soundLoadRows } from "../demo/loadRows.ts";
import { bedDepthTruthHoursPerCentimetre, simulateHouse } from "../demo/simulateHouse.ts";
import { kilnOptions } from "./kilnOptions.ts";

/** One simulated house: what a centimetre of bed truly costs there, and what the analysis made of its logs. Hours. */
export interface BedDepthTrial {
  readonly seed: number;
  readonly truth: number;
  readonly estimate: number;
  readonly low: number;
  readonly high: number;
  readonly standardError: number;
  readonly loads: number;
  readonly residualStandardDeviation: number;
}

function tryHouse(seed: number): BedDepthTrial {
  const { dryingAir } = analyseKilnHours(soundLoadRows(simulateHouse({ seed })), kilnOptions).kilnHours;
  if (dryingAir === null) throw new Error(`the house of seed ${seed} gave no drying-air model`);
  const { estimate, low, high } = dryingAir.hoursPerCentimetre;
  const { degreesOfFreedom, residualStandardDeviation } = dryingAir.fit;
  return {
    seed,
    truth: bedDepthTruthHoursPerCentimetre(seed),
    estimate,
    low,
    high,
    standardError: (high - low) / 2 / studentTQuantile(0.975, degreesOfFreedom),
    loads: dryingAir.loads.length,
    residualStandardDeviation,
  };
}

const { seeds } = workerData as { readonly seeds: readonly number[] };
for (const seed of seeds) parentPort?.postMessage(tryHouse(seed));
