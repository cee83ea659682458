import type { Interval } from "../../analysis/regressionFit.ts";
import type { ChangedMeasure, ChangeVerdict, Placebo } from "../changesResult.ts";
import { betterWay, onlyReads } from "./touchedMeasures.ts";

/** Fewer dates than this say little of how often chance shows as much. */
const FEWEST_DATES = 10;
/** Where more than one date in ten without a change shows as much, a difference is not put down to the change. */
const MOST_BY_CHANCE = 0.1;

export interface VerdictGround {
  readonly measure: ChangedMeasure;
  readonly scope: string;
  /** Level before. */
  readonly before: number;
  readonly total: Interval;
  readonly aim: number | null;
  readonly tellable: number;
  readonly placebo: Placebo | null;
}

export interface Verdict {
  readonly verdict: ChangeVerdict;
  readonly doubtedByPlacebo: boolean;
  readonly noBiggerThan: number;
}

/** Whether a change helped: a difference is told where its interval leaves 0 out and other dates seldom show as much. */
export function verdictOf(ground: VerdictGround): Verdict {
  const { total, tellable, placebo } = ground;
  const noBiggerThan = Math.max(Math.abs(total.low), Math.abs(total.high));
  const isTold = total.low > 0 || total.high < 0;
  if (!isTold) {
    const verdict = noBiggerThan <= tellable ? "no difference" : "cannot be told";
    return { verdict, doubtedByPlacebo: false, noBiggerThan };
  }
  const doubtedByPlacebo = placebo !== null && (isCommon(placebo) || goesTheOtherWay(placebo, total));
  return { verdict: doubtedByPlacebo ? "cannot be told" : wayOf(ground), doubtedByPlacebo, noBiggerThan };
}

const isCommon = ({ dates, asLarge }: Placebo): boolean => dates >= FEWEST_DATES && asLarge > MOST_BY_CHANCE * dates;

/** A difference that the first runs after the change do not show came later, of something else. */
const goesTheOtherWay = ({ own }: Placebo, { estimate }: Interval): boolean => own * estimate < 0;

function wayOf({ measure, scope, before, total, aim }: VerdictGround): ChangeVerdict {
  if (onlyReads(scope)) return "moved";
  const better = betterWay(measure);
  if (better !== null) return total.estimate > 0 === (better === "more") ? "helped" : "hurt";
  if (aim === null) return "moved";
  // Nearer to the aim at both ends of the interval, or farther at both.
  const was = Math.abs(before - aim);
  const distances = [total.low, total.high].map((change) => Math.abs(before + change - aim));
  if (distances.every((distance) => distance < was)) return "helped";
  return distances.every((distance) => distance > was) ? "hurt" : "moved";
}
