import type { Problem } from "../tables/problem.ts";

const EFFECT: Readonly<Record<Problem["effect"], string>> = {
  "file-set-aside": "file set aside",
  "row-set-aside": "row set aside",
  "value-blanked": "value left blank",
  note: "note",
};

/** Every problem as a row to work through in a spreadsheet, headings first. */
export function problemRows(problems: readonly Problem[]): readonly (readonly (string | number | null)[])[] {
  return [
    ["file", "line", "column", "value", "what is wrong", "what to do", "what became of it", "run", "rule"],
    ...problems.map(({ file, line, column, value, message, hint, effect, run, rule }) => [
      file,
      line,
      column,
      value,
      message,
      hint,
      EFFECT[effect],
      run,
      rule,
    ]),
  ];
}
