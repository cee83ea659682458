import { soundLoadRows } from "../demo/loadRows.ts";
import { simulateHouse } from "../demo/simulateHouse.ts";
import type { Bench } from "./bench.ts";
import { inThread } from "./inThread.ts";
import { printTable } from "./printTable.ts";
import { progress } from "./progress.ts";
import { SPREAD_HEADINGS, spreadCells } from "./spread.ts";

const LOADS = 2000;
const WARM_RUNS = 3;

/** The analysis of kiln hours alone, without reading, joining or drawing: models, guesses, rolling back-tests. */
export async function benchAnalysis({ repeats }: Bench): Promise<void> {
  progress(`making up ${LOADS} loads …`);
  // A few are power-limited by the weather and left out of a list of sound loads, so a few more are simulated.
  const house = simulateHouse({ seed: 1, runs: Math.ceil(LOADS * 1.1), years: 10, faults: false });
  const loads = soundLoadRows(house).slice(-LOADS);
  const cold: number[] = [];
  const warm: number[] = [];
  for (let i = 0; i < repeats; i++) {
    progress(`analysis of ${loads.length} loads: ${i + 1} of ${repeats} …`);
    const [first = Number.NaN, ...later] = await inThread<number[]>(new URL("analysisWorker.ts", import.meta.url), {
      loads,
      warmRuns: WARM_RUNS,
    });
    cold.push(first);
    warm.push(...later);
  }
  printTable(
    `Analysis of kiln hours: ${loads.length} loads`,
    ["Both models of kiln hours and of drying hours, four guesses and their rolling back-tests, energy; in Node."],
    SPREAD_HEADINGS,
    [spreadCells("cold, in a fresh thread", "ms", cold, 0), spreadCells("warm", "ms", warm, 0)],
  );
}
