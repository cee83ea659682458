import { parse, TomlError } from "smol-toml";
import type { TableDeclaration, TableName } from "../declarations.ts";
import { isEncoding } from "../decode.ts";
import { fileNames, insideName } from "../insideName.ts";
import type { Problem } from "../problem.ts";
import { tableDeclarations } from "../tableDeclarations.ts";
import { isTomlTable, TomlReader } from "../tomlValues.ts";
import { type ColumnMatch, type ForeignColumn, type ForeignMatch, MATCH_FILE, type ProbeRows } from "./foreignMatch.ts";

export interface MatchesRead {
  readonly matches: readonly ForeignMatch[];
  readonly problems: readonly Problem[];
}

const LONGEST_PREAMBLE = 1000;

function asColumn(value: unknown): ForeignColumn | null {
  const place = typeof value === "bigint" ? Number(value) : value;
  if (typeof place === "number" && Number.isInteger(place) && place >= 1) return place;
  return typeof value === "string" && value.trim() !== "" ? value.trim() : null;
}

function asColumns(value: unknown): readonly ForeignColumn[] | null {
  const found = (Array.isArray(value) ? value : [value]).map(asColumn);
  return found.length > 0 && found.every((column) => column !== null) ? (found as ForeignColumn[]) : null;
}

function wordsOf(value: unknown): ReadonlyMap<string, string> | null {
  if (value === undefined) return new Map();
  if (!isTomlTable(value)) return null;
  const entries = Object.entries(value);
  return entries.every(([, meant]) => typeof meant === "string") ? new Map(entries as [string, string][]) : null;
}

const wanted = 'Write a heading, "Air in", its place from 1, or a list of both parts of a time, ["Date", "Time"].';

/** The names under which a table takes values, so that a match to any other name can be refused. */
class Targets {
  private readonly declaration: TableDeclaration;
  private readonly taken = new Set<string>();

  constructor(declaration: TableDeclaration) {
    this.declaration = declaration;
  }

  /** True, and then marked as taken, for a column of the table that nothing else in the match fills. */
  take(reader: TomlReader, to: string, key = to): boolean {
    const column = this.declaration.columns.find((candidate) => fileNames(candidate).some(({ name }) => name === to));
    if (!column) {
      const near = this.declaration.columns.find(({ stem }) => stem === to);
      const hint = near
        ? `Put its unit in the name: ${fileNames(near)
            .map(({ name }) => name)
            .join(" or ")}.`
        : "See data/README.md for the columns of each table.";
      reader.refuse(key, `The table ${this.declaration.name} has no column called ${to}.`, hint);
      return false;
    }
    if (this.taken.has(insideName(column))) {
      reader.refuse(key, `${insideName(column)} is filled twice in one match; this one is left out.`, "Keep one.");
      return false;
    }
    this.taken.add(insideName(column));
    return true;
  }
}

function readColumns(reader: TomlReader, targets: Targets): readonly ColumnMatch[] {
  const found: ColumnMatch[] = [];
  for (const to of reader.keys()) {
    const value = reader.raw(to);
    const detailed = isTomlTable(value);
    const from = asColumns(detailed ? value.from : value);
    if (!from) {
      reader.refuse(to, `It is not said where ${to} stands in the file.`, wanted);
      continue;
    }
    let times: number | null = null;
    let without: string | null = null;
    let words: ReadonlyMap<string, string> = new Map();
    if (detailed) {
      const inner = reader.inner(to);
      inner.raw("from");
      times = inner.number("times", -1e9, 1e9);
      if (times === 0) inner.refuse("times", "A factor of 0 would make every value 0.", "Leave it out.");
      if (times === 0) times = null;
      without = inner.text("without");
      const read = wordsOf(inner.raw("words"));
      if (read) words = read;
      else inner.refuse("words", "words is a list of the file's words and what they mean.", 'words = { on = "1" }');
      inner.finish();
    }
    if (targets.take(reader, to)) found.push({ to, from, times, without, words });
  }
  return found;
}

function readProbeRows(reader: TomlReader, targets: Targets): ProbeRows | null {
  if (reader.keys().length === 0) return null;
  const probe = asColumn(reader.raw("probe"));
  const value = asColumn(reader.raw("value"));
  const without = reader.text("without");
  const inner = reader.inner("columns");
  const columns = new Map<string, string>();
  for (const name of inner.keys()) {
    const to = inner.text(name);
    if (to !== null && targets.take(inner, to, name)) columns.set(name, to);
  }
  reader.finish();
  if (probe === null || value === null) {
    reader.refuse(probe === null ? "probe" : "value", "probe_rows names two columns, probe and value.", wanted);
    return null;
  }
  return { probe, value, columns, without };
}

function readMatch(reader: TomlReader): ForeignMatch | null {
  const files = reader.text("files");
  const name = reader.choice(
    "table",
    tableDeclarations.map((declaration) => declaration.name),
  );
  const encoding = reader.text("encoding");
  const delimiter = reader.raw("delimiter");
  const ignore = reader.raw("ignore") ?? [];
  if (files === null) reader.refuse("files", "A match does not say which files it is for.", 'files = "logger-*.csv"');
  if (name === null) reader.refuse("table", "A match does not say which table it makes.", 'table = "readings"');
  const declaration = tableDeclarations.find((candidate) => candidate.name === name);
  const targets = declaration ? new Targets(declaration) : null;
  const oneSign = typeof delimiter === "string" && /^[^"\r\n\w.\u2212-]$/.test(delimiter);
  if (delimiter !== undefined && !oneSign)
    reader.refuse("delimiter", "A delimiter is one character.", 'Usual ones: ",", ";", "\\t"');
  if (encoding !== null && !isEncoding(encoding))
    reader.refuse("encoding", `There is no encoding called ${encoding}.`, 'Usual: "utf-8", "windows-1252", "utf-16le"');
  const ignored = Array.isArray(ignore) && ignore.every((item) => typeof item === "string");
  if (!ignored) reader.refuse("ignore", "ignore is a list of headings.", 'ignore = ["Operator"]');
  const fixed = new Map<string, string>();
  const fixedReader = reader.inner("fixed");
  for (const to of fixedReader.keys()) {
    const text = fixedReader.text(to);
    if (text !== null && targets?.take(fixedReader, to)) fixed.set(to, text);
  }
  const columns = targets ? readColumns(reader.inner("columns"), targets) : [];
  const probeRows = targets ? readProbeRows(reader.inner("probe_rows"), targets) : null;
  const match: ForeignMatch = {
    files: files ?? "",
    table: (name ?? "readings") as TableName,
    encoding: encoding !== null && isEncoding(encoding) ? encoding : null,
    delimiter: oneSign ? (delimiter as string) : null,
    decimal: reader.choice("decimal", [".", ","]),
    dateOrder: reader.choice("date_order", ["ymd", "dmy", "mdy"]),
    shortYears: reader.flag("short_years") ?? false,
    skipLines: Math.floor(reader.number("skip_lines", 0, LONGEST_PREAMBLE) ?? 0),
    skipAfterHeadings: Math.floor(reader.number("skip_after_headings", 0, LONGEST_PREAMBLE) ?? 0),
    headings: reader.flag("headings") ?? true,
    columns,
    fixed,
    probeRows,
    ignore: ignored ? (ignore as string[]) : [],
  };
  reader.finish();
  return files === null || name === null ? null : match;
}

/**
 * The matches of a house from the text of columns.toml. Never throws: what cannot be used is a Problem, and that part of
 * the match is left out.
 */
export function readMatches(source: string): MatchesRead {
  const problems: Problem[] = [];
  let parsed: Record<string, unknown>;
  try {
    parsed = parse(source);
  } catch (error) {
    const why = error instanceof Error ? (error.message.split("\n")[0] ?? "") : String(error);
    return {
      matches: [],
      problems: [
        {
          file: MATCH_FILE,
          line: error instanceof TomlError ? error.line : null,
          column: null,
          value: null,
          rule: "match-unreadable",
          message: `${MATCH_FILE} cannot be read: ${why}. No foreign file is read.`,
          hint: "Mend that line; headings stand in quotation marks.",
          effect: "file-set-aside",
          run: null,
        },
      ],
    };
  }
  const top = new TomlReader(parsed, "", source, problems, MATCH_FILE);
  const matches = top.rows("match").flatMap((reader) => readMatch(reader) ?? []);
  top.finish();
  return { matches, problems };
}
