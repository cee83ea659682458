import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CsvReader, fieldText, STRAY_QUOTE } from "../../src/tables/csvReader.ts";

interface Read {
  readonly fields: readonly string[];
  readonly line: number;
  readonly lines: readonly number[];
  readonly stray: readonly boolean[];
  readonly openQuote: boolean;
  readonly lastLine: number;
  readonly linesTaken: number;
}

function readAll(text: string, delimiter = ",", pieceLength = text.length || 1): readonly Read[] {
  const records: Read[] = [];
  const reader = new CsvReader(delimiter, (record) =>
    records.push({
      fields: Array.from({ length: record.count }, (_, i) => fieldText(record, i)),
      line: record.line,
      lines: record.lines.slice(0, record.count),
      stray: record.flags.slice(0, record.count).map((flag) => flag === STRAY_QUOTE),
      openQuote: record.openQuote,
      lastLine: record.lastLine,
      linesTaken: record.linesTaken,
    }),
  );
  for (let at = 0; at < text.length; at += pieceLength) reader.push(text.slice(at, at + pieceLength));
  reader.end();
  return records;
}

const fieldsOf = (text: string, delimiter?: string, pieceLength?: number) =>
  readAll(text, delimiter, pieceLength).map(({ fields }) => fields);

describe("CsvReader", () => {
  test("reads the forms of RFC 4180, section 2", () => {
    expect(fieldsOf("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n")).toEqual([
      ["aaa", "bbb", "ccc"],
      ["zzz", "yyy", "xxx"],
    ]);
    expect(fieldsOf("aaa,bbb,ccc\r\nzzz,yyy,xxx")).toHaveLength(2);
    expect(fieldsOf('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx')[0]).toEqual(["aaa", "b\r\nbb", "ccc"]);
    expect(fieldsOf('"aaa","b""bb","ccc"')).toEqual([["aaa", 'b"bb', "ccc"]]);
  });

  test("takes CR, LF and CRLF, mixed, as line breaks", () => {
    expect(fieldsOf("a\rb\nc\r\nd")).toEqual([["a"], ["b"], ["c"], ["d"]]);
  });

  test("names the line on which each record and each field begins", () => {
    const [first, second] = readAll('a,"b\n\nb",c\nd,e,f\n');
    expect(first?.lines).toEqual([1, 1, 3]);
    expect(second?.line).toBe(4);
  });

  test("flags a quotation mark where none may stand, and goes on with the next line", () => {
    const records = readAll('a,5" bed,c\n"x"y,z,w\nd,e,f\n');
    expect(records.map(({ stray }) => stray)).toEqual([
      [false, true, false],
      [true, false, false],
      [false, false, false],
    ]);
    expect(records[1]?.fields[0]).toBe('"x"y');
  });

  test("says where a quotation mark that is never closed was opened, and how many lines it took", () => {
    const records = readAll('a,b\nc,"d\ne,f\n\ng,h\n');
    expect(records.at(-1)).toMatchObject({ openQuote: true, line: 2, lastLine: 5, linesTaken: 3 });
    expect(records).toHaveLength(2);
  });

  test("gives up on an open quote after a million characters instead of holding the file", () => {
    const row = `${"x".repeat(99)}\n`;
    const records = readAll(`a,"b\n${row.repeat(30_000)}`, ",", 65_536);
    expect(records).toHaveLength(1);
    expect(records[0]).toMatchObject({ openQuote: true, line: 1, linesTaken: 30_001, lastLine: 30_001 });
  });

  test("hands on the same records however the text is cut into pieces", () => {
    const piece = fc.constantFrom("a", "12.5", ",", ",", '"', '""', "\n", "\r\n", "\r", " ", "ü");
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 60 }), fc.integer({ min: 1, max: 7 }), (parts, length) => {
        const text = parts.join("");
        expect(readAll(text, ",", length)).toEqual(readAll(text));
      }),
      { numRuns: 500 },
    );
  });

  test("agrees with csv-parse on every well-formed file", () => {
    const field = fc.oneof(
      fc.string({ maxLength: 8 }),
      fc.array(fc.constantFrom('"', ",", "\n", "\r\n", ";", "x", "é"), { maxLength: 6 }).map((parts) => parts.join("")),
    );
    const rows = fc
      .integer({ min: 1, max: 5 })
      .chain((width) =>
        fc.array(fc.array(field, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 8 }),
      );
    fc.assert(
      fc.property(
        rows,
        fc.constantFrom("\n", "\r\n"),
        fc.constantFrom(",", ";", "\t"),
        (table, lineBreak, delimiter) => {
          const text = table
            .map((row) => row.map((value) => `"${value.replaceAll('"', '""')}"`).join(delimiter))
            .join(lineBreak);
          const expected: string[][] = parse(text, {
            delimiter,
            record_delimiter: ["\r\n", "\n", "\r"],
            relax_column_count: true,
          });
          expect(fieldsOf(text, delimiter, 5)).toEqual(expected);
        },
      ),
      { numRuns: 300 },
    );
  });

  test("agrees with csv-parse on unquoted files", () => {
    const cell = fc.string({ maxLength: 6 }).map((text) => text.replaceAll(/["\r\n,]/g, "x"));
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 8 }), (table) => {
        const text = `${table.map((row) => row.join(",")).join("\n")}\n`;
        const expected: string[][] = parse(text, { relax_column_count: true });
        expect(fieldsOf(text)).toEqual(expected);
      }),
      { numRuns: 300 },
    );
  });
});
