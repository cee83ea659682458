import type { Fact, LaboratoryFact, LotFact, VarietyFact } from "../../report/fact.ts";
import type { VarietyScore } from "../../report/varietiesResult.ts";
import { chanceReal } from "./chanceReal.ts";
import { meanByScatterOf, shiftOf } from "./effectMean.ts";
import { type FactFrame, namedRuns, noLoss } from "./factFrame.ts";

/** A score is uneven where even the upper end of its interval stays under the lower end of the best variety's. */
const CLEARLY_LOWER = 0.95;

/** A variety that is less often on target than another, clearly. */
function varietyFact(frame: FactFrame, score: VarietyScore, best: number): VarietyFact | null {
  const { onTarget, variety, batchesInOrder, measures } = score;
  const [first, last, worst] = [batchesInOrder[0], batchesInOrder.at(-1), measures[0]];
  if (onTarget === null || onTarget.high === null || onTarget.high >= best || !first || !last || !worst) return null;
  if (!frame.monthRuns.some((run) => run.variety === variety)) return null;
  return {
    kind: "variety",
    variety,
    onTarget: onTarget.estimate,
    low: onTarget.low,
    high: onTarget.high,
    measure: worst.tolerance.measure,
    from: first.at,
    to: last.at,
    runs: namedRuns(batchesInOrder.map(({ run }) => run)),
    runCount: batchesInOrder.length,
    chanceReal: CLEARLY_LOWER,
    loss: noLoss,
    beside: [],
  };
}

/** Half the width between what is accepted, or from the target to the one limit there is; null where there is neither. */
function acceptedHalf(frame: FactFrame, variety: string, measure: string): number | null {
  const score = frame.report.varieties.scores.find((own) => own.variety === variety);
  const tolerance = score?.measures.find((own) => own.tolerance.measure === measure)?.tolerance;
  const { low = null, target = null, high = null } = tolerance ?? {};
  if (low !== null && high !== null) return (high - low) / 2;
  const limit = low ?? high;
  return limit === null || target === null ? null : Math.abs(limit - target);
}

/**
 * A lot's own level is worth a word where it takes this share of the room that batches have: every lot differs by something,
 * and the house steeps by it.
 */
const LEAST_OF_ROOM = 0.75;

/** A lot that stands out, while it is worked. Its comparison is corrected for all the lots looked at. */
function lotFacts(frame: FactFrame): readonly LotFact[] {
  return frame.report.varieties.details.flatMap(({ variety, reasons, splits }) =>
    reasons.flatMap(({ kind, lot, measure, size, how }): LotFact[] => {
      const room = acceptedHalf(frame, variety, measure);
      const isSmall =
        how === "level" && size !== null && room !== null && Math.abs(size.estimate) < LEAST_OF_ROOM * room;
      if (isSmall) return [];
      const own = kind === "lot" && lot !== null ? frame.report.runs.filter((run) => run.lot === lot) : [];
      const worked = own.filter(({ unloadedAt }) => unloadedAt !== null).toReversed();
      const [first, last] = [worked[0], worked.at(-1)];
      const inMonth = worked.some(({ run }) => frame.latestRuns.some((latest) => latest.run === run));
      if (lot === null || !inMonth || first?.unloadedAt == null || last?.unloadedAt == null) return [];
      const spread = splits.find((split) => split.measure === measure)?.lots.find((row) => row.lot === lot);
      return [
        {
          kind: "lot",
          variety,
          lot,
          measure,
          size,
          uneven: spread?.uneven ?? false,
          from: first.unloadedAt,
          to: last.unloadedAt,
          runs: namedRuns(worked.map(({ run }) => run)),
          runCount: worked.length,
          chanceReal: CLEARLY_LOWER,
          loss: noLoss,
          beside: [],
        },
      ];
    }),
  );
}

/** Three tenths of a point between meter and laboratory is a trouble of middling size (common practice). */
const METER = { share: 0.1, size: 0.3 };
/** Two tests of one malt differ by so much without anybody's fault (common practice). */
const LEAST_POINTS = 0.2;
/** What has always lain between them is no news of any month unless it is more (common practice): samples draw water on their way. */
const LEAST_STANDING = 0.3;
const LATEST_RESULTS = 6;

/** The latest differences against what they used to be, or as they stand; the surer of the two. */
function offLaboratory(earlier: readonly number[], latest: readonly number[]) {
  const [shift, standing] = [shiftOf(earlier, latest), meanByScatterOf(earlier, latest)];
  const found = [
    ...(shift !== null && Math.abs(shift.estimate) >= LEAST_POINTS ? [{ points: shift, moved: true }] : []),
    ...(standing !== null && Math.abs(standing.estimate) >= LEAST_STANDING ? [{ points: standing, moved: false }] : []),
  ].map((seen) => ({ ...seen, chanceReal: chanceReal(seen.points, METER) }));
  return found.toSorted((a, b) => b.chanceReal - a.chanceReal)[0] ?? null;
}

/** The house's moisture against the laboratory's on the same batches. */
function laboratoryFact(frame: FactFrame): LaboratoryFact | null {
  const rowOf = new Map(frame.report.runs.map((row) => [row.run, row]));
  const tested = frame.report.varieties.details
    .flatMap(({ lab }) => lab)
    .flatMap(({ run, testedOn, values }) => {
      const [row, tested] = [rowOf.get(run), values.moisture_pct ?? null];
      const own = row?.finalMoistureBasis === "laboratory" ? null : (row?.finalMoisturePercent ?? null);
      return own === null || tested === null || testedOn >= frame.before
        ? []
        : [{ run, testedOn, points: own - tested }];
    })
    .toSorted((a, b) => a.testedOn - b.testedOn);
  const pairs = tested.slice(-LATEST_RESULTS);
  const [first, last] = [pairs[0], pairs.at(-1)];
  const [earlier, latest] = [tested.slice(0, -LATEST_RESULTS), pairs].map((of) => of.map((pair) => pair.points));
  const off = offLaboratory(earlier ?? [], latest ?? []);
  if (off === null || !first || !last || pairs.length < 4) return null;
  if (frame.monthRuns.length === 0) return null;
  return {
    kind: "laboratory",
    ...off,
    from: first.testedOn,
    to: last.testedOn,
    runs: namedRuns(pairs.map(({ run }) => run)),
    runCount: pairs.length,
    loss: noLoss,
    beside: [],
  };
}

/** Uneven varieties, lots that stand out, and the laboratory against the house's own meter. */
export function varietyFacts(frame: FactFrame): readonly Fact[] {
  const { scores } = frame.report.varieties;
  const lows = scores.flatMap(({ onTarget }) => onTarget?.low ?? []);
  const best = lows.reduce((most, low) => Math.max(most, low), Number.NEGATIVE_INFINITY);
  const laboratory = laboratoryFact(frame);
  return [
    ...scores.map((score) => varietyFact(frame, score, best)).filter((fact) => fact !== null),
    ...lotFacts(frame),
    ...(laboratory === null ? [] : [laboratory]),
  ];
}
