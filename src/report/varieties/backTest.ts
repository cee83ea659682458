import { brierComparison, reliabilityGroups } from "../../analysis/brierComparison.ts";
import { foretell } from "../../analysis/consistency/consistency.ts";
import { PairSums } from "../../analysis/consistency/pairSums.ts";
import type { BackTest } from "../varietiesResult.ts";
import { FEWEST_BATCHES } from "./ground.ts";
import { correlationOf, forecastGround, type JudgedBatch, type JudgedVariety, seenOf } from "./judged.ts";

/** Fewer forecasts than this say nothing of how well they foretell. */
const FEWEST_FORECASTS = 20;
const BATCHES_A_STEP = 5;

/** How often an event came so far, half a time added on either side so that it never says never. */
class BaseRate {
  #times = 0;
  #of = 0;
  get share(): number {
    return (this.#times + 0.5) / (this.#of + 1);
  }
  add(came: boolean): void {
    this.#times += came ? 1 : 0;
    this.#of += 1;
  }
}

/** What was said of events of one kind, beside the base rate so far, and what came. */
class Record {
  readonly #chances: number[] = [];
  readonly #rates: number[] = [];
  readonly #came: boolean[] = [];
  readonly #rate = new BaseRate();

  /** @param chance null where nothing could be said yet */
  foretold(chance: number | null, came: boolean): () => void {
    if (chance !== null) {
      this.#chances.push(chance);
      this.#rates.push(this.#rate.share);
      this.#came.push(came);
    }
    return () => this.#rate.add(came);
  }

  judge(): BackTest | null {
    if (this.#chances.length < FEWEST_FORECASTS) return null;
    const compared = brierComparison(this.#chances, this.#rates, this.#came);
    if (compared === null) return null;
    const { estimate, low, high } = compared.difference;
    return {
      forecasts: this.#chances.length,
      brierScore: compared.brierScore,
      brierOfBaseRate: compared.brierOfOther,
      difference: { estimate, low, high },
      groups: reliabilityGroups(this.#chances, this.#came),
    };
  }
}

interface Coming {
  readonly place: number;
  readonly batch: JudgedBatch;
}

/** Every batch of the house in the order in which the kiln was emptied; those emptied at once together. */
function inOrder(varieties: readonly JudgedVariety[]): readonly (readonly Coming[])[] {
  const all = varieties.flatMap(({ batches }, place) => batches.map((batch): Coming => ({ place, batch })));
  all.sort((a, b) => a.batch.at - b.batch.at || a.place - b.place);
  const together: Coming[][] = [];
  for (const coming of all) {
    const last = together.at(-1);
    if (last?.[0]?.batch.at === coming.batch.at) last.push(coming);
    else together.push([coming]);
  }
  return together;
}

/** Whether the batch lies about its variety's centre so far, with the room that the limits leave about their target. */
function staysEven({ row }: JudgedBatch, { counted }: JudgedVariety, sums: PairSums): boolean {
  return counted.every(({ at, limits }) => {
    const away = (row[at] as number) - sums.mean(at);
    return away >= -limits.below && away <= limits.above;
  });
}

export interface BackTests {
  /** Of *on target*: the next batch met every tolerance. */
  readonly onTarget: BackTest | null;
  /** Of *even*: it lay within as much room about the variety's centre so far. */
  readonly even: BackTest | null;
}

/**
 * Foretells each batch from those unloaded before it alone, wherever a score would have been shown then: its variety had
 * five batches with every measure. Means, spreads, the pooled spread and the correlation are of the past; what counts and
 * within which limits is as today, since it says what the event is. Batches unloaded together do not know of each other.
 * A few milliseconds a step.
 */
export function* backTest(varieties: readonly JudgedVariety[]): Generator<void, BackTests> {
  const sums = varieties.map((variety) => new PairSums(variety.sums.columns));
  const complete = varieties.map(() => 0);
  const onTarget = new Record();
  const even = new Record();
  for (const [step, together] of inOrder(varieties).entries()) {
    if (step % BATCHES_A_STEP === 0) yield;
    const correlation = correlationOf(sums);
    const learn: (() => void)[] = [];
    for (const { place, batch } of together) {
      learn.push(() => sums[place]?.add(batch.row));
      const { met } = batch;
      if (met === null) continue;
      const variety = varieties[place] as JudgedVariety;
      const own = sums[place] as PairSums;
      const seen = variety.counted.map(({ at }) => seenOf(own, at));
      if (seen.every(({ count }) => count > 0)) {
        const { others, limits, factor } = forecastGround(sums, place, variety.counted, correlation);
        const scored = (complete[place] as number) >= FEWEST_BATCHES;
        const forecast = scored ? foretell(seen, others, limits, factor, 127) : null;
        learn.push(even.foretold(forecast?.even ?? null, staysEven(batch, variety, own)));
        learn.push(onTarget.foretold(forecast?.onTarget ?? null, met));
      } else learn.push(onTarget.foretold(null, met));
      learn.push(() => {
        complete[place] = (complete[place] as number) + 1;
      });
    }
    for (const done of learn) done();
  }
  return { onTarget: onTarget.judge(), even: even.judge() };
}
