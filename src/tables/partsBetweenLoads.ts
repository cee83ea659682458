import { cutBetweenLoads, type LoadSpan } from "./kilnLoadSpans.ts";
import { withRows } from "./mergeFiles.ts";
import type { Table } from "./table.ts";

/** Samples of a part's length from which the cuts are found. */
const SAMPLES_A_PART = 100;

interface Parts {
  /** How many rows will be handed over. */
  readonly rowCount: number;
  /** Earliest first, each made only when it is asked for, so that no more than one stands beside the table. */
  readonly parts: Iterable<Table>;
  /** The rows from `end` on. */
  readonly rest: Table;
}

/** Moments at which no load lay in the kiln, about `rowsAPart` rows apart where the loads allow it; `end` is the last. */
function cutsUpTo(end: number, at: Float64Array, loads: readonly LoadSpan[], rowsAPart: number): readonly number[] {
  const stride = Math.max(1, Math.floor(rowsAPart / SAMPLES_A_PART));
  const sample = Float64Array.from({ length: Math.ceil(at.length / stride) }, (_, i) => at[i * stride] as number)
    .filter((moment) => moment < end)
    .sort();
  const step = Math.max(1, Math.floor(rowsAPart / stride));
  const cuts = new Set<number>();
  for (let i = step; i < sample.length; i += step) cuts.add(cutBetweenLoads(loads, sample[i] as number));
  return [...cuts, end].sort((a, b) => a - b);
}

/**
 * One kiln's rows before `end`, in parts of about `rowsAPart` that follow each other in time, so that what is done with the rows of
 * a year can say how far it is. No load and no instant lies in two parts; inside a part the rows stay in the table's order.
 *
 * @param end a moment at which no load lay in the kiln; infinity for all rows
 */
export function partsBetweenLoads(table: Table, loads: readonly LoadSpan[], end: number, rowsAPart: number): Parts {
  const at = table.columns.get("at") as Float64Array;
  const cuts = cutsUpTo(end, at, loads, rowsAPart);
  const partOf = new Uint32Array(at.length);
  const counts = new Uint32Array(cuts.length + 1);
  let part = 0;
  for (let row = 0; row < at.length; row += 1) {
    const moment = at[row] as number;
    // Readings mostly follow each other, so that the part is mostly that of the row before.
    if (part > 0 && moment < (cuts[part - 1] as number)) part = 0;
    while (part < cuts.length && moment >= (cuts[part] as number)) part += 1;
    partOf[row] = part;
    counts[part] = (counts[part] as number) + 1;
  }
  const rowsOf = (wanted: number): Uint32Array => {
    const rows = new Uint32Array(counts[wanted] as number);
    let to = 0;
    for (let row = 0; row < partOf.length; row += 1) if (partOf[row] === wanted) rows[to++] = row;
    return rows;
  };
  const taken = (wanted: number): Table => (counts[wanted] === at.length ? table : withRows(table, rowsOf(wanted)));
  return {
    rowCount: at.length - (counts[cuts.length] as number),
    parts: (function* () {
      for (const wanted of cuts.keys()) if ((counts[wanted] as number) > 0) yield taken(wanted);
    })(),
    rest: taken(cuts.length),
  };
}
