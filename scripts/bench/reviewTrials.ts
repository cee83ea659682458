import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import type { PlantKind } from "../demo/plant.ts";
import { type PlantedTrial, SIZE_NAMES, type TrialWanted } from "../study/plantedTrial.ts";
import { PLANT_SIZES } from "../study/plantSizes.ts";
import type { QuietMonth } from "../study/quietTrial.ts";
import { progress } from "./progress.ts";

const MOST_THREADS = 2;
const TRIALS_BETWEEN_WORDS = 20;

export interface TrialsWanted {
  /** Houses take seeds from this one up: thresholds are set on others than those that the result is read from. */
  readonly firstSeed: number;
  /** Houses of each kind and size. */
  readonly housesACell: number;
  readonly quietHouses: number;
}

export interface ReviewTrials {
  readonly planted: readonly PlantedTrial[];
  /** One list a house. */
  readonly quiet: readonly (readonly QuietMonth[])[];
}

/** Every house its own seed, so that no two trials share weather, grain or people. */
export function plantedWanted({ firstSeed, housesACell }: TrialsWanted): readonly TrialWanted[] {
  const kinds = Object.keys(PLANT_SIZES) as PlantKind[];
  let seed = firstSeed;
  return kinds.flatMap((kind) =>
    SIZE_NAMES.flatMap((size) => Array.from({ length: housesACell }, () => ({ seed: seed++, kind, size }))),
  );
}

/** Simulates, writes, reads and reviews every house of the study; on two threads, the trials in the order asked for. */
export async function reviewTrials(wanted: TrialsWanted): Promise<ReviewTrials> {
  const allPlanted = plantedWanted(wanted);
  const firstQuiet = wanted.firstSeed + allPlanted.length;
  const allQuiet = Array.from({ length: wanted.quietHouses }, (_, at) => firstQuiet + at);
  const count = allPlanted.length + allQuiet.length;
  const threads = Math.min(availableParallelism(), MOST_THREADS, count);
  const planted: PlantedTrial[] = [];
  const quiet: (readonly QuietMonth[])[] = [];
  const work = Array.from({ length: threads }, (_, thread) => {
    const mine = (_item: unknown, at: number): boolean => at % threads === thread;
    const workerData = { planted: allPlanted.filter(mine), quiet: allQuiet.filter(mine) };
    return new Promise<void>((resolve, reject) => {
      const worker = new Worker(new URL("reviewStudyWorker.ts", import.meta.url), { workerData });
      worker.on("message", (trial: { planted?: PlantedTrial; quiet?: readonly QuietMonth[] }) => {
        if (trial.planted) planted.push(trial.planted);
        if (trial.quiet) quiet.push(trial.quiet);
        const done = planted.length + quiet.length;
        if (done % TRIALS_BETWEEN_WORDS === 0) progress(`month in review: ${done} of ${count} houses …`);
      });
      worker.once("error", reject);
      worker.once("exit", (code) => (code === 0 ? resolve() : reject(new Error(`a thread ended with ${code}`))));
    });
  });
  await Promise.all(work);
  return {
    planted: planted.toSorted((a, b) => a.seed - b.seed),
    quiet: quiet.toSorted((a, b) => (a[0]?.seed ?? 0) - (b[0]?.seed ?? 0)),
  };
}
