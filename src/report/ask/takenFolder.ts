import type { AskedAnswer } from "../../tables/askedAnswer.ts";
import { guardedText } from "../../tables/guardedCsv.ts";
import { houseText } from "../../tables/houseOut.ts";
import { logText } from "../../tables/logsOut.ts";
import type { ColumnValues, Table } from "../../tables/table.ts";
import { tableOfAnswer } from "../../tables/tableOfAnswer.ts";
import { parseLoadReadings } from "../loadCurve.ts";
import type { PublishedLogs } from "../publishedLogs.ts";
import type { OtherColumn } from "../report.ts";
import { takenLogs } from "./takenTables.ts";

/** Where logs that are taken away come from. */
export interface TakenSource {
  readonly published: PublishedLogs;
  /** All rows of a question to the engine. */
  readonly ask: (sql: string) => Promise<AskedAnswer>;
  /** The text of one load's own file of readings, by its name. */
  readonly readings: (file: string) => Promise<string>;
}

/** A file of the folder. */
export interface TakenPart {
  readonly path: string;
  readonly text: string;
  /** Parts up to this one, of all that there are. */
  readonly done: number;
  readonly of: number;
}

/** Loads whose readings there are, in time order. */
const readLoads = `SELECT load, kiln, readings_file FROM load_rows JOIN load_readings USING (load)
  WHERE readings_file IS NOT NULL ORDER BY loaded_at, load`;

const text = (value: unknown): string => String(value ?? "");

function settings({ house, costs, baselines, tolerances, thermostat, kilns }: PublishedLogs): string {
  return houseText({
    ...house,
    kilns,
    costs,
    baselines,
    tolerances: { thermostatCelsius: thermostat.toleranceKelvin, measures: tolerances },
    checks: { loggerDays: thermostat.loggerDays },
  });
}

/** The columns beyond the format behind the others again: those of a run go to its rows one after the other. */
function withOthers(table: Table, others: readonly OtherColumn[]): Table {
  const runs = table.columns.get("run") ?? [];
  const unknown = new Map<string, (string | null)[]>();
  const taken = new Map<string, number>();
  for (const { run, column, value } of others.filter(({ table: name }) => name === table.name)) {
    const values = unknown.get(column) ?? new Array<string | null>(table.rowCount).fill(null);
    unknown.set(column, values);
    const key = JSON.stringify([column, run]);
    const row = nextRow(runs, run, taken.get(key) ?? 0);
    if (row < 0) continue;
    values[row] = guardedText(value);
    taken.set(key, row + 1);
  }
  return { ...table, unknownColumns: unknown };
}

function nextRow(runs: ColumnValues, run: string, from: number): number {
  for (let row = from; row < runs.length; row += 1) if (runs[row] === run) return row;
  return -1;
}

/** One load's readings as a log of the format: its kiln in every row, moments in UTC. */
function readingsLog(csv: string, kiln: string): string {
  const curve = parseLoadReadings(csv);
  const rowCount = curve.at.length;
  const probes = [
    ["air_on_c", curve.airOnCelsius],
    ["air_off_c", curve.airOffCelsius],
    ["bed_c", curve.bedCelsius],
    ["air_off_rh_pct", curve.airOffHumidityPercent],
    ["heater_on", curve.heaterOn],
    ["fan_on", curve.fanOn],
  ] as const;
  const said = probes.flatMap(([name, values]) =>
    values === null || (name !== "air_on_c" && values.every(Number.isNaN)) ? [] : [[name, values] as const],
  );
  return logText({
    name: "readings",
    rowCount,
    columns: new Map<string, ColumnValues>([
      ["kiln", new Array<string>(rowCount).fill(kiln)],
      ["at", curve.at],
      ...said,
    ]),
    writtenUnits: new Map(),
    unknownColumns: new Map(),
    files: [],
    fileOfRow: new Uint16Array(rowCount),
    lineOfRow: new Int32Array(rowCount),
  });
}

const readme = ({ name, invented }: PublishedLogs["house"]): string => `Cleaned logs of ${name}
${invented ? "\nThis house is invented, with all its people and figures.\n" : ""}
What Piecebook read and could use, in its log format again: metric units, moments in UTC. Rows that had been set aside
are gone, values that had been refused are blank, repeated readings stand once, and readings of no load are left out.
Names of customers, their keys and the notes on lots, orders and deliveries are not here. A text that a spreadsheet
would run as a formula has an apostrophe before it. The probes are written to a hundredth of a degree.

It is a logs folder like any other: choose the zip on the page Your own logs, or unpack it and build the site from it.
`;

/** Letters and numbers of every land may stand in a file's name, and a few marks. */
const fileName = (load: string): string => load.replaceAll(/[^\p{L}\p{N}_-]+/gu, "-");

/**
 * The logs that a site or a browser holds as a folder of the log format, one file after the other: settings, every log, the
 * columns beyond the format, each load's readings. Read again it gives the same report, but for what its README says.
 *
 * @throws {Error} what asking or fetching throws
 */
export async function* takenFolder({ published, ask, readings }: TakenSource): AsyncGenerator<TakenPart> {
  const loads = (await ask(readLoads)).rows;
  const of = 2 + takenLogs.length + loads.length;
  let done = 0;
  const part = (path: string, content: string): TakenPart => ({ path, text: content, done: ++done, of });

  yield part("README.txt", readme(published.house));
  yield part("house.toml", settings(published));
  for (const { name, path, sql } of takenLogs) {
    const answer = await ask(sql);
    if (answer.rows.length === 0) {
      done += 1;
      continue;
    }
    yield part(path, logText(withOthers(tableOfAnswer(name, answer), published.otherColumns)));
  }
  const names = new Set<string>();
  for (const [load, kiln, file] of loads) {
    const plain = fileName(text(load));
    const name = names.has(plain.toLowerCase()) || plain === "" ? `${plain}-${done}` : plain;
    names.add(name.toLowerCase());
    yield part(`readings/${name}.csv`, readingsLog(await readings(text(file)), text(kiln)));
  }
}
