import { execFile } from "node:child_process";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import type { Bench } from "./bench.ts";
import { printTable } from "./printTable.ts";
import { progress } from "./progress.ts";
import { SPREAD_HEADINGS, spreadCells } from "./spread.ts";
import { TEN_YEARS } from "./tenYears.ts";
import type { Scanned, Summarised } from "./thermostatChild.ts";

const MOST_REPEATS = 3;
const CHILD = fileURLToPath(new URL("thermostatChild.ts", import.meta.url));

/** @throws {Error} with what it said when the process fails */
async function inChild<T>(what: "summarise" | "scan", folder: string): Promise<T> {
  const { stdout } = await promisify(execFile)(process.execPath, [CHILD, what, folder]);
  return JSON.parse(stdout.trimEnd().split("\n").at(-1) ?? "") as T;
}

/** What the thermostats did in each load of ten years of 1-minute readings, beside DuckDB's bare reading of the same files. */
export async function benchThermostat({ workshop, repeats }: Bench): Promise<void> {
  const logs = workshop.logs(TEN_YEARS);
  const files = logs.files.filter(({ path }) => path.startsWith("readings/"));
  const megabytes = files.reduce((sum, { bytes }) => sum + bytes, 0) / 1e6;
  const times = Math.min(repeats, MOST_REPEATS);
  const ours: Summarised[] = [];
  const bare: Scanned[] = [];
  for (let i = 0; i < times; i++) {
    progress(`summarising ten years of thermostats: ${i + 1} of ${times} …`);
    ours.push(await inChild<Summarised>("summarise", logs.folder));
    bare.push(await inChild<Scanned>("scan", logs.folder));
  }
  const { rows, loads, withOffset, largestPart, filesMegabytes } = ours[0] as Summarised;
  const scannedRows = (bare[0] as Scanned).rows;
  const line = (name: string, unit: string, decimals: number, of: (one: Summarised) => number): string[] =>
    spreadCells(name, unit, ours.map(of), decimals);
  printTable(
    "Thermostats: ten years of 1-minute readings by load",
    [
      `${scannedRows.toLocaleString("en-GB")} rows in ${files.length} files, ${megabytes.toFixed(1)} MB; ${rows.toLocaleString("en-GB")} kept. ${loads} loads summarised, ${withOffset} of them with an offset in a hold.`,
      "Each time in a process of its own; its peak is the most memory that it held at once, the engine and Node themselves included.",
      `Ours reads each file twice, checks every field and puts files together; the largest part handed over at once has ${largestPart.toLocaleString("en-GB")} rows,`,
      `and of each load its own file stays in memory until it is written: ${filesMegabytes.toFixed(1)} MB in all. DuckDB-Wasm reads the readings alone, types given.`,
    ],
    SPREAD_HEADINGS,
    [
      line("all other logs, joined", "s", 2, ({ othersSeconds }) => othersSeconds),
      line("reading the readings", "s", 2, ({ readingsSeconds, takingSeconds }) => readingsSeconds - takingSeconds),
      line("by load: cut, summarise, write", "s", 2, ({ takingSeconds }) => takingSeconds),
      line("the same", "ms a load", 2, ({ takingSeconds }) => (takingSeconds * 1000) / loads),
      line("all three", "s", 2, ({ othersSeconds, readingsSeconds }) => othersSeconds + readingsSeconds),
      spreadCells(
        "DuckDB alone",
        "s",
        bare.map(({ scanSeconds }) => scanSeconds),
        2,
      ),
      line("peak before the readings", "MB", 0, ({ peakBeforeMegabytes }) => peakBeforeMegabytes),
      line("peak, all three", "MB", 0, ({ peakMegabytes }) => peakMegabytes),
      spreadCells(
        "peak, DuckDB alone",
        "MB",
        bare.map(({ peakMegabytes }) => peakMegabytes),
        0,
      ),
    ],
  );
}
