import type {
  MatchColumnState,
  MatchFixedState,
  MatchPreviewState,
  MatchProbeState,
  MatchState,
  MatchWord,
  Option,
} from "../../bodies/ownLogs/foreignState.ts";
import {
  datesDoubt,
  doubtInWords,
  fixedDoubt,
  kilnDoubt,
  layoutInWords,
  previewIn,
  whyInWords,
} from "../../findings/foreignSentences.ts";
import { columnLabel, tableLabel } from "../../tables/columnLabels.ts";
import type { Column } from "../../tables/declarations.ts";
import { probeHeadings } from "../../tables/foreign/draft/draftMatches.ts";
import { datesAreSure, doubtsOf, fixable, readsDates } from "../../tables/foreign/draft/draftNeeds.ts";
import { headingChoices, partLabel, useKey } from "../../tables/foreign/draft/headingChoices.ts";
import {
  columnOf,
  type DraftHeading,
  holdsAnything,
  type MatchDraft,
  stemColumn,
  valuesAt,
} from "../../tables/foreign/draft/matchDraft.ts";
import { unitChoices } from "../../tables/foreign/draft/unitChoices.ts";
import type { House } from "../../tables/house.ts";
import { declarationOf, tableDeclarations } from "../../tables/tableDeclarations.ts";

/** Values that are shown of each column, and characters of them all: a phone is narrow. */
const EXAMPLES = 3;
const LONGEST_EXAMPLES = 34;

export const DELIMITERS: readonly Option[] = [
  { key: ";", label: "semicolons" },
  { key: ",", label: "commas" },
  { key: "\t", label: "tabs" },
  { key: "|", label: "upright strokes" },
];

const words = (choices: readonly string[]): readonly Option[] =>
  choices.map((choice) => ({ key: choice, label: choice.replaceAll("_", " ") }));

const meanings = ({ kind, choices = [] }: Column): readonly Option[] =>
  kind === "flag"
    ? [
        { key: "1", label: "on" },
        { key: "0", label: "off" },
      ]
    : words(choices);

const headingAt = ({ sample }: MatchDraft, place: number): string => sample.headings[place] || `column ${place + 1}`;

function wordsOf(heading: DraftHeading, column: Column | null): readonly MatchWord[] {
  if (column === null) return [];
  return [...heading.words].map(([found, meant]) => ({ found, meant, choices: meanings(column) }));
}

function examplesAt(draft: MatchDraft, place: number): readonly string[] {
  const values = [...new Set(valuesAt(draft, place))].slice(0, EXAMPLES);
  while (values.length > 1 && values.join(" · ").length > LONGEST_EXAMPLES) values.pop();
  return values;
}

function columnState(draft: MatchDraft, heading: DraftHeading, isTurned: boolean): MatchColumnState {
  const { place, use } = heading;
  const column = columnOf(draft, heading);
  const units = column ? unitChoices(column).map(({ key, label }) => ({ key, label })) : [];
  const choices = headingChoices(draft, place);
  const key = useKey(use);
  const said = choices.flatMap((group) => group.choices).find((choice) => choice.key === key)?.label ?? "not read";
  const isRead = use.kind !== "unread" && use.kind !== "kept";
  const unit = units.find((one) => one.key === heading.unit)?.label ?? "";
  const doubts = doubtsOf(draft, heading);
  const about = { said, unit, headingAt: (other: number) => headingAt(draft, other) };
  return {
    place,
    heading: headingAt(draft, place),
    examples: examplesAt(draft, place),
    use: key,
    said: units.length > 1 && unit !== "" && column?.kind !== "instant" ? `${said}, ${unit}` : said,
    choices,
    unit: heading.unit,
    units,
    words: wordsOf(heading, column),
    why: whyInWords(heading.score, isRead && use.kind === "column"),
    doubts: doubts.map((doubt) => doubtInWords(doubt, about)),
    isRead,
    isOpen: isTurned,
  };
}

function fixedStates(draft: MatchDraft, house: Pick<House, "kilns">): readonly MatchFixedState[] {
  const all = fixable(draft);
  return all.map(({ part, column }) => {
    const isAlone = all.filter((other) => other.column.stem === column.stem).length === 1;
    const isKiln = column.stem === "kiln";
    const isSure = isKiln && house.kilns.length === 1;
    const label = columnLabel(part.table, column);
    return {
      part: part.id,
      stem: column.stem,
      label: isAlone ? label : `${partLabel(draft, part)}: ${label}`,
      value: part.fixed.get(column.stem) ?? "",
      choices: words(column.choices ?? []),
      known: isKiln ? house.kilns.map(({ id }) => id) : [],
      doubt: isSure ? null : isKiln ? kilnDoubt : fixedDoubt,
    };
  });
}

function probeStates(draft: MatchDraft): readonly MatchProbeState[] {
  if (probeHeadings(draft) === null) return [];
  const columns = declarationOf("readings").columns.filter(({ kind }) => kind === "number" || kind === "flag");
  const choices = columns.map((column) => ({ key: column.stem, label: columnLabel("readings", column) }));
  return draft.probes.map(({ name, stem, unit }) => {
    const column = stem === null ? null : stemColumn("readings", stem);
    // A probe's values go as they stand: only what its name in the format says can be chosen.
    const units = column ? unitChoices(column).filter(({ times }) => times === null) : [];
    return {
      name,
      stem: stem ?? "",
      choices: [{ key: "", label: "not read" }, ...choices],
      unit,
      units: units.map(({ key, label }) => ({ key, label })),
    };
  });
}

interface Matched {
  readonly key: string;
  readonly paths: readonly string[];
  readonly draft: MatchDraft;
  readonly isTaken: boolean;
  readonly isGiven: boolean;
  readonly canGoBack: boolean;
  /** Columns that are shown with their fields. */
  readonly turned: ReadonlySet<number>;
  readonly previews: readonly MatchPreviewState[];
  readonly said: string | null;
}

/** A draft as its page shows it. */
export function matchState(matched: Matched, house: Pick<House, "kilns" | "timeZone">): MatchState {
  const { key, paths, draft, isTaken, isGiven, canGoBack, turned, previews, said } = matched;
  const { delimiter, skipLines, skipAfterHeadings } = draft.sample;
  const between = DELIMITERS.find((one) => one.key === delimiter)?.label ?? delimiter;
  const held = new Set(draft.parts.map(({ table }) => table));
  return {
    key,
    paths,
    isTaken,
    isGiven,
    canGoBack,
    layout: {
      said: layoutInWords(between, skipLines + 1, skipAfterHeadings, draft.encoding),
      delimiter,
      delimiters: DELIMITERS,
      headingsLine: skipLines + 1,
      linesUnder: skipAfterHeadings,
    },
    parts: draft.parts.map((part) => ({ id: part.id, label: partLabel(draft, part) })),
    morePartsOf: tableDeclarations
      .filter(({ name }) => !held.has(name) || name === "readings")
      .map(({ name }) => ({
        key: name,
        label: held.has(name) ? `${tableLabel(name)} of another kiln` : tableLabel(name),
      })),
    fixed: fixedStates(draft, house),
    dates: readsDates(draft)
      ? { order: draft.dateOrder, shortYears: draft.shortYears, doubt: datesAreSure(draft) ? null : datesDoubt }
      : null,
    decimal: draft.decimal ?? "",
    columns: draft.headings
      .filter(({ place }) => holdsAnything(draft, place))
      .map((heading) => columnState(draft, heading, turned.has(heading.place))),
    probes: probeStates(draft),
    previewIn: previewIn(house.timeZone),
    previews,
    said,
  };
}
