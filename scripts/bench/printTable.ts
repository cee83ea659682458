/** Headings of columns of words. */
const WORDS: readonly string[] = ["unit", "why", "instead"];

/**
 * A table as plain lines: the first column and columns of words (`unit`, `why`, `instead`) to the left, every other to the right.
 *
 * @throws RangeError for a row with another number of cells than there are headings
 */
export function tableLines(headings: readonly string[], rows: readonly (readonly string[])[]): string[] {
  const short = rows.find((row) => row.length !== headings.length);
  if (short) throw new RangeError(`a row has ${short.length} cells under ${headings.length} headings: ${short[0]}`);
  const widths = headings.map((heading, column) =>
    Math.max(heading.length, ...rows.map((row) => (row[column] as string).length)),
  );
  const line = (cells: readonly string[]): string =>
    cells
      .map((cell, column) => {
        const width = widths[column] as number;
        return column === 0 || WORDS.includes(headings[column] as string) ? cell.padEnd(width) : cell.padStart(width);
      })
      .join("  ")
      .trimEnd();
  return [line(headings), ...rows.map(line)].map((text) => `  ${text}`);
}

/** Prints a heading, what was measured in a sentence or two, and the table. */
export function printTable(
  title: string,
  about: readonly string[],
  headings: readonly string[],
  rows: readonly (readonly string[])[],
): void {
  console.log(`\n${title}`);
  for (const sentence of about) console.log(`  ${sentence}`);
  console.log("");
  for (const line of tableLines(headings, rows)) console.log(line);
}
