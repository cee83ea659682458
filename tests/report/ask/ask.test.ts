import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { LoadableDatabase } from "../../../src/engine/database.ts";
import { joinLogs } from "../../../src/engine/joinLogs.ts";
import { openNodeDatabase } from "../../../src/engine/node.ts";
import { houseTime } from "../../../src/engine/sql/houseTime.ts";
import { askedFigure } from "../../../src/figures/ask/askedFigure.ts";
import { askQuestions } from "../../../src/report/ask/askQuestions.ts";
import { askSchema } from "../../../src/report/ask/askSchema.ts";
import { publishedTables } from "../../../src/report/publishTables.ts";
import { openDemoDatabase } from "../../support/openDemoDatabase.ts";

let demo: LoadableDatabase;
let empty: LoadableDatabase;
beforeAll(async () => {
  demo = await openDemoDatabase();
  empty = await openNodeDatabase(publishedTables(new Map()));
  await joinLogs(empty);
  await empty.query(houseTime("Etc/UTC"));
});
afterAll(() => Promise.all([demo.close(), empty.close()]));

const bare = (name: string): string => name.replaceAll('"', "");

describe("askQuestions", () => {
  test("are a dozen or more, no two with one title", () => {
    expect(askQuestions.length).toBeGreaterThanOrEqual(12);
    expect(new Set(askQuestions.map(({ title }) => title)).size).toBe(askQuestions.length);
  });

  test.each(askQuestions)("$title: runs on the invented house and has rows", async ({ sql }) => {
    const answer = await demo.ask(sql, { mostRows: 10_000 });
    expect(answer.rows.length).toBeGreaterThan(0);
    expect(answer.columns.length).toBeGreaterThanOrEqual(2);
  });

  test.each(askQuestions)("$title: runs on logs without a row", async ({ sql }) => {
    expect((await empty.ask(sql, { mostRows: 10 })).rows).toEqual([]);
  });

  test("are drawn where they put one number against a name, a date or a number", async () => {
    const drawn = await Promise.all(
      askQuestions.map(async ({ sql }) => askedFigure(await demo.ask(sql, { mostRows: 10_000 })) !== null),
    );
    expect(drawn.filter(Boolean).length).toBeGreaterThanOrEqual(12);
  });

  test("the sum of malt over all months is the malt of all batches that were unloaded", async () => {
    const [months, whole] = await Promise.all([
      demo.ask(askQuestions[0]?.sql ?? "", { mostRows: 10_000 }),
      demo.query<{ kg: number }>("SELECT sum(malt_kg) AS kg FROM run_rows WHERE unloaded_at IS NOT NULL"),
    ]);
    const sum = months.rows.reduce((kg, row) => kg + Number(row[1] ?? 0), 0);
    expect(sum).toAgreeWithin(whole[0]?.kg ?? Number.NaN, 1e-12);
  });
});

describe("askSchema()", () => {
  test.each(askSchema())("$name: every column can be asked for as it is written", async ({ name, columns }) => {
    const sql = `SELECT ${columns.map((column) => column.name).join(", ")} FROM ${name} LIMIT 1`;
    // Thermostat loads are there only where somebody looked at readings.
    const answer = await demo.ask(sql, { mostRows: 1 });
    expect(answer.columns.map((column) => column.name)).toEqual(columns.map((column) => bare(column.name)));
  });

  test.each(["run_rows", "load_rows"])("names every column of %s", async (table) => {
    const held = await demo.ask(`DESCRIBE ${table}`, { mostRows: 500 });
    const named = askSchema()
      .find(({ name }) => name === table)
      ?.columns.map(({ name }) => bare(name));
    expect([...(named ?? [])].sort()).toEqual(held.rows.map(([column]) => column).sort());
  });

  test("gives every number a unit", async () => {
    const kinds = new Map<string, string>();
    for (const { name } of askSchema()) {
      const { columns } = await demo.ask(`SELECT * FROM ${name} LIMIT 0`, { mostRows: 1 });
      for (const column of columns) kinds.set(`${bare(name)}.${column.name}`, column.kind);
    }
    const without = askSchema().flatMap(({ name, columns }) =>
      columns.flatMap((column) => {
        const kind = kinds.get(`${bare(name)}.${bare(column.name)}`);
        const says = column.unit.startsWith("time") ? "instant" : column.unit === "date" ? "date" : "other";
        const fits =
          kind === "number" ? column.unit !== "text" : kind === "instant" || kind === "date" ? says === kind : true;
        return fits ? [] : [`${name}.${column.name}: ${kind}, ${column.unit}`];
      }),
    );
    expect(without).toEqual([]);
  });
});
