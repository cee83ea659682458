import type { Column } from "../../tables/declarations.ts";
import { insideName } from "../../tables/insideName.ts";
import { tableDeclarations } from "../../tables/tableDeclarations.ts";
import { publishedColumns } from "../publishTables.ts";
import { joinedTables } from "./joinedTables.ts";

export interface AskColumn {
  /** As it is written in a question: in quotation marks where SQL has the word for itself. */
  readonly name: string;
  readonly unit: string;
  readonly meaning: string;
}

export interface AskTable {
  readonly name: string;
  readonly meaning: string;
  readonly columns: readonly AskColumn[];
}

/** Names of ours that are words of SQL and so must stand in quotation marks. */
const WORDS_OF_SQL = new Set(["at", "on", "order"]);

export const writtenName = (name: string): string => (WORDS_OF_SQL.has(name) ? `"${name}"` : name);

/** What a name ends with, and the unit that it says; the first that fits. */
const UNIT_OF_ENDING: readonly (readonly [RegExp, string])[] = [
  [/_rh_pct$/, "% relative humidity"],
  [/_protein_dry_pct$/, "% of dry mass"],
  [/_yield_pct$/, "%"],
  [/(chitted|overgrown)_pct$/, "% of kernels"],
  [/_pct$/, "% of mass"],
  [/_kg$/, "kg"],
  [/_(c|celsius)$/, "°C"],
  [/_kelvin$/, "°C of difference"],
  [/_m$/, "m"],
  [/_hours$/, "h"],
  [/minutes/, "min"],
  [/_kwh$/, "kWh"],
  [/_at$/, "time, UTC"],
  [/crop_year$/, "year"],
  [/^acrospire_counted$/, "kernels"],
  [/^(acrospire_mean|.*duty|.*share.*)$/, "share of 1"],
  [/^(tanks|beds|loads|turns|readings)$/, "count"],
];

const unitByEnding = (name: string): string => UNIT_OF_ENDING.find(([ending]) => ending.test(name))?.[1] ?? "text";

/** A log column's unit inside, whatever suffix its file used. */
function unitInside(column: Column): string {
  const { family, kind, unit, choices } = column;
  if (family)
    return family.inside === "m" ? "m" : (family.suffixes.find(({ factor }) => factor === 1)?.label ?? family.inside);
  if (choices) return choices.join(", ");
  if (kind === "instant") return "time, UTC";
  if (kind === "date") return "date";
  return unit ?? (kind === "number" ? "number" : "text");
}

/**
 * Every table that a question may name, with units: the joined ones, then the logs as they were read, in the columns that
 * go out with the site.
 */
export function askSchema(): readonly AskTable[] {
  const joined = joinedTables.map(({ name, meaning, columns }) => ({
    name,
    meaning,
    columns: Object.entries(columns).map(([column, says]) => ({
      name: writtenName(column),
      unit: unitByEnding(column),
      meaning: says,
    })),
  }));
  const logs = tableDeclarations.flatMap(({ name, meaning, columns }) => {
    const published = publishedColumns[name];
    if (published === undefined) return [];
    const shown = columns.filter((column) => published.includes(insideName(column)));
    return [
      {
        name: writtenName(name.replaceAll("-", "_")),
        meaning,
        columns: shown.map((column) => ({
          name: writtenName(insideName(column)),
          unit: unitInside(column),
          meaning: column.meaning,
        })),
      },
    ];
  });
  return [...joined, ...logs];
}
