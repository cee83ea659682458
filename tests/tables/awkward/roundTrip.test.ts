import { describe, expect, test } from "vitest";
import { joinLogs } from "../../../src/engine/joinLogs.ts";
import { logFolder } from "../../../src/engine/logFolder.ts";
import { openNodeDatabase } from "../../../src/engine/node.ts";
import { publishedTables } from "../../../src/report/publishTables.ts";
import { logsOut, logText } from "../../../src/tables/logsOut.ts";
import type { Logs } from "../../../src/tables/readLogs.ts";
import { readLogs } from "../../../src/tables/readLogs.ts";
import { goodHouse } from "../goodHouse.ts";
import { folderOf, logsOf } from "../logsOf.ts";
import "../../support/matchers.ts";

function expectSame(again: Logs, before: Logs): void {
  expect([...again.tables.keys()].sort()).toEqual([...before.tables.keys()].sort());
  for (const [name, table] of before.tables) {
    const other = again.tables.get(name);
    expect(other?.rowCount).toBe(table.rowCount);
    expect([...(other?.columns.keys() ?? [])]).toEqual([...table.columns.keys()]);
    for (const [column, values] of table.columns) {
      const read = other?.columns.get(column);
      if (!(values instanceof Float64Array)) expect(read).toEqual(values);
      else
        values.forEach((value, row) => {
          if (Number.isNaN(value)) expect(read?.[row]).toBeNaN();
          else expect(read?.[row] as number).toAgreeWithin(value, 1e-15);
        });
    }
    expect(other?.unknownColumns).toEqual(table.unknownColumns);
  }
}

describe("logsOut", () => {
  test("gives logs that read as the same tables, without a problem, for a house with all that the format allows", async () => {
    const before = await logsOf(goodHouse);
    const again = await logsOf({
      "house.toml": goodHouse["house.toml"] as string,
      ...Object.fromEntries(logsOut(before.tables)),
    });
    expect(again.problems.filter(({ effect }) => effect !== "note")).toEqual([]);
    expectSame(again, before);
  });

  test("carries the invented house through to the very rows that the report is made of", async () => {
    const all = logFolder("data/demo").filter(({ path }) => !path.startsWith("readings/"));
    const before = await readLogs(all);
    const house = all.filter(({ path }) => path === "house.toml");
    const again = await readLogs([...house, ...folderOf(Object.fromEntries(logsOut(before.tables)))]);
    expectSame(again, before);
    const rows = async (logs: Logs): Promise<unknown> => {
      const database = await openNodeDatabase(publishedTables(logs.tables));
      try {
        await joinLogs(database);
        const said = (text: string): Promise<unknown> => database.query(text);
        return [await said("SELECT * FROM run_rows ORDER BY ALL"), await said("SELECT * FROM load_rows ORDER BY ALL")];
      } finally {
        await database.close();
      }
    };
    expect(JSON.stringify(await rows(again))).toBe(JSON.stringify(await rows(before)));
  });

  test("puts the sides of a value that holds commas, quotation marks and line breaks in quotation marks", async () => {
    const files = { "customers.csv": 'customer,share,name\nC1,yes,"Brewer, ""old"" & son\nCellar"\n' };
    const table = (await logsOf(files)).tables.get("customers");
    if (!table) throw new RangeError("no customers were read");
    expect(logText(table)).toBe('customer,name,share\nC1,"Brewer, ""old"" & son\nCellar",yes\n');
  });
});
