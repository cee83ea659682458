import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { LoadableDatabase } from "../../src/engine/database.ts";
import { openNodeDatabase } from "../../src/engine/node.ts";

let database: LoadableDatabase;
beforeAll(async () => {
  const csv = new TextEncoder().encode("run,at,hours\na,2026-01-01 06:30:00,20.5\nb,2026-01-02 06:30:00,\nc,,22\n");
  database = await openNodeDatabase([
    { name: "kilned", columns: { run: "VARCHAR", at: "TIMESTAMP", hours: "DOUBLE" }, csv },
  ]);
});
afterAll(() => database.close());

const ask = (sql: string, mostRows = 100) => database.ask(sql, { mostRows });
const rowsLeft = async () => (await database.query<{ n: number }>("SELECT count(*) AS n FROM kilned"))[0]?.n;

describe("ask(sql)", () => {
  test("answers with named columns, their kinds, and rows as plain values", async () => {
    expect(
      await ask('SELECT run, "at", hours, hours > 21 AS slow, "at"::DATE AS day FROM kilned ORDER BY run'),
    ).toEqual({
      columns: [
        { name: "run", kind: "text" },
        { name: "at", kind: "instant" },
        { name: "hours", kind: "number" },
        { name: "slow", kind: "flag" },
        { name: "day", kind: "date" },
      ],
      rows: [
        ["a", Date.UTC(2026, 0, 1, 6, 30), 20.5, false, Date.UTC(2026, 0, 1)],
        ["b", Date.UTC(2026, 0, 2, 6, 30), null, null, Date.UTC(2026, 0, 2)],
        ["c", null, 22, true, null],
      ],
      more: false,
    });
  });

  test("names the columns of an answer without rows", async () => {
    expect(await ask("SELECT run FROM kilned WHERE hours > 99")).toEqual({
      columns: [{ name: "run", kind: "text" }],
      rows: [],
      more: false,
    });
  });

  test("reads no more rows than were asked for, and says that there are more", async () => {
    const answer = await ask("FROM range(5000)", 3);
    expect(answer.rows).toEqual([[0], [1], [2]]);
    expect(answer.more).toBe(true);
    expect((await ask("FROM range(3)", 3)).more).toBe(false);
  });

  test("writes lists as text, and times of day as a clock", async () => {
    expect((await ask("SELECT ['24-001', '24-002'] AS runs, TIME '06:05:09' AS clock")).rows).toEqual([
      ["24-001, 24-002", "06:05:09"],
    ]);
  });

  test.each([
    "DROP TABLE kilned",
    "DELETE FROM kilned",
    "INSERT INTO kilned VALUES ('d', NULL, 1)",
    "CREATE TEMP TABLE mine AS SELECT 1",
    "COMMIT",
    "COMMIT; DROP TABLE kilned",
    "SELECT 1; DROP TABLE kilned",
    "SELECT 1; COMMIT; DROP TABLE kilned",
    "/* SELECT */ DROP TABLE kilned",
    "-- SELECT\nDROP TABLE kilned",
    "EXPLAIN ANALYZE DELETE FROM kilned",
    "WITH gone AS (DELETE FROM kilned RETURNING *) SELECT * FROM gone",
    "ATTACH ':memory:' AS other",
    "SET threads = 1",
    "COPY kilned TO 'logs/out.csv'",
    "SELECT * FROM read_csv('https://example.invalid/x.csv')",
    "",
    "-- nothing",
  ])("refuses %j, and the logs are as they were", async (sql) => {
    await expect(ask(sql)).rejects.toThrow();
    expect(await rowsLeft()).toBe(3);
    // The database still takes tables in and answers.
    expect((await ask("SELECT 1")).rows).toEqual([[1]]);
  });

  test("takes a closing semicolon, comments and brackets for what they are", async () => {
    expect((await ask("-- how many\n(SELECT count(*) FROM kilned) ;")).rows).toEqual([[3]]);
  });

  test("says what to ask instead of a span of time, which the engine cannot hand out whole", async () => {
    await expect(ask('SELECT max("at") - min("at") AS span FROM kilned')).rejects.toThrow(/span.*epoch/);
  });

  test("gives the reason of a signal that was aborted before", async () => {
    const signal = AbortSignal.abort(new Error("stopped"));
    await expect(database.ask("SELECT 1", { mostRows: 1, signal })).rejects.toThrow("stopped");
  });
});
