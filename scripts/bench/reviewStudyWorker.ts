import { parentPort, workerData } from "node:worker_threads";
import { plantedTrial, type TrialWanted } from "../study/plantedTrial.ts";
import { quietTrial } from "../study/quietTrial.ts";

const { planted, quiet } = workerData as {
  readonly planted: readonly TrialWanted[];
  readonly quiet: readonly number[];
};
for (const seed of quiet) parentPort?.postMessage({ quiet: await quietTrial(seed) });
for (const wanted of planted) parentPort?.postMessage({ planted: await plantedTrial(wanted) });
