import { type ColumnMatch, type ForeignColumn, type ForeignMatch, MATCH_FILE } from "./foreignMatch.ts";

/** Text as a TOML basic string: JSON's escapes are among TOML's. */
const text = (value: string): string => JSON.stringify(value).replaceAll("\u007f", "\\u007f");
const key = (name: string): string => (/^[A-Za-z0-9_-]+$/.test(name) ? name : text(name));
const column = (from: ForeignColumn): string => (typeof from === "number" ? String(from) : text(from));
const list = (parts: readonly string[]): string => `[${parts.join(", ")}]`;
const words = (entries: ReadonlyMap<string, string>): string =>
  `{ ${[...entries].map(([found, meant]) => `${key(found)} = ${text(meant)}`).join(", ")} }`;

function columnText({ from, times, without, words: meanings }: ColumnMatch): string {
  const [only] = from;
  const place = from.length === 1 && only !== undefined ? column(only) : list(from.map(column));
  const more = [
    times === null ? null : `times = ${times}`,
    without === null ? null : `without = ${text(without)}`,
    meanings.size === 0 ? null : `words = ${words(meanings)}`,
  ].filter((part) => part !== null);
  return more.length === 0 ? place : `{ from = ${place}, ${more.join(", ")} }`;
}

/** One line of `[match.columns]`. */
export const columnLine = (match: ColumnMatch): string => `${key(match.to)} = ${columnText(match)}`;

function matchLines(match: ForeignMatch): readonly string[] {
  const { probeRows } = match;
  const optional = (name: string, value: string | null): readonly string[] =>
    value === null ? [] : [`${name} = ${value}`];
  const quotedOr = (value: string | null): string | null => (value === null ? null : text(value));
  return [
    "[[match]]",
    `files = ${text(match.files)}`,
    `table = ${text(match.table)}`,
    ...optional("encoding", quotedOr(match.encoding)),
    ...optional("delimiter", quotedOr(match.delimiter)),
    ...optional("decimal", quotedOr(match.decimal)),
    ...optional("date_order", quotedOr(match.dateOrder)),
    ...optional("short_years", match.shortYears ? "true" : null),
    ...optional("skip_lines", match.skipLines > 0 ? String(match.skipLines) : null),
    ...optional("skip_after_headings", match.skipAfterHeadings > 0 ? String(match.skipAfterHeadings) : null),
    ...optional("headings", match.headings ? null : "false"),
    ...optional("ignore", match.ignore.length > 0 ? list(match.ignore.map(text)) : null),
    ...(match.fixed.size > 0 ? ["", "[match.fixed]"] : []),
    ...[...match.fixed].map(([to, value]) => `${key(to)} = ${text(value)}`),
    ...(match.columns.length > 0 ? ["", "[match.columns]"] : []),
    ...match.columns.map(columnLine),
    ...(probeRows
      ? [
          "",
          "[match.probe_rows]",
          `probe = ${column(probeRows.probe)}`,
          `value = ${column(probeRows.value)}`,
          ...optional("without", quotedOr(probeRows.without)),
          "",
          "[match.probe_rows.columns]",
          ...[...probeRows.columns].map(([probe, to]) => `${key(probe)} = ${text(to)}`),
        ]
      : []),
  ];
}

/**
 * The text of columns.toml for these matches; `readMatches` reads the same matches from it.
 *
 * @param notes lines to put above each match as comments, by its index: what is left to decide
 */
export function writeMatches(
  matches: readonly ForeignMatch[],
  notes: (match: ForeignMatch, index: number) => readonly string[] = () => [],
): string {
  const head = [
    `# ${MATCH_FILE}: how files that are not in the log format are read. It lies beside the logs.`,
    "# data/README.md says what each line means.",
  ];
  const blocks = matches.flatMap((match, index) => [
    "",
    ...notes(match, index).map((line) => `# ${line.replaceAll(/[\r\n]+/g, " ")}`),
    ...matchLines(match),
  ]);
  return `${[...head, ...blocks].join("\n")}\n`;
}
