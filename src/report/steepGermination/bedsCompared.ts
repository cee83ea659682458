import { normalCdf, normalQuantile, studentTQuantile } from "../../analysis/distributions.ts";
import { holmAdjusted } from "../../analysis/holmAdjusted.ts";
import type { Interval } from "../../analysis/regressionFit.ts";
import { mean, sampleStandardDeviation } from "../../analysis/summary.ts";
import { addedCounts } from "../../malting/germination/acrospireShares.ts";
import { type CountedLength, countedLength } from "../../malting/germination/countedLength.ts";
import type { AcrospireRun, BedCount, BedLag, SteepGerminationResult } from "../steepGerminationResult.ts";

/** A bed is said to differ where the corrected probability lies below. */
const LEVEL = 0.05;

/** Fewer batches say nothing of how a bed usually does. */
const FEWEST_RUNS = 5;

/** Mean of the numbers that are there; null without any. */
function meanOf(values: readonly (number | null)[]): number | null {
  const found = values.filter((value) => value !== null);
  return found.length === 0 ? null : mean(found);
}

/** Length of one bed less that of the batch's other beds together, with the counting error of both. */
function againstOthers(own: CountedLength, others: CountedLength): Interval & { readonly p: number } {
  const estimate = own.mean - others.mean;
  const standardError = Math.hypot(own.standardError, others.standardError);
  const reach = normalQuantile(0.975) * standardError;
  return {
    estimate,
    low: estimate - reach,
    high: estimate + reach,
    p: 2 * normalCdf(-Math.abs(estimate) / standardError),
  };
}

function comparisonsOf(acrospire: AcrospireRun): readonly BedLag[] {
  const counted = acrospire.beds.flatMap((bed) => {
    const length = bed.counts === null ? null : countedLength(bed.counts);
    return length === null ? [] : [{ bed, length }];
  });
  if (counted.length < 2) return [];
  const lags = counted.flatMap(({ bed, length }): BedLag[] => {
    const others = counted.filter((other) => other.bed !== bed).map((other) => other.bed);
    const together = countedLength(addedCounts(others.flatMap(({ counts }) => counts ?? [])));
    if (together === null) return [];
    const { p, ...difference } = againstOthers(length, together);
    const othersCelsius = meanOf(others.map((other: BedCount) => other.bedMeanCelsius));
    const coolerByKelvin =
      bed.bedMeanCelsius === null || othersCelsius === null ? null : othersCelsius - bed.bedMeanCelsius;
    return [{ run: acrospire.run, bed: bed.bed, at: acrospire.at, difference, p, coolerByKelvin }];
  });
  // Of two beds one comparison says all: that of the shorter.
  return counted.length === 2 ? lags.filter(({ difference }, place) => isShorter(difference, place)) : lags;
}

const isShorter = ({ estimate }: Interval, place: number): boolean => estimate < 0 || (estimate === 0 && place === 0);

/** Each named bed against the others of its batches, averaged over batches, with Student's t interval. */
function differencesByBed(acrospires: readonly AcrospireRun[]): SteepGerminationResult["beds"]["byBed"] {
  const byBed = new Map<string, { differences: number[]; kelvins: number[] }>();
  for (const { beds } of acrospires) {
    const counted = beds.filter(({ meanLength }) => meanLength !== null);
    if (counted.length < 2) continue;
    for (const bed of counted) {
      const others = counted.filter((other) => other !== bed);
      const own = byBed.get(bed.bed) ?? { differences: [], kelvins: [] };
      byBed.set(bed.bed, own);
      own.differences.push((bed.meanLength as number) - mean(others.map(({ meanLength }) => meanLength as number)));
      const celsius = meanOf(others.map(({ bedMeanCelsius }) => bedMeanCelsius));
      if (bed.bedMeanCelsius !== null && celsius !== null) own.kelvins.push(bed.bedMeanCelsius - celsius);
    }
  }
  return [...byBed]
    .filter(([, { differences }]) => differences.length >= FEWEST_RUNS)
    .map(([bed, { differences, kelvins }]) => {
      const estimate = mean(differences);
      const runs = differences.length;
      const reach = (studentTQuantile(0.975, runs - 1) * sampleStandardDeviation(differences)) / Math.sqrt(runs);
      const warmerByKelvin = kelvins.length === 0 ? null : mean(kelvins);
      return { bed, runs, difference: { estimate, low: estimate - reach, high: estimate + reach }, warmerByKelvin };
    })
    .sort((a, b) => (a.bed < b.bed ? -1 : 1));
}

/**
 * The beds of one batch side by side: which of them lagged or ran ahead beyond counting error, corrected (Holm) over every
 * comparison made in these batches.
 */
export function bedsCompared(acrospires: readonly AcrospireRun[]): SteepGerminationResult["beds"] {
  const compared = acrospires.flatMap(comparisonsOf);
  const corrected = holmAdjusted(compared.map(({ p }) => p));
  const lags = compared.map((lag, at) => ({ ...lag, p: corrected[at] as number })).filter(({ p }) => p < LEVEL);
  return { compared: compared.length, lags, byBed: differencesByBed(acrospires) };
}
