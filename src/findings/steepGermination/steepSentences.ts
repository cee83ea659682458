import type { SteepBias, SteepGerminationResult, SteepRun } from "../../report/steepGerminationResult.ts";
import { printNumber } from "../../units/print.ts";
import { exactPoints, percent, points, pointsRange } from "../chartWords.ts";
import { counted, listed } from "../counted.ts";
import { joinSentences, type Sentence, strong } from "../sentence.ts";
import { wholePercent } from "./measureWords.ts";

/** A batch whose steep-out moisture is known and has a range or an aim to be held against. */
export type JudgedSteep = SteepRun & {
  readonly steepOutPercent: number;
  readonly target: NonNullable<SteepRun["target"]>;
};

export const judgedSteeps = (steeps: readonly SteepRun[]): readonly JudgedSteep[] =>
  steeps.filter(
    (steep): steep is JudgedSteep =>
      steep.steepOutPercent !== null &&
      steep.target !== null &&
      (steep.target.low !== null || steep.target.target !== null || steep.target.high !== null),
  );

/** How steep-out stands against what the house wants of it. */
export interface SteepStanding {
  readonly judged: number;
  readonly under: readonly string[];
  readonly over: readonly string[];
  /** Mean of steep-out less its aim over the batches that have one, points. */
  readonly meanOffAim: number | null;
}

export function steepStanding(steeps: readonly SteepRun[]): SteepStanding {
  const judged = judgedSteeps(steeps);
  const off = judged.flatMap(({ steepOutPercent, target }) =>
    target.target === null ? [] : [steepOutPercent - target.target],
  );
  return {
    judged: judged.length,
    under: judged
      .filter(({ steepOutPercent, target }) => target.low !== null && steepOutPercent < target.low)
      .map(({ run }) => run),
    over: judged
      .filter(({ steepOutPercent, target }) => target.high !== null && steepOutPercent > target.high)
      .map(({ run }) => run),
    meanOffAim: off.length === 0 ? null : off.reduce((sum, value) => sum + value, 0) / off.length,
  };
}

/** A mean nearer to the aim than this, in points, is on it: meters and scales tell no less. */
const ON_AIM = 0.15;

/** Does the steep reach what the house wants? Empty where no target is set. */
export function steepOutSentence(steeps: readonly SteepRun[]): Sentence {
  const { judged, under, over, meanOffAim } = steepStanding(steeps);
  if (judged === 0) return [];
  const outside = under.length + over.length;
  const met: Sentence =
    outside === 0
      ? ["Steep-out moisture met its range in ", strong(`all ${counted(judged, "batch", "batches")}`)]
      : [
          "Steep-out moisture met its range in ",
          strong(`${printNumber(judged - outside, 0)} of ${counted(judged, "batch", "batches")}`),
        ];
  if (meanOffAim === null) return [...met, "."];
  if (Math.abs(meanOffAim) < ON_AIM) return [...met, " and is on its target on the whole."];
  return [
    ...met,
    ", on the whole ",
    strong(points(meanOffAim)),
    meanOffAim > 0 ? " over its target." : " under its target.",
  ];
}

/** What the drawing of steep-out shows: where batches lie outside their range, and which the latest were. */
export function steepOutSaid(steeps: readonly SteepRun[]): Sentence {
  const known = steeps.filter(({ steepOutPercent }) => steepOutPercent !== null);
  const { judged, under, over } = steepStanding(steeps);
  if (judged === 0) {
    return [
      `Steep-out moisture of ${counted(known.length, "batch", "batches")}; targets.csv sets no range for it, so it is held against nothing.`,
    ];
  }
  if (under.length + over.length === 0)
    return [`None of ${counted(judged, "batch", "batches")} lies outside its range.`];
  const side = (runs: readonly string[], where: string): readonly string[] =>
    runs.length === 0 ? [] : [`${printNumber(runs.length, 0)} ${where}`];
  const out = new Set([...under, ...over]);
  const latest = steeps.filter(({ run }) => out.has(run)).map(({ run }) => run);
  return [
    `Of ${counted(judged, "batch", "batches")} ${listed([...side(under, "came out too dry"), ...side(over, under.length === 0 ? "came out too wet" : "too wet")])}; the latest: ${listed(latest.slice(-3).reverse())}.`,
  ];
}

/** Chit at the end of the steep, with the batches that chitted too little. Empty where nobody looked. */
export function chitSentence(chitted: SteepGerminationResult["chitted"]): Sentence {
  if (chitted === null) return [];
  const { batches, medianPercent, below, lowPercent } = chitted;
  const usual: Sentence = [
    "Chitted at steep-out: ",
    strong(wholePercent(medianPercent)),
    ` in the middle one of ${counted(batches, "batch", "batches")}`,
  ];
  const wanted = `the ${wholePercent(lowPercent)} that the CMBTC malting guide (p.\u00a027) asks for`;
  return below.length === 0
    ? [...usual, `, never under ${wanted}.`]
    : [...usual, `; `, strong(printNumber(below.length, 0)), ` of them stayed under ${wanted}.`];
}

/** Moisture measured against moisture from mass gain: which reads higher, and what that would mean. */
export function biasSentence({ batches, meanPoints, limits, clear }: SteepBias): Sentence {
  const { estimate, low, high } = meanPoints;
  const agreement = `A single pair differs by ${pointsRange(limits[0], limits[1])} in 95 of 100 batches.`;
  if (!clear) {
    return joinSentences([
      [
        `Over ${counted(batches, "batch", "batches")} that have both, moisture as measured and moisture from mass gain agree: they differ by `,
        strong(exactPoints(estimate)),
        ` on the whole (${pointsRange(low, high)}, which holds 0).`,
      ],
      [agreement],
    ]);
  }
  const measuredHigher = estimate > 0;
  return joinSentences([
    [
      "Measured moisture reads ",
      strong(`${exactPoints(Math.abs(estimate))} ${measuredHigher ? "above" : "below"}`),
      ` moisture from mass gain (${pointsRange(low, high)}; ${counted(batches, "batch", "batches")} with both).`,
    ],
    [
      measuredHigher
        ? `Solids leached into the steep water do that: ${percent(1, 0)} of the dry matter lost makes mass gain read about 0.55\u00a0points low at ${percent(44, 0)} (worked out). So does a meter that reads high.`
        : "Water that clings to undrained grain does that; so does a meter that reads low. Drain longer before weighing and hold the meter against an oven.",
    ],
    [agreement],
  ]);
}
