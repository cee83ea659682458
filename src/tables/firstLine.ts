import type { CellFault } from "./cellFault.ts";

const DELIMITERS = [",", ";", "\t"] as const;

export interface FirstLine {
  readonly delimiter: string;
  /** Characters to leave out before the rows begin: a spreadsheet's `sep=;` line. */
  readonly skip: number;
  readonly fault: CellFault | null;
}

/** The first line with anything on it, where it is complete; null where more text is needed. */
function firstFullLine(text: string, final: boolean): string | null {
  const found = /^[\r\n]*([^\r\n]+)([\r\n]?)/.exec(text);
  if (!found) return final ? "" : null;
  return final || found[2] !== "" ? (found[1] as string) : null;
}

const withoutQuoted = (line: string): string => line.replaceAll(/"[^"]*"/g, "");

/**
 * The delimiter of a whole file: as declared, as its `sep=` line says, else the one of comma, semicolon and tab that
 * stands between its headings. Null where the first line is not complete yet.
 */
export function recogniseDelimiter(text: string, declared: string | null, final: boolean): FirstLine | null {
  const line = firstFullLine(text, final);
  if (line === null) return null;
  const separator = /^"?sep=(.)"?$/i.exec(line.trimEnd()) ?? /^sep=(\t)$/i.exec(line);
  if (separator) {
    const start = text.indexOf(line) + line.length;
    if (!final && text.length <= start + 1) return null;
    const skip = start + (/^\r\n/.test(text.slice(start)) ? 2 : 1);
    return { delimiter: declared ?? (separator[1] as string), skip, fault: null };
  }
  if (declared !== null) return { delimiter: declared, skip: 0, fault: null };
  const bare = withoutQuoted(line);
  const found = DELIMITERS.filter((delimiter) => bare.includes(delimiter));
  if (found.length > 1) {
    const names = { ",": "commas", ";": "semicolons", "\t": "tabs" } as const;
    return {
      delimiter: found[0] as string,
      skip: 0,
      fault: {
        rule: "delimiter-unclear",
        message: `The first line holds ${found.map((delimiter) => names[delimiter]).join(" and ")}, so that the delimiter is not clear.`,
        hint: 'Declare it in house.toml: [files."name.csv"] delimiter = ";"',
      },
    };
  }
  return { delimiter: found[0] ?? ",", skip: 0, fault: null };
}
