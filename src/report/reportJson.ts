const NUMBERS = "numbers";

/**
 * A report as JSON text. Number columns become plain arrays under one marked key, with null for *not a number*, so that
 * {@link parseReport} can give them back as they were; every number survives to the last bit.
 */
export function formatReport(report: unknown): string {
  return JSON.stringify(report, (_, value: unknown) => {
    if (value instanceof Float64Array) return { [NUMBERS]: Array.from(value, (n) => (Number.isNaN(n) ? null : n)) };
    if (value instanceof Map) throw new RangeError("a report crosses as plain data; got a Map");
    return value;
  });
}

const isNumbers = (value: unknown): value is { [NUMBERS]: (number | null)[] } =>
  typeof value === "object" && value !== null && NUMBERS in value && Object.keys(value).length === 1;

/** The inverse of {@link formatReport}. */
export function parseReport<T>(text: string): T {
  return JSON.parse(text, (_, value: unknown) =>
    isNumbers(value) ? Float64Array.from(value[NUMBERS], (n) => n ?? Number.NaN) : value,
  ) as T;
}
