import type { UnitSystem } from "../units/unitSystem.ts";
import type { Column, TableDeclaration } from "./declarations.ts";
import { fileNames } from "./insideName.ts";
import { ruleList } from "./ruleList.ts";
import { tableDeclarations } from "./tableDeclarations.ts";

const tidy = (value: number): string => String(Number(value.toPrecision(3)));

function rangeOf({ range, family }: Column): string {
  if (!range) return "";
  if (!family) return `${range[0]} to ${range[1]}`;
  return family.suffixes
    .map(
      ({ factor, offset, label }) =>
        `${tidy((range[0] - offset) / factor)} to ${tidy((range[1] - offset) / factor)} ${label}`,
    )
    .join(" or ");
}

function unitOf({ kind, unit, family, choices }: Column): string {
  if (family) return family.suffixes.map(({ label }) => label).join(" or ");
  if (choices) return choices.join(", ");
  if (kind === "instant") return "time";
  if (kind === "date") return "date";
  return unit ?? "text";
}

/** A Markdown table with its cells padded to one width a column, as the formatter wants it. */
function markdownTable(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, column) => Math.max(3, ...rows.map((cells) => cells[column]?.length ?? 0)));
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell, i) => cell.padEnd(widths[i] ?? 0)).join(" | ")} |`;
  const rule = widths.map((width) => "-".repeat(width));
  return [rows[0] ?? [], rule, ...rows.slice(1)].map(line).join("\n");
}

function row(column: Column): readonly string[] {
  const names = fileNames(column).map(({ name }) => `\`${name}\``);
  const name = `${names.join(" or ")}${column.needed ? " \\*" : ""}`;
  return [name, unitOf(column), rangeOf(column), column.meaning];
}

function tableText({ place, meaning, columns }: TableDeclaration): string {
  return [
    `### ${place}`,
    "",
    meaning,
    "",
    markdownTable([["column", "unit or words", "range", "meaning"], ...columns.map(row)]),
  ].join("\n");
}

/** Every table with every column, unit, range and meaning, as Markdown for data/README.md. */
export function describeTables(): string {
  return tableDeclarations.map(tableText).join("\n\n");
}

/** Every rule with its effect, as Markdown for data/README.md. */
export function describeRules(): string {
  const head = ["rule", "what becomes of it", "what it looks for"];
  return markdownTable([head, ...ruleList.map(({ rule, effect, meaning }) => [`\`${rule}\``, effect, meaning])]);
}

/** Where the empty log of a table lies among the templates; folders hold one file to begin with. */
export function templatePath({ place }: TableDeclaration): string {
  const firstFile: Readonly<Record<string, string>> = { "readings/": "kiln-logger.csv", "weather/": "intake-air.csv" };
  return `${place}${firstFile[place] ?? ""}`;
}

const US_SUFFIXES: ReadonlySet<string | undefined> = new Set(["lb", "f", "in", "srm", "lintner"]);

/** The name under which a house that works in `units` writes a column. */
export function headingIn(column: Column, units: UnitSystem): string {
  const names = fileNames(column);
  const us = units === "us" ? names.find(({ suffix }) => US_SUFFIXES.has(suffix?.suffix)) : undefined;
  return (us ?? names[0])?.name ?? column.stem;
}

/** The heading line of an empty log. */
export function templateCsv({ columns }: TableDeclaration, units: UnitSystem = "metric"): string {
  return `${columns.map((column) => headingIn(column, units)).join(",")}\n`;
}
