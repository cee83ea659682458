import { type AcrospireCounts, acrospireCounted, meanAcrospireLength } from "../../malting/acrospire.ts";
import { acrospireShares, addedCounts } from "../../malting/germination/acrospireShares.ts";
import { countedLength, countedLengthInterval } from "../../malting/germination/countedLength.ts";
import type { RunRow } from "../runRow.ts";
import type { AcrospireRun, BedCount } from "../steepGerminationResult.ts";
import { nearestTarget, type TargetRow } from "../targetRow.ts";
import type { BedRow } from "./floorRows.ts";

const HOUR = 3_600_000;

/** What a bed is called where the log gives it no name: its place among the batch's beds. */
export const bedName = (bed: string | null, place: number): string => bed ?? `bed ${place + 1}`;

function bedCounts(beds: readonly BedRow[]): readonly BedCount[] {
  return beds.map(({ bed, counts, meanCelsius }, place) => ({
    bed: bedName(bed, place),
    counts,
    counted: counts === null ? 0 : acrospireCounted(counts),
    meanLength: counts === null ? null : meanAcrospireLength(counts),
    bedMeanCelsius: meanCelsius,
  }));
}

/** The batches whose kernels were counted at unloading, earliest first, the kernels of all beds counted together. */
export function acrospireRuns(
  runs: readonly RunRow[],
  bedsOf: ReadonlyMap<string, readonly BedRow[]>,
  targets: readonly TargetRow[],
): readonly AcrospireRun[] {
  const counted = runs.flatMap((row): AcrospireRun[] => {
    const { run, variety, grain, germinationStartedAt: from, germinationEndedAt: to } = row;
    if (to === null) return [];
    const beds = bedCounts(bedsOf.get(run) ?? []);
    const counts = addedCounts(beds.flatMap((bed): AcrospireCounts[] => (bed.counts === null ? [] : [bed.counts])));
    const length = countedLength(counts);
    const shares = acrospireShares(counts);
    if (length === null || shares === null) return [];
    const mean = nearestTarget(targets, "acrospire_mean", variety, grain);
    const overgrown = nearestTarget(targets, "acrospire_overgrown_pct", variety, grain);
    return [
      {
        run,
        variety,
        at: to,
        hours: from === null ? null : (to - from) / HOUR,
        bedMeanCelsius: row.bedMeanCelsius,
        counts,
        counted: length.counted,
        meanLength: countedLengthInterval(length),
        ...shares,
        beds,
        targets:
          mean === null && overgrown === null
            ? null
            : {
                meanLow: mean?.low ?? null,
                meanTarget: mean?.target ?? null,
                meanHigh: mean?.high ?? null,
                overgrownHigh: overgrown?.high ?? null,
              },
      },
    ];
  });
  return counted.sort((a, b) => a.at - b.at || (a.run < b.run ? -1 : 1));
}
