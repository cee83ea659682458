// Reads a folder of logs and says what is wrong with it.
//
//   npm run check-logs -- DIR            in plain words, by file
//   npm run check-logs -- DIR --json     for machines
//   npm run check-logs -- DIR --match FILE   how a file of other headings may be read: a columns.toml to look over
//
// Ends with 1 when a row or a file was set aside, with 2 when the folder cannot be read, else with 0.

import { parseArgs } from "node:util";
import { logFolder } from "../src/engine/logFolder.ts";
import type { LogFile } from "../src/tables/logFile.ts";
import type { Problem } from "../src/tables/problem.ts";
import { type Logs, readLogs } from "../src/tables/readLogs.ts";
import { printMatch } from "./checkLogs/printMatch.ts";

const effects: Readonly<Record<Problem["effect"], string>> = {
  "file-set-aside": "FILE SET ASIDE",
  "row-set-aside": "row set aside",
  "value-blanked": "value blanked",
  note: "note",
};

const SETTINGS: Readonly<Record<string, string>> = {
  "house.toml": "settings",
  "columns.toml": "how other columns are read",
};

const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

function problemLines(problem: Problem): string {
  const where = [
    problem.line === null ? null : `line ${problem.line}`,
    problem.column,
    problem.run === null ? null : `run ${problem.run}`,
  ].filter((part) => part !== null);
  const head = `  ${where.length > 0 ? `${where.join(", ")}: ` : ""}${problem.message}`;
  return `${head}\n      ${effects[problem.effect]} (${problem.rule}). ${problem.hint}`;
}

function print({ files, problems }: Logs): void {
  const named = new Set(files.map(({ path }) => path));
  for (const { path, table, rows, rowsSetAside, valuesBlanked } of files) {
    const said = table
      ? [
          count(rows, "row read", "rows read"),
          ...(rowsSetAside > 0 ? [count(rowsSetAside, "row set aside", "rows set aside")] : []),
          ...(valuesBlanked > 0 ? [count(valuesBlanked, "value blanked", "values blanked")] : []),
        ].join(", ")
      : (SETTINGS[path] ?? "not read");
    console.log(`${path}: ${said}`);
    for (const problem of problems) if (problem.file === path) console.log(problemLines(problem));
  }
  for (const problem of problems)
    if (!named.has(problem.file)) console.log(`${problem.file}\n${problemLines(problem)}`);
  const aside = files.reduce((sum, file) => sum + file.rowsSetAside, 0);
  const lost = problems.filter(({ effect }) => effect === "file-set-aside").length;
  console.log(
    `\n${count(files.length, "file", "files")}, ${count(aside, "row", "rows")} set aside, ${count(lost, "file", "files")} set aside, ${count(problems.length, "message", "messages")}.`,
  );
}

function wordsGiven() {
  const options = { json: { type: "boolean" }, match: { type: "string" } } as const;
  try {
    return { ...parseArgs({ options, allowPositionals: true }), complaint: null };
  } catch (error) {
    const complaint = error instanceof Error ? error.message : String(error);
    return { values: {} as { json?: boolean; match?: string }, positionals: [], complaint };
  }
}

const { values: options, positionals, complaint } = wordsGiven();
const [folder] = positionals;
if (folder === undefined || complaint !== null) {
  console.error(`${complaint ?? "Say which folder holds the logs"}: npm run check-logs -- DIR [--json | --match FILE]`);
  process.exit(2);
}

let found: readonly LogFile[] = [];
try {
  found = logFolder(folder);
} catch (error) {
  console.error(`${folder} cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  process.exit(2);
}

if (options.match !== undefined) process.exit(await printMatch(folder, options.match, found));
const logs = await readLogs(found, { now: Date.now() });
if (options.json) console.log(JSON.stringify({ files: logs.files, problems: logs.problems }, null, 2));
else print(logs);
const setAside = logs.problems.some(({ effect }) => effect === "row-set-aside" || effect === "file-set-aside");
process.exitCode = setAside ? 1 : 0;
