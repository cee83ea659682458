import type { TableName } from "../../declarations.ts";
import type { House } from "../../house.ts";
import { clockAt, readingAt } from "../guessColumns.ts";
import { draftOf, probesAt } from "./draftOf.ts";
import {
  columnOf,
  type DraftHeading,
  type DraftPart,
  freePartId,
  type HeadingUse,
  keepsBeside,
  leftOver,
  type MatchDraft,
  partsOf,
  stemColumn,
} from "./matchDraft.ts";
import { unitChoiceOf } from "./unitChoices.ts";
import { unknownWords } from "./unknownWords.ts";

type Settings = Pick<House, "units" | "kilns" | "dateOrder">;

const withHeading = (draft: MatchDraft, place: number, next: Partial<DraftHeading>): MatchDraft => ({
  ...draft,
  headings: draft.headings.map((heading) => (heading.place === place ? { ...heading, ...next } : heading)),
});

/** A column of the file is something else from here on: its unit, tail and words are looked at anew. */
export function withUse(draft: MatchDraft, place: number, use: HeadingUse, house: Settings): MatchDraft {
  const column = columnOf(draft, { use });
  const read = column ? readingAt(draft.sample, place, column, house) : null;
  const tailed = use.kind === "value" ? stemColumn("readings", "air_on") : null;
  const changed = withHeading(draft, place, {
    use,
    unit: column && read ? unitChoiceOf(column, read.to, read.times).key : "",
    without: read?.without ?? (tailed ? readingAt(draft.sample, place, tailed, house).without : null),
    words: new Map(column ? unknownWords(draft.sample, place, column).map((word) => [word, ""]) : []),
    score: null,
    unitFrom: read?.unitFrom ?? "none",
  });
  if (use.kind === "probe") return { ...changed, probes: probesAt(draft.sample, place) };
  const clock = column?.kind === "instant" ? clockAt(draft.sample, place) : -1;
  const free = draft.headings[clock]?.use.kind;
  return free === "unread" || free === "kept"
    ? withHeading(changed, clock, { use: { kind: "clock", of: place } })
    : changed;
}

export const withUnit = (draft: MatchDraft, place: number, unit: string): MatchDraft =>
  withHeading(draft, place, { unit, unitFrom: "said" });

export function withWord(draft: MatchDraft, place: number, found: string, meant: string): MatchDraft {
  const words = draft.headings[place]?.words ?? new Map<string, string>();
  return withHeading(draft, place, { words: new Map([...words, [found, meant]]) });
}

export const withProbe = (draft: MatchDraft, name: string, stem: string | null, unit: string): MatchDraft => ({
  ...draft,
  probes: draft.probes.map((probe) => (probe.name === name ? { ...probe, stem, unit } : probe)),
});

export const withFixed = (draft: MatchDraft, id: string, stem: string, text: string): MatchDraft => ({
  ...draft,
  parts: draft.parts.map((part) =>
    part.id === id ? { ...part, fixed: new Map([...part.fixed, [stem, text]]) } : part,
  ),
});

/** What nobody can use any more, since its table is gone, is left over. */
function settled(draft: MatchDraft): MatchDraft {
  const hasReadings = draft.parts.some(({ table }) => table === "readings");
  const isLost = (heading: DraftHeading): boolean => {
    const { kind } = heading.use;
    if (kind === "column") return columnOf(draft, heading) === null;
    return kind === "kept" || ((kind === "probe" || kind === "value") && !hasReadings);
  };
  const lost = new Set(draft.headings.filter(isLost).map(({ place }) => place));
  return {
    ...draft,
    headings: draft.headings.map((heading) => {
      const { use, place } = heading;
      const isGone = lost.has(place) || (use.kind === "clock" && lost.has(use.of));
      return isGone ? { ...heading, use: leftOver(draft, place), score: null, unitFrom: "none" } : heading;
    }),
  };
}

/** One more table that the file holds; columns that nobody has used yet are suggested for it. */
export function withPart(draft: MatchDraft, table: TableName, house: Settings): MatchDraft {
  const id = freePartId(draft.parts, table);
  const asksKiln = stemColumn(table, "kiln")?.needed === true;
  const taken = new Set(draft.parts.map(({ fixed }) => fixed.get("kiln")));
  const kiln = house.kilns.find((one) => !taken.has(one.id))?.id ?? "";
  const part: DraftPart = { id, table, fixed: new Map(asksKiln ? [["kiln", kiln]] : []) };
  const grown = { ...draft, parts: [...draft.parts, part] };
  const fresh = draftOf(draft.path, draft.sample, draft.encoding, house);
  const hadPlace = keepsBeside(draft);
  return {
    ...grown,
    headings: grown.headings.map((heading) => {
      if (heading.use.kind !== "kept" && heading.use.kind !== "unread") return heading;
      const other = fresh.headings[heading.place];
      if (other !== undefined && id === table && partsOf(grown, other.use).includes(part)) return other;
      return hadPlace ? heading : { ...heading, use: leftOver(grown, heading.place) };
    }),
  };
}

/** The file holds this part no longer. */
export const withoutPart = (draft: MatchDraft, id: string): MatchDraft =>
  settled({ ...draft, parts: draft.parts.filter((part) => part.id !== id) });
