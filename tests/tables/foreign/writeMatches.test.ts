import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { emptyMatch, type ForeignMatch, meansFile } from "../../../src/tables/foreign/foreignMatch.ts";
import { readMatches } from "../../../src/tables/foreign/readMatches.ts";
import { writeMatches } from "../../../src/tables/foreign/writeMatches.ts";

const heading = fc
  .string({ unit: "grapheme", minLength: 1, maxLength: 12 })
  .map((text) => text.replaceAll(/\s+/gu, " ").trim())
  .filter((text) => text !== "" && text !== "__proto__");
const from = fc.array(fc.oneof(heading, fc.integer({ min: 1, max: 40 })), { minLength: 1, maxLength: 2 });

const match: fc.Arbitrary<ForeignMatch> = fc.record({
  files: heading,
  table: fc.constant("kilning" as const),
  encoding: fc.constantFrom(null, "windows-1252"),
  delimiter: fc.constantFrom(null, ";", "\t", "|"),
  decimal: fc.constantFrom(null, ",", "."),
  dateOrder: fc.constantFrom(null, "dmy", "mdy"),
  shortYears: fc.boolean(),
  skipLines: fc.integer({ min: 0, max: 40 }),
  skipAfterHeadings: fc.integer({ min: 0, max: 2 }),
  headings: fc.boolean(),
  columns: fc.uniqueArray(
    fc.record({
      to: fc.constantFrom("run", "loaded_at", "bed_depth_cm", "malt_out_lb"),
      from,
      times: fc.constantFrom(null, 1000, 0.1),
      without: fc.option(heading),
      words: fc
        .dictionary(heading, heading, { maxKeys: 2, noNullPrototype: true })
        .map((entries) => new Map(Object.entries(entries))),
    }),
    { selector: ({ to }) => to, maxLength: 4 },
  ),
  fixed: fc.constantFrom(new Map<string, string>(), new Map([["kiln", "K 1"]])),
  probeRows: fc.option(
    fc.record({
      probe: heading,
      value: fc.integer({ min: 1, max: 9 }),
      without: fc.option(heading),
      columns: heading.map((name) => new Map([[name, "note"]])),
    }),
  ),
  ignore: fc.array(heading, { maxLength: 3 }),
});

describe("writeMatches", () => {
  test("writes what readMatches reads back, whatever the headings hold", () => {
    fc.assert(
      fc.property(fc.array(match, { minLength: 1, maxLength: 3 }), (matches) => {
        const read = readMatches(writeMatches(matches, () => ["left to decide:\nthe order of dates"]));
        expect(read.problems).toEqual([]);
        expect(read.matches).toEqual(matches);
      }),
    );
  });

  test("leaves out what the match does not say", () => {
    expect(
      writeMatches([emptyMatch("a.csv", "weather")])
        .split("\n")
        .slice(3),
    ).toEqual(["[[match]]", 'files = "a.csv"', 'table = "weather"', ""]);
  });
});

describe("meansFile", () => {
  test.each([
    ["export-*.csv", "export-03.csv", true],
    ["export-*.csv", "Export-03.CSV", true],
    ["export-*.csv", "old/export-03.csv", false],
    ["readings/*", "readings/a.csv", true],
    ["readings/*", "readings/old/a.csv", false],
    ["kiln (1).csv", "kiln (1).csv", true],
    ["a.csv", "abcsv", false],
  ])("%s means %s: %s", (pattern, path, expected) => {
    expect(meansFile(pattern, path)).toBe(expected);
  });
});
