/** As much of an Arrow table as is read here; both builds of the engine answer with one. */
export interface ArrowTable {
  readonly numRows: number;
  readonly schema: { readonly fields: readonly { readonly name: string }[] };
  getChildAt(index: number): { get(row: number): unknown } | null;
}

function plain(value: unknown): unknown {
  if (value === null || value === undefined) return null;
  if (typeof value !== "object") return value;
  if (Symbol.iterator in value) return Array.from(value as Iterable<unknown>, plain);
  throw new RangeError("A query may yield numbers, text, booleans and lists of them; got a nested or binary column");
}

/**
 * The rows of a query's answer as plain objects, which cross from a worker to its page by structured clone.
 *
 * @throws {RangeError} when a column holds anything but numbers, text, booleans and lists of them
 */
export function arrowRows<Row extends object>(table: ArrowTable): readonly Row[] {
  const rows: Record<string, unknown>[] = Array.from({ length: table.numRows }, () => ({}));
  table.schema.fields.forEach(({ name }, index) => {
    const column = table.getChildAt(index);
    rows.forEach((row, at) => {
      row[name] = plain(column?.get(at));
    });
  });
  return rows as Row[];
}
