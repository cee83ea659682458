import { columnLabel, tableLabel } from "../../columnLabels.ts";
import type { Column } from "../../declarations.ts";
import { declarationOf } from "../../tableDeclarations.ts";
import { type DraftPart, type HeadingUse, type MatchDraft, stemColumn } from "./matchDraft.ts";

/** Something to choose, with a key that is unlike the others'. */
export interface Choice {
  readonly key: string;
  readonly label: string;
}

export interface ChoiceGroup {
  readonly label: string;
  readonly choices: readonly Choice[];
}

/** A use as the value of a field. */
export function useKey(use: HeadingUse): string {
  if (use.kind === "clock") return `clock/${use.of}`;
  return use.kind === "column" ? `column/${use.part ?? ""}/${use.stem}` : use.kind;
}

/** @throws {RangeError} on anything that `useKey` does not make */
export function useOf(key: string): HeadingUse {
  const [kind, a = "", b = ""] = key.split("/");
  if (kind === "unread" || kind === "kept" || kind === "probe" || kind === "value") return { kind };
  if (kind === "clock" && /^\d+$/.test(a)) return { kind, of: Number(a) };
  if (kind === "column" && b !== "") return { kind, part: a === "" ? null : a, stem: b };
  throw new RangeError(`useOf requires a key of a use; got ${key}`);
}

/** A part in plain words; with the kiln, or its number, where its table stands twice. */
export function partLabel({ parts }: Pick<MatchDraft, "parts">, part: DraftPart): string {
  const alike = parts.filter(({ table }) => table === part.table);
  if (alike.length < 2) return tableLabel(part.table);
  const kiln = part.fixed.get("kiln") ?? "";
  return `${tableLabel(part.table)}, ${kiln === "" ? alike.indexOf(part) + 1 : kiln}`;
}

/** True of what several parts have in common: names of batches and vessels, notes, and in two parts of one table the time. */
function isCommon({ parts }: Pick<MatchDraft, "parts">, { kind, stem }: Column): boolean {
  const with_ = parts.filter(({ table }) => stemColumn(table, stem)?.kind === kind);
  if (with_.length < 2) return false;
  return (
    kind === "id" || kind === "text" || (kind === "instant" && new Set(with_.map(({ table }) => table)).size === 1)
  );
}

const isAlways = ({ kind }: Column): boolean => kind === "id";

/** What a column of the file may be said to be. */
export function headingChoices(draft: MatchDraft, place: number): readonly ChoiceGroup[] {
  const { parts, headings, sample } = draft;
  const common = new Map<string, Column>();
  for (const { table } of parts)
    for (const column of declarationOf(table).columns) if (isCommon(draft, column)) common.set(column.stem, column);
  const labelled = (part: DraftPart, label: string): string =>
    parts.length > 1 ? `${partLabel(draft, part)}: ${label}` : label;
  const choiceOf = (part: DraftPart, column: Column): Choice => ({
    key: useKey({ kind: "column", part: isAlways(column) ? null : part.id, stem: column.stem }),
    label: labelled(part, columnLabel(part.table, column)),
  });
  const together = [...common.values()].flatMap((column): readonly Choice[] => {
    const [first] = parts.filter(({ table }) => stemColumn(table, column.stem) !== null);
    return first
      ? [{ key: useKey({ kind: "column", part: null, stem: column.stem }), label: columnLabel(first.table, column) }]
      : [];
  });
  const dates = headings.flatMap((heading): readonly Choice[] => {
    const { use } = heading;
    const isTime = use.kind === "column" && parts.some(({ table }) => stemColumn(table, use.stem)?.kind === "instant");
    if (!isTime || heading.place === place) return [];
    const of = sample.headings[heading.place] || `column ${heading.place + 1}`;
    return [{ key: useKey({ kind: "clock", of: heading.place }), label: `time of day to ${of}` }];
  });
  const probes: readonly Choice[] = parts.some(({ table }) => table === "readings")
    ? [
        { key: "probe", label: "names the probe, a row for each" },
        { key: "value", label: "what that probe read" },
      ]
    : [];
  const groups: readonly ChoiceGroup[] = [
    {
      label: "No log of its own",
      choices: [
        { key: "unread", label: "not read" },
        { key: "kept", label: "kept beside the batch" },
      ],
    },
    { label: "In all of them", choices: together },
    ...parts.map((part) => ({
      label: partLabel(draft, part),
      choices: declarationOf(part.table).columns.flatMap((column) =>
        isAlways(column) && common.has(column.stem) ? [] : [choiceOf(part, column)],
      ),
    })),
    { label: "A time of day", choices: dates },
    { label: "A row for each probe", choices: probes },
  ];
  return groups.filter(({ choices }) => choices.length > 0);
}
