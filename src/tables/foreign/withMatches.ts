import type { TableName } from "../declarations.ts";
import { tableOfFile } from "../fileOf.ts";
import type { LogFile } from "../logFile.ts";
import type { Problem } from "../problem.ts";
import { type ForeignMatch, MATCH_FILE, meansFile } from "./foreignMatch.ts";

/** The table that a file makes: as its match says, else as its headings were recognised, else by its place in the logs folder. */
export function tableOf({ path, foreign, table }: LogFile): TableName | null {
  return foreign?.match.table ?? table ?? tableOfFile(path);
}

const namesOf = ({ columns, probeRows, ignore }: ForeignMatch): readonly string[] => [
  ...columns.flatMap(({ from }) => from.map(String)),
  ...(probeRows ? [...probeRows.columns.keys(), String(probeRows.probe), String(probeRows.value)] : []),
  ...ignore,
];

/**
 * The files of a logs folder with those that a match is for told how they are read. A file that several matches are for
 * stands there once for each: one spreadsheet may hold steep, germination and kiln, or a logger two kilns.
 */
export function withMatches(files: readonly LogFile[], matches: readonly ForeignMatch[]): readonly LogFile[] {
  return files.flatMap((file) => {
    const own = matches.filter(({ files: pattern }) => meansFile(pattern, file.path));
    if (own.length === 0) return [file];
    return own.map(
      (match, index): LogFile => ({
        path: file.path,
        chunks: () => file.chunks(),
        foreign: {
          match,
          shared: own.length > 1,
          namedElsewhere: own.flatMap((other) => (other === match ? [] : namesOf(other))),
          keepsUnknown: index === 0,
        },
      }),
    );
  });
}

/** A note for each match that no file answers to: a misspelt name would leave a logger unread. */
export function idleMatches(files: readonly LogFile[], matches: readonly ForeignMatch[]): readonly Problem[] {
  return matches
    .filter(({ files: pattern }) => !files.some(({ path }) => meansFile(pattern, path)))
    .map(({ files: pattern }) => ({
      file: MATCH_FILE,
      line: null,
      column: "files",
      value: pattern,
      rule: "match-file-missing",
      message: `${MATCH_FILE} says how ${pattern} is read, and there is no such file.`,
      hint: "Check the spelling: a path in this folder, with * for what differs from month to month.",
      effect: "note",
      run: null,
    }));
}
