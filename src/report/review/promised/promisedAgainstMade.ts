import { median } from "../../../analysis/summary.ts";
import type { KilnHoursResult } from "../../kilnHoursResult.ts";
import type { LoadRow } from "../../loadRow.ts";
import type { PromisedAgainstMade } from "../../reviewResult.ts";
import type { RunRow } from "../../runRow.ts";
import { owedOrders } from "./owed.ts";
import { paceOf } from "./pace.ts";
import type { TradeRows } from "./readTrade.ts";
import { seasonHours } from "./seasonHours.ts";
import { storeByVariety } from "./store.ts";

export interface Promises {
  readonly trade: TradeRows;
  /** The whole house's, as of the day. */
  readonly runs: readonly RunRow[];
  readonly loads: readonly LoadRow[];
  readonly kilnHours: KilnHoursResult;
  /** End of the logs. */
  readonly asOf: number;
}

/** A house that sells a month ahead plans as far. */
const WEEKS = 4;
const WEEK = 7 * 86_400_000;

type OfVariety = PromisedAgainstMade["varieties"][number];
type Order = PromisedAgainstMade["orders"][number];

const middle = (values: readonly number[]): number | null => (values.length === 0 ? null : median(values));

/** What a batch of a variety usually comes to, and how long it takes from steep to bag; the house's own where it has none. */
function usualBatch(runs: readonly RunRow[], variety: string) {
  const own = runs.filter((run) => run.variety === variety);
  const of = (pick: (run: RunRow) => number | null): number | null =>
    middle(own.flatMap((run) => pick(run) ?? [])) ?? middle(runs.flatMap((run) => pick(run) ?? []));
  return {
    kilograms: of(({ maltKilograms }) => maltKilograms),
    milliseconds: of(({ steepStartedAt, unloadedAt }) =>
      steepStartedAt === null || unloadedAt === null ? null : unloadedAt - steepStartedAt,
    ),
  };
}

/** The first order that neither store nor batches under way can fill, in order of due dates. */
function firstUnfilled(orders: readonly Order[], available: number): Order | null {
  let left = available;
  for (const order of orders) {
    left -= order.stillOwedKilograms;
    if (left < 0) return order;
  }
  return null;
}

/**
 * What is owed against what is in store and under way, the loads it takes, and whether the house's own pace will do. Null
 * where no orders are kept.
 */
export function promisedAgainstMade({ trade, runs, loads, kilnHours, asOf }: Promises): PromisedAgainstMade | null {
  if (trade.orders.length === 0) return null;
  const varietyOf = new Map(runs.flatMap(({ run, variety }) => (variety === null ? [] : [[run, variety] as const])));
  const orders = owedOrders(trade, varietyOf, asOf);
  const store = storeByVariety(runs, trade.deliveries);
  const underWay = runs.filter(({ unloadedAt }) => unloadedAt === null);
  const startFirst: { variety: string; latestSteepAt: number; forOrder: string }[] = [];
  const varieties = [...new Set([...orders.map(({ variety }) => variety), ...store.keys()])]
    .toSorted()
    .map((variety): OfVariety => {
      const own = orders.filter((order) => order.variety === variety);
      const usual = usualBatch(runs, variety);
      const held = store.get(variety);
      const owedKilograms = own.reduce((sum, { stillOwedKilograms }) => sum + stillOwedKilograms, 0);
      const coming = underWay.filter((run) => run.variety === variety).length * (usual.kilograms ?? 0);
      const shortKilograms = Math.max(0, owedKilograms - (held?.kilograms ?? 0) - coming);
      const waiting = firstUnfilled(own, (held?.kilograms ?? 0) + coming);
      if (waiting !== null && usual.milliseconds !== null) {
        startFirst.push({ variety, latestSteepAt: waiting.dueAt - usual.milliseconds, forOrder: waiting.order });
      }
      return {
        variety,
        owedKilograms,
        storeKilograms: held?.kilograms ?? 0,
        comingKilograms: coming,
        shortKilograms,
        firstDueAt: own[0]?.dueAt ?? null,
        bags: held?.bags ?? null,
        totes: held?.totes ?? null,
        loadsNeeded: usual.kilograms === null ? 0 : Math.ceil(shortKilograms / usual.kilograms),
      };
    });
  const loadsNeeded = varieties.reduce((sum, variety) => sum + variety.loadsNeeded, 0);
  const pace = paceOf(loads, WEEKS, asOf);
  return {
    asOf,
    varieties,
    orders,
    weeks: WEEKS,
    loadsNeeded,
    loadsThereAre: pace?.usual ?? 0,
    spells: pace?.spells ?? 0,
    hoursALoad: seasonHours(kilnHours, loads, asOf, asOf + WEEKS * WEEK),
    chanceLate: pace === null ? null : 1 - pace.atLeast(loadsNeeded) / pace.spells,
    startFirst: startFirst.toSorted((a, b) => a.latestSteepAt - b.latestSteepAt),
    tooLittle: pace === null ? "The logs are too short to say how many loads the house fires in four weeks." : null,
  };
}
