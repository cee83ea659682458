import { addDays, DAY } from "./clock.ts";
import { VARIETIES } from "./grains.ts";
import { randomStream } from "./random.ts";
import { LAST_DATE } from "./truths.ts";

/** A buyer, made up like everybody here. */
export interface Customer {
  readonly id: string;
  readonly name: string;
  readonly share: "yes" | "no";
  readonly varieties: readonly (readonly [name: string, weight: number])[];
  /** Usual days between orders at the house's usual pace, and bags of 25 kg an order. */
  readonly everyDays: number;
  readonly bags: number;
  readonly kind: "bag" | "tote";
}

const [first = "", second = "", third = "", fourth = ""] = VARIETIES.map((v) => v.name);

// biome-ignore format: one customer a line
export const CUSTOMERS: readonly Customer[] = [
  { id: "C01", name: "Brovanne Brewery", share: "yes", varieties: [[first, 3], [third, 1]], everyDays: 28, bags: 13, kind: "bag" },
  { id: "C02", name: "Ordrun Brewhouse", share: "yes", varieties: [[second, 2], [first, 1]], everyDays: 35, bags: 14, kind: "bag" },
  { id: "C03", name: "Pellvara Wheat Brewers", share: "yes", varieties: [[third, 1], [fourth, 1]], everyDays: 35, bags: 12, kind: "bag" },
  { id: "C04", name: "Ilvast Distillers", share: "no", varieties: [[second, 2], [first, 3]], everyDays: 50, bags: 18, kind: "tote" },
  { id: "C05", name: "Nerrow Street Bakers", share: "yes", varieties: [[fourth, 3], [third, 2]], everyDays: 30, bags: 6, kind: "bag" },
];

/** Who takes the rootlets, as feed. */
export const FEED_CUSTOMER = { id: "C06", name: "Haverdun farm, feed", share: "no" } as const;

export interface Order {
  readonly id: string;
  readonly customer: Customer;
  readonly variety: string;
  readonly bags: number;
  readonly dueOn: string;
}

export const BAG_KILOGRAMS = 25;

/** What this house makes in a usual day, kg; customers of a bigger one order more often. */
const USUAL_KILOGRAMS_A_DAY = 45;

/** This house promises about what it makes, and so is a batch behind now and then. */
const PROMISED_SHARE = 1.01;

/** Each variety's orders made so large that together they take their share of what is made of it. */
function fitToMade<O extends Pick<Order, "variety" | "bags">>(
  orders: readonly O[],
  madeKilograms: ReadonlyMap<string, number>,
): readonly O[] {
  return orders.map((order) => {
    const wanted =
      orders.filter((o) => o.variety === order.variety).reduce((sum, o) => sum + o.bags, 0) * BAG_KILOGRAMS;
    const factor = (PROMISED_SHARE * (madeKilograms.get(order.variety) ?? 0)) / wanted;
    return { ...order, bags: Math.max(2, Math.round(order.bags * factor)) };
  });
}

/** Orders as customers place them, oldest first, up to the end of the logs. @param madeKilograms by variety */
export function placeOrders(
  seed: number,
  fromDate: string,
  madeKilograms: ReadonlyMap<string, number>,
): readonly Order[] {
  const days = (Date.parse(LAST_DATE) - Date.parse(fromDate)) / DAY;
  const kilogramsMade = [...madeKilograms.values()].reduce((sum, kilograms) => sum + kilograms, 0);
  const pace = days > 60 ? kilogramsMade / days / USUAL_KILOGRAMS_A_DAY : 1;
  const placed: (Omit<Order, "id"> & { readonly on: string })[] = [];
  for (const [c, customer] of CUSTOMERS.entries()) {
    const r = randomStream(seed, "orders", c);
    const usual = customer.everyDays / pace;
    for (let on = addDays(fromDate, r.integer(0, Math.ceil(usual))); on <= LAST_DATE; ) {
      const variety = r.weighted(customer.varieties);
      const bags = Math.max(2, Math.round(customer.bags * (1 + 0.25 * r.normal())));
      placed.push({ customer, variety, bags, on, dueOn: addDays(on, r.integer(24, 38)) });
      on = addDays(on, Math.max(1, Math.round(usual * (1 + 0.2 * r.normal()))));
    }
  }
  placed.sort((a, b) => Date.parse(a.on) - Date.parse(b.on));
  return fitToMade(placed, madeKilograms).map(({ on: _, ...order }, i) => ({
    ...order,
    id: `O${String(i + 1).padStart(4, "0")}`,
  }));
}
