import type { TableName } from "../declarations.ts";
import { fileNames } from "../insideName.ts";
import type { LogFile } from "../logFile.ts";
import type { Problem } from "../problem.ts";
import { readLogs } from "../readLogs.ts";
import { declarationOf } from "../tableDeclarations.ts";
import { type Draft, type StageDraft, stagesTyped } from "./draft.ts";
import { textFile } from "./textFile.ts";
import type { WriteUpTable } from "./writeUpStages.ts";

/** What the rules say of a draft, stage by stage; a problem's `column` is the heading of its box. */
export type DraftProblems = Readonly<Partial<Record<WriteUpTable, readonly Problem[]>>>;

/** Where a draft lies among the logs that it is checked with; it comes after them, as it will in the file. */
const pathOf = (table: TableName): string => `~write-up/${table}.csv`;

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** A time as a browser's field has it, in the log's own form. */
const typedText = (text: string): string => text.trim().replace(/^(\d{4}-\d{2}-\d{2})T(\d{2}:\d{2})/, "$1 $2");

/** Typed numbers know no thousands: a comma is the decimal mark of whoever types so. */
function typedDecimal(values: readonly string[]): "," | "." {
  return values.some((text) => /^\s*[-−]?\d+,\d+\s*$/.test(text)) ? "," : ".";
}

/** One row, typed, as a log of its own; what the row cannot do without is there, if only blank. */
function draftCsv(table: WriteUpTable, run: string, typed: StageDraft): string {
  const names = Object.keys(typed);
  const missing = declarationOf(table).columns.filter(
    (column) =>
      column.needed === true && column.stem !== "run" && !fileNames(column).some(({ name }) => names.includes(name)),
  );
  const headings = ["run", ...names, ...missing.map(({ stem }) => stem)];
  const cells = [run, ...Object.values(typed).map(typedText), ...missing.map(() => "")];
  return `${headings.join(";")}\n${cells.map(quoted).join(";")}\n`;
}

/**
 * Checks what has been typed by the rules that the logs are read with, each value and one stage against the other.
 *
 * @param logs house.toml and whatever logs are at hand; what is wrong with them is not told here
 */
export async function checkDraft(draft: Draft, logs: readonly LogFile[], now: number): Promise<DraftProblems> {
  const typed = stagesTyped(draft);
  const house = logs.find(({ path }) => path === "house.toml");
  const drafts = typed.map((table) => {
    const stage = draft.stages[table] ?? {};
    return { table, decimal: typedDecimal(Object.values(stage)), csv: draftCsv(table, draft.run, stage) };
  });
  const others = logs.filter((file) => file !== house);
  const settings = await withDecimals(house, drafts);
  const files = [settings, ...others, ...drafts.map(({ table, csv }) => textFile(pathOf(table), csv, { table }))];
  const { problems } = await readLogs(files, { now });
  return Object.fromEntries(typed.map((table) => [table, problems.filter(({ file }) => file === pathOf(table))]));
}

/** The house's settings, and how the drafts write their numbers. */
async function withDecimals(
  house: LogFile | undefined,
  drafts: readonly { readonly table: TableName; readonly decimal: string }[],
): Promise<LogFile> {
  let text = "";
  const decoder = new TextDecoder();
  if (house !== undefined) for await (const piece of house.chunks()) text += decoder.decode(piece, { stream: true });
  const declared = drafts.map(
    ({ table, decimal }) =>
      `\n[files.${JSON.stringify(pathOf(table))}]\ndelimiter = ";"\ndecimal = ${JSON.stringify(decimal)}\n`,
  );
  return textFile("house.toml", `${text}\n${declared.join("")}`);
}
