import type { Column } from "../../declarations.ts";
import { declarationOf } from "../../tableDeclarations.ts";
import { likelyDates } from "../suggestMatches.ts";
import { headingsFor, probeHeadings } from "./draftMatches.ts";
import { columnOf, type DraftHeading, type DraftPart, type MatchDraft, valuesAt, whenValues } from "./matchDraft.ts";

/** A column without which a part cannot be read, and which nothing fills yet. */
export interface Lack {
  readonly part: DraftPart;
  readonly column: Column;
}

/** Of what stands the same in a whole file: which kiln it is of, say. A batch is never that, nor is a measurement. */
const MAY_BE_FIXED = new Set(["id", "text", "choice"]);

const fromProbes = (draft: MatchDraft, { table }: DraftPart, { stem }: Column): boolean =>
  table === "readings" && probeHeadings(draft) !== null && draft.probes.some((probe) => probe.stem === stem);

const isOpen = (draft: MatchDraft, part: DraftPart, column: Column): boolean =>
  column.needed === true && headingsFor(draft, part, column).length === 0 && !fromProbes(draft, part, column);

/** The needed columns that no heading fills and that may be the same in the whole file. */
export const fixable = (draft: MatchDraft): readonly Lack[] =>
  draft.parts.flatMap((part) =>
    declarationOf(part.table).columns.flatMap((column) =>
      isOpen(draft, part, column) && MAY_BE_FIXED.has(column.kind) && column.stem !== "run" ? [{ part, column }] : [],
    ),
  );

/** What is still missing before every part can be read. */
export const lacks = (draft: MatchDraft): readonly Lack[] =>
  draft.parts.flatMap((part) =>
    declarationOf(part.table).columns.flatMap((column) =>
      isOpen(draft, part, column) && (part.fixed.get(column.stem) ?? "").trim() === "" ? [{ part, column }] : [],
    ),
  );

/** Why a column has to be looked at before its match can be trusted. */
export type Doubt =
  | { readonly kind: "perhaps" | "unit-nowhere" | "unit-by-values" | "words-unsaid" }
  /** Another column is said to be the same; the one that stands first is read. */
  | { readonly kind: "twice"; readonly other: number }
  /** A time of day without its date. */
  | { readonly kind: "clock-alone" };

/** A heading's words fit a column no better than this where they are said of many things. */
const SURE = 0.6;

export function doubtsOf(draft: MatchDraft, heading: DraftHeading): readonly Doubt[] {
  const { use, score, unitFrom, words } = heading;
  if (use.kind === "clock") {
    const date = draft.headings[use.of];
    const isTime = date !== undefined && columnOf(draft, date)?.kind === "instant";
    return isTime ? [] : [{ kind: "clock-alone" }];
  }
  const column = columnOf(draft, heading);
  if (column === null) return [];
  const found: Doubt[] = [];
  if (score !== null && score < SURE) found.push({ kind: "perhaps" });
  if (unitFrom === "nowhere") found.push({ kind: "unit-nowhere" });
  if (unitFrom === "values") found.push({ kind: "unit-by-values" });
  if ([...words.values()].includes("")) found.push({ kind: "words-unsaid" });
  const rival = draft.parts
    .flatMap((part) => {
      const all = headingsFor(draft, part, column);
      return all.includes(heading) ? all : [];
    })
    .find((other) => other !== heading);
  if (rival !== undefined) found.push({ kind: "twice", other: rival.place });
  return found;
}

/** Whether the first rows prove which is the day and which the month. */
export const datesAreSure = (draft: MatchDraft): boolean =>
  likelyDates(whenValues(draft), { dateOrder: "ymd", units: "metric" }).sure;

/** Whether the draft reads any date at all, whose order then matters. */
export const readsDates = (draft: MatchDraft): boolean =>
  draft.headings.some((heading) => {
    const kind = columnOf(draft, heading)?.kind;
    return (kind === "instant" || kind === "date") && valuesAt(draft, heading.place).length > 0;
  });
