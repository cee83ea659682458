import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import { median } from "../../src/analysis/summary.ts";
import { wilsonInterval } from "../../src/analysis/wilsonInterval.ts";
import type { ChartTruths, FaultSeen, QuietStretch } from "../demo/chartTruths.ts";
import { DEMO_RUNS } from "../demo/truths.ts";
import type { Bench } from "./bench.ts";
import { printTable } from "./printTable.ts";
import { progress } from "./progress.ts";

const MOST_THREADS = 2;
const SEEDS_BETWEEN_WORDS = 20;
/** A share is known to 6 points or so by 200 houses, to 9 by 100: twice as many as the bed's interval is tried on. */
const HOUSES_A_SEED = 2;

async function tryHouses(count: number): Promise<readonly ChartTruths[]> {
  const threads = Math.min(availableParallelism(), MOST_THREADS, count);
  const trials: ChartTruths[] = [];
  const work = Array.from({ length: threads }, (_, thread) => {
    const seeds = Array.from({ length: count }, (_, i) => i + 1).filter((seed) => seed % threads === thread);
    return new Promise<void>((resolve, reject) => {
      const worker = new Worker(new URL("chartTruthsWorker.ts", import.meta.url), { workerData: { seeds } });
      worker.on("message", (trial: ChartTruths) => {
        trials.push(trial);
        if (trials.length % SEEDS_BETWEEN_WORDS === 0)
          progress(`control charts: ${trials.length} of ${count} houses …`);
      });
      worker.once("error", reject);
      worker.once("exit", (code) => (code === 0 ? resolve() : reject(new Error(`a thread ended with ${code}`))));
    });
  });
  await Promise.all(work);
  return trials;
}

const percent = (share: number): string => (100 * share).toFixed(0);

/** `171 of 200`, `86`, `80 to 90`. */
function shareCells(yes: number, trials: number): string[] {
  if (trials === 0) return ["none", "–", "–"];
  const { estimate, low, high } = wilsonInterval(yes, trials);
  return [`${yes} of ${trials}`, percent(estimate), `${percent(low)} to ${percent(high)}`];
}

function faultLines(name: string, decimals: number, found: readonly (FaultSeen | null)[]): readonly string[][] {
  const seen = found.filter((one) => one !== null);
  const middle = (of: (one: FaultSeen) => number, digits: number): string =>
    seen.length === 0 ? "–" : median(seen.map(of)).toFixed(digits);
  const line = (which: string, is: (one: FaultSeen) => boolean): string[] => [
    `${name}: ${which}`,
    ...shareCells(seen.filter(is).length, seen.length),
    middle(({ shift }) => shift, decimals),
    middle(({ size }) => size, 1),
    middle(({ headStart }) => headStart, 1),
    middle(({ point95 }) => point95, 0),
    middle(({ batches }) => batches, 0),
  ];
  return [
    line("by the 95 % point", (one) => one.seenInTime),
    line("by it, head start counted", (one) => one.seenInTimeFromCentre),
    line("while the fault lasted", (one) => one.seenAfter !== null),
  ];
}

function quietLine(name: string, stretches: readonly QuietStretch[]): string[] {
  const sum = stretches.reduce((total, { signals }) => total + signals, 0);
  return [
    name,
    ...shareCells(stretches.filter(({ signals, point95 }) => signals <= point95).length, stretches.length),
    median(stretches.map(({ batches }) => batches)).toFixed(0),
    (sum / stretches.length).toFixed(2),
    median(stretches.map(({ point95 }) => point95)).toFixed(0),
  ];
}

/**
 * Whether the control charts see what was put into simulated houses, as soon as charts should, and are quiet where nothing
 * is wrong. Every house's logs are written, read and joined as the build does.
 */
export async function benchChartTruths({ seeds }: Bench): Promise<void> {
  const count = HOUSES_A_SEED * seeds;
  progress(`control charts: ${count} houses, each simulated twice …`);
  const trials = await tryHouses(count);
  const of = (pick: (trial: ChartTruths) => FaultSeen | null): readonly (FaultSeen | null)[] => trials.map(pick);
  const short = of(({ belt }) => belt).filter((belt) => belt !== null && belt.point95 > belt.batches).length;
  const without = trials.filter(({ scale }) => scale === null).length;
  printTable(
    "Control charts: faults of known size, and when they are signalled",
    [
      `Houses of ${DEMO_RUNS} runs; the usual pair of rules. Share of houses in which the chart signals to the side of the shift,`,
      "counted from the fault's first batch, by the 95 % point of the run length for a shift of its size with known limits.",
      "Shift and the rest are medians over the houses. Head start: where the same batches would stand without the fault, in",
      "sigma, which a season, a grain lot or the limits' own error make other than 0; the 95 % point knows nothing of it.",
      "The scale's fault is one batch, its 95 % point one run where the shift is beyond some five sigma.",
      `In ${short} of ${count} houses the belt's 95 % point lies beyond its last batch, and a signal after the repair counts for nothing.`,
      `${without} of ${count} houses made no single batch in the scale's week.`,
    ],
    ["", "houses", "%", "interval", "shift", "sigmas", "head start", "95 % point", "batches"],
    [
      ...faultLines(
        "mis-set scale on yield",
        2,
        of(({ scale }) => scale),
      ),
      ...faultLines(
        "slipping belt on moisture",
        2,
        of(({ belt }) => belt),
      ),
      ...faultLines(
        "belt, poor lot left off the chart",
        2,
        of(({ beltWithoutPoorLot }) => beltWithoutPoorLot),
      ),
      ...faultLines(
        "belt, no baseline named",
        2,
        of(({ beltWithoutNamedBaseline }) => beltWithoutNamedBaseline),
      ),
    ],
  );
  printTable(
    "Control charts: signals before any fault",
    [
      "Share of houses whose signals stay at or under the 95 % point of what limits from such a baseline raise by chance.",
    ],
    ["", "houses", "%", "interval", "batches", "signals a house", "95 % point"],
    ["dry-matter yield", "final moisture"].map((name, i) =>
      quietLine(
        name,
        trials.flatMap(({ beforeAnyFault }) => beforeAnyFault[i] ?? []),
      ),
    ),
  );
}
