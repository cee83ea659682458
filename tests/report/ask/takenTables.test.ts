import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { DEMO_LOGS } from "../../../scripts/buildSite.ts";
import type { LoadableDatabase } from "../../../src/engine/database.ts";
import { logFolder } from "../../../src/engine/logFolder.ts";
import { openNodeDatabase } from "../../../src/engine/node.ts";
import { takenLogs, takenRuns } from "../../../src/report/ask/takenTables.ts";
import { publishedTables } from "../../../src/report/publishTables.ts";
import type { CsvTable } from "../../../src/tables/csvTable.ts";
import type { LogFile } from "../../../src/tables/logFile.ts";
import { logText } from "../../../src/tables/logsOut.ts";
import { readLogs } from "../../../src/tables/readLogs.ts";
import { tableOfAnswer } from "../../../src/tables/tableOfAnswer.ts";
import { textFile } from "../../../src/tables/writeUp/textFile.ts";
import { openDemoDatabase } from "../../support/openDemoDatabase.ts";

let demo: LoadableDatabase;
let back: LoadableDatabase;
let problems: readonly { readonly effect: string; readonly message: string }[];

/** House.toml and the logs as they are taken away. */
async function* takenFolder(database: LoadableDatabase): AsyncGenerator<LogFile> {
  for (const file of logFolder(DEMO_LOGS)) if (file.path === "house.toml") yield file;
  for (const { name, path, sql } of takenLogs) {
    const answer = await database.ask(sql, { mostRows: Number.POSITIVE_INFINITY });
    if (answer.rows.length > 0) yield textFile(path, logText(tableOfAnswer(name, answer)));
  }
}

beforeAll(async () => {
  demo = await openDemoDatabase();
  const read = await readLogs(takenFolder(demo));
  problems = read.problems;
  const tables: readonly CsvTable[] = publishedTables(read.tables);
  back = await openNodeDatabase(tables);
}, 120_000);
afterAll(() => Promise.all([demo.close(), back.close()]));

describe("logs taken away and read again", () => {
  test.each(takenLogs)("$path holds the same rows, value for value", async ({ sql }) => {
    const [was, is] = await Promise.all(
      [demo, back].map((database) => database.ask(sql, { mostRows: Number.POSITIVE_INFINITY })),
    );
    expect(is).toEqual(was);
  });

  test("lose no row and blank no value", () => {
    const lost = problems.filter(({ effect }) => effect !== "note").map(({ message }) => message);
    expect(lost).toEqual([]);
  });
});

describe("takenRuns", () => {
  test("gives one row a batch", async () => {
    const { rows, columns } = await demo.ask(takenRuns, { mostRows: Number.POSITIVE_INFINITY });
    const runs = await demo.query<{ n: number }>("SELECT count(DISTINCT run) AS n FROM run_rows");
    expect(columns[0]?.name).toBe("run");
    expect(rows).toHaveLength(runs[0]?.n ?? -1);
    expect(new Set(rows.map(([run]) => run)).size).toBe(rows.length);
  });
});
