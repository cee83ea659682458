/** Something to choose in a field. */
export interface Option {
  readonly key: string;
  readonly label: string;
}

export interface OptionGroup {
  readonly label: string;
  readonly choices: readonly Option[];
}

/** Files of one kind whose headings no log has, in the list of them. */
export interface ForeignFileState {
  /** The pattern that their match is for. */
  readonly key: string;
  readonly paths: readonly string[];
  readonly headings: readonly string[];
  /** `beyond`: the chosen columns.toml reads them in a way that this page cannot show. */
  readonly status: "open" | "taken" | "left-out" | "beyond";
  /** Said here, and not in the chosen columns.toml. */
  readonly isNews: boolean;
  /** What a taken match makes of them, in plain words. */
  readonly tables: readonly string[];
}

/** A word of the file, and what it means. */
export interface MatchWord {
  readonly found: string;
  readonly meant: string;
  readonly choices: readonly Option[];
}

/** One column of the file that is being matched. */
export interface MatchColumnState {
  readonly place: number;
  readonly heading: string;
  readonly examples: readonly string[];
  /** Key of what it is among `choices`, and the same in words. */
  readonly use: string;
  readonly said: string;
  readonly choices: readonly OptionGroup[];
  readonly unit: string;
  /** Fewer than two where there is nothing to choose. */
  readonly units: readonly Option[];
  readonly words: readonly MatchWord[];
  /** How this came about: a suggestion, somebody's choice. */
  readonly why: string;
  readonly doubts: readonly string[];
  /** Is it read at all? */
  readonly isRead: boolean;
  readonly isOpen: boolean;
}

/** A probe of a file with a row for each. */
export interface MatchProbeState {
  readonly name: string;
  readonly stem: string;
  readonly choices: readonly Option[];
  readonly unit: string;
  readonly units: readonly Option[];
}

/** What has to be the same in the whole file, since no column says it. */
export interface MatchFixedState {
  readonly part: string;
  readonly stem: string;
  readonly label: string;
  readonly value: string;
  /** Words of which it must be one; empty where anything may be written. */
  readonly choices: readonly Option[];
  /** Names that the house has. */
  readonly known: readonly string[];
  readonly doubt: string | null;
}

/** The first rows of one table as they will be read. */
export interface MatchPreviewState {
  readonly label: string;
  /** Why there is nothing to show yet; null where there is. */
  readonly lack: string | null;
  readonly columns: readonly { readonly label: string; readonly unit: string; readonly isNumber: boolean }[];
  readonly rows: readonly (readonly string[])[];
  readonly counts: string;
  readonly problems: readonly string[];
}

/** The file that is being matched. */
export interface MatchState {
  readonly key: string;
  readonly paths: readonly string[];
  /** Was it taken before, in this form or another? */
  readonly isTaken: boolean;
  /** Does the chosen columns.toml speak of it? */
  readonly isGiven: boolean;
  /** Is there a change to take back? */
  readonly canGoBack: boolean;
  readonly layout: {
    readonly said: string;
    readonly delimiter: string;
    readonly delimiters: readonly Option[];
    readonly headingsLine: number;
    readonly linesUnder: number;
  };
  readonly parts: readonly { readonly id: string; readonly label: string }[];
  readonly morePartsOf: readonly Option[];
  readonly fixed: readonly MatchFixedState[];
  readonly dates: { readonly order: string; readonly shortYears: boolean; readonly doubt: string | null } | null;
  readonly decimal: string;
  readonly columns: readonly MatchColumnState[];
  readonly probes: readonly MatchProbeState[];
  /** What the rows are shown in. */
  readonly previewIn: string;
  readonly previews: readonly MatchPreviewState[];
  /** Why it cannot be taken as it is. */
  readonly said: string | null;
}

/** What a reader can do about files with headings of their own. Places of columns count from 0. */
export interface ForeignHands {
  match(key: string): void;
  leaveOut(key: string): void;
  undo(key: string): void;
  /** Takes the last change back. */
  back(): void;
  /** What is being said of a file is left; what was taken before stands. */
  leave(key: string): void;
  take(): void;
  save(): void;
  layOut(delimiter: string, headingsLine: number, linesUnder: number): void;
  addPart(table: string): void;
  dropPart(id: string): void;
  fix(part: string, stem: string, text: string): void;
  dates(order: string): void;
  shortYears(are: boolean): void;
  decimal(mark: string): void;
  use(place: number, key: string): void;
  unit(place: number, key: string): void;
  word(place: number, found: string, meant: string): void;
  probe(name: string, stem: string, unit: string): void;
  turn(place: number): void;
}

/** Where the list of files says what becomes of the one at a place, as an id. */
export const foreignFileId = (index: number): string => `foreign-file-${index}`;

/** The files with headings of their own among those that were chosen. */
export interface ForeignState {
  readonly files: readonly ForeignFileState[];
  readonly matching: MatchState | null;
  /** The chosen columns.toml cannot be read, so that the one to be saved holds none of it. */
  readonly losesOlder: boolean;
  readonly hands: ForeignHands;
}
