import type { Doubt } from "../tables/foreign/draft/draftNeeds.ts";
import { counted, listed } from "./counted.ts";

/** More headings than these are counted. */
const MOST_HEADINGS = 6;

/** `Batch, Lot, Steep on … and 9 more`. */
export function headingsInWords(headings: readonly string[]): string {
  const named = headings.filter((heading) => heading !== "");
  if (named.length <= MOST_HEADINGS) return named.join(", ");
  return `${named.slice(0, MOST_HEADINGS - 1).join(", ")} … and ${named.length - MOST_HEADINGS + 1} more`;
}

/** `batches.csv`, `K1-01.csv and 3 more like it`. */
export function filesInWords([first = "", ...more]: readonly string[]): string {
  return more.length === 0 ? first : `${first} and ${more.length} more like it`;
}

/** What stands above the list. */
export const ownHeadings =
  "These files have headings that no log has. Say what their columns are, and they are read like any other; until then they are not.";

/** The same where the chosen columns.toml speaks of every one of them. */
export const ownHeadingsKnown =
  "These files have headings that no log has, and columns.toml says what their columns are. Look again at what has to be corrected.";

/** Above a match, where it comes from. */
export const matchFrom = (isGiven: boolean): string =>
  isGiven
    ? "What stands here is what columns.toml says of these files. What you change is read so once you say it, and stands in columns.toml once you save that."
    : "What stands here is a suggestion from headings and first values. Look it over: nothing is read until you say so.";

/** What to do about words of the file's own, where their fields stand above. */
export const sayWordsAbove = "Say above, at this column, what its words mean.";

/** Of files that the chosen columns.toml reads in a way that no match page can show. */
export const beyondThisPage =
  "will be read as columns.toml says. That says more than can be shown here: to change it, open columns.toml in a text editor.";

/** How many are still to be matched, for whoever is about to read. */
export function unmatchedInWords(files: number): string | null {
  if (files === 0) return null;
  const [has, are] = files === 1 ? ["has headings of its own", "is"] : ["have headings of their own", "are"];
  return `${counted(files, "file")} ${has} and ${are} not matched: ${files === 1 ? "it" : "they"} will not be read.`;
}

/** How a file is laid out. */
export function layoutInWords(
  delimiter: string,
  headingsLine: number,
  linesUnder: number,
  encoding: string | null,
): string {
  const under = linesUnder === 0 ? "" : `, ${counted(linesUnder, "line")} of units or the like under it`;
  const written = encoding === null ? "" : ` It is written in ${encoding}.`;
  return `Headings in line ${headingsLine}${under}; ${delimiter} between the columns.${written}`;
}

/** How a column came to be what it is. */
export function whyInWords(score: number | null, isRead: boolean): string {
  if (!isRead) return "";
  return score === null ? "as chosen" : "by its heading";
}

interface Doubted {
  /** What the column is said to be. */
  readonly said: string;
  /** The unit that stands chosen. */
  readonly unit: string;
  /** Heading of the column at a place. */
  readonly headingAt: (place: number) => string;
}

/** Why a column has to be looked at. */
export function doubtInWords(doubt: Doubt, { said, unit, headingAt }: Doubted): string {
  switch (doubt.kind) {
    case "perhaps":
      return `Only perhaps: the heading fits ${said} no better than other things.`;
    case "unit-nowhere":
      return `Nothing in the file says the unit; ${unit} is a guess.`;
    case "unit-by-values":
      return `The heading says no unit; only as ${unit} are the values believable.`;
    case "words-unsaid":
      return "Say what these words mean; where it is not said, the value is left blank.";
    case "twice":
      return `${headingAt(doubt.other)} is said to be the same. One of them is enough: the one that stands first is read.`;
    case "clock-alone":
      return "The column with its date is not read as a time.";
  }
}

export const datesDoubt =
  "The first rows do not say which is the day and which the month. Look at the rows below, and change it here if they stand the wrong way round.";

export const kilnDoubt = "No column says which kiln it is.";

export const fixedDoubt = "No column says it, and every row needs it.";

/** What a table still lacks. */
export const lackInWords = (table: string, columns: readonly string[]): string =>
  `${table} cannot be read yet: no column is ${listed(columns)}.`;

export const holdsNothing = "Say first what this file holds.";

/** How the first rows fared. */
export function previewInWords(read: number, setAside: number): string {
  const aside = setAside === 0 ? "" : `, ${counted(setAside, "row")} set aside`;
  return `Of the rows looked at: ${counted(read, "row")} read${aside}.`;
}

/** More places of one kind than these are not listed one by one, and so not counted here. */
const LISTED = 99;

/** A fault, and how often it comes again. */
export function samePlacesInWords(fault: string, more: number): string {
  if (more === 0) return fault;
  return `${fault} It is so in ${more >= LISTED ? "many more rows" : counted(more, "more row")}.`;
}

/** What the rows are shown in. */
export const previewIn = (timeZone: string): string =>
  `Hold them against the file. Times are those of the clock in ${timeZone}, numbers in the house’s units.`;

export const keepMatches =
  "What was matched goes into one small file, columns.toml. Put it beside your logs, and next month’s files of the same names are read without asking.";

export const olderMatchesUnreadable =
  "The columns.toml that was chosen cannot be read, so that the new one holds only what was matched here. Keep the old one until it is mended.";
