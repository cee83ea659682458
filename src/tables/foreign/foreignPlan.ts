import type { UnitSuffix } from "../../units/suffix.ts";
import type { TableDeclaration } from "../declarations.ts";
import { type HeaderFault, type HeaderMap, type MappedColumn, mapHeader } from "../headerMap.ts";
import { quotedValue } from "../problemLog.ts";
import { placeOf, plainHeading, sayColumn } from "./foreignHeadings.ts";
import { type ColumnMatch, type ForeignColumn, type ForeignMatch, MATCH_FILE } from "./foreignMatch.ts";

/** How one file is read by a match, and what other matches of the same file already take from it. */
export interface ForeignUse {
  readonly match: ForeignMatch;
  /** Other matches read this file too: a row that has nothing for this table is then no fault. */
  readonly shared: boolean;
  /** Headings and probes that the other matches name. */
  readonly namedElsewhere: readonly string[];
  /** Whether this match is the one that keeps, and says, what no match names. */
  readonly keepsUnknown: boolean;
}

/** Where one field of a row in the log format comes from. */
export type FieldSource =
  | { readonly kind: "columns"; readonly places: readonly number[]; readonly column: ColumnMatch }
  | { readonly kind: "fixed"; readonly text: string }
  | { readonly kind: "probe"; readonly probe: string };

export interface ForeignPlan {
  /** As if the file had the log format's headings, in the order of `sources`; unknown headings follow. */
  readonly header: HeaderMap;
  readonly sources: readonly FieldSource[];
  /** Fields that a row of the file may have. */
  readonly width: number;
  readonly probe: { readonly namePlace: number; readonly valuePlace: number } | null;
}

interface Planned {
  readonly to: string;
  readonly heading: string;
  readonly source: FieldSource;
  readonly times: number | null;
}

const wholeColumn = (to: string, places: readonly number[]): FieldSource => ({
  kind: "columns",
  places,
  column: { to, from: [], times: null, without: null, words: new Map() },
});

function missing(column: ForeignColumn, place: number, headings: readonly string[]): HeaderFault {
  const said = sayColumn(column);
  return place === -2
    ? {
        rule: "match-heading-twice",
        message: `${quotedValue(said)} stands twice among the headings, and ${MATCH_FILE} does not say which is meant.`,
        hint: "Name it by its place there, counted from 1: from = 3",
        heading: said,
        effect: "note",
        indexes: [],
      }
    : {
        rule: "match-heading-missing",
        message: `${MATCH_FILE} names ${quotedValue(said)}, and the file has no such column.`,
        hint: `Headings found: ${quotedValue(headings.filter((heading) => heading !== "").join(", ")) || "none"}. Has the export changed?`,
        heading: said,
        effect: "note",
        indexes: [],
      };
}

/** The unit's factor with the match's own on top: the file's number × times is what the heading's unit means. */
function scaled(mapped: MappedColumn, times: number | null): UnitSuffix | null {
  if (times === null) return mapped.suffix;
  const { suffix, factor, offset } = mapped.suffix ?? { suffix: "as-is", factor: 1, offset: 0 };
  return { suffix, label: "as the file writes it", factor: factor * times, offset };
}

function plannedColumns(match: ForeignMatch, headings: readonly string[], faults: HeaderFault[]): readonly Planned[] {
  const found: Planned[] = [];
  for (const column of match.columns) {
    const places = column.from.map((from) => placeOf(from, headings));
    column.from.forEach((from, i) => {
      const place = places[i] as number;
      if (place < 0) faults.push(missing(from, place, headings));
    });
    if (places.some((place) => place < 0)) continue;
    found.push({
      to: column.to,
      heading: column.from.map(sayColumn).join(" + "),
      source: { kind: "columns", places, column },
      times: column.times,
    });
  }
  for (const [probe, to] of match.probeRows?.columns ?? []) {
    found.push({ to, heading: probe, source: { kind: "probe", probe: plainHeading(probe) }, times: null });
  }
  for (const [to, text] of match.fixed) found.push({ to, heading: to, source: { kind: "fixed", text }, times: null });
  return found;
}

function usedPlaces(planned: readonly Planned[]): ReadonlySet<number> {
  return new Set(planned.flatMap(({ source }) => (source.kind === "columns" ? source.places : [])));
}

/** Works out, once the headings of a foreign file are read, where every field of a row in the log format comes from. */
export function planForeign(headings: readonly string[], use: ForeignUse, declaration: TableDeclaration): ForeignPlan {
  const { match } = use;
  const faults: HeaderFault[] = [];
  const planned = plannedColumns(match, headings, faults);
  const probe = match.probeRows && {
    namePlace: placeOf(match.probeRows.probe, headings),
    valuePlace: placeOf(match.probeRows.value, headings),
  };
  for (const [column, place] of probe && match.probeRows
    ? ([
        [match.probeRows.probe, probe.namePlace],
        [match.probeRows.value, probe.valuePlace],
      ] as const)
    : []) {
    if (place < 0) faults.push({ ...missing(column, place, headings), effect: "file-set-aside" });
  }
  const mapped = mapHeader(
    planned.map(({ to }) => to),
    declaration,
  );
  const known = new Set([...match.ignore, ...use.namedElsewhere].map(plainHeading));
  const used = new Set([...usedPlaces(planned), ...(probe ? [probe.namePlace, probe.valuePlace] : [])]);
  const left = headings.flatMap((heading, place) =>
    heading === "" || used.has(place) || known.has(plainHeading(heading)) || !use.keepsUnknown || !match.headings
      ? []
      : [{ heading, place }],
  );
  const unknown = left.map(({ heading, place }, i) => ({
    index: planned.length + i,
    heading: left.some((other) => other.heading === heading && other.place < place)
      ? `${heading} (column ${place + 1})`
      : heading,
  }));
  for (const { heading } of left) {
    faults.push({
      rule: "unknown-column",
      message: `${MATCH_FILE} says nothing of the column ${quotedValue(heading)}.`,
      hint: `It is kept with the run and used nowhere else. If it is not wanted, list it under ignore in ${MATCH_FILE}.`,
      heading,
      effect: "note",
      indexes: [],
    });
  }
  return {
    header: {
      mapped: mapped.mapped.map((column) => {
        const { heading, times, source } = planned[column.index] as Planned;
        const own = { ...column, heading, suffix: scaled(column, times) };
        return source.kind === "columns" ? { ...own, foreign: source.column } : own;
      }),
      unknown,
      faults: [
        ...mapped.faults.map((fault) =>
          fault.rule === "needed-column-missing"
            ? { ...fault, hint: `Name it in ${MATCH_FILE}, under columns or fixed. ${headingsFound(headings)}` }
            : fault,
        ),
        ...faults,
      ],
      width: planned.length + unknown.length,
    },
    sources: [
      ...planned.map(({ source }) => source),
      ...left.map(({ heading, place }) => wholeColumn(heading, [place])),
    ],
    width: headings.findLastIndex((heading) => heading !== "") + 1,
    probe,
  };
}

const headingsFound = (headings: readonly string[]): string =>
  `Headings found: ${quotedValue(headings.filter((heading) => heading !== "").join(", ")) || "none"}.`;
