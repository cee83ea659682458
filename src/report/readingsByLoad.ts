import type { ColumnValues, Table } from "../tables/table.ts";
import type { LoadCurve } from "./loadCurve.ts";
import type { LoadRow } from "./loadRow.ts";

/** A load as far as its readings are concerned. */
export type LoadSpan = Pick<LoadRow, "load" | "kiln" | "loadedAt" | "unloadedAt">;

const numbers = (values: ColumnValues | undefined): Float64Array | null =>
  values instanceof Float64Array ? values : null;

/** Rows of the table by kiln, in time order, the first kept where two files hold the same moment. */
function rowsByKiln(kilns: readonly (string | null)[], at: Float64Array): ReadonlyMap<string, Uint32Array> {
  const lists = new Map<string, number[]>();
  kilns.forEach((kiln, row) => {
    if (kiln === null || Number.isNaN(at[row])) return;
    const list = lists.get(kiln);
    if (list) list.push(row);
    else lists.set(kiln, [row]);
  });
  const time = (row: number): number => at[row] as number;
  const sorted = new Map<string, Uint32Array>();
  for (const [kiln, list] of lists) {
    const inOrder = list.every((row, i) => i === 0 || time(list[i - 1] as number) <= time(row));
    const rows = inOrder ? list : list.sort((a, b) => time(a) - time(b) || a - b);
    const once = rows.filter((row, i) => i === 0 || time(rows[i - 1] as number) !== time(row));
    sorted.set(kiln, Uint32Array.from(once));
  }
  return sorted;
}

/** The first place in `rows` whose moment is not before `moment`. */
function firstFrom(rows: Uint32Array, at: Float64Array, moment: number): number {
  let low = 0;
  let high = rows.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((at[rows[middle] as number] as number) < moment) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** When a load's readings end: at unloading, and while it is under way where the next load of its kiln begins. */
function endOf(span: LoadSpan, loads: readonly LoadSpan[]): number {
  if (span.unloadedAt !== null) return span.unloadedAt;
  const next = loads.filter((other) => other.kiln === span.kiln && other.loadedAt > span.loadedAt);
  return next.reduce((end, other) => Math.min(end, other.loadedAt - 1), Number.POSITIVE_INFINITY);
}

/**
 * The readings of each load: those of its kiln from loading to unloading, both moments included. Files may overlap and
 * come in any order.
 *
 * @returns one load after the other, in the order of `loads`; a load without a reading is not among them
 */
export function* curvesByLoad<Load extends LoadSpan>(
  readings: Table,
  loads: readonly Load[],
): Generator<readonly [Load, LoadCurve]> {
  const at = numbers(readings.columns.get("at"));
  const kilns = readings.columns.get("kiln");
  if (!at || !kilns || kilns instanceof Float64Array) return;
  const byKiln = rowsByKiln(kilns, at);
  for (const span of loads) {
    const rows = byKiln.get(span.kiln);
    if (!rows) continue;
    const own = rows.subarray(firstFrom(rows, at, span.loadedAt), firstFrom(rows, at, endOf(span, loads) + 1));
    if (own.length === 0) continue;
    const take = (column: string): Float64Array | null => {
      const values = numbers(readings.columns.get(column));
      return values && Float64Array.from(own, (row) => values[row] as number);
    };
    const probe = (column: string): Float64Array => take(column) ?? new Float64Array(own.length).fill(Number.NaN);
    yield [
      span,
      {
        at: Float64Array.from(own, (row) => at[row] as number),
        airOnCelsius: probe("air_on_c"),
        airOffCelsius: probe("air_off_c"),
        bedCelsius: probe("bed_c"),
        airOffHumidityPercent: take("air_off_rh_pct"),
        heaterOn: take("heater_on"),
        fanOn: take("fan_on"),
      },
    ];
  }
}

/** All of {@link curvesByLoad} at once, by load. */
export function readingsByLoad(readings: Table, loads: readonly LoadSpan[]): ReadonlyMap<string, LoadCurve> {
  return new Map([...curvesByLoad(readings, loads)].map(([{ load }, curve]) => [load, curve]));
}
