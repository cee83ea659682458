import type { SteepFact } from "../../report/fact.ts";
import type { SteepRun } from "../../report/steepGerminationResult.ts";
import { chanceReal, type SeenEffect } from "./chanceReal.ts";
import { shiftOf } from "./effectMean.ts";
import { type FactFrame, namedRuns, noLoss } from "./factFrame.ts";

/** A point of steep-out moisture is a trouble of middling size: half the width that is usually accepted (findings of the trade). */
const BEFORE = { share: 0.05, size: 1 };
/** What no meter shows and no maltster minds. */
const LEAST_POINTS = 0.4;

function factOf(shape: SteepFact["shape"], points: SeenEffect, of: readonly SteepRun[]): SteepFact | null {
  const [first, last] = [of[0], of.at(-1)];
  if (first === undefined || last === undefined || Math.abs(points.estimate) < LEAST_POINTS) return null;
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

/** Steep-out moisture off each variety's own mean before. */
function shiftFact(frame: FactFrame): SteepFact | null {
  const { steeps } = frame.report.steepGermination;
  const latest = new Set(frame.latestRuns.map(({ run }) => run));
  const earlier = steeps.filter(({ run, startedAt }) => !latest.has(run) && startedAt < frame.before);
  const centres = new Map<string, number>();
  for (const variety of new Set(earlier.map((steep) => steep.variety ?? ""))) {
    const own = earlier.flatMap((steep) => ((steep.variety ?? "") === variety ? (steep.steepOutPercent ?? []) : []));
    if (own.length >= 4) centres.set(variety, own.reduce((sum, value) => sum + value, 0) / own.length);
  }
  const off = (of: readonly SteepRun[]): readonly number[] =>
    of.flatMap(({ variety, steepOutPercent }) => {
      const centre = centres.get(variety ?? "");
      return centre === undefined || steepOutPercent === null ? [] : [steepOutPercent - centre];
    });
  const now = steeps.filter(({ run }) => latest.has(run));
  const points = shiftOf(off(earlier), off(now));
  return points === null ? null : factOf("shift", points, now);
}

/** Measured steep-out moisture against that from the gain in mass, where both are logged. */
function biasFact(frame: FactFrame): SteepFact | null {
  const { bias, steeps } = frame.report.steepGermination;
  if (bias === null || !bias.clear || frame.monthRuns.length === 0) return null;
  const both = new Set(bias.differences.map(({ run }) => run));
  const of = steeps.filter(({ run }) => both.has(run));
  return frame.monthRuns.some(({ run }) => both.has(run)) ? factOf("bias", bias.meanPoints, of) : null;
}

export const steepFacts = (frame: FactFrame): readonly SteepFact[] =>
  [shiftFact(frame), biasFact(frame)].filter((fact) => fact !== null);
