import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { LoadableDatabase } from "../../../src/engine/database.ts";
import { openNodeDatabase } from "../../../src/engine/node.ts";
import { askFault } from "../../../src/findings/ask/askFault.ts";

let database: LoadableDatabase;
beforeAll(async () => {
  const csv = (text: string) => new TextEncoder().encode(text);
  database = await openNodeDatabase([
    { name: "load_rows", columns: { load: "VARCHAR", kiln_hours: "DOUBLE" }, csv: csv("load,kiln_hours\na,20\n") },
    { name: "run_rows", columns: { run: "VARCHAR", load: "VARCHAR" }, csv: csv("run,load\nx,a\n") },
  ]);
});
afterAll(() => database.close());

/** What the engine itself says, put into plain words. */
async function saidOf(sql: string) {
  try {
    await database.ask(sql, { mostRows: 10 });
  } catch (error) {
    return askFault(error instanceof Error ? error.message : String(error));
  }
  throw new Error("the question was answered");
}

describe("askFault(the engine's words)", () => {
  test.each([
    ["SELECT * FROM load_row", /no table called load_row\. Near it: .*load_rows/],
    ["SELECT kiln_hour FROM load_rows", /has a column kiln_hour\. Near it: .*kiln_hours/],
    ["SELECT load, avg(kiln_hours) FROM load_rows", /load has many values in each group.*max\(load\)/],
    ["SELECT load FROM load_rows JOIN run_rows ON true", /Several of the tables have a column load/],
    ["SELECT load FROM", /breaks off before it is finished|cannot be read from/],
    ["SELECT load,, kiln_hours FROM load_rows", /cannot be read from “,” on/],
    ["SELECT medain(kiln_hours) FROM load_rows", /no function called medain/],
    ["SELECT 1; SELECT 2", /one question at a time/],
    ["DROP TABLE load_rows", /begins with DROP.*not changed/],
    ["SELECT * FROM read_csv('/etc/passwd')", /nothing else/],
    ["SELECT load + 1 FROM load_rows", /cannot be read as|mixed in one sum|does not take values/],
    ["SELECT 'abc'::INTEGER", /“abc” cannot be read as int/],
  ])("%s", async (sql, sentence) => {
    const { sentence: said } = await saidOf(sql);
    expect(said).toMatch(sentence);
    expect(said).not.toMatch(/Error:|exception/);
  });

  test("keeps the engine's own words beside the sentence, and never as JSON", async () => {
    const { engine } = await saidOf("SELECT load,, kiln_hours FROM load_rows");
    expect(engine).toMatch(/syntax error/);
    expect(engine).not.toMatch(/exception_message/);
  });

  test("says plainly that it was stopped, and that an unknown failure is the engine's", () => {
    expect(askFault("stopped")).toEqual({ sentence: "Stopped. Nothing was changed.", engine: null });
    expect(askFault("Internal Error: something odd")).toEqual({
      sentence: "The engine could not answer this question.",
      engine: "Internal Error: something odd",
    });
  });
});
