import { twoSample } from "../../analysis/beforeAfter/twoSample.ts";
import { oneWay } from "../../analysis/brownForsythe.ts";
import { mean, median, sampleStandardDeviation } from "../../analysis/summary.ts";
import type { EventRow } from "../eventRow.ts";
import type { LotsOfMeasure } from "./lotSpreads.ts";

const DAY = 86_400_000;
/** Fewer batches of other varieties in those weeks do not say what the house did. */
const FEWEST_THEN = 4;
const CERTAIN = 0.05;
/** A cause is often found, mended and written down only after the batches that show it. */
const DAYS_AROUND = 14;

/** From the lot's first batch to its last. */
function spanOf({ lots }: LotsOfMeasure, lot: string): readonly [number, number] {
  const moments = lots.find((candidate) => candidate.lot === lot)?.values.map(({ batch }) => batch.at) ?? [];
  return [Math.min(...moments), Math.max(...moments)];
}

/**
 * Did the other varieties' batches of a lot's weeks stand off in the same way? Then it is the house that moved, and not this
 * grain. Each variety is taken about its own middle; a level counts only in the lot's own direction.
 */
export function houseMovedToo(measured: LotsOfMeasure, lot: string, how: "level" | "spread"): boolean {
  const [from, to] = spanOf(measured, lot);
  const then: number[] = [];
  const atOtherTimes: number[] = [];
  for (const [variety, values] of measured.house) {
    if (variety === measured.variety || values.length < FEWEST_THEN) continue;
    const middle = median(values.map(({ adjusted }) => adjusted));
    for (const { adjusted, batch } of values) {
      (batch.at >= from && batch.at <= to ? then : atOtherTimes).push(adjusted - middle);
    }
  }
  if (then.length < FEWEST_THEN || atOtherTimes.length < FEWEST_THEN) return false;
  if (how === "spread") {
    // A house that moves within the lot's weeks spreads the lot: so from the variety's usual, not from those weeks' middle.
    const [wide, rest] = [then.map(Math.abs), atOtherTimes.map(Math.abs)];
    const test = oneWay([wide, rest]);
    return test !== null && mean(wide) > mean(rest) && test.p / 2 < CERTAIN;
  }
  if (sampleStandardDeviation(then) + sampleStandardDeviation(atOtherTimes) === 0) return false;
  const own = measured.lots.find((candidate) => candidate.lot === lot)?.values ?? [];
  const others = measured.lots.flatMap((candidate) => (candidate.lot === lot ? [] : candidate.values));
  const moved = mean(own.map(({ adjusted }) => adjusted)) - mean(others.map(({ adjusted }) => adjusted));
  const { estimate, p } = twoSample(atOtherTimes, then);
  return Math.sign(estimate) === Math.sign(moved) && p < CERTAIN;
}

/** What was logged about the house in a lot's weeks; the other varieties of those weeks where nothing was. */
export function loggedThen(measured: LotsOfMeasure, lot: string, events: readonly EventRow[]): string {
  const [from, to] = spanOf(measured, lot);
  const logged = events.filter(
    ({ kind, on }) => kind !== "new-baseline" && on >= from - DAYS_AROUND * DAY && on <= to + DAYS_AROUND * DAY,
  );
  return logged.length === 0 ? "the other varieties of those weeks" : logged.map(({ what }) => what).join("; ");
}
