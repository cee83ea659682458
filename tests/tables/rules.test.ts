import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { LogFile } from "../../src/tables/logFile.ts";
import { readLogs } from "../../src/tables/readLogs.ts";
import { ruleList } from "../../src/tables/ruleList.ts";
import { type FileTexts, folderOf, problemsOf } from "./logsOf.ts";

interface Case {
  readonly files: FileTexts;
  /** The smallest that must be true of the one problem found. */
  readonly file: string;
  readonly line: number | null;
  readonly column?: string | null;
  readonly effect: string;
  readonly value?: string | null;
  readonly run?: string | null;
  readonly now?: number;
}

const one = (file: string, text: string | Uint8Array, rest: Partial<Case> & Pick<Case, "line" | "effect">): Case => ({
  files: { [file]: text },
  file,
  ...rest,
});
const kilningHead = "run,kiln,loaded_at,unloaded_at,bed_depth_cm,malt_out_kg\n";
const kilning = (row: string, line: number, effect: string, rest: Partial<Case> = {}): Case =>
  one("kilning.csv", `${kilningHead}${row}\n`, { line, effect, ...rest });
const house = (text: string, rest: Partial<Case> & Pick<Case, "line" | "effect">): Case =>
  one("house.toml", text, rest);
/** A file of weather under other headings, and the match that reads it. */
const matched = (more: string, text: string, rest: Pick<Case, "line"> & Partial<Case>): Case => ({
  files: {
    "columns.toml": `[[match]]\nfiles = "w.csv"\ntable = "weather"\n[match.columns]\nat = "t"\nambient_rh_pct = "rh"\n${more}`,
    "w.csv": text,
  },
  file: "w.csv",
  effect: "note",
  ...rest,
});
const steep = "run,lot,started_at,ended_at,grain_in_kg,grain_moisture_pct\n";
const acrospires =
  "run,counted_at,acrospire_none,acrospire_to_quarter,acrospire_to_half,acrospire_to_three_quarters,acrospire_to_full,acrospire_over\n";
const load = "run,kiln,loaded_at,unloaded_at\nR1,K1,2026-03-08 06:00,2026-03-08 10:00\n";

/** Readings every 5 minutes over the four hours of `load`, as `celsius` says minute by minute; null leaves one out. */
function readings(celsius: (minute: number) => number | null): string {
  let text = "kiln,at,air_on_c\n";
  for (let minute = 0; minute < 240; minute += 5) {
    const value = celsius(minute);
    const clock = `${String(6 + Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;
    if (value !== null) text += `K1,2026-03-08 ${clock},${value}\n`;
  }
  return text;
}
const alive = (minute: number): number => 50 + (minute % 15) / 10;

/** For each rule the smallest files that break it. */
const cases: Readonly<Record<string, Case>> = {
  "house-unreadable": house("name = ", { line: 1, effect: "file-set-aside" }),
  "not-text": one("kilning.csv", Uint8Array.of(0x50, 0x4b, 3, 4, 0, 0), { line: null, effect: "file-set-aside" }),
  "wrong-encoding": one("kilning.csv", Uint8Array.of(0x72, 0x75, 0x6e, 0x0a, 0xfc, 0x0a), {
    line: 2,
    effect: "file-set-aside",
  }),
  "delimiter-unclear": one("kilning.csv", "run;kiln,loaded_at\n", { line: 1, effect: "file-set-aside" }),
  "decimal-mixed": one("lab.csv", "run;tested_on;ph\nR1;2026-03-08;5,6\nR2;2026-03-08;5.6\n", {
    line: 3,
    effect: "file-set-aside",
    value: "5.6",
  }),
  "decimal-unclear": one("lab.csv", "run;tested_on;viscosity_mpa_s\nR1;2026-03-08;1,523\n", {
    line: 2,
    effect: "file-set-aside",
  }),
  "needed-column-missing": one("kilning.csv", "run,kiln\nR1,K1\n", { line: 1, column: null, effect: "file-set-aside" }),
  "duplicate-heading": one(
    "kilning.csv",
    "run,kiln,loaded_at,bed_depth_cm,bed_depth_in\nR1,K1,2026-03-08 06:00,15,6\n",
    { line: 1, column: "bed_depth_cm", effect: "value-blanked" },
  ),
  "open-quote": kilning('R1,"K1,2026-03-08 06:00', 2, "row-set-aside"),
  "too-few-fields": kilning("R1,K1,2026-03-08 06:00", 2, "row-set-aside", { run: "R1" }),
  "too-many-fields": kilning("R1,K1,2026-03-08 06:00,,15,400,7", 2, "row-set-aside"),
  "needed-value-missing": kilning("R1,,2026-03-08 06:00,,15,400", 2, "row-set-aside", { column: "kiln", value: null }),
  "readings-contradict": one("readings/a.csv", "kiln,at,air_on_c\nK1,2026-03-08 06:00,40\nK1,2026-03-08 06:00,41\n", {
    line: 3,
    column: "air_on_c",
    effect: "row-set-aside",
  }),
  "repeated-row": kilning("R1,K1,2026-03-08 06:00,,15,400\nR1,K1,2026-03-08 06:00,,15,400", 3, "row-set-aside"),
  "duplicate-lot": one("grain-lots.csv", "lot,grain,variety\nL1,wheat,A\nL1,wheat,B\n", {
    line: 3,
    column: "lot",
    effect: "row-set-aside",
  }),
  "duplicate-customer": one("customers.csv", "customer,share\nC1,yes\nC1,no\n", { line: 3, effect: "row-set-aside" }),
  "duplicate-target": one("targets.csv", "variety,measure,low\nany,final_moisture_pct,4\nany,final_moisture_pct,3\n", {
    line: 3,
    effect: "row-set-aside",
  }),
  "duplicate-run": kilning("R1,K1,2025-03-08 06:00,,15,400\nR1,K1,2026-03-08 06:00,,15,400", 3, "row-set-aside", {
    run: "R1",
  }),
  "stray-quote": kilning('R1,K1,2026-03-08 06:00,,6",400', 2, "value-blanked", { column: "bed_depth_cm" }),
  "not-a-number": kilning("R1,K1,2026-03-08 06:00,,about,400", 2, "value-blanked", {
    column: "bed_depth_cm",
    value: "about",
    run: "R1",
  }),
  "thousands-mark": kilning('R1,K1,2026-03-08 06:00,,15,"1,400.5"', 2, "value-blanked", { value: "1,400.5" }),
  "decimal-mark": kilning('R1,K1,2026-03-08 06:00,,"15,5",400', 2, "value-blanked", { value: "15,5" }),
  "unit-in-value": kilning("R1,K1,2026-03-08 06:00,,15 cm,400", 2, "value-blanked"),
  "spreadsheet-error": kilning("R1,K1,2026-03-08 06:00,,#REF!,400", 2, "value-blanked"),
  "not-whole": one("germination.csv", "run,started_at,turns\nR1,2026-03-08 06:00,2.5\n", {
    line: 2,
    column: "turns",
    effect: "value-blanked",
  }),
  "out-of-range": one("moisture-samples.csv", "run,moisture_pct\nR1,104\n", {
    line: 2,
    column: "moisture_pct",
    effect: "row-set-aside",
  }),
  "not-a-flag": one("readings/a.csv", "kiln,at,air_on_c,fan_on\nK1,2026-03-08 06:00,40,2\n", {
    line: 2,
    effect: "value-blanked",
  }),
  "not-a-choice": one("customers.csv", "customer,share\nC1,perhaps\n", {
    line: 2,
    column: "share",
    effect: "row-set-aside",
  }),
  "damaged-id": one("customers.csv", "customer,share\n1.23E+10,yes\n", {
    line: 2,
    column: "customer",
    effect: "row-set-aside",
  }),
  "not-a-date": kilning("R1,K1,last Sunday,,15,400", 2, "row-set-aside", { column: "loaded_at" }),
  "no-such-date": kilning("R1,K1,2026-02-30 06:00,,15,400", 2, "row-set-aside"),
  "ambiguous-date": kilning("R1,K1,08/03/2026 06:00,,15,400", 2, "row-set-aside"),
  "year-cut-short": kilning("R1,K1,08/03/26 06:00,,15,400", 2, "row-set-aside"),
  "spreadsheet-date": one("lab.csv", "run,tested_on\nR1,46089\n", { line: 2, effect: "row-set-aside" }),
  "absurd-date": kilning("R1,K1,0206-03-08 06:00,,15,400", 2, "row-set-aside"),
  "time-missing": kilning("R1,K1,2026-03-08,,15,400", 2, "row-set-aside"),
  "not-a-time": kilning("R1,K1,2026-03-08 24:10,,15,400", 2, "row-set-aside"),
  "missing-hour": {
    ...kilning("R1,K1,2026-03-08 01:00,2026-03-08 02:30,15,400", 2, "value-blanked", {
      column: "unloaded_at",
      run: "R1",
    }),
    files: {
      "house.toml": 'time_zone = "America/Chicago"',
      "kilning.csv": `${kilningHead}R1,K1,2026-03-08 01:00,2026-03-08 02:30,15,400\n`,
    },
  },
  "doubled-hour": {
    ...kilning("", 2, "row-set-aside", { column: "loaded_at", run: "R1", value: "2026-04-05 02:30" }),
    files: {
      "house.toml": 'time_zone = "Australia/Sydney"',
      "kilning.csv": `${kilningHead}R1,K1,2026-04-05 02:30,2026-04-05 14:00,15,400\n`,
    },
  },
  "setting-type": house("altitude_m = true", { line: 1, column: "altitude_m", effect: "value-blanked", value: "true" }),
  "setting-refused": house('time_zone = "Nowhere"', { line: 1, column: "time_zone", effect: "value-blanked" }),
  "end-before-start": kilning("R1,K1,2026-03-08 06:00,2026-03-08 05:00,15,400", 2, "value-blanked", {
    column: "unloaded_at",
    value: "2026-03-08T05:00Z",
    run: "R1",
  }),
  "malt-over-grain": {
    files: {
      "steeping.csv": `${steep}R1,L1,2026-03-01 06:00,2026-03-02 06:00,399,12\n`,
      "kilning.csv": `${kilningHead}R1,K1,2026-03-06 06:00,,15,400\n`,
    },
    file: "kilning.csv",
    line: 2,
    column: "malt_out_kg",
    effect: "value-blanked",
  },
  "yield-over-100": {
    files: {
      "steeping.csv": `${steep}R1,L1,2026-03-01 06:00,2026-03-02 06:00,400,14\n`,
      "kilning.csv": "run,kiln,loaded_at,final_moisture_pct,malt_out_kg\nR1,K1,2026-03-06 06:00,4,380\n",
    },
    file: "kilning.csv",
    line: 2,
    column: "malt_out_kg",
    effect: "value-blanked",
  },
  "acrospire-incomplete": one("acrospire-counts.csv", `${acrospires}R1,2026-03-08 06:00,0,10,20,30,40,\n`, {
    line: 2,
    effect: "value-blanked",
  }),
  "acrospire-all-zero": one("acrospire-counts.csv", `${acrospires}R1,2026-03-08 06:00,0,0,0,0,0,0\n`, {
    line: 2,
    effect: "value-blanked",
  }),
  "target-low-over-high": one("targets.csv", "variety,measure,low,high\nany,ph,6,5\n", {
    line: 2,
    column: "low",
    effect: "value-blanked",
  }),
  "target-outside-limits": one("targets.csv", "variety,measure,low,target,high\nany,ph,5,7,6\n", {
    line: 2,
    column: "target",
    effect: "value-blanked",
  }),
  "unknown-setting": house("colour = 1", { line: 1, column: "colour", effect: "note" }),
  "declared-file-missing": house('[files."kilnings.csv"]\ndecimal = ","', { line: null, effect: "note" }),
  "unknown-file": one("kilnings.csv", "run\n", { line: null, effect: "note" }),
  "empty-file": one("kilning.csv", "\n\n", { line: null, effect: "note" }),
  "unknown-column": one("customers.csv", "customer,share,mood\n", { line: 1, column: "mood", effect: "note" }),
  "readings-repeated": one("readings/a.csv", "kiln,at,air_on_c\nK1,2026-03-08 06:00,40\nK1,2026-03-08 06:00,40\n", {
    line: 3,
    effect: "note",
  }),
  "unknown-lot": {
    files: {
      "grain-lots.csv": "lot,grain,variety\nL1,wheat,A\n",
      "steeping.csv": `${steep}R1,L2,2026-03-01 06:00,,400,12\n`,
    },
    file: "steeping.csv",
    line: 2,
    column: "lot",
    value: "L2",
    effect: "note",
    run: "R1",
  },
  "unknown-run": {
    files: {
      "steeping.csv": `${steep}R1,L2,2026-03-01 06:00,,400,12\n`,
      "moisture-samples.csv": "run,moisture_pct\nR2,4\n",
    },
    file: "moisture-samples.csv",
    line: 2,
    column: "run",
    effect: "note",
  },
  "unknown-customer": {
    files: {
      "customers.csv": "customer,share\nC1,yes\n",
      "orders.csv": "order,customer,variety,mass_kg,due_on\nO1,C2,A,100,2026-03-08\n",
    },
    file: "orders.csv",
    line: 2,
    column: "customer",
    effect: "note",
  },
  "unknown-kiln": {
    files: { "house.toml": '[[kilns]]\nid = "K1"', "kilning.csv": `${kilningHead}R1,k1,2026-03-08 06:00,,15,400\n` },
    file: "kilning.csv",
    line: 2,
    column: "kiln",
    effect: "note",
  },
  "unknown-measure": one("targets.csv", "variety,measure,low\nany,colour,3\n", {
    line: 2,
    column: "measure",
    effect: "note",
  }),
  "run-twice": kilning("R1,K1,2026-03-08 06:00,,15,400\nR1,K1,2026-03-08 06:00,,15,401", 3, "note"),
  "stages-overlap": {
    files: {
      "steeping.csv": `${steep}R1,L1,2026-03-01 06:00,2026-03-02 06:00,,\n`,
      "germination.csv": "run,started_at\nR1,2026-03-02 04:30\n",
    },
    file: "germination.csv",
    line: 2,
    column: "started_at",
    effect: "note",
  },
  "stages-apart": {
    files: {
      "steeping.csv": `${steep}R1,L1,2026-03-01 06:00,2026-03-02 06:00,,\n`,
      "germination.csv": "run,started_at\nR1,2026-03-04 06:30\n",
    },
    file: "germination.csv",
    line: 2,
    effect: "note",
  },
  "stage-too-long": kilning("R1,K1,2026-03-08 06:00,2026-03-12 07:00,15,400", 2, "note"),
  "delivered-over-made": {
    files: {
      "kilning.csv": `${kilningHead}R1,K1,2026-03-08 06:00,,15,400\n`,
      "deliveries.csv": "delivery,customer,run,shipped_on,mass_kg\nD1,C1,R1,2026-03-20,300\nD2,C1,R1,2026-03-21,105\n",
    },
    file: "deliveries.csv",
    line: 3,
    column: "mass_kg",
    effect: "note",
    run: "R1",
  },
  "shipped-before-made": {
    files: {
      "kilning.csv": `${kilningHead}R1,K1,2026-03-08 06:00,2026-03-08 20:00,15,400\n`,
      "deliveries.csv": "delivery,customer,run,shipped_on,mass_kg\nD1,C1,R1,2026-03-05,300\n",
    },
    file: "deliveries.csv",
    line: 2,
    column: "shipped_on",
    effect: "note",
  },
  "readings-stand-still": {
    files: {
      "kilning.csv": load,
      "readings/a.csv": readings((minute) => (minute >= 60 && minute <= 185 ? 50 : alive(minute) + 1)),
    },
    file: "readings/a.csv",
    line: 14,
    column: "air_on_c",
    effect: "note",
    run: "R1",
  },
  "readings-jump": {
    files: { "kilning.csv": load, "readings/a.csv": readings((minute) => (minute === 100 ? 75 : alive(minute))) },
    file: "readings/a.csv",
    line: 22,
    column: "air_on_c",
    effect: "note",
    run: "R1",
  },
  "readings-gap": {
    files: {
      "kilning.csv": load,
      "readings/a.csv": readings((minute) => (minute > 60 && minute < 100 ? null : alive(minute))),
    },
    file: "readings/a.csv",
    line: 15,
    column: null,
    effect: "note",
    run: "R1",
  },
  "match-unreadable": one("columns.toml", "[[match]]\nfiles = \n", { line: 2, effect: "file-set-aside" }),
  "match-file-missing": one("columns.toml", '[[match]]\nfiles = "gone.csv"\ntable = "weather"\n', {
    line: null,
    effect: "note",
    value: "gone.csv",
  }),
  "match-heading-missing": matched('ambient_c = "temp"\n', "t,rh\n2026-03-08 06:00,50\n", { line: 1, column: "temp" }),
  "match-heading-twice": matched('ambient_c = "temp"\n', "t,rh,temp,temp\n2026-03-08 06:00,50,4,5\n", {
    line: 1,
    column: "temp",
  }),
  "unknown-probe": matched(
    '[match.probe_rows]\nprobe = "probe"\nvalue = "v"\n[match.probe_rows.columns]\nin = "ambient_c"\n',
    "t,rh,probe,v\n2026-03-08 06:00,50,in,4\n2026-03-08 07:00,50,hut,5\n",
    { line: 3, value: "hut" },
  ),
  "date-ahead": kilning("R1,K1,2027-03-08 06:00,,15,400", 2, "note", { now: Date.UTC(2026, 2, 8) }),
};

/** Rules that no text of a file can break; each has a test of its own below. */
const withoutCase = { "house-missing": "note", "file-unreadable": "file-set-aside" } as const;

describe("readLogs reports, once and with its line,", () => {
  test.each(Object.entries(cases))("%s", async (rule, { files, now, ...expected }) => {
    const problems = await problemsOf(rule, files, now === undefined ? {} : { now });
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject(expected);
    expect(problems[0]?.message).toMatch(/\S.*[.:]$/su);
    expect(problems[0]?.hint).toMatch(/\S/);
  });

  test("house-missing", async () => {
    expect((await readLogs([])).problems).toMatchObject([
      { rule: "house-missing", file: "house.toml", effect: "note" },
    ]);
  });

  test("file-unreadable", async () => {
    const [house] = folderOf({ "house.toml": "" });
    const broken: LogFile = {
      path: "kilning.csv",
      async *chunks() {
        yield new TextEncoder().encode("run,kiln,loaded_at\nR1,K1,2026-03-08 06:00\n");
        throw new Error("the disk is gone");
      },
    };
    const logs = await readLogs([house as LogFile, broken]);
    expect(logs.problems).toMatchObject([{ rule: "file-unreadable", file: "kilning.csv", effect: "file-set-aside" }]);
    expect(logs.problems[0]?.message).toContain("the disk is gone");
    expect(logs.tables.has("kilning")).toBe(false);
  });
});

describe("ruleList", () => {
  test("has each rule once, and each has a case here", () => {
    expect([...Object.keys(cases), ...Object.keys(withoutCase)].sort()).toEqual(
      ruleList.map(({ rule }) => rule).sort(),
    );
  });

  test("says of each rule the effect that its case has", () => {
    const words = {
      "file-set-aside": "file set aside",
      "row-set-aside": "row set aside",
      "value-blanked": "blanked",
      note: "note",
    };
    const found: Readonly<Record<string, string | undefined>> = {
      ...withoutCase,
      ...Object.fromEntries(Object.entries(cases).map(([rule, { effect }]) => [rule, effect])),
    };
    for (const { rule, effect } of ruleList) expect(effect).toContain(words[found[rule] as keyof typeof words]);
  });

  test("knows every rule that the sources name", () => {
    const folders = ["src/tables", "src/tables/rules", "src/tables/foreign"];
    const sources = folders.flatMap((folder) =>
      readdirSync(folder)
        .filter((name) => name.endsWith(".ts") && name !== "ruleList.ts")
        .map((name) => readFileSync(`${folder}/${name}`, "utf8")),
    );
    const named = sources.flatMap((source) => [...source.matchAll(/\brule: "([a-z0-9-]+)"/g)].map((match) => match[1]));
    const known = new Set(ruleList.map(({ rule }) => rule));
    expect(named.length).toBeGreaterThan(40);
    expect(named.filter((rule) => !known.has(rule as string))).toEqual([]);
  });
});
