import type { MatchPreviewState } from "../../bodies/ownLogs/foreignState.ts";
import { previewInWords, samePlacesInWords, sayWordsAbove } from "../../findings/foreignSentences.ts";
import { columnLabel } from "../../tables/columnLabels.ts";
import type { Column, TableName } from "../../tables/declarations.ts";
import { headingIn } from "../../tables/describeFormat.ts";
import type { MatchPreview } from "../../tables/foreign/previewMatch.ts";
import type { House } from "../../tables/house.ts";
import { fileNames, insideName } from "../../tables/insideName.ts";
import type { Problem } from "../../tables/problem.ts";
import { declarationOf } from "../../tables/tableDeclarations.ts";
import { printDate, printMoment } from "../../units/instant.ts";
import { printNumber } from "../../units/print.ts";
import type { UnitSuffix } from "../../units/suffix.ts";

const DIGITS = 5;
const BLANK = "–";

type Settings = Pick<House, "units" | "timeZone">;

const suffixIn = (column: Column, { units }: Settings): UnitSuffix | null =>
  fileNames(column).find(({ name }) => name === headingIn(column, units))?.suffix ?? null;

function unitOf(column: Column, settings: Settings): string {
  const label = suffixIn(column, settings)?.label ?? column.unit ?? "";
  if (column.kind !== "number") return "";
  return label.startsWith("%") ? "%" : label;
}

function cellOf(value: number | string | null, column: Column, settings: Settings): string {
  if (value === null) return BLANK;
  if (typeof value === "string") return value;
  if (column.kind === "instant") return printMoment(value, settings.timeZone);
  if (column.kind === "date") return printDate(value, "UTC");
  if (column.kind === "flag") return value === 1 ? "on" : "off";
  const { factor, offset } = suffixIn(column, settings) ?? { factor: 1, offset: 0 };
  const shown = Number(((value - offset) / factor).toPrecision(DIGITS));
  return printNumber(shown, /\.(\d+)$/.exec(String(shown))?.[1]?.length ?? 0);
}

/** Columns that are kept were said to be so; there is no need to be told. */
const isNews = ({ rule }: Problem): boolean => rule !== "unknown-column";

/** The same fault is mostly in every row: the first place of each kind, and how many more there are. */
function faultsOf(problems: readonly Problem[]): readonly string[] {
  const kinds = new Map<string, Problem[]>();
  for (const problem of problems.filter(isNews)) {
    const kind = `${problem.rule} ${problem.column}`;
    kinds.set(kind, [...(kinds.get(kind) ?? []), problem]);
  }
  return [...kinds.values()].map(([first, ...more]) => {
    const { line = null, column = null, message = "", rule = "" } = first ?? {};
    // The words are asked for on the very page, so that nobody need open a columns.toml.
    const hint = rule === "not-a-flag" || rule === "not-a-choice" ? sayWordsAbove : (first?.hint ?? "");
    const place = [line === null ? null : `line ${line}`, column].filter((part) => part !== null).join(", ");
    return samePlacesInWords(`${place}: ${message} ${hint}`, more.length);
  });
}

/** The first rows of a table as somebody who knows the file can compare them with it, in the house's units and time. */
export function previewTable(
  label: string,
  table: TableName,
  { columns: names, rows, rowsRead, rowsSetAside, problems }: MatchPreview,
  settings: Settings,
): MatchPreviewState {
  const columns = declarationOf(table).columns.filter((column) => names.includes(insideName(column)));
  return {
    label,
    lack: null,
    columns: columns.map((column) => ({
      label: columnLabel(table, column),
      unit: unitOf(column, settings),
      isNumber: column.kind === "number" || column.kind === "count",
    })),
    rows: rows.map((row) => columns.map((column, i) => cellOf(row[i] ?? null, column, settings))),
    counts: previewInWords(rowsRead, rowsSetAside),
    problems: faultsOf(problems),
  };
}
