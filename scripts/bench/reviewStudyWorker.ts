import { parentPort, workerData } from "node:worker_threads";
import { plantedTrial, type TrialWanted } from "../study/plantedTrial.ts";
import { quietTrial } from "../study/quietTrial.ts";
import { openReviewDesk } from "../study/reviewDesk.ts";
import { soundHouse } from "../study/soundHouse.ts";

const { planted, quiet } = workerData as {
  readonly planted: readonly TrialWanted[];
  readonly quiet: readonly number[];
};
const desk = await openReviewDesk();
for (const seed of quiet) {
  const sound = await soundHouse(desk, seed);
  parentPort?.postMessage({ quiet: quietTrial(sound) });
  const inIt = planted.filter((wanted) => wanted.seed === seed);
  for (const wanted of inIt) parentPort?.postMessage({ planted: await plantedTrial(desk, sound, wanted) });
}
await desk.close();
