import type { Column, TableDeclaration } from "../declarations.ts";
import type { House } from "../house.ts";
import { fileNames } from "../insideName.ts";
import { nameWith, saidUnit, wordsOf } from "./headingUnits.ts";
import { headingWords } from "./headingWords.ts";
import type { SampleLayout } from "./sampleLayout.ts";

/** A column of the log format that a foreign column may be, and why. */
export interface GuessedColumn {
  /** Its name in the log format, unit and all. */
  readonly to: string;
  readonly stem: string;
  readonly kind: Column["kind"];
  /** Places in the file, from 0: two where a date and a time of day make one value. */
  readonly places: readonly number[];
  readonly times: number | null;
  /** What stands behind every value and has to be taken off. */
  readonly without: string | null;
  /** 0 to 1: how well the heading's words fit. */
  readonly score: number;
  /** Where the unit comes from. */
  readonly unitFrom: "heading" | "values" | "nowhere" | "none";
}

type Look = "date" | "clock" | "moment" | "number" | "text" | "blank";

const DATE =
  /^(\d{1,4}[./-]\d{1,2}[./-]\d{1,4}|\d{1,2}[\s./-]+[a-z]{3,9}[\s./,-]+\d{2,4}|[a-z]{3,9}\s+\d{1,2},?\s+\d{4})/i;
const CLOCK = /^\d{1,2}:\d{2}(:\d{2})?([.,]\d+)?\s*([ap]\.?m?\.?)?$/i;
const NUMBER = /^[+\-\u2212]?\d+([.,]\d+)?\s*(°?\s*[cf]|%(\s*rh)?|kg|lbs?|cm|in|")?$/i;

function lookOf(value: string): Look {
  if (value === "") return "blank";
  const date = DATE.exec(value);
  if (date) return /\d:\d\d/.test(value.slice(date[0].length)) ? "moment" : "date";
  if (CLOCK.test(value)) return "clock";
  return NUMBER.test(value) ? "number" : "text";
}

/** What most values of a column look like. */
export function looksOf({ headings, rows }: SampleLayout): readonly Look[] {
  return headings.map((_, place) => {
    const counts = new Map<Look, number>();
    for (const row of rows) {
      const look = lookOf(row[place] ?? "");
      if (look !== "blank") counts.set(look, (counts.get(look) ?? 0) + 1);
    }
    const [most] = [...counts].sort((a, b) => b[1] - a[1]);
    return most?.[0] ?? "blank";
  });
}

/** How well a heading's words fit a column's phrases: 1 for the very words, less for words left over, 0 for no fit. */
export function fitOf(words: readonly string[], phrases: readonly string[]): number {
  let best = 0;
  for (const phrase of phrases) {
    const weak = phrase.startsWith("~");
    const wanted = wordsOf(phrase.replace("~", ""));
    if (wanted.length === 0 || !wanted.every((word) => words.includes(word))) continue;
    const share = wanted.length / words.length;
    best = Math.max(best, (weak ? 0.4 : 0.6 + 0.1 * Math.min(3, wanted.length)) * (0.5 + 0.5 * share));
  }
  return best;
}

const fits = (kind: Column["kind"], look: Look): boolean => {
  if (look === "blank") return true;
  if (kind === "number" || kind === "count") return look === "number";
  if (kind === "instant") return look === "moment" || look === "date";
  if (kind === "date") return look === "date" || look === "moment";
  return look !== "moment" && look !== "clock";
};

/** The place of the time of day that belongs to a date: next to it, or of the same words but for date and time. */
function clockFor(place: number, looks: readonly Look[], words: readonly (readonly string[])[]): number {
  const own = (words[place] ?? []).filter((word) => word !== "date").join(" ");
  const named = looks.findIndex(
    (look, i) => look === "clock" && (words[i] ?? []).filter((word) => word !== "time").join(" ") === own,
  );
  if (named >= 0) return named;
  return looks[place + 1] === "clock" ? place + 1 : -1;
}

const numbersOf = (rows: SampleLayout["rows"], place: number): readonly number[] =>
  rows.flatMap((row) => {
    const found = /^[+\-\u2212]?\d+([.,]\d+)?/.exec(row[place] ?? "");
    return found ? [Number(found[0].replace(",", ".").replace("\u2212", "-"))] : [];
  });

function tailOf(rows: SampleLayout["rows"], place: number): string | null {
  const tails = new Set(
    rows.flatMap((row) => /^[+\-\u2212]?\d+(?:[.,]\d+)?\s*(\D+)$/.exec(row[place] ?? "")?.[1]?.trim() ?? []),
  );
  const [only] = tails;
  return tails.size === 1 && only !== undefined ? only : null;
}

/**
 * The unit of a column: as the heading says, else the values' own tail, else what alone lies within the column's believable
 * range, else the house's own habit, which is then said to come from nowhere.
 */
function unitOf(
  column: Column,
  heading: string,
  tail: string | null,
  values: readonly number[],
  house: Pick<House, "units">,
): Pick<GuessedColumn, "to" | "times" | "unitFrom"> {
  if (!column.family) return { to: nameWith(column, null), times: null, unitFrom: "none" };
  const said = saidUnit(heading, column) ?? (tail === null ? null : saidUnit(` ${tail}`, column));
  if (said) return { to: nameWith(column, said.suffix), times: said.times, unitFrom: "heading" };
  const [low, high] = column.range ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const possible = column.family.suffixes.filter(({ factor, offset }) =>
    values.every((value) => value * factor + offset >= low && value * factor + offset <= high),
  );
  const [only] = possible;
  if (only && possible.length === 1 && values.length > 0)
    return { to: nameWith(column, only.suffix), times: null, unitFrom: "values" };
  const habit = house.units === "us" ? ["f", "lb", "in", "srm", "lintner"] : ["c", "kg", "cm", "ebc", "wk"];
  const usual = column.family.suffixes.find(({ suffix }) => habit.includes(suffix)) ?? column.family.suffixes[0];
  return { to: nameWith(column, usual?.suffix ?? null), times: null, unitFrom: "nowhere" };
}

/** How the values at `place` would be read as `column`: under which name, by which factor, without which tail. */
export function readingAt(
  sample: SampleLayout,
  place: number,
  column: Column,
  house: Pick<House, "units">,
): Pick<GuessedColumn, "to" | "times" | "unitFrom" | "without"> {
  const heading = `${sample.headings[place]} ${sample.unitRow[place] ?? ""}`;
  const tail = column.kind === "number" ? tailOf(sample.rows, place) : null;
  return { ...unitOf(column, heading, tail, numbersOf(sample.rows, place), house), without: tail };
}

/** The place of the time of day that belongs to the date at `place`; -1 where none stands. */
export const clockAt = (sample: SampleLayout, place: number): number =>
  looksOf(sample)[place] === "date" ? clockFor(place, looksOf(sample), sample.headings.map(wordsOf)) : -1;

/**
 * What the columns of a foreign file may be in one table of the log format, each column at most once, the best fit first
 * served. A guess from words and looks alone: it is for somebody who knows the file to say yes.
 */
export function guessColumns(
  sample: SampleLayout,
  declaration: TableDeclaration,
  house: Pick<House, "units">,
): readonly GuessedColumn[] {
  const looks = looksOf(sample);
  const words = sample.headings.map(wordsOf);
  const phrases = headingWords[declaration.name];
  const candidates = declaration.columns
    .flatMap((column, order) =>
      sample.headings.flatMap((heading, place) => {
        const own = fileNames(column).some(({ name }) => name === heading.toLowerCase());
        const score = own ? 1 : fitOf(words[place] ?? [], (phrases[column.stem] ?? "").split(" | "));
        return score > 0 && fits(column.kind, looks[place] ?? "blank") ? [{ column, order, place, score }] : [];
      }),
    )
    .sort((a, b) => b.score - a.score || a.order - b.order || a.place - b.place);
  const takenPlaces = new Set<number>();
  const takenColumns = new Set<string>();
  const found: GuessedColumn[] = [];
  for (const { column, place, score } of candidates) {
    if (takenPlaces.has(place) || takenColumns.has(column.stem)) continue;
    const clock = column.kind === "instant" && looks[place] === "date" ? clockFor(place, looks, words) : -1;
    const places = clock < 0 ? [place] : [place, clock];
    for (const taken of places) takenPlaces.add(taken);
    takenColumns.add(column.stem);
    const read = readingAt(sample, place, column, house);
    const utc =
      column.kind === "instant" && /\b(utc|gmt|zulu)\b/i.test(places.map((p) => sample.headings[p]).join(" "));
    const to = utc ? `${column.stem}_utc` : read.to;
    found.push({ ...read, to, stem: column.stem, kind: column.kind, places, score });
  }
  return found;
}
