import { CsvReader, fieldText } from "./csvReader.ts";
import type { TableName } from "./declarations.ts";
import { decoded, UndecodableText } from "./decode.ts";
import { tableOfFile } from "./fileOf.ts";
import { recogniseDelimiter } from "./firstLine.ts";
import { mapHeader } from "./headerMap.ts";
import type { LogFile } from "./logFile.ts";
import { tableDeclarations } from "./tableDeclarations.ts";

/** Headings are plain letters, so that any text in which a letter is a byte shows them; marks of other texts go before. */
const ENCODING_OF_HEADINGS = "windows-1252";

const LONGEST_FIRST_LINE = 100_000;

/**
 * The table whose file has these headings: the one that lacks no needed column and knows most of them.
 *
 * @param headings as they stand in the file
 * @returns null where no table fits, or several do equally well
 */
export function recogniseTable(headings: readonly string[]): TableName | null {
  const known = tableDeclarations.flatMap((declaration) => {
    const { mapped, faults } = mapHeader(headings, declaration);
    const unreadable = faults.some(({ effect }) => effect === "file-set-aside");
    return unreadable ? [] : [{ name: declaration.name, columns: mapped.length }];
  });
  const most = Math.max(0, ...known.map(({ columns }) => columns));
  const best = known.filter(({ columns }) => columns === most);
  return best.length === 1 ? (best[0]?.name ?? null) : null;
}

/** The headings of a file: its first line with anything on it. Empty where it is no text or its delimiter is not clear. */
async function headingsOf(file: LogFile): Promise<readonly string[]> {
  let text = "";
  try {
    for await (const piece of decoded(file.chunks(), ENCODING_OF_HEADINGS)) {
      text += piece;
      if (/[^\s].*[\r\n]/.test(text) || text.length > LONGEST_FIRST_LINE) break;
    }
  } catch (error) {
    if (error instanceof UndecodableText) return [];
    throw error;
  }
  const first = recogniseDelimiter(text, null, true);
  if (first === null || first.fault !== null) return [];
  let headings: readonly string[] = [];
  const csv = new CsvReader(
    first.delimiter,
    (record) => {
      const fields = Array.from({ length: record.count }, (_, index) => fieldText(record, index).trim());
      if (headings.length === 0 && fields.some((field) => field !== "")) headings = fields;
    },
    1,
  );
  csv.push(text.slice(first.skip));
  csv.end();
  return headings;
}

/** What a file's headings say of it. */
export interface Recognised {
  /** The table that it is read as; null for a file that is no log, or one that the format does not know. */
  readonly table: TableName | null;
  /** Whether the headings are those of that table; else its name alone speaks for it. */
  readonly byHeadings: boolean;
}

/** The table that a file holds, by its headings and not by its name; where several tables would do, the name decides. */
export async function recogniseFile(file: LogFile): Promise<Recognised> {
  const headings = await headingsOf(file);
  const named = tableOfFile(file.path);
  const declaration = tableDeclarations.find(({ name }) => name === named);
  const fits =
    declaration !== undefined &&
    !mapHeader(headings, declaration).faults.some(({ effect }) => effect === "file-set-aside");
  if (fits) return { table: named, byHeadings: true };
  const recognised = recogniseTable(headings);
  return { table: recognised ?? named, byHeadings: recognised !== null };
}

/** The table of {@link recogniseFile} alone. */
export const tableInFile = async (file: LogFile): Promise<TableName | null> => (await recogniseFile(file)).table;
