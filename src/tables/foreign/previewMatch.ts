import type { House } from "../house.ts";
import { insideName } from "../insideName.ts";
import { localTimeOf } from "../localTime.ts";
import type { Problem } from "../problem.ts";
import { ProblemLog } from "../problemLog.ts";
import { readTableFile } from "../readTableFile.ts";
import { declarationOf } from "../tableDeclarations.ts";
import type { ForeignMatch } from "./foreignMatch.ts";
import { withMatches } from "./withMatches.ts";

/** The first rows of a foreign file as a match reads them. */
export interface MatchPreview {
  /** Columns as kept inside, in SI and UTC, in the format's order. */
  readonly columns: readonly string[];
  /** Values of the first rows: numbers and moments (milliseconds UTC) as numbers, null where blank. */
  readonly rows: readonly (readonly (number | string | null)[])[];
  /** Rows that could be read of those looked at. */
  readonly rowsRead: number;
  readonly rowsSetAside: number;
  readonly problems: readonly Problem[];
}

/**
 * What a match makes of a file's beginning, by the reader that will read the whole of it: show this before the match is
 * saved. Matches of other tables for the same file are handed in too, so that their columns are not called unknown.
 *
 * @param bytes the beginning of the file, cut after a line's end where it is not the whole
 * @param shown how many rows to hand back
 */
export async function previewMatch(
  path: string,
  bytes: Uint8Array,
  match: ForeignMatch,
  house: House,
  others: readonly ForeignMatch[] = [],
  shown = 8,
): Promise<MatchPreview> {
  const log = new ProblemLog();
  const all = [match, ...others].map((one) => ({ ...one, files: "*" }));
  const [file] = withMatches(
    [
      {
        path: path.slice(path.lastIndexOf("/") + 1),
        async *chunks() {
          yield bytes;
        },
      },
    ],
    all,
  );
  if (!file) throw new RangeError("previewMatch requires a file");
  const declaration = declarationOf(match.table);
  const found = await readTableFile(file, declaration, { house, localTime: localTimeOf(house.timeZone), log });
  const names = declaration.columns.map(insideName).filter((name) => found?.columns.has(name));
  const rows = Array.from({ length: Math.min(shown, found?.rowCount ?? 0) }, (_, row) =>
    names.map((name) => {
      const value = found?.columns.get(name)?.[row] ?? null;
      return Number.isNaN(value) ? null : value;
    }),
  );
  const { rowsSetAside } = log.countsOf(file.path);
  return { columns: names, rows, rowsRead: found?.rowCount ?? 0, rowsSetAside, problems: log.list() };
}
