import { logFolder } from "../../src/engine/logFolder.ts";
import { readLogs } from "../../src/tables/readLogs.ts";
import type { Bench } from "./bench.ts";
import { printTable } from "./printTable.ts";
import { progress } from "./progress.ts";
import { scanBare } from "./scanBare.ts";
import { SPREAD_HEADINGS, spreadCells } from "./spread.ts";
import { TEN_YEARS } from "./tenYears.ts";
import { timed } from "./timed.ts";

const MOST_REPEATS = 3;

/** Ten years of 1-minute readings through the log reader, which checks every field, beside DuckDB's reading of the same files. */
export async function benchReading({ workshop, repeats }: Bench): Promise<void> {
  const logs = workshop.logs(TEN_YEARS);
  const readings = logs.files.filter(({ path }) => path.startsWith("readings/"));
  const bytes = readings.reduce((sum, file) => sum + file.bytes, 0);
  const times = Math.min(repeats, MOST_REPEATS);
  const ours: number[] = [];
  const bare: number[] = [];
  let rows = 0;
  let problems = 0;
  let bareRows = 0;
  for (let i = 0; i < times; i++) {
    progress(`reading ten years of readings: ${i + 1} of ${times} …`);
    const files = logFolder(logs.folder).filter(({ path }) => path.startsWith("readings/") || path === "house.toml");
    const read = await timed(() => readLogs(files));
    ours.push(read.milliseconds / 1000);
    rows = read.result.tables.get("readings")?.rowCount ?? 0;
    problems = read.result.problems.length;
    const scanned = await scanBare(
      logs.folder,
      readings.map(({ path }) => path),
    );
    bare.push(scanned.milliseconds / 1000);
    bareRows = scanned.rows;
  }
  const megabytes = bytes / 1e6;
  const rate = (seconds: readonly number[]): number[] => seconds.map((s) => megabytes / s);
  printTable(
    "Reading: ten years of 1-minute readings",
    [
      `${bareRows.toLocaleString("en-GB")} rows in ${readings.length} files, ${megabytes.toFixed(1)} MB. The log reader checks every field and the order of rows,`,
      `keeps file and line of each, and puts overlapping files together: ${rows.toLocaleString("en-GB")} rows kept, ${problems} problems named.`,
      "DuckDB-Wasm in Node reads the same files, types given, and checks no more than that they can be read.",
    ],
    SPREAD_HEADINGS,
    [
      spreadCells("log reader", "s", ours, 2),
      spreadCells("DuckDB alone", "s", bare, 2),
      spreadCells("log reader", "MB/s", rate(ours), 1),
      spreadCells("DuckDB alone", "MB/s", rate(bare), 1),
      spreadCells(
        "log reader",
        "µs a row",
        ours.map((s) => (s * 1e6) / bareRows),
        2,
      ),
    ],
  );
}
