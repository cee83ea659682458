import type { DataCell, DataTable } from "./figureSpec.ts";

const textOf = (cell: DataCell): string => (typeof cell === "string" ? cell : cell.text);

/** A printed number as a program writes it; other text keeps its words, with plain blanks. */
function plain(text: string, numeric: boolean): string {
  const blanks = text.replaceAll(/[\u00a0\u202f]/g, (blank) => (numeric && blank === "\u202f" ? "" : " "));
  const number = blanks.replaceAll("\u2212", "-").replace(/^\+/, "");
  return numeric && /^-?\d+(\.\d+)?$/.test(number) ? number : blanks;
}

/** A figure's table as rows of plain text, headings first, with every row that there is: what a file is written from. */
export function plainCells({ columns, rows, every }: DataTable): readonly (readonly string[])[] {
  return [
    columns.map(({ label, unit }) => (unit === undefined ? label : `${label}, ${unit}`)),
    ...(every ?? rows).map((row) => row.map((cell, at) => plain(textOf(cell), columns[at]?.numeric === true))),
  ];
}
