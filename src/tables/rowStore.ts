import type { ColumnValues } from "./table.ts";

const FIRST_CAPACITY = 256;

export type Values = Float64Array | (string | null)[];

/** Columns that grow row by row while a file is read; a row counts only when it is kept. */
export class RowStore {
  rowCount = 0;
  readonly values: Values[] = [];
  lines: Int32Array = new Int32Array(FIRST_CAPACITY);
  private readonly dropped = new Set<number>();
  private capacity = FIRST_CAPACITY;

  /** Adds a column and returns its slot. */
  addColumn(holds: "number" | "text"): number {
    this.values.push(holds === "number" ? new Float64Array(this.capacity) : []);
    return this.values.length - 1;
  }

  /** Makes room for the row that is being read. */
  makeRoom(): void {
    if (this.rowCount < this.capacity) return;
    this.capacity *= 2;
    const lines = new Int32Array(this.capacity);
    lines.set(this.lines);
    this.lines = lines;
    this.values.forEach((column, slot) => {
      if (!(column instanceof Float64Array)) return;
      const grown = new Float64Array(this.capacity);
      grown.set(column);
      this.values[slot] = grown;
    });
  }

  keepRow(line: number): void {
    this.lines[this.rowCount] = line;
    this.rowCount++;
  }

  /** Takes back a row that was kept. */
  dropRow(row: number): void {
    this.dropped.add(row);
  }

  /** Everything kept, at its exact length. */
  finish(): { readonly rowCount: number; readonly values: readonly ColumnValues[]; readonly lines: Int32Array } {
    let rows: number[] | null = null;
    if (this.dropped.size > 0) {
      rows = [];
      for (let row = 0; row < this.rowCount; row++) if (!this.dropped.has(row)) rows.push(row);
    }
    if (rows === null) {
      return {
        rowCount: this.rowCount,
        values: this.values.map((column) => column.slice(0, this.rowCount)),
        lines: this.lines.slice(0, this.rowCount),
      };
    }
    return {
      rowCount: rows.length,
      values: this.values.map((column) => picked(column, rows)),
      lines: Int32Array.from(rows, (row) => this.lines[row] as number),
    };
  }
}

/** The values of some rows, in the order given. */
export function picked(values: ColumnValues, rows: ArrayLike<number>): ColumnValues {
  const { length } = rows;
  if (values instanceof Float64Array) {
    const some = new Float64Array(length);
    for (let i = 0; i < length; i++) some[i] = values[rows[i] as number] as number;
    return some;
  }
  const some: (string | null)[] = [];
  for (let i = 0; i < length; i++) some.push(values[rows[i] as number] ?? null);
  return some;
}
