import type { AcrospireRun, SteepGerminationResult, SteepRun } from "../../report/steepGerminationResult.ts";

/** One batch on its way through tank and bed, as far as it is logged. */
export interface FloorBatch {
  readonly run: string;
  readonly at: number;
  readonly variety: string | null;
  readonly steep: SteepRun | null;
  readonly acrospire: AcrospireRun | null;
  /** Steep-out moisture by the fit on hours and water. */
  readonly fittedPercent: number | null;
  /** Measured less mass gain. */
  readonly biasPoints: number | null;
}

/** Steep and floor of every batch joined, the latest first. */
export function floorBatches(result: SteepGerminationResult): readonly FloorBatch[] {
  const { steeps, acrospires, uptake, bias } = result;
  const counted = new Map(acrospires.map((one) => [one.run, one]));
  const fitted = new Map((uptake?.points ?? []).map(({ run, fittedPercent }) => [run, fittedPercent]));
  const off = new Map((bias?.differences ?? []).map(({ run, points }) => [run, points]));
  const steeped = new Set(steeps.map(({ run }) => run));
  const joined = [
    ...steeps.map((steep) => ({ run: steep.run, at: steep.startedAt, variety: steep.variety, steep })),
    ...acrospires
      .filter(({ run }) => !steeped.has(run))
      .map(({ run, at, variety }) => ({ run, at, variety, steep: null })),
  ];
  return joined
    .map(
      (one): FloorBatch => ({
        ...one,
        acrospire: counted.get(one.run) ?? null,
        fittedPercent: fitted.get(one.run) ?? null,
        biasPoints: off.get(one.run) ?? null,
      }),
    )
    .sort((a, b) => b.at - a.at);
}
