import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Problem } from "../../../src/tables/problem.ts";
import { readHouse } from "../../../src/tables/readHouse.ts";
import { readLogs } from "../../../src/tables/readLogs.ts";
import { appendRow, stageCsv } from "../../../src/tables/writeUp/appendRow.ts";
import { checkDraft } from "../../../src/tables/writeUp/checkDraft.ts";
import {
  type Draft,
  emptyDraft,
  formatDrafts,
  parseDrafts,
  stagesTyped,
  withoutStage,
  withTyped,
} from "../../../src/tables/writeUp/draft.ts";
import { logsAtHand } from "../../../src/tables/writeUp/logsAtHand.ts";
import { textFile } from "../../../src/tables/writeUp/textFile.ts";
import { writeUpFields, writeUpTables } from "../../../src/tables/writeUp/writeUpStages.ts";

const NOW = Date.UTC(2026, 10, 1);
const HOUSE = { name: "A house", timeZone: "America/New_York", units: "metric" } as const;
const NEW = logsAtHand(HOUSE, null);

const steep = (typed: Readonly<Record<string, string>>, run = "26-200"): Draft => ({
  run,
  stages: { steeping: { lot: "L1", started_at: "2026-10-20T07:30", ...typed } },
});
const said = (problems: readonly Problem[] = []) => problems.map(({ column, rule, effect }) => [column, rule, effect]);

describe("checkDraft(draft, logs)", () => {
  test("finds nothing wrong with a stage typed as it should be", async () => {
    expect(await checkDraft(steep({ grain_in_kg: "350", water_c: "12.5" }), NEW, NOW)).toEqual({ steeping: [] });
  });

  test("takes a decimal comma for what a thumb on such a keyboard means by it", async () => {
    expect(said((await checkDraft(steep({ grain_in_kg: "350,5", water_c: "12" }), NEW, NOW)).steeping)).toEqual([]);
  });

  test("says of each box what the reader of the logs would say of its value", async () => {
    const typed = { grain_in_kg: "many", water_c: "120", ended_at: "2026-10-19T07:30" };
    const { steeping } = await checkDraft(steep(typed), NEW, NOW);
    const csv =
      "run,lot,started_at,grain_in_kg,water_c,ended_at\n26-200,L1,2026-10-20 07:30,many,120,2026-10-19 07:30\n";
    const read = await readLogs([...NEW, textFile("steeping.csv", csv)], { now: NOW });
    expect(said(steeping)).toEqual(said(read.problems));
    expect(said(steeping).map(([column]) => column)).toEqual(expect.arrayContaining(["grain_in_kg", "water_c"]));
  });

  test("says what the row cannot be read without", async () => {
    const { kilning } = await checkDraft({ run: "26-200", stages: { kilning: { bed_depth_cm: "15" } } }, NEW, NOW);
    expect(said(kilning)).toEqual([
      ["kiln", "needed-value-missing", "row-set-aside"],
      ["loaded_at", "needed-value-missing", "row-set-aside"],
    ]);
  });

  test("holds a stage against the stages that are logged already", async () => {
    const batch = {
      run: "26-200",
      lot: "L1",
      grainInKilograms: 350,
      grainMoisturePercent: 12,
      steepStartedAt: Date.UTC(2026, 9, 20, 11, 30),
      steepEndedAt: Date.UTC(2026, 9, 21, 11, 30),
      germinationStartedAt: Date.UTC(2026, 9, 21, 12),
      germinationEndedAt: Date.UTC(2026, 9, 25, 12),
      kiln: null,
      loadedAt: null,
      unloadedAt: null,
      maltOutKilograms: null,
    };
    const kiln = { kiln: "K1", loaded_at: "2026-10-21T12:00", malt_out_kg: "900" };
    const { kilning } = await checkDraft({ run: "26-200", stages: { kilning: kiln } }, logsAtHand(HOUSE, batch), NOW);
    const rules = said(kilning).map(([, rule]) => rule);
    expect(rules).toContain("stages-overlap");
    expect(rules.some((rule) => rule?.startsWith("malt-over"))).toBe(true);
  });

  test("notes a lot that the house's own file does not name, where that is at hand", async () => {
    const lots = textFile("grain-lots.csv", "lot,grain,variety\nL9,barley,Specimen\n");
    const { steeping } = await checkDraft(steep({}), [...NEW, lots], NOW);
    expect(said(steeping)).toEqual([["lot", "unknown-lot", "note"]]);
  });

  test("does not tell what is wrong with the logs themselves", async () => {
    const wrong = textFile("steeping.csv", "run,lot,started_at,water_c\n25-001,L1,2025-10-20 07:30,900\n");
    expect(await checkDraft(steep({}), [...NEW, wrong], NOW)).toEqual({ steeping: [] });
  });
});

const settings = (toml = "") => readHouse(`name = "A house"\ntime_zone = "America/New_York"\n${toml}`).house;
const bytes = (text: string) => new TextEncoder().encode(text);
const rowOf = async (text: string, typed: Readonly<Record<string, string>>, toml = "") =>
  appendRow({ path: "kilning.csv", bytes: bytes(text) }, "kilning", "26-200", typed, settings(toml));

describe("appendRow(file, table, run, typed)", () => {
  const typed = { kiln: "K1", loaded_at: "2026-10-25T12:00", bed_depth_cm: "15.5", note: 'a 6" bed, even' };

  test("keeps the file's own order of columns, and leaves blank what it does not know", async () => {
    expect(await rowOf("note,mine,bed_depth_cm,loaded_at,kiln,run\n", typed)).toMatchObject({
      kind: "row",
      text: '"a 6"" bed, even",,15.5,2026-10-25 12:00,K1,26-200',
    });
  });

  test("writes in the file's own unit, with its delimiter and decimal comma, and times in UTC where it keeps those", async () => {
    const file = "run;kiln;loaded_at_utc;bed_depth_in;note\n25-001;K1;2025-10-25 12:00;5,9;\n";
    expect(await rowOf(file, typed)).toMatchObject({
      text: '26-200;K1;2026-10-25 16:00;6,10236;"a 6"" bed, even"',
    });
  });

  test.each([
    ["a\n", "row\n"],
    ["a", "\nrow\n"],
    ["a\r\nb\r\n", "row\r\n"],
    ["a\r\nb", "\r\nrow\r\n"],
  ])("ends lines as the file does: behind %j comes %j", async (body, expected) => {
    const head = body.includes("\r\n") ? "run,kiln,loaded_at,note\r\n" : "run,kiln,loaded_at,note\n";
    const row = "26-200,K1,2026-10-25 12:00,";
    const added = await rowOf(
      `${head}${body.replace("a", "25-001,K1,2025-10-25 12:00,a").replace(/b(?=\r|$)/, "25-002,K1,2025-10-26 12:00,b")}`,
      {
        kiln: "K1",
        loaded_at: "2026-10-25T12:00",
      },
    );
    expect(added.kind === "row" ? new TextDecoder().decode(added.bytes) : added.sentence).toBe(
      expected.replace("row", row),
    );
  });

  test("refuses, in a sentence, a value without a column, a file of other headings, an empty one and one in UTF-16", async () => {
    const refusals = await Promise.all([
      rowOf("run,kiln,loaded_at\n", typed),
      rowOf("batch,oven\n", typed),
      rowOf("", typed),
      appendRow(
        { path: "kilning.csv", bytes: new Uint8Array([0xff, 0xfe, 0x72, 0]) },
        "kilning",
        "x",
        typed,
        settings(),
      ),
    ]);
    expect(refusals.map(({ kind }) => kind)).toEqual(["refusal", "refusal", "refusal", "refusal"]);
    expect(refusals[0]).toMatchObject({ sentence: expect.stringContaining("bed_depth_cm, note") });
  });

  test("refuses letters that the file's declared encoding writes otherwise", async () => {
    const toml = '[files."kilning.csv"]\nencoding = "windows-1252"\n';
    const file = "run,kiln,loaded_at,note,bed_depth_cm\n";
    expect((await rowOf(file, { ...typed, note: "Küche" }, toml)).kind).toBe("refusal");
    expect((await rowOf(file, typed, toml)).kind).toBe("row");
  });

  test("whatever is typed as text comes back from the reader as it was typed", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.string({ minLength: 1 }).filter((text) => /^[^\s\0]([^\0]*[^\s\0])?$/.test(text)),
        async (note) => {
          const file = "run,kiln,loaded_at,note\n";
          const added = await rowOf(file, { kiln: "K1", loaded_at: "2026-10-25T12:00", note });
          if (added.kind !== "row") throw new Error(added.sentence);
          const text = file + new TextDecoder().decode(added.bytes);
          const { tables } = await readLogs([...NEW, textFile("kilning.csv", text)]);
          expect(tables.get("kilning")?.columns.get("note")).toEqual([note]);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe("stageCsv(table, run, typed)", () => {
  test.each(writeUpTables)("a downloaded row of %s is read as it was typed", async (table) => {
    const typed = Object.fromEntries(
      writeUpFields(table, "us").flatMap(({ heading, column }) =>
        column.needed ? [[heading, column.kind === "instant" ? "2026-10-20T07:30" : "X1"]] : [],
      ),
    );
    const csv = stageCsv(table, "26-200", typed, settings('units = "us"'));
    const { tables, problems } = await readLogs([...NEW, textFile(`${table}.csv`, csv)]);
    expect(problems.filter(({ effect }) => effect !== "note")).toEqual([]);
    expect(tables.get(table)?.columns.get("run")).toEqual(["26-200"]);
  });
});

describe("drafts", () => {
  test("hold what was typed, and forget a box that was emptied", () => {
    const typed = withTyped(withTyped(emptyDraft("a"), "steeping", "lot", "L1"), "steeping", "water_c", "12");
    expect(withTyped(typed, "steeping", "lot", " ").stages.steeping).toEqual({ water_c: "12" });
    expect(stagesTyped(withoutStage(typed, "steeping"))).toEqual([]);
  });

  test("survive being kept as text, whatever is in them", () => {
    fc.assert(
      fc.property(fc.string(), fc.string({ minLength: 1 }), fc.string(), (run, heading, text) => {
        const drafts = [{ run, stages: { kilning: { [heading]: text } } }];
        expect(parseDrafts(formatDrafts(drafts))).toEqual(JSON.parse(JSON.stringify(drafts)));
      }),
    );
  });

  test.each([
    null,
    "",
    "{",
    "3",
    '[{"run": 5}]',
    '[{"run": "a", "stages": {"kilning": {"x": 1}, "oven": {"y": "z"}}}]',
  ])("kept text %j does no harm", (text) => {
    const drafts = parseDrafts(text);
    expect(drafts.flatMap((draft) => stagesTyped(draft))).toEqual([]);
  });
});
