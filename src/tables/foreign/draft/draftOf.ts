import type { Column } from "../../declarations.ts";
import type { House } from "../../house.ts";
import { tableDeclarations } from "../../tableDeclarations.ts";
import type { ProbeRows } from "../foreignMatch.ts";
import { guessProbes } from "../guessProbes.ts";
import { decimalOf, type SampleLayout } from "../sampleLayout.ts";
import { likelyDates, type MatchSuggestion, suggestMatches } from "../suggestMatches.ts";
import {
  type DraftHeading,
  type DraftPart,
  type DraftProbe,
  type HeadingUse,
  leftOver,
  type MatchDraft,
  stemColumn,
  whenValues,
} from "./matchDraft.ts";
import { unitChoiceOf } from "./unitChoices.ts";
import { unknownWords } from "./unknownWords.ts";

type Settings = Pick<House, "units" | "kilns" | "dateOrder">;

/** Names of batches, lots and vessels mean the same in every table, and a remark that several take is made of them all. */
function isShared(suggestions: readonly MatchSuggestion[], place: number, column: Column): boolean {
  if (column.kind !== "text") return column.kind === "id";
  return (
    suggestions.filter(({ columns }) => columns.some((one) => one.stem === column.stem && one.places[0] === place))
      .length > 1
  );
}

const blank = (place: number, use: HeadingUse): DraftHeading => ({
  place,
  use,
  unit: "",
  without: null,
  words: new Map(),
  score: null,
  unitFrom: "none",
});

function suggestedHeadings(
  sample: SampleLayout,
  suggestions: readonly MatchSuggestion[],
): ReadonlyMap<number, DraftHeading> {
  const found = new Map<number, DraftHeading>();
  for (const { match, columns } of suggestions) {
    for (const { to, stem, times, places, without, score, unitFrom } of columns) {
      const [place = -1, clock] = places;
      const column = stemColumn(match.table, stem);
      if (column === null || found.has(place)) continue;
      const part = isShared(suggestions, place, column) ? null : match.table;
      const words = new Map(unknownWords(sample, place, column).map((word) => [word, ""]));
      const unit = unitChoiceOf(column, to, times).key;
      found.set(place, { place, use: { kind: "column", part, stem }, unit, without, words, score, unitFrom });
      if (clock !== undefined && !found.has(clock)) found.set(clock, blank(clock, { kind: "clock", of: place }));
    }
    const { probeRows } = match;
    if (probeRows === null) continue;
    const at = (name: ProbeRows["probe"]): number => sample.headings.indexOf(String(name));
    found.set(at(probeRows.probe), blank(at(probeRows.probe), { kind: "probe" }));
    found.set(at(probeRows.value), { ...blank(at(probeRows.value), { kind: "value" }), without: probeRows.without });
  }
  return found;
}

/** The probes that a column names, each with the column of the readings that its name suggests. */
export function probesAt(sample: SampleLayout, place: number): readonly DraftProbe[] {
  const guessed = guessProbes(sample)?.columns ?? new Map<string, string>();
  const names = [...new Set(sample.rows.map((row) => row[place] ?? ""))].filter((name) => name !== "");
  return names.map((name) => {
    const to = guessed.get(name) ?? null;
    const stem = to?.replace(/_[cf]$/, "") ?? null;
    const column = stem === null ? null : stemColumn("readings", stem);
    return { name, stem: column?.stem ?? null, unit: column && to ? unitChoiceOf(column, to, null).key : "" };
  });
}

/**
 * The draft that a file's own look suggests, to be looked over and changed; without any part where nothing can be suggested.
 *
 * @param path in the logs folder
 * @param encoding as `encodingOf` says
 */
export function draftOf(path: string, sample: SampleLayout, encoding: string | null, house: Settings): MatchDraft {
  const suggestions = suggestMatches(path, sample, encoding, house);
  // In the order of the work, as the format lists its tables.
  const parts = tableDeclarations.flatMap(({ name }): readonly DraftPart[] => {
    const own = suggestions.find(({ match }) => match.table === name);
    return own ? [{ id: name, table: name, fixed: own.match.fixed }] : [];
  });
  const suggested = suggestedHeadings(sample, suggestions);
  const probe = [...suggested.values()].find(({ use }) => use.kind === "probe");
  const headings = sample.headings.map(
    (_, place) => suggested.get(place) ?? blank(place, leftOver({ parts, sample }, place)),
  );
  const dates = likelyDates(whenValues({ parts, headings, sample }), house);
  const proven = suggestions.map(({ match }) => match.decimal).find((mark) => mark !== null);
  return {
    path,
    sample,
    encoding,
    decimal: proven ?? decimalOf(sample.rows.flat(), sample.delimiter),
    dateOrder: dates.order,
    shortYears: dates.short,
    parts,
    headings,
    probes: probe ? probesAt(sample, probe.place) : [],
    unwantedElsewhere: [],
  };
}
