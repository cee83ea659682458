import { parentPort, workerData } from "node:worker_threads";
import { analyseKilnHours } from "../../src/report/kilnHours/analyseKilnHours.ts";
import type { LoadRow } from "../../src/report/loadRow.ts";
import { kilnOptions } from "./kilnOptions.ts";

// A thread that has run none of this before: its first analysis is a cold one, those after it are warm.

const { loads, warmRuns } = workerData as { readonly loads: readonly LoadRow[]; readonly warmRuns: number };
const milliseconds: number[] = [];
for (let i = 0; i <= warmRuns; i++) {
  const start = performance.now();
  analyseKilnHours(loads, kilnOptions);
  milliseconds.push(performance.now() - start);
}
parentPort?.postMessage(milliseconds);
