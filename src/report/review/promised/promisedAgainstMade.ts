import type { Interval } from "../../../analysis/regressionFit.ts";
import { median } from "../../../analysis/summary.ts";
import type { KilnHoursResult } from "../../kilnHoursResult.ts";
import type { LoadRow } from "../../loadRow.ts";
import type { PromisedAgainstMade } from "../../reviewResult.ts";
import type { RunRow } from "../../runRow.ts";
import { latenessOf } from "./lateness.ts";
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
const DAY = 86_400_000;
const WEEK = 7 * DAY;
/** A batch that went into steep longer ago has left the kiln or come to grief, whatever the logs lack: the stages’ own limits. */
const LONGEST_UNDER_WAY = (6 + 14 + 4) * DAY;
/** Between two loads a kiln is emptied, swept and filled (common practice). */
const HOURS_BETWEEN_LOADS = 2;

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

/** Batches that are in steep, on the floor or in the kiln. */
const isUnderWay =
  (asOf: number) =>
  ({ steepStartedAt, unloadedAt }: RunRow): boolean =>
    unloadedAt === null && steepStartedAt !== null && steepStartedAt > asOf - LONGEST_UNDER_WAY;

/** How many batches a load holds; less than 1 where batches are split. */
function batchesALoad(runs: readonly RunRow[], loads: readonly LoadRow[]): number {
  const [batches, done] = [runs, loads].map((all) => all.filter(({ unloadedAt }) => unloadedAt !== null).length);
  return batches && done ? batches / done : 1;
}

/**
 * Orders that neither store nor batches under way can fill, each with the loads that it takes beside those of the orders due
 * before it.
 */
function unfilled(orders: readonly Order[], available: number, kilogramsALoad: number | null) {
  let [left, planned] = [available, 0];
  const found: { readonly order: Order; readonly loads: number }[] = [];
  for (const order of orders) {
    left -= order.stillOwedKilograms;
    if (left >= 0) continue;
    const loads = kilogramsALoad === null ? 0 : Math.ceil(-left / kilogramsALoad) - planned;
    planned += loads;
    found.push({ order, loads });
  }
  return found;
}

/** Kiln nights that so many loads take, and those there are in the weeks planned; nulls where hours cannot be foretold. */
function nightsOf(loadsNeeded: number, hoursALoad: Interval | null, loads: readonly LoadRow[]) {
  if (hoursALoad === null) return { nightsNeeded: null, nightsThereAre: null };
  const kilns = new Set(loads.map(({ kiln }) => kiln)).size;
  const nightsALoad = Math.ceil((hoursALoad.high + HOURS_BETWEEN_LOADS) / 24);
  return { nightsNeeded: loadsNeeded * nightsALoad, nightsThereAre: 7 * WEEKS * kilns };
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
  const underWay = runs.filter(isUnderWay(asOf));
  const held = batchesALoad(runs, loads);
  const dueAt: number[] = [];
  const startFirst: { variety: string; latestSteepAt: number; forOrder: string }[] = [];
  const varieties = [...new Set([...orders.map(({ variety }) => variety), ...store.keys()])]
    .toSorted()
    .map((variety): OfVariety => {
      const own = orders.filter((order) => order.variety === variety);
      const usual = usualBatch(runs, variety);
      const inStore = store.get(variety);
      const owedKilograms = own.reduce((sum, { stillOwedKilograms }) => sum + stillOwedKilograms, 0);
      const coming = underWay.filter((run) => run.variety === variety).length * (usual.kilograms ?? 0);
      const shortKilograms = Math.max(0, owedKilograms - (inStore?.kilograms ?? 0) - coming);
      const aLoad = usual.kilograms === null ? null : usual.kilograms * held;
      const waiting = unfilled(own, (inStore?.kilograms ?? 0) + coming, aLoad);
      for (const { order, loads: wanted } of waiting) {
        dueAt.push(...Array.from({ length: wanted }, () => order.dueAt));
      }
      const [first] = waiting;
      if (first !== undefined && usual.milliseconds !== null) {
        startFirst.push({
          variety,
          latestSteepAt: first.order.dueAt - usual.milliseconds,
          forOrder: first.order.order,
        });
      }
      return {
        variety,
        owedKilograms,
        storeKilograms: inStore?.kilograms ?? 0,
        comingKilograms: coming,
        shortKilograms,
        firstDueAt: own[0]?.dueAt ?? null,
        bags: inStore?.bags ?? null,
        totes: inStore?.totes ?? null,
        loadsNeeded: waiting.reduce((sum, { loads: wanted }) => sum + wanted, 0),
      };
    });
  const loadsNeeded = varieties.reduce((sum, variety) => sum + variety.loadsNeeded, 0);
  const pace = paceOf(loads, WEEKS, asOf);
  const hoursALoad = seasonHours(kilnHours, loads, asOf, asOf + WEEKS * WEEK);
  const milliseconds = usualBatch(runs, "").milliseconds ?? 0;
  const loadsUnderWay = Math.round(underWay.length / held);
  const lateness = latenessOf(loads, { dueAt, ahead: loadsUnderWay, milliseconds }, asOf);
  const surely = dueAt.some((due) => due + DAY < asOf + milliseconds);
  return {
    asOf,
    varieties,
    orders,
    weeks: WEEKS,
    loadsNeeded,
    loadsUnderWay,
    loadsThereAre: pace?.usual ?? 0,
    ...nightsOf(loadsNeeded, hoursALoad, loads),
    spells: lateness?.spells ?? 0,
    hoursALoad,
    // What cannot be made in time at all is late, however little is known of the pace.
    chanceLate: lateness !== null ? lateness.late / lateness.spells : surely ? 1 : null,
    startFirst: startFirst.toSorted((a, b) => a.latestSteepAt - b.latestSteepAt),
    tooLittle: pace === null ? "The logs are too short to say how many loads the house fires in four weeks." : null,
  };
}
