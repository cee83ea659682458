import type { SteepFact } from "../../report/fact.ts";
import type { SteepBias, SteepRun } from "../../report/steepGerminationResult.ts";
import { chanceReal, type SeenEffect } from "./chanceReal.ts";
import { shiftOf } from "./effectMean.ts";
import { type FactFrame, namedRuns, noLoss } from "./factFrame.ts";

/** A point of steep-out moisture is a trouble of middling size: half the width that is usually accepted (findings of the trade). */
const BEFORE = { share: 0.05, size: 1 };
/** So sure that the two have come apart is sure enough to say that and nothing else of the steep. */
const CAME_APART = 0.8;
/** What no meter shows and no maltster minds. */
const LEAST_POINTS = 0.4;
/**
 * The steep water takes nearly a hundredth of the grain with it, so that the gain in mass always says near half a point less than the
 * meter (common practice): that much stands in every house, and is no news of any month.
 */
const LEAST_BIAS = 0.8;

function factOf(shape: SteepFact["shape"], points: SeenEffect, of: readonly SteepRun[]): SteepFact | null {
  const [first, last] = [of[0], of.at(-1)];
  const least = shape === "bias" ? LEAST_BIAS : LEAST_POINTS;
  if (first === undefined || last === undefined || Math.abs(points.estimate) < least) return null;
  return {
    kind: "steep",
    shape,
    points,
    from: first.startedAt,
    to: last.startedAt,
    runs: namedRuns(of.map(({ run }) => run)),
    runCount: of.length,
    chanceReal: chanceReal(points, BEFORE),
    loss: noLoss,
    beside: [],
  };
}

/** A batch's moisture as the meter would have it: what the gain in mass says lies off by what the two usually differ by. */
const asMeasured = ({ basis, steepOutPercent }: SteepRun, bias: SteepBias | null): number | null =>
  steepOutPercent === null
    ? null
    : steepOutPercent + (basis === "from mass gain" ? (bias?.meanPoints.estimate ?? 0) : 0);

/** Steep-out moisture off each variety's own mean before. */
function shiftFact(frame: FactFrame): SteepFact | null {
  const { steeps, bias } = frame.report.steepGermination;
  const latest = new Set(frame.latestRuns.map(({ run }) => run));
  const earlier = steeps.filter(({ run, startedAt }) => !latest.has(run) && startedAt < frame.before);
  const centres = new Map<string, number>();
  for (const variety of new Set(earlier.map((steep) => steep.variety ?? ""))) {
    const own = earlier.flatMap((steep) => ((steep.variety ?? "") === variety ? (asMeasured(steep, bias) ?? []) : []));
    if (own.length >= 4) centres.set(variety, own.reduce((sum, value) => sum + value, 0) / own.length);
  }
  const off = (of: readonly SteepRun[]): readonly number[] =>
    of.flatMap((steep) => {
      const [centre, percent] = [centres.get(steep.variety ?? ""), asMeasured(steep, bias)];
      return centre === undefined || percent === null ? [] : [percent - centre];
    });
  const now = steeps.filter(({ run }) => latest.has(run));
  const points = shiftOf(off(earlier), off(now));
  return points === null ? null : factOf("shift", points, now);
}

/** Measured steep-out moisture against that from the gain in mass, where both are logged, over all batches. */
function biasFact(frame: FactFrame): SteepFact | null {
  const { bias, steeps } = frame.report.steepGermination;
  if (bias === null || !bias.clear || frame.monthRuns.length === 0) return null;
  const both = new Set(bias.differences.map(({ run }) => run));
  const of = steeps.filter(({ run }) => both.has(run));
  return frame.monthRuns.some(({ run }) => both.has(run)) ? factOf("bias", bias.meanPoints, of) : null;
}

/** Of so few batches, if they agree, it can be said that meter and scale have come apart. */
const FEWEST_LATEST = 3;

/** The two no longer differ by what they used to: the scale, or the moisture meter, has moved. */
function movedBiasFact(frame: FactFrame): SteepFact | null {
  const { bias, steeps } = frame.report.steepGermination;
  const latest = new Set(frame.latestRuns.map(({ run }) => run));
  const differences = bias?.differences ?? [];
  const now = differences.slice(-Math.max(FEWEST_LATEST, differences.filter(({ run }) => latest.has(run)).length));
  if (!now.some(({ run }) => frame.monthRuns.some((own) => own.run === run))) return null;
  const points = shiftOf(
    differences.slice(0, differences.length - now.length).map((difference) => difference.points),
    now.map((difference) => difference.points),
  );
  const runs = new Set(now.map(({ run }) => run));
  return points === null
    ? null
    : factOf(
        "bias moved",
        points,
        steeps.filter(({ run }) => runs.has(run)),
      );
}

/** Where meter and scale have come apart one of them is wrong, and what either says of the steep says nothing; so that it alone is said. */
export function steepFacts(frame: FactFrame): readonly SteepFact[] {
  const moved = movedBiasFact(frame);
  if (moved !== null && moved.chanceReal >= CAME_APART) return [moved];
  return [shiftFact(frame), biasFact(frame)].filter((fact) => fact !== null);
}
