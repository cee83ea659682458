import type { PackedReport } from "./packed.ts";
import { packReport } from "./packReport.ts";
import { unpackReport } from "./unpackReport.ts";

/**
 * A column as JSON has it: numbers, null for *not a number*, text for an infinite one. Moments (whole numbers, mostly of
 * minutes, thirteen digits each) are written as steps from one to the next.
 */
type JsonColumn =
  | readonly (number | null | string)[]
  | { readonly unit: number; readonly steps: readonly (number | null)[] };

/** From here on a whole number is taken to be a moment, ms. */
const MOMENT = 1e9;

function commonUnit(numbers: readonly number[]): number {
  let unit = 0;
  for (const number of numbers) for (let b = Math.abs(number); b !== 0; ) [unit, b] = [b, unit % b];
  return unit;
}

function jsonColumn(column: Float64Array): JsonColumn {
  const known = column.filter((n) => !Number.isNaN(n));
  const moments = known.length > 1 && known.every((n) => Number.isSafeInteger(n) && n >= MOMENT);
  if (!moments) return Array.from(column, (n) => (Number.isNaN(n) ? null : Number.isFinite(n) ? n : String(n)));
  let last = 0;
  const steps = Array.from(column, (n) => {
    if (Number.isNaN(n)) return null;
    const step = n - last;
    last = n;
    return step;
  });
  const unit = commonUnit(steps.filter((step) => step !== null));
  return { unit, steps: steps.map((step) => (step === null ? null : step / unit)) };
}

function readColumn(json: JsonColumn): Float64Array {
  if (!("steps" in json)) return Float64Array.from(json, (n) => (n === null ? Number.NaN : Number(n)));
  let last = 0;
  return Float64Array.from(json.steps, (step) => {
    if (step === null) return Number.NaN;
    last += step * json.unit;
    return last;
  });
}

interface ReportInJson extends Pick<PackedReport, "texts" | "packed"> {
  readonly columns: readonly JsonColumn[];
}

/**
 * A report, or a part of one, as JSON text, packed by columns. Every number survives to the last bit: fewer digits would
 * save a tenth, and a value that lies half-way could then print another last digit than the built page shows.
 *
 * @throws {RangeError} on what is not plain data
 */
export function formatReport(report: unknown): string {
  const { columns, texts, packed } = packReport(report);
  const json: ReportInJson = { columns: columns.map(jsonColumn), texts, packed };
  return JSON.stringify(json);
}

/** The inverse of {@link formatReport}. */
export function parseReport<T>(text: string): T {
  const { columns, texts, packed } = JSON.parse(text) as ReportInJson;
  return unpackReport<T>({ columns: columns.map(readColumn), texts, packed });
}
