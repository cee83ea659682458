import type { PredictorColumn } from "../../analysis/factorisation.ts";

/** Observations of several varieties, each with a level of its own, for a fit of what moves all of them alike. */
export interface WithinVarieties {
  /** In alphabetical order; the first is the one that the intercept stands for. */
  readonly varieties: readonly string[];
  /** One column of 0 and 1 for each variety but the first. */
  readonly columns: readonly PredictorColumn[];
  /** What those columns hold for one variety. */
  readonly at: (variety: string) => readonly number[];
  /** What they hold for the mix of varieties as observed. */
  readonly mix: readonly number[];
}

/** @throws {RangeError} from `at` for a variety that is not among them */
export function withinVarieties(ofEach: readonly string[]): WithinVarieties {
  const varieties = [...new Set(ofEach)].sort();
  const others = varieties.slice(1);
  const columns = others.map((variety) => ({
    name: `variety ${variety}`,
    label: "variety",
    values: Float64Array.from(ofEach, (own) => (own === variety ? 1 : 0)),
  }));
  return {
    varieties,
    columns,
    at: (variety) => {
      if (!varieties.includes(variety)) throw new RangeError(`none of the observations is of ${variety}`);
      return others.map((other) => (other === variety ? 1 : 0));
    },
    mix: others.map((other) => ofEach.filter((own) => own === other).length / ofEach.length),
  };
}

/** Observations of varieties that have at least two, since one alone would only fix its variety's own level. */
export function ofVarietiesWithTwo<Row extends { readonly variety: string }>(rows: readonly Row[]): readonly Row[] {
  const counts = new Map<string, number>();
  for (const { variety } of rows) counts.set(variety, (counts.get(variety) ?? 0) + 1);
  return rows.filter(({ variety }) => (counts.get(variety) ?? 0) > 1);
}
