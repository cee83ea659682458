import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { CsvReader, fieldText } from "../../../src/tables/csvReader.ts";

// Source: the package csv-spectrum 2.0.0 (BSD-2-Clause): CSV files with what a reader of RFC 4180 makes of them as JSON.
const root = dirname(fileURLToPath(import.meta.resolve("csv-spectrum")));
const names = readdirSync(join(root, "csvs")).map((file) => file.replace(/\.csv$/, ""));

function objectsOf(text: string, bytesAPiece: number): readonly Record<string, string>[] {
  const records: string[][] = [];
  const reader = new CsvReader(",", (record) =>
    records.push(Array.from({ length: record.count }, (_, i) => fieldText(record, i))),
  );
  for (let at = 0; at < text.length; at += bytesAPiece) reader.push(text.slice(at, at + bytesAPiece));
  reader.end();
  const [headings = [], ...rows] = records;
  return rows.map((row) => Object.fromEntries(headings.map((heading, i) => [heading, row[i] ?? ""])));
}

describe("CsvReader reads csv-spectrum's", () => {
  test("every file", () => expect(names.length).toBeGreaterThanOrEqual(11));

  // Its JSON is no list and has another telephone number than its CSV: a slip of the package. What it is about are the quotes.
  test("location_coordinates, whose coordinates hold a quotation mark within", () => {
    const read = (kind: string, end: string) => readFileSync(join(root, kind, `location_coordinates.${end}`), "utf8");
    const expected = JSON.parse(read("json", "json"))["Location Coordinates"];
    expect(objectsOf(read("csvs", "csv"), 1)[0]?.["Location Coordinates"]).toBe(expected);
  });

  test.each(names.filter((name) => name !== "location_coordinates"))("%s, whole and letter by letter", (name) => {
    const text = readFileSync(join(root, "csvs", `${name}.csv`), "utf8");
    const expected = JSON.parse(readFileSync(join(root, "json", `${name}.json`), "utf8"));
    expect(objectsOf(text, text.length)).toEqual(expected);
    expect(objectsOf(text, 1)).toEqual(expected);
  });
});
