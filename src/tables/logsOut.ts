import type { UnitSuffix } from "../units/suffix.ts";
import type { Column, TableName } from "./declarations.ts";
import { templatePath } from "./describeFormat.ts";
import { fileNames, insideName } from "./insideName.ts";
import type { ColumnValues, Table } from "./table.ts";
import { declarationOf } from "./tableDeclarations.ts";

/** Digits that carry a value through metres and centimetres and back without leaving a trace of the arithmetic. */
const DIGITS = 15;

const quoted = (text: string): string => (/[",\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

function numberIn(value: number, suffix: UnitSuffix | null): string {
  if (!suffix || (suffix.factor === 1 && suffix.offset === 0)) return String(value);
  return String(Number(((value - suffix.offset) / suffix.factor).toPrecision(DIGITS)));
}

function momentText(milliseconds: number): string {
  const text = new Date(milliseconds).toISOString();
  return `${text.slice(0, 10)} ${text.slice(11, text.endsWith(":00.000Z") ? 16 : text.endsWith(".000Z") ? 19 : 23)}`;
}

interface Written {
  readonly heading: string;
  text(row: number): string;
}

/** One column as the format writes it: the first of its names, moments under the one that says UTC. */
function writtenColumn(column: Column, values: ColumnValues): Written {
  const names = fileNames(column);
  const name = column.kind === "instant" ? names.find(({ utc }) => utc) : names[0];
  return {
    heading: name?.name ?? column.stem,
    text(row) {
      const value = values[row];
      if (value === null || value === undefined || Number.isNaN(value)) return "";
      if (typeof value === "string") return quoted(value);
      if (column.kind === "instant") return momentText(value);
      if (column.kind === "date") return new Date(value).toISOString().slice(0, 10);
      return numberIn(value, name?.suffix ?? null);
    },
  };
}

/**
 * A table as a log of the format again: what was read and could be used, in metric units and UTC, with the columns that the
 * format does not know behind those that it does. Read again, it gives the same table and no problem that was not there.
 */
export function logText(table: Table): string {
  const known = declarationOf(table.name).columns.flatMap((column) => {
    const values = table.columns.get(insideName(column));
    return values ? [writtenColumn(column, values)] : [];
  });
  const unknown = [...table.unknownColumns].map(
    ([heading, values]): Written => ({ heading: quoted(heading), text: (row) => quoted(values[row] ?? "") }),
  );
  const columns = [...known, ...unknown];
  const lines = [columns.map(({ heading }) => heading).join(",")];
  for (let row = 0; row < table.rowCount; row += 1) lines.push(columns.map(({ text }) => text(row)).join(","));
  return `${lines.join("\n")}\n`;
}

/** Every table as a log of the format, by its path in a logs folder: what to keep where the house's own files are a muddle. */
export function logsOut(tables: ReadonlyMap<TableName, Table>): ReadonlyMap<string, string> {
  return new Map([...tables].map(([name, table]) => [templatePath(declarationOf(name)), logText(table)]));
}
