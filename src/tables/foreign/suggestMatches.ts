import type { TableDeclaration } from "../declarations.ts";
import type { DateOrder, House } from "../house.ts";
import { tableDeclarations } from "../tableDeclarations.ts";
import { plainHeading } from "./foreignHeadings.ts";
import { emptyMatch, type ForeignColumn, type ForeignMatch, patternOf } from "./foreignMatch.ts";
import { type GuessedColumn, guessColumns } from "./guessColumns.ts";
import { guessProbes } from "./guessProbes.ts";
import { dateOrderOf, decimalOf, type SampleLayout } from "./sampleLayout.ts";

/** A match that a file's own look suggests. It is to be shown and looked over; nothing is read by it until somebody says so. */
export interface MatchSuggestion {
  readonly match: ForeignMatch;
  /** What each heading was taken for, in the order of the file. */
  readonly columns: readonly GuessedColumn[];
  /** What has to be looked at before the match can be trusted, each a sentence. */
  readonly toDecide: readonly string[];
}

/** One table with what it may take from the file. */
interface Guess {
  readonly declaration: TableDeclaration;
  readonly columns: readonly GuessedColumn[];
  readonly probes: ForeignMatch["probeRows"];
}

const SHARED_KINDS = new Set(["id", "text"]);
/** Of needed columns these may be the same in a whole file, and so need not stand in it. */
const MAY_BE_FIXED = new Set(["kiln", "probe", "kind", "scope", "grain", "share"]);
/** The least that a table's own columns must add up to: one that fits by its very words, or several that half do. */
const LEAST_SCORE = 0.8;

const ownScore = ({ columns, probes }: Guess): number =>
  columns.reduce((sum, { kind, score }) => sum + (kind === "id" ? 0 : score), 0) + (probes ? 1 : 0);

function complete({ declaration, columns, probes }: Guess): boolean {
  const stems = new Set([
    ...columns.map(({ stem }) => stem),
    ...[...(probes?.columns.values() ?? [])].map((to) => to.replace(/_[cf]$/, "")),
  ]);
  return declaration.columns.every(({ stem, needed }) => !needed || stems.has(stem) || MAY_BE_FIXED.has(stem));
}

/**
 * Each heading goes to the table whose guess fits it best. Names of batches, lots and kilns, and notes, may go to several
 * tables, but not a heading that another table takes for a measurement with better reason.
 */
function shareOut(guesses: readonly Guess[]): readonly Guess[] {
  const loses = (column: GuessedColumn, guess: Guess): boolean =>
    guesses.some(
      (other) =>
        other !== guess &&
        other.columns.some(({ places, kind, score }) => {
          if (SHARED_KINDS.has(kind) || !places.some((place) => column.places.includes(place))) return false;
          if (score !== column.score) return score > column.score;
          return !SHARED_KINDS.has(column.kind) && ownScore(other) > ownScore(guess);
        }),
    );
  return guesses.map((guess) => ({ ...guess, columns: guess.columns.filter((column) => !loses(column, guess)) }));
}

/** The order of dates to ask about where the values do not say: the house's own, else as a twelve-hour clock or US units go. */
function likelyOrder(values: readonly string[], house: Pick<House, "dateOrder" | "units">): DateOrder {
  if (house.dateOrder !== "ymd") return house.dateOrder;
  return house.units === "us" || values.some((value) => /\d\s*[ap]\.?m/i.test(value)) ? "mdy" : "dmy";
}

/** How dates are probably written, and whether the values prove it. */
export function likelyDates(
  values: readonly string[],
  house: Pick<House, "dateOrder" | "units">,
): { readonly order: DateOrder; readonly short: boolean; readonly sure: boolean } {
  const { order, short } = dateOrderOf(values);
  const proven = order === "iso" ? "ymd" : order;
  return { order: proven ?? likelyOrder(values, house), short, sure: proven !== null };
}

const inFormatOrder = (columns: readonly GuessedColumn[], declaration: TableDeclaration): readonly GuessedColumn[] =>
  declaration.columns.flatMap(({ stem }) => columns.filter((column) => column.stem === stem));

/** The column at a place, from 0: by its heading, but by its place where that is blank or stands twice. */
export function columnAt(place: number, { headings }: Pick<SampleLayout, "headings">): ForeignColumn {
  const heading = headings[place] ?? "";
  const again = headings.filter((other) => plainHeading(other) === plainHeading(heading)).length > 1;
  return heading === "" || again ? place + 1 : heading;
}

function suggestionOf(
  path: string,
  sample: SampleLayout,
  encoding: string | null,
  house: Pick<House, "units" | "kilns" | "dateOrder">,
  { declaration, columns, probes }: Guess,
): MatchSuggestion {
  const valuesOf = (wanted: (column: GuessedColumn) => boolean): readonly string[] =>
    sample.rows.flatMap((row) => columns.filter(wanted).flatMap(({ places }) => row[places[0] ?? -1] ?? ""));
  const probePlace = probes ? sample.headings.indexOf(String(probes.value)) : -1;
  const numbers = [...valuesOf(({ kind }) => kind === "number"), ...sample.rows.map((row) => row[probePlace] ?? "")];
  const decimal = decimalOf(numbers, sample.delimiter);
  const whens = valuesOf(({ kind }) => kind === "instant" || kind === "date");
  const dates = dateOrderOf(whens);
  const likely = likelyOrder(whens, house);
  const toDecide: string[] = [];
  if (dates.order === null)
    toDecide.push(
      `Which is the day and which the month cannot be told from the first rows; date_order = "${likely}" is a guess.`,
    );
  const fixed = new Map<string, string>();
  const asksKiln = declaration.columns.some(({ stem, needed }) => stem === "kiln" && needed);
  if (asksKiln && !columns.some(({ stem }) => stem === "kiln")) {
    fixed.set("kiln", house.kilns[0]?.id ?? "K1");
    if (house.kilns.length !== 1)
      toDecide.push("The file does not say which kiln it is of; kiln under fixed is a guess.");
  }
  for (const { to, stem, unitFrom, score, places } of columns) {
    const heading = sample.headings[places[0] ?? -1] ?? "";
    if (unitFrom === "nowhere") toDecide.push(`Nothing says the unit of “${heading}”; ${to} is the house's habit.`);
    if (unitFrom === "values") toDecide.push(`The unit of “${heading}” is taken from its values alone: ${to}.`);
    if (score < 0.6) toDecide.push(`“${heading}” is only perhaps ${stem}.`);
  }
  for (const { stem, needed } of declaration.columns) {
    if (needed && stem !== "kiln" && MAY_BE_FIXED.has(stem) && !columns.some((column) => column.stem === stem))
      toDecide.push(`No heading is ${stem}, which every row needs: name its column, or put it under fixed.`);
  }
  const match: ForeignMatch = {
    ...emptyMatch(patternOf(path), declaration.name),
    encoding,
    delimiter: sample.delimiter,
    decimal: decimal ?? (sample.delimiter === "," ? "." : null),
    dateOrder: dates.order === "iso" ? null : (dates.order ?? likely),
    shortYears: dates.short,
    skipLines: sample.skipLines,
    skipAfterHeadings: sample.skipAfterHeadings,
    columns: inFormatOrder(columns, declaration).map(({ to, places, times, without }) => ({
      to,
      from: places.map((place) => columnAt(place, sample)),
      times,
      without,
      words: new Map(),
    })),
    fixed,
    probeRows: probes,
  };
  return { match, columns: [...columns].sort((a, b) => (a.places[0] ?? 0) - (b.places[0] ?? 0)), toDecide };
}

/**
 * How a foreign file may be read: one suggestion for each table of the log format that it seems to hold, the best first;
 * none where no table's needed columns can be found. Pure guesswork from headings and first values; nothing is applied.
 *
 * @param path where the file lies in the logs folder
 * @param sample its beginning, laid out by `sampleLayout`
 * @param encoding as `encodingOf` says
 */
export function suggestMatches(
  path: string,
  sample: SampleLayout,
  encoding: string | null,
  house: Pick<House, "units" | "kilns" | "dateOrder">,
): readonly MatchSuggestion[] {
  const probes = guessProbes(sample);
  const guesses = tableDeclarations.map((declaration): Guess => {
    const columns = guessColumns(sample, declaration, house);
    const long = declaration.name === "readings" ? probes : null;
    const inUse = long
      ? new Set([sample.headings.indexOf(String(long.probe)), sample.headings.indexOf(String(long.value))])
      : null;
    return {
      declaration,
      probes: long,
      columns: inUse ? columns.filter(({ places }) => !places.some((place) => inUse.has(place))) : columns,
    };
  });
  const whole = guesses.filter((guess) => complete(guess) && ownScore(guess) >= LEAST_SCORE);
  return shareOut(whole)
    .filter((guess) => complete(guess) && ownScore(guess) >= LEAST_SCORE)
    .sort((a, b) => ownScore(b) - ownScore(a))
    .map((guess) => suggestionOf(path, sample, encoding, house, guess));
}
