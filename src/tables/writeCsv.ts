import type { CsvTable, DuckType } from "./csvTable.ts";
import type { ColumnKind } from "./declarations.ts";
import { insideName } from "./insideName.ts";
import type { ColumnValues, Table } from "./table.ts";
import { declarationOf } from "./tableDeclarations.ts";

const duckTypes: Readonly<Record<ColumnKind, DuckType>> = {
  id: "VARCHAR",
  text: "VARCHAR",
  choice: "VARCHAR",
  number: "DOUBLE",
  count: "INTEGER",
  instant: "TIMESTAMP",
  date: "DATE",
  flag: "BOOLEAN",
};

type Cell = (row: number) => string;

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

const MS_A_DAY = 86_400_000;
const TWO_DIGITS = Array.from({ length: 60 }, (_, n) => String(n).padStart(2, "0"));

/** Prints instants of one column; neighbouring rows mostly share their day, whose text is kept. */
function instantPrinter(): (milliseconds: number) => string {
  let day = Number.NaN;
  let dayText = "";
  return (milliseconds) => {
    const ofDay = Math.floor(milliseconds / MS_A_DAY);
    if (ofDay !== day) {
      day = ofDay;
      dayText = new Date(milliseconds).toISOString().slice(0, 10);
    }
    const rest = milliseconds - ofDay * MS_A_DAY;
    const seconds = Math.floor(rest / 1000);
    const part = rest - seconds * 1000;
    const clock = `${TWO_DIGITS[Math.floor(seconds / 3600)]}:${TWO_DIGITS[Math.floor(seconds / 60) % 60]}:${TWO_DIGITS[seconds % 60]}`;
    return `${dayText} ${clock}${part === 0 ? "" : `.${String(part).padStart(3, "0")}`}`;
  };
}

const printers: Readonly<Record<Exclude<ColumnKind, "instant">, (value: number) => string>> = {
  id: String,
  text: String,
  choice: String,
  number: String,
  count: String,
  date: (value) => new Date(value).toISOString().slice(0, 10),
  flag: (value) => (value === 1 ? "true" : "false"),
};

function cellOf(values: ColumnValues | undefined, kind: ColumnKind): Cell {
  if (values === undefined) return () => "";
  if (values instanceof Float64Array) {
    const print = kind === "instant" ? instantPrinter() : printers[kind];
    return (row) => {
      const value = values[row] as number;
      return Number.isNaN(value) ? "" : print(value);
    };
  }
  let last: string | null = null;
  let lastQuoted = "";
  return (row) => {
    const value = values[row];
    if (value === null || value === undefined) return "";
    if (value !== last) {
      last = value;
      lastQuoted = quoted(value);
    }
    return lastQuoted;
  };
}

/** Rows are joined in blocks, so that millions of readings never become one string. */
const ROWS_A_BLOCK = 20_000;

function joined(blocks: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(blocks.reduce((sum, block) => sum + block.length, 0));
  let at = 0;
  for (const block of blocks) {
    whole.set(block, at);
    at += block.length;
  }
  return whole;
}

/**
 * A table as the CSV that the engine loads with explicit types: every declared column in the declared order, empty
 * where no file had it, and (but for readings and weather) `source_file` and `source_line` last. Its name is the
 * table's with underscores, `grain_lots`. Numbers round-trip exactly; instants are UTC.
 */
export function tableToCsv(table: Table): CsvTable {
  const columns: Record<string, DuckType> = {};
  const cells: Cell[] = [];
  for (const column of declarationOf(table.name).columns) {
    const name = insideName(column);
    columns[name] = duckTypes[column.kind];
    cells.push(cellOf(table.columns.get(name), column.kind));
  }
  if (table.name !== "readings" && table.name !== "weather") {
    columns.source_file = "VARCHAR";
    columns.source_line = "INTEGER";
    cells.push((row) => quoted(table.files[table.fileOfRow[row] as number] ?? ""));
    cells.push((row) => String(table.lineOfRow[row]));
  }
  const encoder = new TextEncoder();
  const blocks = [encoder.encode(`${Object.keys(columns).join(",")}\n`)];
  for (let from = 0; from < table.rowCount; from += ROWS_A_BLOCK) {
    const to = Math.min(from + ROWS_A_BLOCK, table.rowCount);
    let text = "";
    for (let row = from; row < to; row++) {
      for (let c = 0; c < cells.length; c++) text += c === 0 ? (cells[c] as Cell)(row) : `,${(cells[c] as Cell)(row)}`;
      text += "\n";
    }
    blocks.push(encoder.encode(text));
  }
  return { name: table.name.replaceAll("-", "_"), columns, csv: joined(blocks) };
}
