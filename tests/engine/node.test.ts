import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { LoadableDatabase } from "../../src/engine/database.ts";
import { openNodeDatabase } from "../../src/engine/node.ts";
import type { CsvTable } from "../../src/tables/csvTable.ts";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

const kilns: CsvTable = {
  name: "kilns",
  columns: { kiln: "VARCHAR", depth_m: "DOUBLE", loads: "INTEGER", at: "TIMESTAMP", on: "DATE", heater_on: "BOOLEAN" },
  csv: bytes(
    [
      "kiln,depth_m,loads,at,on,heater_on",
      "007,0.155,3,2026-03-08 01:30:00,2026-03-08,1",
      '"a ""b"", c\r\nd",,,2026-03-08 01:30:00.250,,0',
      "é,-1e-3,0,,1969-12-31,",
    ].join("\n"),
  ),
};

let database: LoadableDatabase;
beforeAll(async () => {
  database = await openNodeDatabase([kilns]);
});
afterAll(() => database.close());

describe("openNodeDatabase", () => {
  test("runs the engine that is pinned: DuckDB v1.4.3, the engine of duckdb-wasm 1.32.0", async () => {
    // The release notes of duckdb-wasm name the engine; versions of the two do not map to each other.
    expect(await database.query("SELECT version() AS version")).toEqual([{ version: "v1.4.3" }]);
  });

  test("reads every type as declared: zeros before a number stay, blanks are null, instants are milliseconds UTC", async () => {
    const at = Date.UTC(2026, 2, 8, 1, 30);
    expect(await database.query("SELECT * FROM kilns ORDER BY rowid")).toEqual([
      { kiln: "007", depth_m: 0.155, loads: 3, at, on: Date.UTC(2026, 2, 8), heater_on: true },
      { kiln: 'a "b", c\r\nd', depth_m: null, loads: null, at: at + 250, on: null, heater_on: false },
      { kiln: "é", depth_m: -0.001, loads: 0, at: null, on: Date.UTC(1969, 11, 31), heater_on: null },
    ]);
  });

  test("gives DECIMAL, BIGINT and HUGEINT as plain numbers and a list as an array", async () => {
    const rows = await database.query(
      "SELECT 12.34::DECIMAL(6, 2) AS d, 9007199254740991::BIGINT AS b, sum(3) AS h, ['x', NULL] AS l",
    );
    expect(rows).toEqual([{ d: 12.34, b: 9007199254740991, h: 3, l: ["x", null] }]);
  });

  test("lets tables in later, and a table of the same name takes the old one's place", async () => {
    const table = (csv: string): CsvTable => ({ name: "later", columns: { a: "INTEGER" }, csv: bytes(csv) });
    await database.load([table("a\n1\n2\n")]);
    expect(await database.query("SELECT sum(a) AS total FROM later")).toEqual([{ total: 3 }]);
    const next = table("a\n40\n");
    await database.load([next]);
    expect(await database.query("SELECT sum(a) AS total FROM later")).toEqual([{ total: 40 }]);
    expect(next.csv.length).toBe(5);
  });

  test("takes an empty table", async () => {
    await database.load([{ name: "nothing", columns: { a: "VARCHAR", b: "TIMESTAMP" }, csv: bytes("a,b\n") }]);
    expect(await database.query("SELECT count(*) AS n FROM nothing")).toEqual([{ n: 0 }]);
  });

  test("refuses swapped columns, which the engine itself would load without a word", async () => {
    const swapped: CsvTable = { name: "swapped", columns: { a: "DOUBLE", b: "DOUBLE" }, csv: bytes("b,a\n1,2\n") };
    await expect(database.load([swapped])).rejects.toThrow(RangeError);
  });

  test("refuses a table's name that is not a plain one", async () => {
    const hostile: CsvTable = { name: 'x"; DROP TABLE kilns; --', columns: { a: "DOUBLE" }, csv: bytes("a\n1\n") };
    await expect(database.load([hostile])).rejects.toThrow(RangeError);
    expect(await database.query("SELECT count(*) AS n FROM kilns")).toEqual([{ n: 3 }]);
  });

  test("says so when a value is not of the declared type, rather than change the type", async () => {
    const wrong: CsvTable = { name: "wrong", columns: { a: "DOUBLE" }, csv: bytes("a\n1\ntwo\n") };
    await expect(database.load([wrong])).rejects.toThrow(/two/);
  });
});
