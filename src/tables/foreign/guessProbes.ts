import { declarationOf } from "../tableDeclarations.ts";
import type { ProbeRows } from "./foreignMatch.ts";
import { fitOf } from "./guessColumns.ts";
import { nameWith, saidUnit, wordsOf } from "./headingUnits.ts";
import { headingWords } from "./headingWords.ts";
import type { SampleLayout } from "./sampleLayout.ts";

const PROBE = ["probe", "sensor", "channel", "tag", "location", "point", "measurement", "name", "device"];
const VALUE = ["value", "reading", "temperature", "temp", "measured", "data"];
/** A column that says which probe has few words, each many times. */
const MOST_PROBES = 16;

/**
 * For a logger's file with a row for each probe: which column says the probe, which its value, and which column of the
 * readings each probe may be, by the words of its name; null where the file has no such look.
 */
export function guessProbes(sample: SampleLayout): ProbeRows | null {
  const words = sample.headings.map(wordsOf);
  const best = (phrases: readonly string[], suits: (values: readonly string[]) => boolean): number => {
    const scores = words.map((own, place) =>
      suits(sample.rows.map((row) => row[place] ?? "")) ? fitOf(own, phrases) : 0,
    );
    const top = Math.max(0, ...scores);
    return top === 0 ? -1 : scores.indexOf(top);
  };
  const probe = best(PROBE, (values) => {
    const kinds = new Set(values).size;
    return (
      kinds > 1 &&
      kinds <= MOST_PROBES &&
      kinds < values.length &&
      !values.every((value) => /^\d+([.,]\d+)?$/.test(value))
    );
  });
  const value = best(VALUE, (values) => values.some((text) => /^[+\-\u2212]?\d+([.,]\d+)?/.test(text)));
  if (probe < 0 || value < 0 || probe === value) return null;
  const { columns: declared } = declarationOf("readings");
  const columns = new Map<string, string>();
  const names = [...new Set(sample.rows.map((row) => row[probe] ?? ""))].filter((name) => name !== "");
  const fitting = names
    .flatMap((name) =>
      declared
        .filter(({ kind }) => kind === "number")
        .map((column) => ({
          name,
          column,
          score: fitOf(wordsOf(name), (headingWords.readings[column.stem] ?? "").split(" | ")),
        })),
    )
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score);
  const heading = `${sample.headings[value]} ${sample.unitRow[value] ?? ""}`;
  const tails = new Set(
    sample.rows.flatMap((row) => /^[+\-\u2212]?\d+(?:[.,]\d+)?\s*(\D+)$/.exec(row[value] ?? "")?.[1]?.trim() ?? []),
  );
  const [tail] = tails;
  for (const { name, column } of fitting) {
    const said = saidUnit(heading, column) ?? saidUnit(` ${tail ?? ""}`, column);
    const to = nameWith(column, said?.suffix ?? null);
    if (!columns.has(name) && ![...columns.values()].includes(to)) columns.set(name, to);
  }
  return {
    probe: sample.headings[probe] ?? "",
    value: sample.headings[value] ?? "",
    columns,
    without: tails.size === 1 && tail !== undefined ? tail : null,
  };
}
