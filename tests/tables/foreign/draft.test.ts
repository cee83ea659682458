import { describe, expect, test } from "vitest";
import {
  withFixed,
  withoutPart,
  withPart,
  withProbe,
  withUnit,
  withUse,
  withWord,
} from "../../../src/tables/foreign/draft/changeDraft.ts";
import { draftMatches } from "../../../src/tables/foreign/draft/draftMatches.ts";
import { doubtsOf, lacks } from "../../../src/tables/foreign/draft/draftNeeds.ts";
import { draftOf } from "../../../src/tables/foreign/draft/draftOf.ts";
import { headingChoices, useKey, useOf } from "../../../src/tables/foreign/draft/headingChoices.ts";
import type { MatchDraft } from "../../../src/tables/foreign/draft/matchDraft.ts";
import { unitChoices } from "../../../src/tables/foreign/draft/unitChoices.ts";
import { joinMatches } from "../../../src/tables/foreign/joinMatches.ts";
import { readMatches } from "../../../src/tables/foreign/readMatches.ts";
import { layoutAsSaid, type SampleLayout, sampleLayout } from "../../../src/tables/foreign/sampleLayout.ts";
import { suggestMatches } from "../../../src/tables/foreign/suggestMatches.ts";
import { writeMatches } from "../../../src/tables/foreign/writeMatches.ts";
import { readHouse } from "../../../src/tables/readHouse.ts";
import { tableDeclarations } from "../../../src/tables/tableDeclarations.ts";
import { logsOf, valuesOf } from "../logsOf.ts";
import "../../support/matchers.ts";

const toml = 'time_zone = "Europe/Berlin"\n[[kilns]]\nid = "K1"\n';
const { house } = readHouse(toml);

const SHEET =
  "Batch;Grain lot;Grain (t);Steep on;Kiln in;Kiln out;Bed depth (cm);Ambient;Moisture;Mood\n" +
  "007;L1;0,45;1.3.2026 06:00;6.3.2026 08:00;6.3.2026 20:30;17,5;4,5;4,5;calm\n" +
  "008;L1;0,5;14.3.2026 06:00;;;;;;sour\n";
const TWO_KILNS = "Time;K1 inlet;K2 inlet\n2026-03-08 10:00;54,5;60,5\n2026-03-08 10:01;55;61\n";

const sampleOf = (text: string): SampleLayout => {
  const sample = sampleLayout(text);
  if (sample === null) throw new RangeError("the text holds no table");
  return sample;
};
const drafted = (path: string, text: string): MatchDraft => draftOf(path, sampleOf(text), null, house);
const placeOf = (draft: MatchDraft, heading: string): number => draft.sample.headings.indexOf(heading);
const logsBy = (draft: MatchDraft, text: string) =>
  logsOf({
    "house.toml": toml,
    "columns.toml": writeMatches(draftMatches(draft, draft.path)),
    [draft.path]: text,
  });

describe("draftOf", () => {
  test("reads a file as the suggestions for it do", async () => {
    const draft = drafted("batches.csv", SHEET);
    expect(draft.parts.map(({ table }) => table)).toEqual(["steeping", "kilning"]);
    const suggested = suggestMatches("batches.csv", draft.sample, null, house).map(({ match }) => match);
    const bySuggestion = await logsOf({
      "house.toml": toml,
      "columns.toml": writeMatches(suggested),
      "batches.csv": SHEET,
    });
    const byDraft = await logsBy(draft, SHEET);
    for (const table of ["steeping", "kilning"] as const) {
      expect(byDraft.tables.get(table)?.columns).toEqual(bySuggestion.tables.get(table)?.columns);
    }
    expect(valuesOf(byDraft, "steeping", "grain_in_kg")).toEqual([450, 500]);
  });

  test("says of each column what has to be looked at, and of a sure one nothing", () => {
    const draft = drafted("batches.csv", SHEET);
    const doubts = (heading: string) =>
      doubtsOf(draft, draft.headings[placeOf(draft, heading)] as (typeof draft.headings)[number]).map(
        ({ kind }) => kind,
      );
    expect(doubts("Ambient")).toEqual(["unit-nowhere"]);
    expect(doubts("Bed depth (cm)")).toEqual([]);
    expect(doubts("Mood")).toEqual([]);
    expect(draft.headings[placeOf(draft, "Mood")]?.use).toEqual({ kind: "kept" });
  });

  test("holds no part where nothing can be suggested, and lacks nothing until it is said what it holds", () => {
    const draft = drafted("x.csv", "Street,Town\nHigh Street,Somewhere\nLow Street,Elsewhere\n");
    expect(draft.parts).toEqual([]);
    expect(lacks(draft)).toEqual([]);
    const said = withPart(draft, "events", house);
    expect(lacks(said).map(({ column }) => column.stem)).toEqual(["on", "kind", "scope", "what"]);
  });
});

describe("a changed draft", () => {
  test("reads another column, in another unit, and not the one it was before", async () => {
    const draft = drafted("batches.csv", SHEET);
    const mood = placeOf(draft, "Mood");
    const kiln = draft.parts.find(({ table }) => table === "kilning")?.id ?? "";
    const changed = withUnit(
      withUse(draft, mood, { kind: "column", part: kiln, stem: "note" }, house),
      placeOf(draft, "Ambient"),
      "ambient_f",
    );
    const logs = await logsBy(changed, SHEET);
    expect(valuesOf(logs, "kilning", "note")).toEqual(["calm"]);
    expect((valuesOf(logs, "kilning", "ambient_c") as number[])[0]).toAgreeWithin(((4.5 - 32) * 5) / 9, 1e-12);
    const unread = withUse(draft, placeOf(draft, "Ambient"), { kind: "unread" }, house);
    expect(draftMatches(unread, "x").flatMap(({ ignore }) => ignore)).toEqual(["Ambient"]);
    expect((await logsBy(unread, SHEET)).tables.get("kilning")?.columns.has("ambient_c")).toBe(false);
  });

  test("says which other column is said to be the same, and reads the one that stands first", async () => {
    const draft = drafted("batches.csv", SHEET);
    const kiln = draft.parts.find(({ table }) => table === "kilning")?.id ?? "";
    const twice = withUse(
      draft,
      placeOf(draft, "Ambient"),
      { kind: "column", part: kiln, stem: "final_moisture_pct" },
      house,
    );
    const heading = twice.headings[placeOf(draft, "Ambient")];
    expect(heading && doubtsOf(twice, heading)).toContainEqual({ kind: "twice", other: placeOf(draft, "Moisture") });
    expect((await logsBy(twice, SHEET)).problems.filter(({ rule }) => rule === "setting-refused")).toEqual([]);
  });

  test("reads two kilns out of one logger, the time for both", async () => {
    const draft = drafted("both.csv", TWO_KILNS);
    const grown = withFixed(withPart(draft, "readings", house), "readings 2", "kiln", "K2");
    const first = withUse(grown, 1, { kind: "column", part: "readings", stem: "air_on" }, house);
    const second = withUse(first, 2, { kind: "column", part: "readings 2", stem: "air_on" }, house);
    const both = withUse(second, 0, { kind: "column", part: null, stem: "at" }, house);
    expect(lacks(both)).toEqual([]);
    const logs = await logsBy(both, TWO_KILNS);
    expect(valuesOf(logs, "readings", "kiln")).toEqual(["K1", "K1", "K2", "K2"]);
    expect(valuesOf(logs, "readings", "air_on_c")).toEqual([54.5, 55, 60.5, 61]);
    expect(withoutPart(both, "readings 2").headings[2]?.use).toEqual({ kind: "unread" });
  });

  test("reads a row for each probe, and words of the file's own", async () => {
    const long =
      "When,Sensor,Reading\n2026-03-08 10:00,A,54.5 °C\n2026-03-08 10:00,B,40 °C\n2026-03-08 10:01,A,55 °C\n";
    const bare = withPart(drafted("long.csv", long), "readings", house);
    const named = withUse(bare, 1, { kind: "probe" }, house);
    const valued = withUse(named, 2, { kind: "value" }, house);
    const timed = withUse(valued, 0, { kind: "column", part: "readings", stem: "at" }, house);
    expect(lacks(timed).map(({ column }) => column.stem)).toEqual(["air_on"]);
    const whole = withProbe(timed, "A", "air_on", "air_on_c");
    expect(lacks(whole)).toEqual([]);
    const logs = await logsBy(whole, long);
    expect(valuesOf(logs, "readings", "air_on_c")).toEqual([54.5, 55]);
    expect(logs.problems).toEqual([]);

    const relay = "Time,Inlet °C,Burner\n2026-03-08 10:00,54.5,closed\n2026-03-08 10:01,55,open\n";
    const words = drafted("relay.csv", relay);
    expect(words.headings[2]?.words).toEqual(
      new Map([
        ["closed", ""],
        ["open", ""],
      ]),
    );
    const saidOn = withWord(withWord(words, 2, "closed", "1"), 2, "open", "0");
    expect(valuesOf(await logsBy(saidOn, relay), "readings", "heater_on")).toEqual([1, 0]);
  });
});

describe("headingChoices", () => {
  test("offers each column once, under keys that lead back to their uses", () => {
    const keys = headingChoices(drafted("batches.csv", SHEET), 0).flatMap(({ choices }) =>
      choices.map(({ key }) => key),
    );
    expect(new Set(keys).size).toBe(keys.length);
    for (const key of keys) expect(useKey(useOf(key))).toBe(key);
    expect(() => useOf("nothing")).toThrow(RangeError);
  });
});

describe("unitChoices", () => {
  test.each(tableDeclarations.map((declaration) => [declaration.name, declaration] as const))(
    "names units of %s that columns.toml takes",
    (table, { columns }) => {
      for (const column of columns) {
        for (const { to, times } of unitChoices(column)) {
          const factor = times === null ? "" : `, times = ${times}`;
          const text = `[[match]]\nfiles = "x"\ntable = "${table}"\n[match.columns]\n${to} = { from = "A"${factor} }\n`;
          const { matches, problems } = readMatches(text);
          expect(problems).toEqual([]);
          expect(matches[0]?.columns[0]).toMatchObject({ to, times });
        }
      }
    },
  );
});

describe("layoutAsSaid", () => {
  test("takes the headings where somebody says they stand, and nothing where nothing stands", () => {
    const text = "Batch,Lot\nA,B\n,°C\n1,2\n";
    expect(layoutAsSaid(text, ",", 2, 1)).toMatchObject({
      skipLines: 1,
      skipAfterHeadings: 1,
      headings: ["A", "B"],
      unitRow: ["", "°C"],
      rows: [["1", "2"]],
    });
    expect(layoutAsSaid(text, ",", 9, 0)).toBeNull();
  });
});

describe("joinMatches", () => {
  const added = draftMatches(drafted("batches.csv", SHEET), "batches.csv");

  test("adds to what stands, remarks and all", () => {
    const older = `# ours\n${writeMatches(draftMatches(drafted("w.csv", TWO_KILNS), "w.csv"))}`;
    const { text, keepsOlder } = joinMatches(older, added);
    expect(keepsOlder).toBe(true);
    expect(text.startsWith(older.trimEnd())).toBe(true);
    expect(readMatches(text).matches).toHaveLength(3);
  });

  test("puts matches in the place of those for the same files, and keeps the others and their remarks", () => {
    const other = writeMatches(draftMatches(drafted("w.csv", TWO_KILNS), "w.csv"));
    const before = withUnit(drafted("batches.csv", SHEET), 7, "ambient_f");
    const older = `# ours\n${writeMatches(draftMatches(before, "batches.csv"))}# of the second kiln\n${other.slice(other.indexOf("[[match]]"))}`;
    const { text } = joinMatches(older, added, new Set(["batches.csv"]));
    expect(text).toContain("# ours");
    expect(text).toContain("# of the second kiln");
    expect(readMatches(text).matches).toEqual([...draftMatches(drafted("w.csv", TWO_KILNS), "w.csv"), ...added]);
    expect(joinMatches(older, [], new Set(["batches.csv", "w.csv"])).text).not.toContain("[[match]]");
    const inline = 'match = [{ files = "a.csv", table = "lab" }, { files = "batches.csv", table = "lab" }]\n';
    const { matches } = readMatches(joinMatches(inline, added, new Set(["batches.csv"])).text);
    expect(matches.map(({ files, table }) => `${files} ${table}`)).toEqual([
      "a.csv lab",
      "batches.csv steeping",
      "batches.csv kilning",
    ]);
  });

  test("writes anew what cannot be added to", () => {
    const { text } = joinMatches('match = [{ files = "a.csv", table = "lab" }]\n', added);
    expect(readMatches(text).matches.map(({ table }) => table)).toEqual(["lab", "steeping", "kilning"]);
  });

  test("says where nothing of the older one could be kept", () => {
    const { text, keepsOlder } = joinMatches("[[match\n", added);
    expect(keepsOlder).toBe(false);
    expect(readMatches(text).matches).toEqual(added);
  });
});
