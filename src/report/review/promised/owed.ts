import type { PromisedAgainstMade } from "../../reviewResult.ts";
import type { TradeRows } from "./readTrade.ts";

const DAY = 86_400_000;

/**
 * The log names no order beside a delivery. What a customer got of a variety counts towards their orders of it, the one due
 * first before the next, and towards none that was due more than this long after it left: nobody ships six weeks early
 * (common practice).
 */
const EARLIEST_BEFORE_DUE = 42 * DAY;
/** A trace left of an order by rounding sacks is not owed. */
const LEAST_OWED_KILOGRAMS = 1;

type OwedOrder = PromisedAgainstMade["orders"][number];

/**
 * What is still owed of each order, by due date; settled orders are left out.
 *
 * @param varietyOf a run's variety, so that a delivery can be held against an order
 * @param asOf end of the logs
 */
export function owedOrders(
  { orders, deliveries }: TradeRows,
  varietyOf: ReadonlyMap<string, string>,
  asOf: number,
): readonly OwedOrder[] {
  const left = orders.map(({ kilograms }) => kilograms);
  for (const { customer, run, shippedOn, kilograms } of deliveries) {
    let rest = kilograms;
    orders.forEach((order, i) => {
      const fits =
        order.customer === customer &&
        order.variety === varietyOf.get(run) &&
        shippedOn >= order.dueOn - EARLIEST_BEFORE_DUE &&
        (left[i] ?? 0) > 0;
      if (!fits || rest <= 0) return;
      const taken = Math.min(rest, left[i] ?? 0);
      left[i] = (left[i] ?? 0) - taken;
      rest -= taken;
    });
  }
  return orders.flatMap(({ order, customer, variety, kilograms, dueOn }, i) => {
    const stillOwedKilograms = left[i] ?? 0;
    if (stillOwedKilograms < LEAST_OWED_KILOGRAMS) return [];
    return [{ order, customer, variety, kilograms, stillOwedKilograms, dueAt: dueOn, overdue: dueOn + DAY <= asOf }];
  });
}
