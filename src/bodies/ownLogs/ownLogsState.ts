import type { ForeignState } from "./foreignState.ts";

/** One of the files that a reader chose, before it is read. */
export interface ChosenBrief {
  readonly path: string;
  readonly bytes: number;
}

/** How far a reader's own logs have come, as the page and its banner show it. */
export interface OwnLogsState {
  readonly chosen: readonly ChosenBrief[];
  /** Can the files that were put away a while ago be chosen again? */
  readonly canRechoose: boolean;
  readonly stage: "none" | "reading" | "shown";
  /** Are the beginnings of the chosen files being looked at? */
  readonly isLooking: boolean;
  /** The files with headings of their own; null while nothing was chosen. */
  readonly foreign: ForeignState | null;
  /** Whether the logs that are shown were read with a columns.toml, which may be saved. */
  readonly hasMatches: boolean;
  /** What the reader must be told: why something was refused, that it was cancelled. */
  readonly said: string | null;
  /** Are those that are shown kept in this browser? */
  readonly kept: boolean;
  /** Does it keep others, which will come back when the page is loaded anew? */
  readonly keptOthers: boolean;
  /** Can those that gave way when these were kept be kept again? */
  readonly canKeepFormer: boolean;
  /** Can those that were shown before those that are shown, or before nothing of the reader's was, be shown again? */
  readonly canReturn: boolean;
  /** This computer's time zone; null while the site is built. */
  readonly timeZone: string | null;
}

/** While the site is built, and as long as nothing was chosen. */
export const noOwnLogs: OwnLogsState = {
  chosen: [],
  canRechoose: false,
  stage: "none",
  isLooking: false,
  foreign: null,
  hasMatches: false,
  said: null,
  kept: false,
  keptOthers: false,
  canKeepFormer: false,
  canReturn: false,
  timeZone: null,
};
