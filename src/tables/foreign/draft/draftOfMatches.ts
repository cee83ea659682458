import type { TableName } from "../../declarations.ts";
import type { House } from "../../house.ts";
import { fileNames } from "../../insideName.ts";
import { declarationOf } from "../../tableDeclarations.ts";
import { placeOf, plainHeading } from "../foreignHeadings.ts";
import type { ColumnMatch, ForeignColumn, ForeignMatch } from "../foreignMatch.ts";
import type { SampleLayout } from "../sampleLayout.ts";
import { columnAt } from "../suggestMatches.ts";
import { draftMatches } from "./draftMatches.ts";
import { probesAt } from "./draftOf.ts";
import {
  type DraftHeading,
  type DraftPart,
  type DraftProbe,
  freePartId,
  leftOver,
  type MatchDraft,
  stemColumn,
} from "./matchDraft.ts";
import { unitChoices } from "./unitChoices.ts";
import { unknownWords } from "./unknownWords.ts";

const columnNamed = (table: TableName, to: string) =>
  declarationOf(table).columns.find((column) => fileNames(column).some(({ name }) => name === to)) ?? null;

/** What the matches say of the file's columns; a column that two of them want for different things is left to the first. */
function saidHeadings(
  matches: readonly ForeignMatch[],
  parts: readonly DraftPart[],
  sample: SampleLayout,
): ReadonlyMap<number, DraftHeading> {
  const found = new Map<number, DraftHeading>();
  const plain = { unit: "", without: null, words: new Map<string, string>(), score: null, unitFrom: "none" } as const;
  const at = (from: ForeignColumn | undefined): number => (from === undefined ? -1 : placeOf(from, sample.headings));
  const say = (part: DraftPart, { to, from: [date, ...clocks], times, without, words }: ColumnMatch): void => {
    const place = at(date);
    const column = columnNamed(part.table, to);
    const unit = column && unitChoices(column).find((one) => one.to === to && one.times === times);
    const known = found.get(place)?.use;
    if (known?.kind === "column" && known.stem === column?.stem) {
      found.set(place, { ...(found.get(place) as DraftHeading), use: { ...known, part: null } });
    }
    if (place < 0 || !column || !unit || known !== undefined) return;
    // Names of batches, lots and vessels mean the same in every part.
    const use = { kind: "column", part: column.kind === "id" ? null : part.id, stem: column.stem } as const;
    const unsaid = unknownWords(sample, place, column).filter((word) => !words.has(word));
    const all = new Map([...words, ...unsaid.map((word) => [word, ""] as const)]);
    found.set(place, { place, use, unit: unit.key, without, words: all, score: null, unitFrom: "said" });
    for (const clock of clocks) {
      const its = at(clock);
      if (its >= 0) found.set(its, { ...plain, place: its, use: { kind: "clock", of: place } });
    }
  };
  for (const [index, { columns, probeRows }] of matches.entries()) {
    for (const column of columns) say(parts[index] as DraftPart, column);
    if (probeRows === null) continue;
    const [probe, value] = [at(probeRows.probe), at(probeRows.value)];
    found.set(probe, { ...plain, place: probe, use: { kind: "probe" } });
    found.set(value, { ...plain, place: value, use: { kind: "value" }, without: probeRows.without });
  }
  return found;
}

/** The probes that the match names, and those that the file does; what it says nothing of is not read. */
function saidProbes(matches: readonly ForeignMatch[], sample: SampleLayout): readonly DraftProbe[] {
  const [rows] = matches.flatMap(({ probeRows }) => probeRows ?? []);
  if (rows === undefined) return [];
  const named = [...rows.columns].map(([name, to]): DraftProbe => {
    const column = columnNamed("readings", to);
    const unit = column && unitChoices(column).find((one) => one.to === to && one.times === null);
    return { name, stem: column?.stem ?? null, unit: unit?.key ?? "" };
  });
  const others = probesAt(sample, placeOf(rows.probe, sample.headings))
    .filter(({ name }) => !named.some((probe) => plainHeading(probe.name) === plainHeading(name)))
    .map(({ name }): DraftProbe => ({ name, stem: null, unit: "" }));
  return [...named, ...others];
}

/** What two matches must have in common to read this file alike. What is only not listed as unwanted makes no difference to values. */
function meaning(matches: readonly ForeignMatch[], { sample, dateOrder }: MatchDraft): unknown {
  const at = (from: ForeignColumn): ForeignColumn => {
    const place = placeOf(from, sample.headings);
    return place < 0 ? from : columnAt(place, sample);
  };
  return matches.map((match) => ({
    ...match,
    delimiter: match.delimiter ?? sample.delimiter,
    dateOrder: match.dateOrder ?? dateOrder,
    ignore: null,
    fixed: [...match.fixed].sort(),
    columns: match.columns
      .map((column) => ({ ...column, from: column.from.map(at), words: [...column.words].sort() }))
      .sort((a, b) => (a.to < b.to ? -1 : 1)),
    probeRows: match.probeRows && {
      ...match.probeRows,
      probe: at(match.probeRows.probe),
      value: at(match.probeRows.value),
      columns: [...match.probeRows.columns].sort(),
    },
  }));
}

/**
 * The draft that makes these matches, so that what a columns.toml says of a file can be looked over and corrected.
 *
 * @param sample of the file, laid out as the matches say
 * @param matches all that are for the file, in their order; at least one
 * @returns null where they say what no draft can: columns that the file does not have, one column for two things, a factor of
 * their own
 */
export function draftOfMatches(
  path: string,
  sample: SampleLayout,
  matches: readonly ForeignMatch[],
  { dateOrder }: Pick<House, "dateOrder">,
): MatchDraft | null {
  const [first] = matches;
  if (first === undefined) throw new RangeError("draftOfMatches requires a match; got none");
  const parts: DraftPart[] = [];
  for (const { table, fixed } of matches) parts.push({ id: freePartId(parts, table), table, fixed });
  const said = saidHeadings(matches, parts, sample);
  const ignored = new Set(matches.flatMap(({ ignore }) => ignore.map(plainHeading)));
  const isIgnored = (heading: string): boolean => ignored.has(plainHeading(heading));
  const blank = { unit: "", without: null, words: new Map<string, string>(), score: null, unitFrom: "none" } as const;
  const headings = sample.headings.map((heading, place): DraftHeading => {
    const use = isIgnored(heading) ? ({ kind: "unread" } as const) : leftOver({ parts, sample }, place);
    return said.get(place) ?? { ...blank, place, use };
  });
  const probes = saidProbes(matches, sample);
  const here = new Set([...sample.headings, ...probes.map(({ name }) => name)].map(plainHeading));
  const draft: MatchDraft = {
    path,
    sample,
    encoding: first.encoding,
    decimal: first.decimal,
    dateOrder: first.dateOrder ?? dateOrder,
    shortYears: first.shortYears,
    parts,
    headings,
    probes,
    unwantedElsewhere: matches.flatMap(({ ignore }) => ignore.filter((name) => !here.has(plainHeading(name)))),
  };
  const made = meaning(draftMatches(draft, first.files), draft);
  return JSON.stringify(made) === JSON.stringify(meaning(matches, draft)) && isWhole(draft) ? draft : null;
}

/** True where every heading's use can be had of the parts: a column of a part that has none of its stem is lost. */
const isWhole = ({ parts, headings }: MatchDraft): boolean =>
  headings.every(({ use }) => use.kind !== "column" || parts.some(({ table }) => stemColumn(table, use.stem) !== null));
