import { withRows } from "./mergeFiles.ts";
import { type ProblemLog, quotedValue } from "./problemLog.ts";
import type { Table } from "./table.ts";

/** Rows in order of kiln and instant; rows of the same kiln and instant stay in the order of their files. */
function sortedRows(table: Table): Uint32Array {
  const at = table.columns.get("at") as Float64Array;
  const kilns = table.columns.get("kiln") as readonly (string | null)[] | undefined;
  const groups = new Map<string, number[]>();
  for (let row = 0; row < table.rowCount; row++) {
    const kiln = kilns?.[row] ?? "";
    const group = groups.get(kiln);
    if (group) group.push(row);
    else groups.set(kiln, [row]);
  }
  const sorted = new Uint32Array(table.rowCount);
  let to = 0;
  for (const kiln of [...groups.keys()].sort()) {
    const rows = Uint32Array.from(groups.get(kiln) as number[]);
    const inOrder = rows.every((row, i) => i === 0 || (at[rows[i - 1] as number] as number) <= (at[row] as number));
    if (!inOrder) rows.sort((a, b) => (at[a] as number) - (at[b] as number) || a - b);
    sorted.set(rows, to);
    to += rows.length;
  }
  return sorted;
}

/** Puts overlapping files together, a part of the rows at a time; no kiln and instant stands in two parts. */
export interface OverlapMerger {
  /** The part sorted, every kiln and instant once. */
  merge(part: Table): Table;
  /** Says, once all parts are merged, how many rows of each file only said again what was read before. */
  end(): void;
}

/**
 * Readings or weather from any number of files as one series: sorted, and every kiln and instant once. Rows that say
 * the same, or that fill each other's blanks, become one (a note a file counts them); where two contradict each other
 * the one read first stays and the other is set aside, since nothing tells which probe to believe.
 */
export function overlapMerger(log: ProblemLog): OverlapMerger {
  const repeats = new Map<string, { rows: number; line: number }>();
  return {
    merge: (part) => merged(part, log, repeats),
    end() {
      for (const [file, { rows, line }] of repeats) {
        log.add({
          file,
          line,
          column: null,
          value: null,
          rule: "readings-repeated",
          message: `${rows} ${rows === 1 ? "row says" : "rows say"} again what was read before, and each is kept once.`,
          hint: "Nothing to do: logger files may overlap.",
          effect: "note",
          run: null,
        });
      }
    },
  };
}

/** All of a table at once: see {@link overlapMerger}. */
export function mergeOverlaps(table: Table, log: ProblemLog): Table {
  const merger = overlapMerger(log);
  const whole = merger.merge(table);
  merger.end();
  return whole;
}

function merged(table: Table, log: ProblemLog, repeats: Map<string, { rows: number; line: number }>): Table {
  const at = table.columns.get("at") as Float64Array | undefined;
  if (!at || table.rowCount === 0) return table;
  const kilns = table.columns.get("kiln") as readonly (string | null)[] | undefined;
  const values = [...table.columns].filter(
    (entry): entry is [string, Float64Array] => entry[0] !== "at" && entry[1] instanceof Float64Array,
  );
  const order = sortedRows(table);
  const kept = new Uint32Array(order.length);
  let count = 0;

  const contradiction = (row: number, first: number): string | null => {
    for (const [name, column] of values) {
      const a = column[first] as number;
      const b = column[row] as number;
      if (a !== b && !Number.isNaN(a) && !Number.isNaN(b)) return name;
    }
    return null;
  };

  for (const row of order) {
    const first = count > 0 ? (kept[count - 1] as number) : -1;
    if (first < 0 || at[first] !== at[row] || kilns?.[first] !== kilns?.[row]) {
      kept[count++] = row;
      continue;
    }
    const path = table.files[table.fileOfRow[row] as number] as string;
    const line = table.lineOfRow[row] as number;
    const name = contradiction(row, first);
    if (name === null) {
      for (const [, column] of values) if (Number.isNaN(column[first])) column[first] = column[row] as number;
      const known = repeats.get(path);
      if (known) {
        known.rows++;
        // The first in the file, whichever kiln or part was merged first.
        known.line = Math.min(known.line, line);
      } else repeats.set(path, { rows: 1, line });
      continue;
    }
    const column = table.columns.get(name) as Float64Array;
    const where = `line ${table.lineOfRow[first]} of ${table.files[table.fileOfRow[first] as number]}`;
    log.countsOf(path).rowsSetAside++;
    log.add({
      file: path,
      line,
      column: name,
      value: quotedValue(String(column[row])),
      rule: "readings-contradict",
      message: `The same ${kilns ? "kiln and time" : "time"} stands on ${where} with another ${name}; that row is kept and this one set aside.`,
      hint: "Take one of the two files away, or mend the clock or the name of one logger.",
      effect: "row-set-aside",
      run: null,
    });
  }
  return count === order.length && order.every((row, i) => row === i)
    ? table
    : withRows(table, kept.subarray(0, count));
}
