import { countedLength } from "../../malting/germination/countedLength.ts";
import type { GrowthCount } from "../../malting/germination/growthFit.ts";
import type { RunRow } from "../runRow.ts";
import type { BedRow, CountRow } from "./floorRows.ts";

const HOUR = 3_600_000;

/** A count with how many kernels it is of. */
export type CountedGrowth = GrowthCount & { readonly counted: number };

export interface GrowthCounts {
  /** On the way and at unloading, of beds whose temperature is known, by time. */
  readonly counts: readonly CountedGrowth[];
  /** Batches of which one bed was counted twice or more on the way. */
  readonly runsCountedTwice: number;
}

/** The bed that a count on the way belongs to: the one it names, else the batch's only one. */
function bedOf(count: CountRow, beds: readonly BedRow[]): BedRow | undefined {
  return count.bed === null ? (beds.length === 1 ? beds[0] : undefined) : beds.find(({ bed }) => bed === count.bed);
}

/** Everything that tells how a bed grows: each count with its hours since germination began and its bed's mean temperature. */
export function growthCounts(
  runs: readonly RunRow[],
  bedsOf: ReadonlyMap<string, readonly BedRow[]>,
  countsOf: ReadonlyMap<string, readonly CountRow[]>,
): GrowthCounts {
  const found: (CountedGrowth & { readonly at: number })[] = [];
  let runsCountedTwice = 0;
  for (const { run, variety } of runs) {
    const beds = bedsOf.get(run) ?? [];
    const add = (bed: BedRow, at: number, counts: CountRow["counts"]): boolean => {
      const length = countedLength(counts);
      if (bed.meanCelsius === null || at <= bed.startedAt || length === null) return false;
      found.push({
        at,
        run,
        variety: variety ?? "",
        hours: (at - bed.startedAt) / HOUR,
        celsius: bed.meanCelsius,
        length: length.mean,
        standardError: length.standardError,
        counted: length.counted,
      });
      return true;
    };
    const onTheWay = new Map<BedRow, number>();
    for (const count of countsOf.get(run) ?? []) {
      const bed = bedOf(count, beds);
      if (bed !== undefined && add(bed, count.countedAt, count.counts)) onTheWay.set(bed, (onTheWay.get(bed) ?? 0) + 1);
    }
    if ([...onTheWay.values()].some((times) => times > 1)) runsCountedTwice += 1;
    for (const bed of beds) if (bed.counts !== null && bed.endedAt !== null) add(bed, bed.endedAt, bed.counts);
  }
  found.sort((a, b) => a.at - b.at || (a.run < b.run ? -1 : 1));
  return { counts: found.map(({ at: _, ...count }) => count), runsCountedTwice };
}
