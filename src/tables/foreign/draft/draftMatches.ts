import type { Column } from "../../declarations.ts";
import { declarationOf } from "../../tableDeclarations.ts";
import { type ColumnMatch, emptyMatch, type ForeignMatch } from "../foreignMatch.ts";
import { columnAt } from "../suggestMatches.ts";
import {
  columnOf,
  type DraftHeading,
  type DraftPart,
  holdsAnything,
  type MatchDraft,
  partsOf,
  stemColumn,
} from "./matchDraft.ts";
import { unitChoices } from "./unitChoices.ts";

/** The columns of the file that are said to be `column` of `part`, in the order of the file; one at most, once all is well. */
export const headingsFor = (draft: MatchDraft, part: DraftPart, { stem }: Column): readonly DraftHeading[] =>
  draft.headings.filter(({ use }) => use.kind === "column" && use.stem === stem && partsOf(draft, use).includes(part));

function columnMatch(draft: MatchDraft, column: Column, heading: DraftHeading): ColumnMatch {
  const choices = unitChoices(column);
  const unit = choices.find(({ key }) => key === heading.unit) ?? choices[0];
  const clocks = draft.headings.filter(({ use }) => use.kind === "clock" && use.of === heading.place);
  return {
    to: unit?.to ?? column.stem,
    from: [heading, ...clocks].map(({ place }) => columnAt(place, draft.sample)),
    times: unit?.times ?? null,
    without: heading.without,
    words: new Map([...heading.words].filter(([, meant]) => meant !== "")),
  };
}

/** Where a file has a row for each probe: the columns that say which and how much. */
export function probeHeadings({ headings }: Pick<MatchDraft, "headings">) {
  const of = (kind: "probe" | "value") => headings.find(({ use }) => use.kind === kind);
  const [probe, value] = [of("probe"), of("value")];
  return probe && value ? { probe, value } : null;
}

function probeRowsOf(draft: MatchDraft): ForeignMatch["probeRows"] {
  const found = probeHeadings(draft);
  if (found === null) return null;
  const columns = draft.probes.flatMap(({ name, stem, unit }) => {
    const column = stem === null ? null : stemColumn("readings", stem);
    const to = column && (unitChoices(column).find(({ key }) => key === unit) ?? unitChoices(column)[0])?.to;
    return to ? [[name, to] as const] : [];
  });
  return {
    probe: columnAt(found.probe.place, draft.sample),
    value: columnAt(found.value.place, draft.sample),
    columns: new Map(columns),
    without: found.value.without,
  };
}

/** Headings, and probes, that are known and not read, so that nobody is told of them again. */
function notRead(draft: MatchDraft): readonly string[] {
  const isRead = (heading: DraftHeading): boolean =>
    heading.use.kind !== "unread" && (heading.use.kind !== "column" || columnOf(draft, heading) !== null);
  const headings = draft.headings.flatMap((heading) => {
    const text = draft.sample.headings[heading.place] ?? "";
    return isRead(heading) || text === "" || !holdsAnything(draft, heading.place) ? [] : [text];
  });
  const probes = probeHeadings(draft) ? draft.probes.flatMap(({ name, stem }) => (stem === null ? [name] : [])) : [];
  return [...headings, ...probes, ...draft.unwantedElsewhere];
}

/**
 * The matches that a draft stands for, one a part, as they go into columns.toml.
 *
 * @param files the pattern of the files that they are for
 */
export function draftMatches(draft: MatchDraft, files: string): readonly ForeignMatch[] {
  const { sample, encoding, decimal, dateOrder, shortYears } = draft;
  return draft.parts.map((part, index) => {
    const declaration = declarationOf(part.table);
    const filled = declaration.columns.flatMap((column) => {
      const [heading] = headingsFor(draft, part, column);
      return heading === undefined ? [] : [{ column, match: columnMatch(draft, column, heading) }];
    });
    const open = (stem: string): boolean => !filled.some(({ column }) => column.stem === stem);
    return {
      ...emptyMatch(files, part.table),
      encoding,
      delimiter: sample.delimiter,
      decimal,
      dateOrder,
      shortYears,
      skipLines: sample.skipLines,
      skipAfterHeadings: sample.skipAfterHeadings,
      columns: filled.map(({ match }) => match),
      fixed: new Map([...part.fixed].filter(([stem, value]) => open(stem) && value.trim() !== "")),
      probeRows: part.table === "readings" ? probeRowsOf(draft) : null,
      ignore: index === 0 ? notRead(draft) : [],
    };
  });
}
