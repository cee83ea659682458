import type { Packed, PackedList, PackedReport, Scalar } from "./packed.ts";

interface Memory {
  readonly columns: Float64Array[];
  /** Places of columns by a digest of their bits. */
  readonly byDigest: Map<number, number[]>;
  readonly texts: (readonly Scalar[])[];
  readonly textPlaces: Map<string, number>;
}

const bitsOf = (column: Float64Array): Uint32Array =>
  new Uint32Array(column.buffer, column.byteOffset, column.length * 2);

/** FNV-1a over the bits (Fowler, Noll and Vo; from memory). Equal columns have it in common; they are compared all the same. */
function digestOf(bits: Uint32Array): number {
  let hash = 0x811c9dc5;
  for (const word of bits) hash = Math.imul(hash ^ word, 0x01000193);
  return hash;
}

/** The place of a column; a new one is kept as it is. */
function placeColumn(column: Float64Array, { columns, byDigest }: Memory): number {
  const bits = bitsOf(column);
  const digest = digestOf(bits);
  const places = byDigest.get(digest) ?? [];
  const known = places.find((place) => {
    const other = bitsOf(columns[place] as Float64Array);
    return other.length === bits.length && other.every((word, i) => word === bits[i]);
  });
  if (known !== undefined) return known;
  byDigest.set(digest, [...places, columns.length]);
  return columns.push(column) - 1;
}

function placeTexts(values: readonly Scalar[], { texts, textPlaces }: Memory): number {
  const key = JSON.stringify(values);
  const known = textPlaces.get(key);
  if (known !== undefined) return known;
  textPlaces.set(key, texts.length);
  return texts.push(values) - 1;
}

/** Numbers and nulls as a column, nulls as NaN; null where anything else is among them, or no number at all. */
function numbersOf(values: readonly unknown[]): Float64Array | null {
  const numbers = new Float64Array(values.length);
  let known = 0;
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i];
    if (typeof value === "number" && !Number.isNaN(value)) {
      numbers[i] = value;
      known += 1;
    } else if (value === null) numbers[i] = Number.NaN;
    else return null;
  }
  return known === 0 ? null : numbers;
}

const isScalar = (value: unknown): value is Scalar =>
  value === null || typeof value === "string" || typeof value === "boolean";

type Plain = Readonly<Record<string, unknown>>;

function isPlain(value: unknown): value is Plain {
  if (typeof value !== "object" || value === null) return false;
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}

/** Alike objects taken apart: their fields, and what each object holds of each. */
interface Apart {
  readonly fields: readonly string[];
  readonly held: readonly (readonly unknown[])[];
}

/** Puts what an object holds at a place of each field's list; false where it does not hold just these fields. */
function takeApart(object: Plain, fields: readonly string[], held: readonly unknown[][], place: number): boolean {
  let count = 0;
  // Thousands of objects of one shape are read fastest in the order in which they were made.
  for (const field in object) {
    const at = field === fields[count] ? count : fields.indexOf(field);
    const list = held[at];
    if (list === undefined || object[field] === undefined) return false;
    list[place] = object[field];
    count += 1;
  }
  return count === fields.length;
}

/** Objects that all hold the same fields, none undefined; null where they do not, or are fewer than two. */
function takenApart(objects: readonly unknown[]): Apart | null {
  const [first] = objects;
  if (objects.length < 2 || !isPlain(first)) return null;
  const fields = Object.keys(first);
  const held = fields.map(() => new Array<unknown>(objects.length));
  const alike = objects.every((object, place) => isPlain(object) && takeApart(object, fields, held, place));
  return alike ? { fields, held } : null;
}

function packTexts(values: readonly Scalar[], memory: Memory): PackedList {
  const order = new Map<Scalar, number>();
  const which = new Float64Array(values.length);
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i] as Scalar;
    let place = order.get(value);
    if (place === undefined) {
      place = order.size;
      order.set(value, place);
      // Names that hardly ever come again need no list of which stands where.
      if (place >= values.length / 2) return ["texts", placeTexts(values, memory)];
    }
    which[i] = place;
  }
  return ["words", [...order.keys()], placeColumn(which, memory)];
}

function packRows(values: readonly unknown[], present: number, { fields, held }: Apart, memory: Memory) {
  const standAt = (): number[] => values.flatMap((value, i) => (value === null ? [] : [i]));
  const where = present === values.length ? null : placeColumn(Float64Array.from(standAt()), memory);
  const columns = fields.map((field, i): [string, PackedList] => [field, packList(held[i] ?? [], memory)]);
  return ["rows", values.length, where, Object.fromEntries(columns)] as const;
}

function packList(values: readonly unknown[], memory: Memory): PackedList {
  const numbers = numbersOf(values);
  if (numbers !== null) return ["numbers", placeColumn(numbers, memory)];
  if (values.length > 0 && values.every(isScalar)) return packTexts(values, memory);
  if (values.length > 1 && values.every(Array.isArray)) {
    const lengths = Float64Array.from(values as readonly unknown[][], (list) => list.length);
    return ["lists", placeColumn(lengths, memory), packList(values.flat(), memory)];
  }
  const present = values.includes(null) ? values.filter((value) => value !== null) : values;
  const apart = takenApart(present);
  if (apart !== null) return packRows(values, present.length, apart, memory);
  return ["list", values.map((value) => pack(value, memory))];
}

function pack(value: unknown, memory: Memory): Packed {
  if (typeof value === "number") return Number.isFinite(value) ? value : ["odd", String(value) as "NaN"];
  if (isScalar(value)) return value;
  if (value instanceof Float64Array) return ["floats", placeColumn(value.slice(), memory)];
  if (Array.isArray(value)) return packList(value, memory);
  if (!isPlain(value)) throw new RangeError(`a report is plain data; got ${Object.prototype.toString.call(value)}`);
  const fields = Object.entries(value).filter(([, held]) => held !== undefined);
  return Object.fromEntries(fields.map(([field, held]) => [field, pack(held, memory)]));
}

/**
 * Packs plain data (objects, arrays, text, numbers, booleans, null and Float64Arrays) by columns; `unpackReport` gives it
 * back to the last bit. Fields that are undefined are left out. Its columns are its own, so they may be transferred.
 *
 * @throws {RangeError} on anything that is not plain data, such as a Map
 */
export function packReport(report: unknown): PackedReport {
  const memory: Memory = { columns: [], byDigest: new Map(), texts: [], textPlaces: new Map() };
  const packed = pack(report, memory);
  return { columns: memory.columns, texts: memory.texts, packed };
}
