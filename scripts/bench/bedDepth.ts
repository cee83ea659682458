import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import { mean, sampleStandardDeviation } from "../../src/analysis/summary.ts";
import { wilsonInterval } from "../../src/analysis/wilsonInterval.ts";
import { DEMO_RUNS } from "../demo/truths.ts";
import type { BedDepthTrial } from "./bedDepthWorker.ts";
import type { Bench } from "./bench.ts";
import { printTable } from "./printTable.ts";
import { progress } from "./progress.ts";

const MOST_THREADS = 4;
const SEEDS_BETWEEN_WORDS = 10;

/** Tries the houses of seeds 1 to `count`, shared out over the machine's cores. */
async function tryHouses(count: number): Promise<readonly BedDepthTrial[]> {
  const threads = Math.min(availableParallelism(), MOST_THREADS, count);
  const trials: BedDepthTrial[] = [];
  const work = Array.from({ length: threads }, (_, thread) => {
    const seeds = Array.from({ length: count }, (_, i) => i + 1).filter((seed) => seed % threads === thread);
    return new Promise<void>((resolve, reject) => {
      const worker = new Worker(new URL("bedDepthWorker.ts", import.meta.url), { workerData: { seeds } });
      worker.on("message", (trial: BedDepthTrial) => {
        trials.push(trial);
        if (trials.length % SEEDS_BETWEEN_WORDS === 0) progress(`bed depth: ${trials.length} of ${count} houses …`);
      });
      worker.once("error", reject);
      worker.once("exit", (code) => (code === 0 ? resolve() : reject(new Error(`a thread ended with ${code}`))));
    });
  });
  await Promise.all(work);
  return trials.sort((a, b) => a.seed - b.seed);
}

const holds = ({ low, truth, high }: BedDepthTrial): boolean => low <= truth && truth <= high;

const percent = (share: number): string => (100 * share).toFixed(0);

/** Mean and standard deviation over the houses; of one house there is no deviation to tell. */
function line(name: string, values: readonly number[]): string[] {
  const spread = values.length < 2 ? "–" : sampleStandardDeviation(values).toFixed(3);
  return [name, mean(values).toFixed(3), spread, Math.min(...values).toFixed(3), Math.max(...values).toFixed(3)];
}

/**
 * How often the drying-air model's 95 % interval for one more centimetre of bed holds what the simulation truly makes of
 * it. The invented house is asked whether the analysis finds what was put into its logs; it is no evidence about malting.
 */
export async function benchBedDepth({ seeds }: Bench): Promise<void> {
  progress(`bed depth: ${seeds} houses, each simulated three times …`);
  const trials = await tryHouses(seeds);
  const held = trials.filter(holds).length;
  const { low, high } = wilsonInterval(held, trials.length);
  const missed = trials.filter((trial) => !holds(trial));
  const above = missed.filter(({ truth, high: upper }) => truth > upper).length;
  const differences = trials.map(({ estimate, truth }) => estimate - truth);
  printTable(
    "One more centimetre of bed: the drying-air model against the simulated truth",
    [
      `${held} of ${trials.length} intervals of 95 % hold the truth (aim: 90 of 100); by these houses the share is ${percent(low)} to ${percent(high)} %.`,
      `${above} truths lie above their interval and ${missed.length - above} below${missed.length === 0 ? "" : `: seeds ${missed.map(({ seed }) => seed).join(", ")}`}.`,
      `Houses of ${DEMO_RUNS} runs each, loads with a fault left out of fit and truth, air at loading.`,
    ],
    ["hours a centimetre", "mean", "SD", "min", "max"],
    [
      line(
        "truth",
        trials.map(({ truth }) => truth),
      ),
      line(
        "estimate",
        trials.map(({ estimate }) => estimate),
      ),
      line("estimate less truth", differences),
      line(
        "standard error as the fit gives it",
        trials.map(({ standardError }) => standardError),
      ),
      line(
        "estimate less truth, in standard errors",
        trials.map(({ estimate, truth, standardError }) => (estimate - truth) / standardError),
      ),
      line(
        "residual SD of the fit, h",
        trials.map(({ residualStandardDeviation }) => residualStandardDeviation),
      ),
      line(
        "loads fitted",
        trials.map(({ loads }) => loads),
      ),
    ],
  );
}
