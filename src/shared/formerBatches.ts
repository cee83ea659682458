import { nextValueInterval } from "../analysis/nextValue.ts";
import type { Interval } from "../analysis/regressionFit.ts";
import { maltMeasure } from "../units/maltMeasure.ts";
import { type PassedCertificate, type PassedRun, SHARED_MEASURES } from "./projection.ts";

/** Batches from which the spread to expect is said; fewer say little of a spread (a choice of ours, *common practice*). */
export const FEWEST_FOR_SPREAD = 5;

/** Share of further batches that the spread to expect is meant to hold. */
export const SPREAD_COVERAGE = 0.9;

/** One measure of a batch among the same customer's former batches of its variety. */
export interface FormerMeasure {
  readonly measure: string;
  /** This batch's; null where it was not tested. */
  readonly value: number | null;
  /** Of the former batches that have one, oldest first. */
  readonly former: readonly number[];
  /** Mean and where the next batch is to be expected, from the former ones and this one; null below {@link FEWEST_FOR_SPREAD}. */
  readonly next: Interval | null;
}

/** What the comparison needs of a batch. */
export interface ComparedBatch {
  readonly run: Pick<PassedRun, "variety" | "finalMoisturePercent">;
  readonly certificates: readonly PassedCertificate[];
}

/** The newest certificate's value; results of different methods are never put together. */
function measured({ run, certificates }: ComparedBatch, measure: string, methodSet: string | null): number | null {
  if (!maltMeasure(measure).fromLaboratory) return run.finalMoisturePercent;
  const found = certificates.find(
    (certificate) => certificate.methodSet === methodSet && certificate.values[measure] !== null,
  );
  return found?.values[measure] ?? null;
}

/**
 * How a batch sits among the customer's former ones of its variety, measure by measure; measures that no former batch has
 * are left out.
 *
 * @param former the customer's batches delivered before this one, of any variety, oldest first
 */
export function amongFormer(batch: ComparedBatch, former: readonly ComparedBatch[]): readonly FormerMeasure[] {
  if (batch.run.variety === null) return [];
  const same = former.filter(({ run }) => run.variety === batch.run.variety);
  const methodSet =
    (batch.certificates[0] ?? same.findLast(({ certificates }) => certificates.length > 0)?.certificates[0])
      ?.methodSet ?? null;
  return SHARED_MEASURES.flatMap((measure) => {
    const value = measured(batch, measure, methodSet);
    const values = same.map((other) => measured(other, measure, methodSet)).filter((found) => found !== null);
    if (values.length === 0) return [];
    const all = value === null ? values : [...values, value];
    const next = all.length < FEWEST_FOR_SPREAD ? null : nextValueInterval(all, SPREAD_COVERAGE);
    return [{ measure, value, former: values, next }];
  });
}
