import type { AskedAnswer, AskedColumn, AskedKind, AskedValue } from "../tables/askedAnswer.ts";

/** As much of one batch of an Arrow stream as is read here. */
export interface ArrowBatch {
  readonly numRows: number;
  readonly schema: { readonly fields: readonly { readonly name: string; readonly type: { toString(): string } }[] };
  getChildAt(index: number): { get(row: number): unknown } | null;
}

const KINDS: readonly (readonly [RegExp, AskedKind])[] = [
  [/^(U?[Ii]nt\d|Float|Decimal)/, "number"],
  [/^Bool/, "flag"],
  [/^Timestamp/, "instant"],
  [/^Date/, "date"],
  [/^(Utf8|LargeUtf8|List|FixedSizeList|Struct|Map|Null|Time)/, "text"],
];

/** What to ask instead, for columns that the engine cannot hand out whole. */
const INSTEAD: readonly (readonly [RegExp, string])[] = [
  [/^Interval|^Duration/, "is a span of time; ask for hours as a number: epoch(later - earlier) / 3600"],
  [/^Dictionary/, "is of an ENUM type; cast it to text with ::VARCHAR"],
];

function columnOf(name: string, type: string): AskedColumn {
  const kind = KINDS.find(([pattern]) => pattern.test(type))?.[1];
  if (kind !== undefined) return { name, kind };
  const instead =
    INSTEAD.find(([pattern]) => pattern.test(type))?.[1] ?? "holds binary values, which a page cannot show";
  throw new RangeError(`The column ${name} ${instead}.`);
}

const MICROSECONDS_A_DAY = 86_400_000_000n;

/** `06:30:00` of a TIME, which comes as microseconds of the day. */
function clockOf(value: bigint): string {
  const seconds = Number((value % MICROSECONDS_A_DAY) / 1_000_000n);
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${two(Math.floor(seconds / 3600))}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
}

function plainValue(value: unknown, isList: boolean): AskedValue {
  if (value === null || value === undefined) return null;
  if (typeof value === "number") return Number.isFinite(value) ? value : null;
  if (typeof value === "string" || typeof value === "boolean") return value;
  if (typeof value === "bigint") return clockOf(value);
  if (isList) return Array.from(value as Iterable<unknown>, (item) => String(plainValue(item, false) ?? "")).join(", ");
  return String(value);
}

/**
 * The first rows of a stream of batches, as plain data.
 *
 * @param mostRows where the stream has more, it is read no further
 * @throws {RangeError} with a sentence for the reader on a column that cannot be handed out
 */
export async function askedRows(
  batches: AsyncIterable<ArrowBatch> | Iterable<ArrowBatch>,
  mostRows: number,
): Promise<AskedAnswer> {
  let columns: readonly AskedColumn[] = [];
  const rows: AskedValue[][] = [];
  for await (const batch of batches) {
    columns = batch.schema.fields.map(({ name, type }) => columnOf(name, String(type)));
    const lists = batch.schema.fields.map(({ type }) => /^(List|FixedSizeList)/.test(String(type)));
    const vectors = columns.map((_, index) => batch.getChildAt(index));
    for (let row = 0; row < batch.numRows; row++) {
      if (rows.length === mostRows) return { columns, rows, more: true };
      rows.push(vectors.map((vector, index) => plainValue(vector?.get(row), lists[index] === true)));
    }
  }
  return { columns, rows, more: false };
}
