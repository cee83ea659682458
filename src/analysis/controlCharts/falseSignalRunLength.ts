import { allSteps } from "../allSteps.ts";
import { normalQuantile } from "../distributions.ts";
import { cusumRunLength } from "./cusumRunLength.ts";
import { ewmaRunLength } from "./ewmaRunLength.ts";
import { movingRangeVariance, spreadRatioQuantile } from "./movingRangeSpread.ts";
import type { RuleChoice } from "./ruleChoice.ts";
import { type RunLength, runLength } from "./runLength.ts";
import { beyondLimitsRunLength, type Standardised, zoneRunLength } from "./runRuleRunLength.ts";
import { simulatedRunLength } from "./simulatedRunLength.ts";
import { trendRunLength } from "./trendRunLength.ts";
import { zoneChain } from "./zoneChain.ts";

/** What a choice of rules costs: runs between false signals. */
export interface FalseSignalRunLength {
  /** With centre and sigma known. */
  readonly known: RunLength;
  /** Average run lengths that nine in ten baselines of this size would give: 5th and 95th percentile. */
  readonly low: number;
  readonly high: number;
  /** The range was scaled from its parts, since no quick chain holds the whole choice. */
  readonly rangeIsScaled: boolean;
}

/** Values behind the centre, and the lengths of the series whose moving ranges gave sigma. */
export interface BaselineSize {
  readonly centreCount: number;
  readonly seriesCounts: readonly number[];
}

const sigmaCells = 80;
const centreCells = 24;
const sigmaNodes = 7;
const centreNodes = 4;
/** Least nodes of the weighted mean's equation: fewer than for the known value, and still good to 1 in 200. */
const ewmaNodes = 12;
/** Beyond this many states the weighted mean and the zone rules together would take over a second. */
const mostJointStates = 50;
/** Nodes and histories from which it is simulated what a sum of parts overstates. */
const overlapNodes = [3, 3] as const;
const overlapHistories = 2000;
const kept = new Map<string, FalseSignalRunLength>();

/**
 * Average run length between false signals with known limits, and its 5th and 95th percentile over what a baseline of
 * this size may have made of them: with 24 runs "one beyond the limits" gives from 27 to about 11,000 instead of 370.
 *
 * The estimated centre misses by a normal error of σ/√n; the estimated sigma over σ is spread as `spreadRatioQuantile`
 * says. Of each pair the run length follows exactly; ln(run length) is computed at 7 × 4 Chebyshev nodes in ln(sigma)
 * and the square of the centre's error, and read off in between for 80 × 24 equally likely pairs. Where no quick chain
 * holds the choice the parts' rates are added, and what their sum overstates, since parts signal together, is simulated
 * at 3 × 3 nodes. Several varieties: give the centre's count of one and the series of all that share sigma.
 *
 * Beside 200,000 simulated baselines of 12, 24 and 60 "one beyond the limits" has percentiles within 6 % (17 % for the upper
 * one of 12, which is 63,000): read two digits at most.
 *
 * @param baseline number of runs in the baseline of one variety, or sizes
 * @throws RangeError for fewer than 2 values
 */
export function falseSignalRunLength(choice: RuleChoice, baseline: number | BaselineSize): FalseSignalRunLength {
  return allSteps(searchFalseSignalRunLength(choice, baseline));
}

/**
 * {@link falseSignalRunLength} some milliseconds at a time, for whoever wants to hear of other things meanwhile or to give
 * up. What is kept from before comes with the first step, and else the first step does no work yet.
 *
 * @throws RangeError as it does, with the first step
 */
export function* searchFalseSignalRunLength(
  choice: RuleChoice,
  baseline: number | BaselineSize,
): Generator<void, FalseSignalRunLength> {
  const { centreCount, seriesCounts } =
    typeof baseline === "number" ? { centreCount: baseline, seriesCounts: [baseline] } : baseline;
  if (!(Number.isInteger(centreCount) && centreCount >= 1)) {
    throw new RangeError(`falseSignalRunLength requires a centre from one value or more; got ${centreCount}`);
  }
  const key = JSON.stringify([choice, centreCount, [...seriesCounts].sort((a, b) => a - b)]);
  const before = kept.get(key);
  if (before) return before;
  yield;
  const variance = movingRangeVariance(seriesCounts);
  const logRatios = Array.from({ length: sigmaCells }, (_, cell) => {
    return Math.log(spreadRatioQuantile((cell + 0.5) / sigmaCells, variance));
  });
  const centreSquares = Array.from({ length: centreCells }, (_, cell) => {
    return normalQuantile(0.5 + (cell + 0.5) / centreCells / 2) ** 2 / centreCount;
  });
  const spans: Spans = {
    logRatio: [Math.min(...logRatios), Math.max(...logRatios)],
    centreSquare: Math.max(...centreSquares),
  };
  const { summed, single } = partsOf(choice);
  const read = yield* interpolated(summed, spans, [sigmaNodes, centreNodes]);
  const overlap = single
    ? () => () => 0
    : yield* interpolated((at) => simulatedLog(choice, at) - summed(at), spans, overlapNodes);
  const values = Float64Array.from(
    logRatios.flatMap((ratio) => {
      const [readHere, overlapHere] = [read(ratio), overlap(ratio)];
      return centreSquares.map((square) => readHere(square) + overlapHere(square));
    }),
  ).sort();
  // The range is good to some per cent; digits past the ninth would only tell one engine's exp from another's.
  const percentile = (p: number): number =>
    Number(Math.exp(values[Math.floor(p * values.length)] as number).toPrecision(9));
  const result = { known: runLength(choice), low: percentile(0.05), high: percentile(0.95), rangeIsScaled: !single };
  if (kept.size > 200) kept.clear();
  kept.set(key, result);
  return result;
}

/** ln of the average run length that the parts' rates add up to; exact where one part holds the whole choice. */
function partsOf(choice: RuleChoice): { readonly summed: (at: Standardised) => number; readonly single: boolean } {
  const { rules, multiplier, weight, weightedLimit: limit, reference, decision } = choice;
  if (rules.length === 1 && rules[0] === "beyondLimits") {
    return { summed: (at) => Math.log(beyondLimitsRunLength(multiplier, at)), single: true };
  }
  const chain = zoneChain(rules, multiplier);
  const hasTrend = rules.includes("sixRisingOrFalling");
  const hasMean = rules.includes("weightedMean");
  const joint = hasMean && !hasTrend && chain.states <= mostJointStates;
  const beside = joint ? chain : zoneChain([], multiplier);
  const parts: ((at: Standardised) => number)[] = [];
  if (rules.includes("cumulativeSum")) parts.push((at) => cusumRunLength({ reference, decision }, at).mean);
  if (hasMean) parts.push((at) => ewmaRunLength({ weight, limit }, beside, at, ewmaNodes).mean);
  if (hasTrend) parts.push((at) => trendRunLength(chain, at).mean);
  else if (chain.edges.length > 0 && !joint) parts.push((at) => zoneRunLength(chain, at).mean);
  return {
    summed: (at) => -Math.log(parts.reduce((rate, part) => rate + 1 / part(at), 0)),
    single: parts.length === 1,
  };
}

function simulatedLog(choice: RuleChoice, at: Standardised): number {
  return Math.log(simulatedRunLength(choice, at, overlapHistories).distribution.mean);
}

interface Spans {
  readonly logRatio: readonly [number, number];
  readonly centreSquare: number;
}

/**
 * A polynomial through a function of how values stand to the chart, at Chebyshev nodes in ln(ratio) and the square, a node
 * a step; read at a ratio first and there at squares.
 */
function* interpolated(
  f: (at: Standardised) => number,
  { logRatio: [low, high], centreSquare }: Spans,
  [countX, countY]: readonly [number, number],
): Generator<void, (logRatio: number) => (square: number) => number> {
  const nodesX = chebyshev(countX, low, high);
  const nodesY = chebyshev(countY, 0, centreSquare);
  const values: number[][] = [];
  for (const x of nodesX) {
    const row: number[] = [];
    for (const y of nodesY) {
      row.push(f({ shift: Math.sqrt(y) / Math.exp(x), spread: 1 / Math.exp(x) }));
      yield;
    }
    values.push(row);
  }
  return (x) => {
    const inX = lagrange(nodesX, x);
    const across = nodesY.map((_, j) => weighted(inX, (i) => values[i]?.[j]));
    return (y) => weighted(lagrange(nodesY, y), (j) => across[j]);
  };
}

function weighted(weights: readonly number[], value: (place: number) => number | undefined): number {
  return weights.reduce((sum, weight, place) => sum + weight * (value(place) ?? Number.NaN), 0);
}

function chebyshev(count: number, low: number, high: number): number[] {
  return Array.from({ length: count }, (_, i) => {
    return (low + high) / 2 + ((high - low) / 2) * Math.cos((Math.PI * (i + 0.5)) / count);
  });
}

function lagrange(nodes: readonly number[], x: number): number[] {
  return nodes.map((node, i) =>
    nodes.reduce((product, other, j) => (j === i ? product : (product * (x - other)) / (node - other)), 1),
  );
}
