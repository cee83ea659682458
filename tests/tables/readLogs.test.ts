import { describe, expect, test } from "vitest";
import { logsOf, problemsOf, valuesOf } from "./logsOf.ts";

const kilning = "run,kiln,loaded_at,bed_depth_cm,malt_out_kg,note";
const instantOf = (iso: string): number => Date.parse(iso);

describe("readLogs on units", () => {
  test("reads metric and US customary logs of one batch to the same numbers", async () => {
    const metric = await logsOf({
      "kilning.csv":
        "run,kiln,loaded_at,bed_depth_cm,malt_out_kg,drying_set_c\nR1,K1,2026-03-08 06:00,15.24,453.59237,50\n",
    });
    const us = await logsOf({
      "kilning.csv": "run,kiln,loaded_at,bed_depth_in,malt_out_lb,drying_set_f\nR1,K1,2026-03-08 06:00,6,1000,122\n",
    });
    for (const column of ["bed_depth_m", "malt_out_kg", "drying_set_c"]) {
      expect(valuesOf(us, "kilning", column)[0]).toAgreeWithin(valuesOf(metric, "kilning", column)[0] as number, 1e-12);
    }
    expect(valuesOf(metric, "kilning", "bed_depth_m")[0]).toAgreeWithin(0.1524, 1e-12);
  });

  test("keeps which suffix a file used", async () => {
    const logs = await logsOf({ "lab.csv": "run,tested_on,colour_srm,diastatic_power_lintner\nR1,2026-03-08,2,100\n" });
    expect(logs.tables.get("lab")?.writtenUnits).toEqual(
      new Map([
        ["colour_ebc", ["srm"]],
        ["diastatic_power_wk", ["lintner"]],
      ]),
    );
    // 100 °L = 334 °WK and 1 SRM = 1.97 EBC: from memory of ASBC and EBC usage.
    expect(valuesOf(logs, "lab", "diastatic_power_wk")).toEqual([334]);
    expect(valuesOf(logs, "lab", "colour_ebc")).toEqual([3.94]);
  });
});

describe("readLogs on what a spreadsheet leaves behind", () => {
  const rows = [
    ["R1", "K1", "2026-03-08 06:00", "15.5", "400", "a; b"],
    ["R2", "K1", "2026-03-09 06:00", "16.5", "410", ""],
  ];

  test.each([
    [
      "a sep= line and semicolons",
      `sep=;\r\n${[kilning.replaceAll(",", ";"), ...rows.map((row) => row.map((cell) => `"${cell}"`).join(";"))].join("\r\n")}`,
    ],
    [
      "a quoted sep= line",
      `"sep=;"\r\n${[kilning.replaceAll(",", ";"), ...rows.map((row) => row.map((cell) => `"${cell}"`).join(";"))].join("\r\n")}`,
    ],
    ["tabs", [kilning.split(",").join("\t"), ...rows.map((row) => row.join("\t"))].join("\n")],
    [
      "trailing empty columns and rows",
      [`${kilning},,`, ...rows.map((row) => `${row.join(",")},,`), ",,,,,,,", ",,,,,,,", ""].join("\n"),
    ],
    ["longer rows of blanks", [kilning, ...rows.map((row) => `${row.join(",")},,,`)].join("\n")],
    [
      "non-breaking spaces and a byte order mark",
      `\ufeff${[kilning, ...rows.map((row) => row.map((cell) => `\u00a0${cell.replace(" 06", "\u00a006")}\u202f`).join(","))].join("\n")}`,
    ],
    ["headings in capitals", [kilning.toUpperCase(), ...rows.map((row) => row.join(","))].join("\n")],
    ["blank lines in between", [kilning, "", ...rows.map((row) => row.join(",")), "", ""].join("\n\n")],
    ["old line breaks", [kilning, ...rows.map((row) => row.join(","))].join("\r")],
  ])("reads %s as the plain file", async (_, text) => {
    const logs = await logsOf({ "kilning.csv": text });
    expect(logs.problems).toEqual([]);
    expect(valuesOf(logs, "kilning", "run")).toEqual(["R1", "R2"]);
    expect(valuesOf(logs, "kilning", "bed_depth_m")).toEqual([15.5 * 0.01, 16.5 * 0.01]);
    expect(valuesOf(logs, "kilning", "note")).toEqual(["a; b", null]);
    expect(valuesOf(logs, "kilning", "loaded_at")[0]).toBe(instantOf("2026-03-08T06:00Z"));
  });

  test("reads a typeset minus", async () => {
    const logs = await logsOf({ "weather/a.csv": "at_utc,ambient_rh_pct,ambient_c\n2026-01-08 06:00,80,\u22123.5\n" });
    expect(valuesOf(logs, "weather", "ambient_c")).toEqual([-3.5]);
  });

  test("keeps leading zeros of ids", async () => {
    const logs = await logsOf({ "grain-lots.csv": "lot,grain,variety\n007,wheat,0815\n" });
    expect(valuesOf(logs, "grain-lots", "lot")).toEqual(["007"]);
    expect(valuesOf(logs, "grain-lots", "variety")).toEqual(["0815"]);
  });

  test("keeps columns that the format does not know, and lines of rows after quoted line breaks", async () => {
    const logs = await logsOf({
      "kilning.csv": 'run,kiln,loaded_at,mood,note\nR1,K1,2026-03-08 06:00,calm,"a\nb"\nR2,K1,2026-03-09 06:00,,\n',
    });
    expect(logs.tables.get("kilning")?.unknownColumns).toEqual(new Map([["mood", ["calm", null]]]));
    expect([...(logs.tables.get("kilning")?.lineOfRow ?? [])]).toEqual([2, 4]);
    expect(logs.problems).toMatchObject([{ rule: "unknown-column", column: "mood", effect: "note" }]);
  });
});

describe("readLogs on decimal marks", () => {
  const lab = "run;tested_on;moisture_pct;viscosity_mpa_s";

  test("recognises a decimal comma for a whole file delimited by semicolons", async () => {
    const logs = await logsOf({ "lab.csv": `${lab}\nR1;2026-03-08;4,5;1,523\nR2;2026-03-08;5;1,6\n` });
    expect(logs.problems).toEqual([]);
    expect(valuesOf(logs, "lab", "moisture_pct")).toEqual([4.5, 5]);
    expect(valuesOf(logs, "lab", "viscosity_mpa_s")).toEqual([1.523, 1.6]);
  });

  test("takes a declared comma in a file delimited by commas", async () => {
    const logs = await logsOf({
      "house.toml": '[files."lab.csv"]\ndecimal = ","',
      "lab.csv": 'run,tested_on,moisture_pct\nR1,2026-03-08,"4,5"\n',
    });
    expect(logs.problems).toEqual([]);
    expect(valuesOf(logs, "lab", "moisture_pct")).toEqual([4.5]);
  });

  test("does not read a comma cell by cell in a file delimited by commas", async () => {
    const logs = await logsOf({ "lab.csv": 'run,tested_on,moisture_pct\nR1,2026-03-08,"4,5"\nR2,2026-03-08,4.6\n' });
    expect(logs.problems).toMatchObject([{ rule: "decimal-mark", line: 2, value: "4,5", effect: "value-blanked" }]);
    expect(valuesOf(logs, "lab", "moisture_pct")).toEqual([null, 4.6]);
  });
});

describe("readLogs on encodings", () => {
  const text = "run,kiln,loaded_at,note\nR1,K1,2026-03-08 06:00,kühl – 5 €\n";
  const utf16 = (littleEndian: boolean, mark: boolean): Uint8Array => {
    const source = `${mark ? "\ufeff" : ""}${text}`;
    const view = new DataView(new ArrayBuffer(source.length * 2));
    for (let i = 0; i < source.length; i++) view.setUint16(i * 2, source.charCodeAt(i), littleEndian);
    return new Uint8Array(view.buffer);
  };
  const windows1252 = Uint8Array.from(
    text,
    (character) => ({ "–": 0x96, "€": 0x80 })[character] ?? character.charCodeAt(0),
  );
  const declared = (encoding: string) => `[files."kilning.csv"]\nencoding = "${encoding}"`;

  test.each([
    ["UTF-8", "", new TextEncoder().encode(text)],
    ["UTF-8 with a byte order mark", "", new TextEncoder().encode(`\ufeff${text}`)],
    ["UTF-16, low byte first, by its mark", "", utf16(true, true)],
    ["UTF-16, high byte first, by its mark", "", utf16(false, true)],
    ["UTF-16 by declaration", declared("utf-16le"), utf16(true, false)],
    ["Windows-1252 by declaration", declared("windows-1252"), windows1252],
  ])("reads %s", async (_, house, bytes) => {
    const logs = await logsOf({ "house.toml": house, "kilning.csv": bytes });
    expect(logs.problems).toEqual([]);
    expect(valuesOf(logs, "kilning", "note")).toEqual(["kühl – 5 €"]);
  });

  test("sets a file aside that is not UTF-8 and not declared, and names the line", async () => {
    const logs = await logsOf({ "kilning.csv": windows1252 });
    expect(logs.problems).toMatchObject([{ rule: "wrong-encoding", line: 2, effect: "file-set-aside" }]);
    expect(logs.problems[0]?.hint).toContain("house.toml");
    expect(logs.tables.has("kilning")).toBe(false);
  });
});

describe("readLogs on clock changes", () => {
  const house = (zone: string) => `time_zone = "${zone}"`;
  const readings = (times: readonly string[]) =>
    `kiln,at,air_on_c\n${times.map((time, i) => `K1,${time},${40 + i}\n`).join("")}`;

  test.each([
    [
      "America/Chicago",
      "2026-11-01",
      "00:30",
      "01:00 01:30 01:00 01:30",
      "02:00",
      "05:30 06:00 06:30 07:00 07:30 08:00",
    ],
    [
      "Australia/Sydney",
      "2026-04-05",
      "01:30",
      "02:00 02:30 02:00 02:30",
      "03:00",
      "14:30 15:00 15:30 16:00 16:30 17:00",
    ],
  ])("settles the doubled hour of %s by the order of the readings", async (zone, day, before, doubled, after, utc) => {
    const times = [before, ...doubled.split(" "), after].map((clock) => `${day} ${clock}`);
    const logs = await logsOf({ "house.toml": house(zone), "readings/a.csv": readings(times) });
    expect(logs.problems).toEqual([]);
    const at = valuesOf(logs, "readings", "at").map((instant) =>
      new Date(instant as number).toISOString().slice(11, 16),
    );
    expect(at).toEqual(utc.split(" "));
    expect(valuesOf(logs, "readings", "air_on_c")).toEqual([40, 41, 42, 43, 44, 45]);
  });

  test("settles it in a file with the newest reading first, and where each hour has one reading", async () => {
    const newestFirst = ["02:00", "01:30", "01:00", "01:30", "01:00", "00:30"].map((clock) => `2026-11-01 ${clock}`);
    const logs = await logsOf({ "house.toml": house("America/Chicago"), "readings/a.csv": readings(newestFirst) });
    expect(logs.problems).toEqual([]);
    expect(valuesOf(logs, "readings", "air_on_c")).toEqual([45, 44, 43, 42, 41, 40]);
    const hourly = await logsOf({
      "house.toml": house("America/Chicago"),
      "weather/a.csv":
        "at,ambient_rh_pct\n2026-11-01 00:00,1\n2026-11-01 01:00,2\n2026-11-01 01:00,3\n2026-11-01 02:00,4\n",
    });
    expect(hourly.problems).toEqual([]);
    expect(valuesOf(hourly, "weather", "at").map((at) => ((at as number) / 3_600_000) % 24)).toEqual([5, 6, 7, 8]);
  });

  test("settles it in a row by the moments about it, or takes an offset at its word", async () => {
    const logs = await logsOf({
      "house.toml": house("America/Chicago"),
      "kilning.csv": `run,kiln,loaded_at,cure_started_at,heat_off_at
R1,K1,2026-10-31 12:00,2026-11-01 01:50,2026-11-01 01:10
R2,K2,2026-11-01T01:30-06:00,2026-11-01 01:10-06:00,
`,
    });
    expect(valuesOf(logs, "kilning", "cure_started_at")[0]).toBe(instantOf("2026-11-01T06:50Z"));
    expect(valuesOf(logs, "kilning", "heat_off_at")[0]).toBe(instantOf("2026-11-01T07:10Z"));
    expect(valuesOf(logs, "kilning", "loaded_at")[1]).toBe(instantOf("2026-11-01T07:30Z"));
    expect(logs.problems).toMatchObject([{ rule: "end-before-start", line: 3, column: "cure_started_at" }]);
  });

  test("measures true elapsed hours over both changes, in either hemisphere", async () => {
    const elapsed = async (zone: string, from: string, to: string): Promise<number> => {
      const logs = await logsOf({
        "house.toml": house(zone),
        "kilning.csv": `run,kiln,loaded_at,unloaded_at\nR1,K1,${from},${to}\n`,
      });
      return (
        ((valuesOf(logs, "kilning", "unloaded_at")[0] as number) -
          (valuesOf(logs, "kilning", "loaded_at")[0] as number)) /
        3_600_000
      );
    };
    expect(await elapsed("America/Chicago", "2026-03-07 20:00", "2026-03-08 08:00")).toBe(11);
    expect(await elapsed("America/Chicago", "2026-10-31 20:00", "2026-11-01 08:00")).toBe(13);
    expect(await elapsed("Pacific/Auckland", "2026-09-26 20:00", "2026-09-27 08:00")).toBe(11);
    expect(await elapsed("Pacific/Auckland", "2026-04-04 20:00", "2026-04-05 08:00")).toBe(13);
  });

  test("reads _utc columns as UTC whatever the zone", async () => {
    const logs = await logsOf({
      "house.toml": house("America/Chicago"),
      "readings/a.csv": "kiln,at_utc,air_on_c\nK1,2026-03-08 02:30,40\n",
    });
    expect(valuesOf(logs, "readings", "at")).toEqual([instantOf("2026-03-08T02:30Z")]);
    expect(logs.problems).toEqual([]);
  });
});

describe("readLogs on overlapping readings", () => {
  const head = "kiln,at,air_on_c,air_off_c\n";

  test("keeps what stands in several files once, sorted by kiln and time, and counts it in one note a file", async () => {
    const logs = await logsOf({
      "readings/a.csv": `${head}K2,2026-03-08 06:00,40,\nK1,2026-03-08 06:01,41,\nK1,2026-03-08 06:00,40,30\n`,
      "readings/b.csv": `${head}K1,2026-03-08 06:00,40,30\nK1,2026-03-08 06:01,41,31\nK1,2026-03-08 06:02,42,32\n`,
    });
    expect(valuesOf(logs, "readings", "kiln")).toEqual(["K1", "K1", "K1", "K2"]);
    expect(valuesOf(logs, "readings", "air_on_c")).toEqual([40, 41, 42, 40]);
    expect(valuesOf(logs, "readings", "air_off_c")).toEqual([30, 31, 32, null]);
    expect(logs.problems).toMatchObject([{ file: "readings/b.csv", rule: "readings-repeated", effect: "note" }]);
    expect(logs.problems[0]?.message).toMatch(/^2 rows/);
    expect(logs.files.map(({ rows, rowsSetAside }) => [rows, rowsSetAside])).toEqual([
      [0, 0],
      [3, 0],
      [3, 0],
    ]);
  });

  test("does not depend on the order in which files are handed over", async () => {
    const a = `${head}K1,2026-03-08 06:00,40,30\n`;
    const b = `${head}K1,2026-03-08 06:00,40.5,30\n`;
    const one = await logsOf({ "readings/a.csv": a, "readings/b.csv": b });
    const other = await logsOf({ "readings/b.csv": b, "readings/a.csv": a });
    expect(one.problems).toEqual(other.problems);
    expect(valuesOf(one, "readings", "air_on_c")).toEqual([40]);
  });
});

describe("readLogs on files that are no logs", () => {
  test("notes each, but for a README, hidden files and a spreadsheet's lock", async () => {
    const logs = await logsOf({
      "README.md": "x",
      ".DS_Store": "x",
      "readings/.gitkeep": "",
      "~$kilning.csv": "x",
      "Grain_Lots.csv": "x",
      "old/kilning.csv": "x",
    });
    expect(logs.problems.map(({ file, rule }) => [file, rule])).toEqual([
      ["Grain_Lots.csv", "unknown-file"],
      ["old/kilning.csv", "unknown-file"],
    ]);
    expect(logs.problems[0]?.hint).toContain("grain-lots.csv");
  });
});

describe("readLogs on many faults of a kind", () => {
  test("lists a hundred, then counts the rest and names their lines", async () => {
    const rows = Array.from(
      { length: 150 },
      (_, i) => `K1,2026-03-08 ${String(Math.floor(i / 60)).padStart(2, "0")}:${String(i % 60).padStart(2, "0")},x\n`,
    );
    const problems = await problemsOf("not-a-number", { "readings/a.csv": `kiln,at,air_on_c\n${rows.join("")}` });
    expect(problems).toHaveLength(101);
    expect(problems.at(-1)).toMatchObject({ line: 102, effect: "row-set-aside" });
    expect(problems.at(-1)?.message).toMatch(/^50 more of the same, on lines 102 to 151\./);
    const logs = await logsOf({ "readings/a.csv": `kiln,at,air_on_c\n${rows.join("")}` });
    expect(logs.files.find(({ path }) => path === "readings/a.csv")).toMatchObject({ rows: 0, rowsSetAside: 150 });
  });
});
