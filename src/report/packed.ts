/**
 * Plain data packed by columns: an array of alike objects becomes one column a field, and columns that are the same are kept
 * once. A report so packed is a fraction of its size, as JSON and on its way from worker to page.
 */
export interface PackedReport {
  readonly columns: readonly Float64Array[];
  readonly texts: readonly (readonly Scalar[])[];
  readonly packed: Packed;
}

export type Packed = string | number | boolean | null | PackedRecord | PackedList;

export interface PackedRecord {
  readonly [field: string]: Packed;
}

export type Scalar = string | boolean | null;

/** Its place among the columns, or the texts, of the report. */
type Place = number;

/** An array says first how it is packed; plain arrays do not occur. */
export type PackedList =
  | readonly ["list", readonly Packed[]]
  /** A Float64Array. */
  | readonly ["floats", Place]
  /** Numbers and nulls, these as NaN. */
  | readonly ["numbers", Place]
  /** Text, one by one. */
  | readonly ["texts", Place]
  /** Few different values, and which of them stands where. */
  | readonly ["words", readonly Scalar[], Place]
  /** Objects with the same fields; where some are null, the column of where the others stand. */
  | readonly ["rows", number, Place | null, { readonly [field: string]: PackedList }]
  /** Arrays one after another: how long each is, and all they hold. */
  | readonly ["lists", Place, PackedList]
  /** A number that JSON has no word for. */
  | readonly ["odd", "NaN" | "Infinity" | "-Infinity"];
