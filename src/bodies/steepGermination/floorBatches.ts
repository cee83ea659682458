import type { AcrospireRun, SteepGerminationResult, SteepRun } from "../../report/steepGerminationResult.ts";

/** One batch on its way through tank and bed, as far as it is logged. */
export interface FloorBatch {
  readonly run: string;
  readonly at: number;
  readonly variety: string | null;
  readonly steep: SteepRun | null;
  readonly acrospire: AcrospireRun | null;
}

/** Steep and floor of every batch joined, the latest first. */
export function floorBatches({ steeps, acrospires }: SteepGerminationResult): readonly FloorBatch[] {
  const counted = new Map(acrospires.map((one) => [one.run, one]));
  const steeped = new Set(steeps.map(({ run }) => run));
  const joined = [
    ...steeps.map(
      (steep): FloorBatch => ({
        run: steep.run,
        at: steep.startedAt,
        variety: steep.variety,
        steep,
        acrospire: counted.get(steep.run) ?? null,
      }),
    ),
    ...acrospires
      .filter(({ run }) => !steeped.has(run))
      .map(
        (acrospire): FloorBatch => ({
          run: acrospire.run,
          at: acrospire.at,
          variety: acrospire.variety,
          steep: null,
          acrospire,
        }),
      ),
  ];
  return joined.sort((a, b) => b.at - a.at);
}
