import type { LabRow } from "../../report/varietiesResult.ts";
import { extractAsIs } from "../../units/extractBasis.ts";
import { printDate } from "../../units/instant.ts";
import { maltMeasure, printMeasure } from "../../units/maltMeasure.ts";
import { counted, listed } from "../counted.ts";
import { joinSentences, type Sentence, strong } from "../sentence.ts";
import type { Reader } from "../thermostatWords.ts";

/** Certificates of one set of methods: results of two sets are not to be compared. */
export interface MethodGroup {
  readonly methodSet: string | null;
  /** Latest last. */
  readonly rows: readonly LabRow[];
}

export const methodName = ({ methodSet }: MethodGroup): string => methodSet ?? "methods not named";

/** Certificates by their set of methods, the set with the latest first. */
export function methodGroups(lab: readonly LabRow[]): readonly MethodGroup[] {
  const groups = new Map<string | null, LabRow[]>();
  for (const row of [...lab].sort((a, b) => a.testedOn - b.testedOn || (a.run < b.run ? -1 : 1))) {
    groups.set(row.methodSet, [...(groups.get(row.methodSet) ?? []), row]);
  }
  const latest = (rows: readonly LabRow[]): number => rows.at(-1)?.testedOn ?? 0;
  return [...groups].map(([methodSet, rows]) => ({ methodSet, rows })).sort((a, b) => latest(b.rows) - latest(a.rows));
}

/** Extract as is, per cent; null where extract or moisture was not tested. */
export function extractAsIsOf({ values }: LabRow): number | null {
  const [dry, moisture] = [values.extract_fine_dry_pct ?? null, values.moisture_pct ?? null];
  return dry === null || moisture === null || moisture < 0 || moisture >= 100 ? null : extractAsIs(dry, moisture);
}

const said = (row: LabRow, name: string, reader: Reader, as = maltMeasure(name).words): string | null => {
  const value = row.values[name] ?? null;
  return value === null ? null : `${as} ${printMeasure(maltMeasure(name), value, reader.units)}`;
};

/** How many certificates there are, by whom and by which methods, and what the latest says. */
export function labSentence(lab: readonly LabRow[], reader: Reader): Sentence {
  const groups = methodGroups(lab);
  const latest = groups[0]?.rows.at(-1);
  if (latest === undefined) return ["No batch of this variety was tested by a laboratory."];
  const asIs = extractAsIsOf(latest);
  const extract = said(latest, "extract_fine_dry_pct", reader, "extract");
  const parts = [
    extract === null
      ? null
      : `${extract} of dry mass${asIs === null ? "" : `, ${printMeasure(maltMeasure("extract_fine_dry_pct"), asIs, reader.units)} as is`}`,
    said(latest, "colour_ebc", reader),
    said(latest, "diastatic_power_wk", reader),
  ].filter((part) => part !== null);
  const methods = groups.map((group) => `${methodName(group)} (${counted(group.rows.length, "certificate")})`);
  const who = [...new Set(lab.flatMap(({ laboratory }) => laboratory ?? []))].sort();
  return joinSentences([
    [
      strong(counted(lab.length, "certificate")),
      `${who.length === 0 ? "" : ` from ${listed(who)}`}, by ${listed(methods)}. `,
      parts.length === 0
        ? `The latest is of ${latest.run}, ${printDate(latest.testedOn, reader.timeZone)}.`
        : `The latest, of ${latest.run} on ${printDate(latest.testedOn, reader.timeZone)}: ${parts.join("; ")}.`,
    ],
    groups.length > 1 ? ["Results of different methods are not compared, and stand on drawings of their own."] : [],
  ]);
}
