import type { Problem } from "../../tables/problem.ts";
import type { Draft } from "../../tables/writeUp/draft.ts";
import type { WriteUpField, WriteUpTable } from "../../tables/writeUp/writeUpStages.ts";

/** One batch being written up, as a page shows it. */
export interface WriteUpState {
  readonly draft: Draft;
  readonly table: WriteUpTable;
  /** The boxes of that stage. */
  readonly fields: readonly WriteUpField[];
  /** What the rules say of that stage. */
  readonly problems: readonly Problem[];
  /** Saving was tried: what is still missing is said too. */
  readonly tried: boolean;
  /** Other batches that are being written up. */
  readonly others: readonly string[];
  /** Names that the logs know, offered while typing, by column. */
  readonly known: Readonly<Record<string, readonly string[]>>;
  readonly runs: readonly string[];
  /** The folder that rows are added to; null where they are downloaded. */
  readonly folder: string | null;
  /** One that was opened on an earlier visit and is not open yet. */
  readonly keptFolder: string | null;
  readonly opensFolders: boolean;
  /** What happened last, in a sentence. */
  readonly said: string | null;
  /** What the button says that puts back what went out of the boxes; null where nothing did. */
  readonly undo: string | null;
}

/** What a live page does when its controls are used; null while no script answers. */
export interface WriteUpHands {
  choose(run: string): void;
  turnTo(table: WriteUpTable): void;
  type(heading: string, text: string): void;
  now(heading: string): void;
  openFolder(): void;
  openKeptFolder(): void;
  forgetFolder(): void;
  save(): void;
  remove(): void;
  undo(): void;
}
