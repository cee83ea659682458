import { doubtsOf } from "../../tables/foreign/draft/draftNeeds.ts";
import { draftOfMatches } from "../../tables/foreign/draft/draftOfMatches.ts";
import type { MatchDraft } from "../../tables/foreign/draft/matchDraft.ts";
import { writeMatches } from "../../tables/foreign/writeMatches.ts";
import type { House } from "../../tables/house.ts";
import type { Strangers } from "./lookOver.ts";

/** Files of one kind with all that was said of them. */
export interface Entry {
  strangers: Strangers;
  /** As somebody is saying it; null before they began. */
  draft: MatchDraft | null;
  /** As they are to be read. */
  taken: MatchDraft | null;
  /** As the chosen columns.toml reads them; null where it does not, or says what cannot be shown here. */
  readonly given: MatchDraft | null;
  /** What was said of them before each change, latest last, so that it can be taken back. */
  before: readonly Said[];
  isLeftOut: boolean;
  /** Columns that are shown with their fields. */
  turned: Set<number>;
}

/** True where what was said of one holds of the other: the same headings, and the same columns.toml for them. */
export const alike = (a: Strangers, b: Strangers): boolean =>
  a.sample.headings.join("\0") === b.sample.headings.join("\0") && writeMatches(a.matches) === writeMatches(b.matches);

/** What is said of a file at one time. */
interface Said {
  readonly draft: MatchDraft;
  /** Which field was changed then: what is typed into one box, letter by letter, is taken back as one. */
  readonly field: string | null;
}

/** More changes than these are not remembered. */
const MOST_BEFORE = 100;

/** Nothing is said of the files yet but what the chosen columns.toml says. */
export function newEntry(strangers: Strangers, house: House): Entry {
  const { matches, paths, sample } = strangers;
  const given = matches.length > 0 ? draftOfMatches(paths[0] ?? "", sample, matches, house) : null;
  return { strangers, draft: given, taken: given, given, before: [], isLeftOut: false, turned: new Set() };
}

/** To be called before the draft is changed. @param field as {@link Said} has it */
export function remember(entry: Entry, field: string | null): void {
  const last = entry.before.at(-1);
  if (entry.draft === null || (field !== null && last?.field === field)) return;
  entry.before = [...entry.before, { draft: entry.draft, field }].slice(-MOST_BEFORE);
}

/** Takes the last change back. @returns false where there is none */
export function goBack(entry: Entry): boolean {
  const last = entry.before.at(-1);
  if (last === undefined) return false;
  entry.draft = last.draft;
  entry.before = entry.before.slice(0, -1);
  turnDoubtful(entry);
  return true;
}

/** Shows the fields of every column that has to be looked at. */
export function turnDoubtful({ draft, turned }: Entry): void {
  for (const heading of draft?.headings ?? [])
    if (draft && doubtsOf(draft, heading).length > 0) turned.add(heading.place);
}
