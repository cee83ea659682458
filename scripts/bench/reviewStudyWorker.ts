import { parentPort, workerData } from "node:worker_threads";
import { plantedTrial, type TrialWanted } from "../study/plantedTrial.ts";
import { quietTrial } from "../study/quietTrial.ts";
import { openReviewDesk } from "../study/reviewDesk.ts";

const { planted, quiet } = workerData as {
  readonly planted: readonly TrialWanted[];
  readonly quiet: readonly number[];
};
const desk = await openReviewDesk();
for (const seed of quiet) parentPort?.postMessage({ quiet: await quietTrial(desk, seed) });
for (const wanted of planted) parentPort?.postMessage({ planted: await plantedTrial(desk, wanted) });
await desk.close();
