/**
 * A fault in the logs, as a value. Reading never throws and never drops a row without one of these naming it.
 */
export interface Problem {
  /** Path inside the logs folder, with `/` between parts. */
  readonly file: string;
  /** Line in the file, counted from 1, the header being line 1 where it stands first; null when it concerns the whole file. */
  readonly line: number | null;
  /** The column's name as it stands in the file; null when the fault is the row's or the file's. */
  readonly column: string | null;
  /** The text that was found, cut to 80 characters. */
  readonly value: string | null;
  /** A stable id of the rule that was broken, in plain kebab-case: `end-before-start`. */
  readonly rule: string;
  /** What is wrong, in a sentence without the file and line. */
  readonly message: string;
  /** What to do about it, in a sentence. */
  readonly hint: string;
  /**
   * What became of it: the whole file could not be read, the row was set aside, the one value was blanked, or the row
   * was kept and only this note made.
   */
  readonly effect: "file-set-aside" | "row-set-aside" | "value-blanked" | "note";
  /** The run it concerns, where one can be named, so that the run's page can show it. */
  readonly run: string | null;
  /** The runs it concerns, where it stands for many of its kind; absent where it stands for itself. */
  readonly runs?: readonly string[];
}
