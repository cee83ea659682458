import { describe, expect, test } from "vitest";
import { logsOf, valuesOf } from "../logsOf.ts";
import "../../support/matchers.ts";

const house = 'time_zone = "Europe/Berlin"\n[[kilns]]\nid = "K1"\n[[kilns]]\nid = "K2"\n';
const utc = (text: string): number => Date.parse(`${text}Z`);

describe("readLogs with columns.toml", () => {
  test("reads a logger export with lines above its headings, a row of units, semicolons and decimal commas", async () => {
    const logs = await logsOf({
      "house.toml": house,
      "columns.toml": `[[match]]
files = "export-*.csv"
table = "readings"
delimiter = ";"
decimal = ","
date_order = "dmy"
skip_lines = 3
skip_after_headings = 1
ignore = ["Nr."]
[match.fixed]
kiln = "K1"
[match.columns]
at = ["Datum", "Zeit"]
air_on_c = "Zuluft"
heater_on = { from = "Heizung", words = { ein = "1", aus = "0" } }
`,
      "export-03.csv":
        "Logger 7\nSerial;123;;\n\nNr.;Datum;Zeit;Zuluft;Heizung\n;;;°C;\n1;08.03.2026;10:00:00;54,5;EIN\n2;08.03.2026;10:01:00;54,75;aus\n3;08.03.2026;10:02:00;warm;aus\n",
    });
    expect(valuesOf(logs, "readings", "at")).toEqual([utc("2026-03-08T09:00:00"), utc("2026-03-08T09:01:00")]);
    expect(valuesOf(logs, "readings", "air_on_c")).toEqual([54.5, 54.75]);
    expect(valuesOf(logs, "readings", "heater_on")).toEqual([1, 0]);
    expect(valuesOf(logs, "readings", "kiln")).toEqual(["K1", "K1"]);
    expect(logs.problems).toMatchObject([
      {
        file: "export-03.csv",
        line: 8,
        column: "Zuluft",
        value: "warm",
        rule: "not-a-number",
        effect: "row-set-aside",
      },
    ]);
    expect(logs.files.find(({ path }) => path === "export-03.csv")).toMatchObject({
      table: "readings",
      rows: 2,
      rowsSetAside: 1,
    });
  });

  test("reads two kilns out of the columns of one logger, and says nothing of what either takes", async () => {
    const match = (kiln: string): string => `[[match]]
files = "both.csv"
table = "readings"
[match.fixed]
kiln = "${kiln}"
[match.columns]
at_utc = "time"
air_on_f = "${kiln} in"
`;
    const logs = await logsOf({
      "house.toml": house,
      "columns.toml": match("K1") + match("K2"),
      "both.csv": "time,K1 in,K2 in,battery\n2026-03-08 10:00,212,32,3.6\n2026-03-08 10:01,,50,3.6\n",
    });
    expect(valuesOf(logs, "readings", "kiln")).toEqual(["K1", "K2", "K2"]);
    const [boiling, freezing, cool] = valuesOf(logs, "readings", "air_on_c") as number[];
    expect(boiling).toAgreeWithin(100, 1e-12);
    expect(freezing).toLieWithin(0, 1e-12);
    expect(cool).toAgreeWithin(10, 1e-12);
    expect(logs.problems.map(({ rule, column }) => [rule, column])).toEqual([["unknown-column", "battery"]]);
  });

  const longForm = `[[match]]
files = "long.csv"
table = "readings"
[match.fixed]
kiln = "K1"
[match.columns]
at = "When"
[match.probe_rows]
probe = "Sensor"
value = "Value"
without = "°C"
[match.probe_rows.columns]
"Probe 1" = "air_on_c"
"Probe 2" = "air_off_c"
`;

  test("puts a row for each probe together by time, whether probes follow each other or take turns", async () => {
    const turns =
      "When,Sensor,Value\n2026-03-08 10:00,Probe 1,60 °C\n2026-03-08 10:00,Probe 2,40 °C\n2026-03-08 10:05,Probe 1,61 °C\n2026-03-08 10:05,Probe 2,41°C\n";
    const [heading, ...rows] = turns.trimEnd().split("\n");
    const blocks = [heading, rows[0], rows[2], rows[1], rows[3], ""].join("\n");
    for (const text of [turns, blocks]) {
      const logs = await logsOf({ "house.toml": house, "columns.toml": longForm, "long.csv": text });
      expect(valuesOf(logs, "readings", "air_on_c")).toEqual([60, 61]);
      expect(valuesOf(logs, "readings", "air_off_c")).toEqual([40, 41]);
      expect(logs.problems).toEqual([]);
    }
  });

  test("names a probe that the match does not know, with how many rows it had", async () => {
    const { problems } = await logsOf({
      "house.toml": house,
      "columns.toml": longForm,
      "long.csv": "When,Sensor,Value\n2026-03-08 10:00,Probe 1,60\n2026-03-08 10:00,Hut,11\n2026-03-08 10:05,Hut,12\n",
    });
    expect(problems).toMatchObject([{ rule: "unknown-probe", line: 3, value: "Hut", effect: "note" }]);
    expect(problems[0]?.message).toContain("2 rows were not read");
  });

  test("keeps both readings of the doubled hour of a long form, in the order of the clock", async () => {
    const rows = ["01:30", "02:00", "02:30", "02:00", "02:30", "03:00"].flatMap((clock, i) => [
      `2026-10-25 ${clock},Probe 1,${50 + i}`,
      `2026-10-25 ${clock},Probe 2,${30 + i}`,
    ]);
    const logs = await logsOf({
      "house.toml": house,
      "columns.toml": longForm,
      "long.csv": `When,Sensor,Value\n${rows.join("\n")}\n`,
    });
    const start = utc("2026-10-24T23:30:00");
    expect(valuesOf(logs, "readings", "at")).toEqual([0, 1, 2, 3, 4, 5].map((half) => start + half * 1_800_000));
    expect(valuesOf(logs, "readings", "air_on_c")).toEqual([50, 51, 52, 53, 54, 55]);
    expect(valuesOf(logs, "readings", "air_off_c")).toEqual([30, 31, 32, 33, 34, 35]);
    expect(logs.problems).toEqual([]);
  });

  test("reads one spreadsheet row a batch as steep, germination and kiln, and a stage not begun as none", async () => {
    const logs = await logsOf({
      "house.toml": house,
      "columns.toml": `[[match]]
files = "batches.csv"
table = "steeping"
date_order = "mdy"
[match.columns]
run = "Batch"
lot = "Grain lot"
started_at = ["Steep date", "Steep time"]
grain_in_kg = { from = "Grain (t)", times = 1000 }
[match.fixed]
tank = "T1"
[[match]]
files = "batches.csv"
table = "kilning"
date_order = "mdy"
[match.columns]
run = "Batch"
loaded_at = "Kiln in"
unloaded_at = "Kiln out"
bed_depth_cm = { from = "Bed (mm)", times = 0.1 }
final_moisture_pct = { from = "Moisture", times = 100 }
[match.fixed]
kiln = "K1"
`,
      "batches.csv":
        "Batch,Grain lot,Steep date,Steep time,Grain (t),Kiln in,Kiln out,Bed (mm),Moisture,Mood\n" +
        "007,L1,3/1/2026,6:00 AM,0.45,3/6/2026 8:00 AM,3/6/2026 8:30 PM,180,0.045,calm\n" +
        "008,L1,3/4/2026,6:00 AM,0.5,,,,,\n",
    });
    expect(valuesOf(logs, "steeping", "run")).toEqual(["007", "008"]);
    expect(valuesOf(logs, "steeping", "grain_in_kg")).toEqual([450, 500]);
    expect(valuesOf(logs, "kilning", "run")).toEqual(["007"]);
    expect((valuesOf(logs, "kilning", "bed_depth_m") as number[])[0]).toAgreeWithin(0.18, 1e-12);
    expect((valuesOf(logs, "kilning", "final_moisture_pct") as number[])[0]).toAgreeWithin(4.5, 1e-12);
    const hours =
      (valuesOf(logs, "kilning", "unloaded_at")[0] as number) - (valuesOf(logs, "kilning", "loaded_at")[0] as number);
    expect(hours).toBe(12.5 * 3_600_000);
    expect(logs.tables.get("steeping")?.unknownColumns.get("Mood")).toEqual(["calm", null]);
    expect(logs.problems.map(({ rule }) => rule)).toEqual(["unknown-column"]);
    expect(logs.files.find(({ path }) => path === "batches.csv")).toMatchObject({ rows: 3, rowsSetAside: 0 });
  });

  test("understands short years and English names of months where the match says so, and refuses them elsewhere", async () => {
    const read = (more: string) =>
      logsOf({
        "house.toml": house,
        "columns.toml": `[[match]]\nfiles = "w.csv"\ntable = "weather"\ndate_order = "dmy"\n${more}[match.columns]\nat_utc = "t"\nambient_rh_pct = "rh"\n`,
        "w.csv": 't,rh\n08.03.26 10:00,50\n8-Mar-26 11:00,51\n8 March 2026 12:00,52\n"Mar 8, 2026 13:00",53\n',
      });
    const hours = [10, 11, 12, 13].map((hour) => Date.UTC(2026, 2, 8, hour));
    expect(valuesOf(await read("short_years = true\n"), "weather", "at")).toEqual(hours);
    const strict = await read("");
    expect(valuesOf(strict, "weather", "at")).toEqual(hours.slice(2));
    expect(strict.problems.map(({ line, effect }) => [line, effect])).toEqual([
      [2, "row-set-aside"],
      [3, "row-set-aside"],
    ]);
  });

  test("says which heading is gone when an export changes, and sets the file aside where it was needed", async () => {
    const match =
      '[[match]]\nfiles = "w.csv"\ntable = "weather"\n[match.columns]\nat = "t"\nambient_rh_pct = "rh"\nambient_c = "temp"\n';
    const gone = await logsOf({ "columns.toml": match, "w.csv": "t,rh\n2026-03-08 10:00,50\n" });
    expect(gone.problems).toMatchObject([{ rule: "match-heading-missing", column: "temp", effect: "note" }]);
    expect(valuesOf(gone, "weather", "ambient_rh_pct")).toEqual([50]);
    const needed = await logsOf({ "columns.toml": match, "w.csv": "t,temp\n2026-03-08 10:00,5\n" });
    expect(needed.problems.map(({ rule, effect }) => [rule, effect])).toEqual([
      ["needed-column-missing", "file-set-aside"],
      ["match-heading-missing", "note"],
    ]);
    expect(needed.files.find(({ path }) => path === "w.csv")).toMatchObject({ rows: 0, rowsSetAside: 1 });
  });

  test("refuses to choose between two columns of one heading, and takes one by its place", async () => {
    const match = (from: string) =>
      `[[match]]\nfiles = "w.csv"\ntable = "weather"\n[match.columns]\nat = "t"\nambient_rh_pct = "rh"\nambient_c = ${from}\n`;
    const file = "t,rh,temp,temp\n2026-03-08 10:00,50,4,5\n";
    const twice = await logsOf({ "columns.toml": match('"temp"'), "w.csv": file });
    expect(twice.problems.map(({ rule }) => rule)).toContain("match-heading-twice");
    expect(valuesOf(twice, "weather", "ambient_c")).toEqual([]);
    expect(valuesOf(await logsOf({ "columns.toml": match("4"), "w.csv": file }), "weather", "ambient_c")).toEqual([5]);
  });

  test("reads a file without headings by the places of its columns", async () => {
    const logs = await logsOf({
      "columns.toml":
        '[[match]]\nfiles = "w.csv"\ntable = "weather"\nheadings = false\n[match.columns]\nat = 1\nambient_rh_pct = 3\n',
      "w.csv": "2026-03-08 10:00,x,50\n2026-03-08 11:00,x,51\n",
    });
    expect(valuesOf(logs, "weather", "ambient_rh_pct")).toEqual([50, 51]);
    expect(logs.problems).toEqual([]);
  });

  test("sets a row aside whose fields do not fit the file's own headings, by its own line", async () => {
    const { problems } = await logsOf({
      "columns.toml":
        '[[match]]\nfiles = "w.csv"\ntable = "weather"\nskip_lines = 1\nignore = ["x"]\n[match.columns]\nat = "t"\nambient_rh_pct = "rh"\n',
      "w.csv": "made by a logger\nt,x,rh\n2026-03-08 10:00,1\n2026-03-08 11:00,1,51,9\n2026-03-08 12:00,1,52\n",
    });
    expect(problems).toMatchObject([
      { line: 3, rule: "too-few-fields", effect: "row-set-aside" },
      { line: 4, rule: "too-many-fields", effect: "row-set-aside" },
    ]);
  });

  test("says when no file answers to a match, and leaves out what a match cannot mean", async () => {
    const { problems } = await logsOf({
      "columns.toml":
        '[[match]]\nfiles = "gone-*.csv"\ntable = "weather"\n[match.columns]\nat = "t"\nambient = "temp"\nhumour = "x"\n[[match]]\nfiles = "a.csv"\ntable = "wether"\n',
    });
    expect(problems.filter(({ file }) => file === "columns.toml").map(({ rule, column }) => [rule, column])).toEqual(
      expect.arrayContaining([
        ["match-file-missing", "files"],
        ["setting-refused", "match.columns.ambient"],
        ["setting-refused", "match.columns.humour"],
        ["setting-refused", "match.table"],
      ]),
    );
  });

  test("leaves every foreign file unread where columns.toml cannot be read, and says on which line", async () => {
    const { problems } = await logsOf({ "columns.toml": "[[match]]\nfiles = \n", "w.csv": "t\n1\n" });
    expect(problems).toMatchObject([
      { file: "columns.toml", line: 2, rule: "match-unreadable", effect: "file-set-aside" },
      { file: "w.csv", rule: "unknown-file" },
    ]);
  });
});
