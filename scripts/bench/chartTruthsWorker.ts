import { parentPort, workerData } from "node:worker_threads";
import { openChartDesk } from "../demo/chartDesk.ts";
import { chartTruths } from "../demo/chartTruths.ts";

const { seeds } = workerData as { readonly seeds: readonly number[] };
const desk = await openChartDesk();
for (const seed of seeds) parentPort?.postMessage(await chartTruths(desk, seed));
await desk.close();
