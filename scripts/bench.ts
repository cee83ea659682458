// npm run bench [-- PART …] [-- --repeats N] [-- --seeds N]: measures speeds and sizes, and tries the intervals on simulated
// houses. Nothing here passes or fails: it prints what it finds, and progress on the error stream.

import { availableParallelism, cpus, loadavg, totalmem } from "node:os";
import { parseArgs } from "node:util";
import { benchAnalysis } from "./bench/analysis.ts";
import { benchBedDepth } from "./bench/bedDepth.ts";
import type { Bench } from "./bench/bench.ts";
import { benchBuild } from "./bench/build.ts";
import { benchChartTruths } from "./bench/chartTruths.ts";
import { benchDriftPower } from "./bench/driftPower.ts";
import { benchReading } from "./bench/reading.ts";
import { benchRedraw } from "./bench/redraw.ts";
import { benchReviewStudy } from "./bench/reviewStudy.ts";
import { benchThermostat } from "./bench/thermostat.ts";
import { openWorkshop } from "./bench/workshop.ts";

const PARTS: Readonly<Record<string, (bench: Bench) => Promise<void>>> = {
  redraw: benchRedraw,
  build: benchBuild,
  reading: benchReading,
  thermostat: benchThermostat,
  analysis: benchAnalysis,
  "bed-depth": benchBedDepth,
  drift: benchDriftPower,
  "chart-truths": benchChartTruths,
  review: benchReviewStudy,
};

function stop(sentence: string): never {
  console.error(sentence);
  process.exit(2);
}

function countOf(text: string, name: string): number {
  const count = Number(text);
  return Number.isInteger(count) && count >= 1 ? count : stop(`--${name} takes a whole number from 1; got ${text}.`);
}

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { repeats: { type: "string", default: "5" }, seeds: { type: "string", default: "100" } },
});
const unknown = positionals.find((name) => !(name in PARTS));
if (unknown !== undefined) stop(`There is no part ${unknown}: choose among ${Object.keys(PARTS).join(", ")}.`);

const bench: Bench = {
  repeats: countOf(values.repeats, "repeats"),
  seeds: countOf(values.seeds, "seeds"),
  workshop: openWorkshop(),
};
const load = loadavg()[0] ?? 0;
console.log(
  `Piecebook bench: ${availableParallelism()} cores (${cpus()[0]?.model.trim() ?? "unknown"}), ` +
    `${(totalmem() / 1e9).toFixed(0)} GB memory, Node ${process.versions.node}; ` +
    `load average at the start ${load.toFixed(1)}.`,
);
for (const signal of ["SIGINT", "SIGTERM"] as const) {
  process.once(signal, () => {
    bench.workshop.clear();
    process.exit(1);
  });
}
try {
  for (const [name, part] of Object.entries(PARTS)) {
    if (positionals.length === 0 || positionals.includes(name)) await part(bench);
  }
} finally {
  bench.workshop.clear();
}
