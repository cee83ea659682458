import type { UnitSuffix } from "../units/suffix.ts";
import type { CellFault } from "./cellFault.ts";
import type { Column, TableDeclaration } from "./declarations.ts";
import type { ColumnMatch } from "./foreign/foreignMatch.ts";
import { fileNames, insideName } from "./insideName.ts";
import { quotedValue } from "./problemLog.ts";

/** A column of a file that the format knows. */
export interface MappedColumn {
  /** Where it stands in the file's rows, from 0. */
  readonly index: number;
  /** Its heading in the file. */
  readonly heading: string;
  readonly inside: string;
  readonly column: Column;
  readonly suffix: UnitSuffix | null;
  readonly utc: boolean;
  /** How a columns.toml has it, of a file with headings of its own. */
  readonly foreign?: ColumnMatch;
}

export interface HeaderFault extends CellFault {
  readonly heading: string | null;
  readonly effect: "file-set-aside" | "value-blanked" | "note";
  /** Positions whose values are not read because of it. */
  readonly indexes: readonly number[];
}

export interface HeaderMap {
  readonly mapped: readonly MappedColumn[];
  /** Headings that the format does not know, each once: a second of the same name is told apart by its place. */
  readonly unknown: readonly { readonly index: number; readonly heading: string }[];
  readonly faults: readonly HeaderFault[];
  /** Fields that a row may have: up to the last heading that is not blank. */
  readonly width: number;
}

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, "_")
    .replaceAll(/^_|_$/g, "");

function hintForUnknown(heading: string, columns: readonly Column[]): string {
  for (const column of columns) {
    const names = fileNames(column).map(({ name }) => name);
    const near = names.find((name) => name === plain(heading));
    if (near) return `If this is ${near}, write its heading exactly so.`;
    if (column.family && column.stem === plain(heading))
      return `If this is ${column.stem}, put its unit in the heading: ${names.join(" or ")}.`;
  }
  return "It is kept with the run and used nowhere else. See data/README.md for the columns that are read.";
}

/** Matches a file's headings with the declared columns. Upper and lower case are the same; spelling is not guessed at. */
export function mapHeader(headings: readonly string[], declaration: TableDeclaration): HeaderMap {
  const faults: HeaderFault[] = [];
  const mapped: MappedColumn[] = [];
  const taken = new Set<number>();
  const lower = headings.map((heading) => heading.toLowerCase());
  for (const column of declaration.columns) {
    const names = fileNames(column);
    const found = lower.flatMap((heading, index) => {
      const name = names.find((candidate) => candidate.name === heading);
      return name
        ? [
            {
              index,
              heading: headings[index] as string,
              inside: insideName(column),
              column,
              suffix: name.suffix,
              utc: name.utc,
            },
          ]
        : [];
    });
    for (const { index } of found) taken.add(index);
    const [only, ...more] = found;
    if (only && more.length === 0) mapped.push(only);
    else if (only) {
      const said = found.map(({ heading, index }) => `${heading} (column ${index + 1})`).join(" and ");
      faults.push({
        rule: "duplicate-heading",
        message: `${said} are the same column twice${column.needed ? "" : ", and neither is read"}.`,
        hint: "Keep one of them.",
        heading: only.heading,
        effect: column.needed ? "file-set-aside" : "value-blanked",
        indexes: found.map(({ index }) => index),
      });
    } else if (column.needed) {
      faults.push({
        rule: "needed-column-missing",
        message: `There is no column ${names.map(({ name }) => name).join(" or ")}, and no row of ${declaration.place} can be read without it.`,
        hint: `The first line of the file must name its columns. Headings found: ${quotedValue(headings.filter((heading) => heading !== "").join(", ")) || "none"}.`,
        heading: null,
        effect: "file-set-aside",
        indexes: [],
      });
    }
  }
  const unknown: { index: number; heading: string }[] = [];
  headings.forEach((heading, index) => {
    if (taken.has(index) || heading === "") return;
    const again = unknown.some((other) => other.heading === heading);
    unknown.push({ index, heading: again ? `${heading} (column ${index + 1})` : heading });
    faults.push({
      rule: "unknown-column",
      message: `The format has no column called ${quotedValue(heading)}.`,
      hint: hintForUnknown(heading, declaration.columns),
      heading,
      effect: "note",
      indexes: [],
    });
  });
  const width = headings.findLastIndex((heading) => heading !== "") + 1;
  return { mapped, unknown, faults, width };
}
