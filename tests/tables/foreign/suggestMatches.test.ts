import { describe, expect, test } from "vitest";
import { templateCsv } from "../../../src/tables/describeFormat.ts";
import { patternOf } from "../../../src/tables/foreign/foreignMatch.ts";
import { previewMatch } from "../../../src/tables/foreign/previewMatch.ts";
import { encodingOf, sampleLayout } from "../../../src/tables/foreign/sampleLayout.ts";
import { type MatchSuggestion, suggestMatches } from "../../../src/tables/foreign/suggestMatches.ts";
import { writeMatches } from "../../../src/tables/foreign/writeMatches.ts";
import { readHouse } from "../../../src/tables/readHouse.ts";
import { tableDeclarations } from "../../../src/tables/tableDeclarations.ts";
import { logsOf, valuesOf } from "../logsOf.ts";

const toml = 'time_zone = "Europe/Berlin"\n[[kilns]]\nid = "K1"\n';
const { house } = readHouse(toml);

function suggested(path: string, text: string, of = house): readonly MatchSuggestion[] {
  const sample = sampleLayout(text);
  return sample ? suggestMatches(path, sample, null, of) : [];
}

const LOGGER =
  "Logger 7;;;\r\nSerial;123;;\r\n\r\nNo.;Date;Time;Air in;Exhaust temp;Exhaust RH;Burner\r\n;;;°C;°C;%;\r\n1;08.03.26;10:00:00;54,5;40,1;88;1\r\n2;13.03.26;10:01:00;54,75;40;87,5;0\r\n";
const SHEET =
  "Batch,Grain lot,Variety,Grain in (lb),Steep start,Steep out,Steep out moisture %,Germ start,Germ end,Bed temp,Kiln in,Kiln out,Bed depth (in),Ambient RH,Malt out (lb),Moisture,Remarks\n" +
  "007,L1,Blue,1000,3/1/2026 6:00 AM,3/3/2026 6:00 AM,44,3/3/2026 6:00 AM,3/6/2026 7:00 AM,62,3/6/2026 8:00 AM,3/6/2026 8:30 PM,7,60,820,4.5,\n" +
  "008,L1,Blue,1000,3/4/2026 6:00 AM,,,,,,,,,,,,sweet\n";
const LONG =
  "Timestamp (UTC),Sensor,Reading\n2026-03-08 10:00:00,Inlet,131 °F\n2026-03-08 10:00:00,Exhaust,100.4 °F\n2026-03-08 10:01:00,Inlet,131.5 °F\n2026-03-08 10:01:00,Exhaust,101.5 °F\n";

describe("suggestMatches", () => {
  test("finds headings under a preamble, a row of units, a date beside its time of day, decimal commas and short years", () => {
    const [only, ...more] = suggested("kiln_2026-03.csv", LOGGER);
    expect(more).toEqual([]);
    expect(only?.match).toMatchObject({
      files: "kiln_*.csv",
      table: "readings",
      delimiter: ";",
      decimal: ",",
      dateOrder: "dmy",
      shortYears: true,
      skipLines: 3,
      skipAfterHeadings: 1,
      fixed: new Map([["kiln", "K1"]]),
    });
    expect(new Map(only?.match.columns.map(({ to, from }) => [to, from]))).toEqual(
      new Map([
        ["at", ["Date", "Time"]],
        ["air_on_c", ["Air in"]],
        ["air_off_c", ["Exhaust temp"]],
        ["air_off_rh_pct", ["Exhaust RH"]],
        ["heater_on", ["Burner"]],
      ]),
    );
    expect(only?.toDecide).toEqual([]);
  });

  test("parts one spreadsheet into steep, germination and kiln, and asks what the values cannot say", async () => {
    const found = suggested("batches.csv", SHEET);
    expect(new Set(found.map(({ match }) => match.table))).toEqual(new Set(["steeping", "germination", "kilning"]));
    for (const { match, toDecide } of found) {
      expect(match.dateOrder).toBe("mdy");
      expect(toDecide[0]).toContain("cannot be told");
    }
    const logs = await logsOf({
      "house.toml": toml,
      "columns.toml": writeMatches(found.map(({ match }) => match)),
      "batches.csv": SHEET,
    });
    expect(valuesOf(logs, "steeping", "run")).toEqual(["007", "008"]);
    expect(valuesOf(logs, "steeping", "grain_in_kg")).toEqual([453.59237, 453.59237]);
    expect(valuesOf(logs, "germination", "run")).toEqual(["007"]);
    expect(valuesOf(logs, "kilning", "loaded_at")).toEqual([Date.UTC(2026, 2, 6, 7)]);
    expect(valuesOf(logs, "kilning", "bed_depth_m")).toEqual([7 * 0.0254]);
    expect(valuesOf(logs, "kilning", "final_moisture_pct")).toEqual([4.5]);
    expect(logs.problems.filter(({ effect }) => effect !== "note")).toEqual([]);
  });

  test("knows a row for each probe, its UTC clock and the unit behind its values", async () => {
    const [found] = suggested("long.csv", LONG);
    expect(found?.match.probeRows).toEqual({
      probe: "Sensor",
      value: "Reading",
      without: "°F",
      columns: new Map([
        ["Inlet", "air_on_f"],
        ["Exhaust", "air_off_f"],
      ]),
    });
    expect(found?.match.columns).toMatchObject([{ to: "at_utc", from: ["Timestamp (UTC)"] }]);
  });

  test("says that a unit comes from the values, or from nowhere, and never passes it off as written", () => {
    const weather = (temp: string) =>
      suggested("w.csv", `Time,Humidity,Temp\n2026-03-08 10:00,50,${temp}\n2026-03-08 11:00,51,${temp}\n`);
    const [warm] = weather("72").filter(({ match }) => match.table === "weather");
    expect(warm?.match.columns.map(({ to }) => to)).toContain("ambient_f");
    expect(warm?.toDecide.join(" ")).toContain("from its values alone");
    const [cool] = weather("12").filter(({ match }) => match.table === "weather");
    expect(cool?.match.columns.map(({ to }) => to)).toContain("ambient_c");
    expect(cool?.toDecide.join(" ")).toContain("Nothing says the unit of “Temp”");
  });

  test("asks which kiln where the house has two", () => {
    const two = readHouse(`${toml}[[kilns]]\nid = "K2"\n`).house;
    expect(suggested("k.csv", LOGGER, two)[0]?.toDecide).toEqual([
      "The file does not say which kiln it is of; kiln under fixed is a guess.",
    ]);
  });

  test.each([
    ["prose", "Dear brewer,\nthe malt was fine.\nYours\n"],
    ["an address list", "Street,Town\nHigh Street 1,Somewhere\nLow Street 2,Elsewhere\n"],
    ["nothing", ""],
  ])("suggests nothing for %s", (_, text) => {
    expect(suggested("x.csv", text)).toEqual([]);
  });

  test.each(tableDeclarations.map((declaration) => [declaration.name, declaration] as const))(
    "takes no %s heading of the format itself for a column of another name within its table",
    (name, declaration) => {
      const headings = templateCsv(declaration).trim().split(",");
      const rows = [headings.map(() => ""), headings.map(() => "")];
      const sample = {
        delimiter: ",",
        skipLines: 0,
        skipAfterHeadings: 0,
        headings,
        unitRow: rows[0] as string[],
        few: [],
        rows,
      };
      const own = suggestMatches("x.csv", sample, null, house).find(({ match }) => match.table === name);
      for (const { to, from } of own?.match.columns ?? []) expect([to, from]).toEqual([to, [to]]);
    },
  );
});

describe("previewMatch", () => {
  test("hands back the first rows as the reader of the whole will read them, with what is wrong", async () => {
    const [found] = suggested("k.csv", LOGGER);
    const text = `${LOGGER}3;13.03.26;10:02:00;warm;40;87;0\r\n`;
    const { columns, rows, rowsRead, rowsSetAside, problems } = await previewMatch(
      "in/k.csv",
      new TextEncoder().encode(text),
      (found as MatchSuggestion).match,
      house,
    );
    expect(columns.slice(0, 3)).toEqual(["kiln", "at", "air_on_c"]);
    expect(rows[0]?.slice(0, 3)).toEqual(["K1", Date.UTC(2026, 2, 8, 9), 54.5]);
    expect([rowsRead, rowsSetAside]).toEqual([2, 1]);
    expect(problems.find(({ rule }) => rule === "not-a-number")).toMatchObject({ line: 8, column: "Air in" });
  });
});

describe("encodingOf", () => {
  const latin = Uint8Array.from("grün;°C", (character) => character.charCodeAt(0));
  test.each([
    ["UTF-8", new TextEncoder().encode("grün;°C"), null],
    ["Windows-1252", latin, "windows-1252"],
    ["UTF-16 with its mark", Uint8Array.of(0xff, 0xfe, 0x61, 0), null],
    ["UTF-16 without one", Uint8Array.from(Buffer.from("time;value;humidity", "utf16le")), "utf-16le"],
  ])("of %s is as it has to be declared", (_, bytes, expected) => {
    expect(encodingOf(bytes)).toBe(expected);
  });
});

describe("patternOf", () => {
  test.each([
    ["kiln_2026-03.csv", "kiln_*.csv"],
    ["logger/20260308 1200.csv", "logger/*.csv"],
    ["K1 logger.csv", "K1 logger.csv"],
    ["batches.csv", "batches.csv"],
    ["2026-03.csv", "20*.csv"],
    ["K1-2026-03.csv", "K1-*.csv"],
    ["export20260308.csv", "export*.csv"],
    ["03-2026.csv", "03-2026.csv"],
  ])("of %s is %s", (path, pattern) => {
    expect(patternOf(path)).toBe(pattern);
  });
});
