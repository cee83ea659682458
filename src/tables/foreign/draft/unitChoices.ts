import type { Column } from "../../declarations.ts";
import { fileNames } from "../../insideName.ts";

/** One way in which a foreign file may write the values of a column. */
export interface UnitChoice {
  /** Unlike any other of its column. */
  readonly key: string;
  /** Name in the log format. */
  readonly to: string;
  /** What makes the file's number one of that name. */
  readonly times: number | null;
  /** As it is said to a reader; empty where there is nothing to choose. */
  readonly label: string;
}

/** By the suffix whose number they make. Exact by definition (NIST SP 811, appendix B.8). */
const SCALED: Readonly<Record<string, readonly (readonly [times: number, label: string])[]>> = {
  kg: [
    [1000, "tonnes"],
    [0.001, "grams"],
  ],
  lb: [[2000, "US tons of 2000 lb"]],
  cm: [
    [0.1, "mm"],
    [100, "m"],
  ],
  in: [[12, "ft"]],
};

const choice = (to: string, times: number | null, label: string): UnitChoice => ({
  key: times === null ? to : `${to} x ${times}`,
  to,
  times,
  label,
});

/** The units in which a foreign file may write `column`, the usual one first; a single one where there is no choice. */
export function unitChoices(column: Column): readonly UnitChoice[] {
  const names = fileNames(column);
  const own = names[0]?.name ?? column.stem;
  if (column.family) {
    return names.flatMap(({ name, suffix }) => [
      choice(name, null, suffix?.label ?? ""),
      ...(SCALED[suffix?.suffix ?? ""] ?? []).map(([times, label]) => choice(name, times, label)),
    ]);
  }
  if (column.kind === "instant") {
    return names.map(({ name, utc }) => choice(name, null, utc ? "UTC" : "the house’s own time"));
  }
  if (column.kind !== "number") return [choice(own, null, "")];
  if (column.unit?.startsWith("%")) return [choice(own, null, "%"), choice(own, 100, "a share of one, as in 0.45")];
  if (column.unit === "h") return [choice(own, null, "hours"), choice(own, 1 / 60, "minutes"), choice(own, 24, "days")];
  return [choice(own, null, column.unit ?? "")];
}

/** The choice of these words and factor; the first of the column's where none is. */
export function unitChoiceOf(column: Column, to: string, times: number | null): UnitChoice {
  const all = unitChoices(column);
  return all.find((one) => one.to === to && one.times === times) ?? (all[0] as UnitChoice);
}
