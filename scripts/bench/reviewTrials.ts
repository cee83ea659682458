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
  /** Quiet houses take seeds from this one up, and planted ones theirs: thresholds are set on others than those that the result is read from. */
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

/**
 * Troubles of every kind and size in turn, dealt out over the quiet houses: each stands beside a sound one that is reviewed anyway,
 * and the first houses hold as much of every kind as the last.
 */
export function plantedWanted({ firstSeed, housesACell, quietHouses }: TrialsWanted): readonly TrialWanted[] {
  const kinds = Object.keys(PLANT_SIZES) as PlantKind[];
  const cells = kinds.flatMap((kind) => SIZE_NAMES.map((size) => ({ kind, size })));
  // One house further with every round, so that a cell does not come back to a house that it had.
  return Array.from({ length: housesACell }, (_, round) =>
    cells.map((cell, at) => ({ ...cell, seed: firstSeed + ((round * (cells.length + 1) + at) % quietHouses) })),
  ).flat();
}

/** Simulates, writes, reads and reviews every house of the study, on two threads. */
export async function reviewTrials(wanted: TrialsWanted): Promise<ReviewTrials> {
  const allPlanted = plantedWanted(wanted);
  const allQuiet = Array.from({ length: wanted.quietHouses }, (_, at) => wanted.firstSeed + at);
  const count = allPlanted.length + allQuiet.length;
  const threads = Math.min(availableParallelism(), MOST_THREADS, wanted.quietHouses);
  const planted: PlantedTrial[] = [];
  const quiet: (readonly QuietMonth[])[] = [];
  const work = Array.from({ length: threads }, (_, thread) => {
    const isMine = (seed: number): boolean => (seed - wanted.firstSeed) % threads === thread;
    const workerData = { planted: allPlanted.filter(({ seed }) => isMine(seed)), quiet: allQuiet.filter(isMine) };
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
  const placeOf = ({ seed, kind, size }: PlantedTrial): number =>
    allPlanted.findIndex((trial) => trial.seed === seed && trial.kind === kind && trial.size === size);
  return {
    planted: planted.toSorted((a, b) => placeOf(a) - placeOf(b)),
    quiet: quiet.toSorted((a, b) => (a[0]?.seed ?? 0) - (b[0]?.seed ?? 0)),
  };
}
