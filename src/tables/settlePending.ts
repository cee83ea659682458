import type { CellFault } from "./cellFault.ts";
import type { TableDeclaration } from "./declarations.ts";
import { type PendingTime, settleRow, settleSeries } from "./doubledHours.ts";
import type { PendingCell, RowReader } from "./rowReader.ts";

const unsettled = (text: string): CellFault => ({
  rule: "doubled-hour",
  message: `The clocks went back over “${text}”: that time came twice, and the times about it do not say which is meant.`,
  hint: "Write it with its offset from UTC, as in 2026-11-01T01:30-05:00.",
});

/** Readings and weather: the order of the rows of each kiln settles them. */
function settleInSeries(rows: RowReader): ReadonlyMap<number, number> {
  const { store, readers, pending } = rows;
  const slot = (pending[0] as PendingCell).slot;
  const kiln = readers.find(({ mapped }) => mapped.inside === "kiln")?.slot;
  const groups = new Map<string, number[]>();
  for (let row = 0; row < store.rowCount; row++) {
    const name = kiln === undefined ? "" : (store.values[kiln]?.[row] as string);
    const group = groups.get(name);
    if (group) group.push(row);
    else groups.set(name, [row]);
  }
  const byRow = new Map<number, PendingTime>(pending.map((cell) => [cell.row, cell]));
  const at = store.values[slot] as Float64Array;
  const settled = new Map<number, number>();
  for (const group of groups.values()) {
    const times = group.map((row) => at[row] as number);
    for (const [row, instant] of settleSeries(times, group, byRow)) settled.set(row, instant);
  }
  return settled;
}

/** All other tables: the other instants of the same row settle them, or nothing does. */
function settleInRow(rows: RowReader, row: number, cells: readonly PendingCell[]): ReadonlyMap<number, number> {
  const slots = rows.readers.filter(({ mapped }) => mapped.column.kind === "instant").map(({ slot }) => slot);
  const candidates = slots.map((slot) => {
    const cell = cells.find((pending) => pending.slot === slot);
    if (cell) return [cell.earlier, cell.later];
    const known = rows.store.values[slot]?.[row] as number;
    return Number.isNaN(known) ? [] : [known];
  });
  const chosen = settleRow(candidates);
  const settled = new Map<number, number>();
  slots.forEach((slot, index) => {
    const instant = chosen[index];
    if (typeof instant === "number" && !Number.isNaN(instant)) settled.set(slot, instant);
  });
  return settled;
}

function refuse(rows: RowReader, cell: PendingCell, dropped: Set<number>): void {
  const { store, readers } = rows;
  const mapped = readers.find(({ slot }) => slot === cell.slot)?.mapped;
  if (!mapped) return;
  const runSlot = readers.find((reader) => reader.mapped.inside === "run")?.slot;
  const run = runSlot === undefined ? null : ((store.values[runSlot]?.[cell.row] as string | null) ?? null);
  const needed = mapped.column.needed === true;
  rows.report(store.lines[cell.row] as number, mapped.heading, cell.text, unsettled(cell.text), needed, run);
  if (!needed || dropped.has(cell.row)) return;
  dropped.add(cell.row);
  store.dropRow(cell.row);
  rows.setAside();
}

/** Settles the times in doubled hours of a file that has ended; what stays open is reported and blanked or set aside. */
export function settlePending(rows: RowReader, declaration: TableDeclaration): void {
  const { pending, store } = rows;
  if (pending.length === 0) return;
  const dropped = new Set<number>();
  const put = (cell: PendingCell, instant: number | undefined): void => {
    if (instant === undefined) refuse(rows, cell, dropped);
    else (store.values[cell.slot] as Float64Array)[cell.row] = instant;
  };
  if (declaration.place.endsWith("/")) {
    const settled = settleInSeries(rows);
    for (const cell of pending) put(cell, settled.get(cell.row));
    return;
  }
  for (const row of new Set(pending.map((cell) => cell.row))) {
    const cells = pending.filter((cell) => cell.row === row);
    const settled = settleInRow(rows, row, cells);
    for (const cell of cells) put(cell, settled.get(cell.slot));
  }
}
