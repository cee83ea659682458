import type { BedFact } from "../../report/fact.ts";
import type { AcrospireRun } from "../../report/steepGerminationResult.ts";
import { chanceReal } from "./chanceReal.ts";
import { shiftOf } from "./effectMean.ts";
import { type FactFrame, LATEST_RUNS, namedRuns, noLoss } from "./factFrame.ts";

/** A twelfth of the kernel's length is a trouble of middling size: the width of a class is a quarter (acrospire classes). */
const BEFORE = { share: 0.05, size: 0.08 };
const LEAST_LENGTH = 0.04;
/** Beds lie side by side in some batches only, so that a bed's own latest reach back further than the month; but no further than this. */
const BED_DAYS = 200;
const DAY = 86_400_000;

/** One bed in one batch that had others beside it: its length less their mean. */
interface Beside {
  readonly run: AcrospireRun;
  readonly bed: string;
  readonly off: number;
  readonly others: readonly string[];
}

const average = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/**
 * Every bed against those beside it, in the order of the batches.
 *
 * @param perKelvin what a warmer bed grows by, to see them all at one temperature; null: as they were counted
 */
function besideOthers(acrospires: readonly AcrospireRun[], perKelvin: number | null): readonly Beside[] {
  return acrospires.flatMap((run) => {
    const known = run.beds.flatMap(({ bed, meanLength, bedMeanCelsius }) => {
      if (meanLength === null || (perKelvin !== null && bedMeanCelsius === null)) return [];
      return [{ bed, length: meanLength - (perKelvin ?? 0) * (bedMeanCelsius ?? 0) }];
    });
    if (known.length < 2) return [];
    return known.map(({ bed, length }): Beside => {
      const others = known.filter((other) => other.bed !== bed);
      const off = length - average(others.map((other) => other.length));
      return { run, bed, off, others: others.map((other) => other.bed) };
    });
  });
}

/**
 * What is left of all differences between beds since `since`, were this bed alone the one that moved: those beside it look moved
 * the other way.
 */
function unexplainedBy(fact: BedFact, all: readonly Beside[], since: number): number {
  const usual = new Map<string, number>();
  for (const name of new Set(all.map(({ bed }) => bed))) {
    const earlier = all.flatMap(({ bed, run, off }) => (bed === name && run.at < since ? [off] : []));
    usual.set(name, earlier.length === 0 ? 0 : average(earlier));
  }
  const squares = all
    .filter(({ run }) => run.at >= since)
    .map(({ run, bed, off, others }) => {
      const part = bed === fact.bed ? 1 : others.includes(fact.bed) ? -1 / others.length : 0;
      const moved = run.at >= fact.from ? part * fact.difference.estimate : 0;
      return (off - (usual.get(bed) ?? 0) - moved) ** 2;
    });
  return average(squares);
}

function movedBed(frame: FactFrame, name: string, all: readonly Beside[], atOneTemperature: boolean): BedFact | null {
  const own = all.filter(({ bed }) => bed === name);
  const latest = own.slice(-LATEST_RUNS);
  const [first, last] = [latest[0]?.run, latest.at(-1)?.run];
  if (!first || !last || last.at < frame.from || last.at - first.at > BED_DAYS * DAY) return null;
  const offs = (of: readonly Beside[]): readonly number[] => of.map(({ off }) => off);
  const difference = shiftOf(offs(own.slice(0, -LATEST_RUNS)), offs(latest));
  if (difference === null || Math.abs(difference.estimate) < LEAST_LENGTH) return null;
  return {
    kind: "bed",
    bed: name,
    difference,
    atOneTemperature,
    chanceReal: chanceReal(difference, BEFORE),
    from: first.at,
    to: last.at,
    runs: namedRuns(latest.map(({ run }) => run.run)),
    runCount: latest.length,
    loss: noLoss,
    beside: [],
  };
}

/** The bed that, had it alone moved, leaves least to explain: one that lags makes those beside it look ahead. */
function furthestOff(frame: FactFrame, perKelvin: number | null): BedFact | null {
  const known = frame.report.steepGermination.acrospires.filter(({ at }) => at < frame.before);
  const all = besideOthers(known, perKelvin);
  const names = [...new Set(all.map(({ bed }) => bed))].sort();
  const moved = names.map((name) => movedBed(frame, name, all, perKelvin !== null)).filter((fact) => fact !== null);
  const since = Math.min(...moved.map(({ from }) => from));
  const [best] = moved
    .map((fact) => ({ fact, unexplained: unexplainedBy(fact, all, since) }))
    // Of two beds that only ever lie beside each other either explains all: the shorter is named.
    .toSorted((a, b) => a.unexplained - b.unexplained || a.fact.difference.estimate - b.fact.difference.estimate);
  return best?.fact ?? null;
}

/**
 * A bed that has begun to lag behind, or to run ahead of, those beside it. As counted, a bed that grew cold shows; at one
 * temperature one that lags for another reason, which else hides in what each bed's own warmth does to it. The surer of the
 * two is said.
 */
export function bedFacts(frame: FactFrame): readonly BedFact[] {
  const perKelvin = frame.report.steepGermination.lengthOnTemperature?.perKelvin.estimate ?? null;
  const counted = furthestOff(frame, null);
  const allowed = perKelvin === null ? null : furthestOff(frame, perKelvin);
  const [surer] = [counted, allowed].filter((fact) => fact !== null).toSorted((a, b) => b.chanceReal - a.chanceReal);
  return surer === undefined ? [] : [surer];
}
