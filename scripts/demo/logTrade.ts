import { addDays, DAY, localDate } from "./clock.ts";
import { VARIETIES } from "./grains.ts";
import { randomStream } from "./random.ts";
import type { Row } from "./rows.ts";
import { LAST_DATE } from "./truths.ts";

/** Malt in the store. */
export interface Stock {
  readonly run: string;
  readonly variety: string;
  readonly unloadedAt: number;
  readonly maltKilograms: number;
  readonly rootletsKilograms: number;
}

interface Customer {
  readonly id: string;
  readonly name: string;
  readonly share: "yes" | "no";
  readonly varieties: readonly (readonly [name: string, weight: number])[];
  /** Usual days between orders, and bags of 25 kg an order. */
  readonly everyDays: number;
  readonly bags: number;
  readonly kind: "bag" | "tote";
}

const [first = "", second = "", third = "", fourth = ""] = VARIETIES.map((v) => v.name);

/** Made up, like everybody here. */
const CUSTOMERS: readonly Customer[] = [
  { id: "C01", name: "Brovanne Brewery", share: "yes", varieties: [[first, 3], [third, 1]], everyDays: 14, bags: 13, kind: "bag" },
  { id: "C02", name: "Ordrun Brewhouse", share: "yes", varieties: [[second, 2], [first, 1]], everyDays: 17, bags: 14, kind: "bag" },
  { id: "C03", name: "Pellvara Wheat Brewers", share: "yes", varieties: [[third, 3], [fourth, 2]], everyDays: 18, bags: 15, kind: "bag" },
  { id: "C04", name: "Ilvast Distillers", share: "no", varieties: [[second, 3], [first, 2]], everyDays: 24, bags: 18, kind: "tote" },
  { id: "C05", name: "Nerrow Street Bakers", share: "yes", varieties: [[fourth, 3], [third, 2]], everyDays: 21, bags: 6, kind: "bag" },
  { id: "C06", name: "Haverdun farm, feed", share: "no", varieties: [], everyDays: 35, bags: 0, kind: "bag" },
]; // biome-ignore format: one customer a line

export const BAG_KILOGRAMS = 25;
/** Malt rests before it is sold (common practice). */
const REST_DAYS = 14;

export interface Trade {
  readonly customers: readonly Row[];
  readonly orders: readonly Row[];
  readonly deliveries: readonly Row[];
}

interface Order {
  readonly id: string;
  readonly customer: Customer;
  readonly variety: string;
  readonly bags: number;
  readonly orderedOn: string;
  readonly dueOn: string;
}

/** Orders as customers place them, and deliveries from what was rested in store, oldest batch first, late where it was short. */
export function logTrade(seed: number, stock: readonly Stock[], firstDate: string): Trade {
  const orders = placeOrders(seed, addDays(firstDate, 25));
  const store = stock.map((s) => ({
    ...s,
    bags: Math.floor(s.maltKilograms / BAG_KILOGRAMS),
    readyOn: localDate(s.unloadedAt + REST_DAYS * DAY),
  }));
  const deliveries: Row[] = [];
  let waiting: Order[] = [];
  let shipments = 0;
  const deliver = (
    date: string,
    customer: string,
    parts: { run: string; kilograms: number; kind: string; count: number; product: string }[],
  ): void => {
    shipments++;
    for (const p of parts) {
      deliveries.push({
        delivery: String(shipments),
        customer,
        run: p.run,
        shipped_on: date,
        mass_kg: String(p.kilograms),
        package_kind: p.kind,
        package_count: String(p.count),
        product: p.product,
        note: "",
      });
    }
  };
  for (let date = firstDate; date <= LAST_DATE; date = addDays(date, 1)) {
    waiting = [...waiting, ...orders.filter((o) => addDays(o.dueOn, -2) === date)];
    const stillWaiting: Order[] = [];
    for (const order of waiting) {
      const ready = store.filter((s) => s.variety === order.variety && s.readyOn <= date && s.bags > 0);
      if (ready.reduce((sum, s) => sum + s.bags, 0) < order.bags) {
        stillWaiting.push(order);
        continue;
      }
      let left = order.bags;
      const parts = [];
      for (const s of ready) {
        const taken = Math.min(left, s.bags);
        if (taken === 0) break;
        s.bags -= taken;
        left -= taken;
        const kilograms = taken * BAG_KILOGRAMS;
        parts.push({
          run: s.run,
          kilograms,
          kind: order.customer.kind,
          count: order.customer.kind === "tote" ? 1 : taken,
          product: "",
        });
      }
      deliver(date, order.customer.id, parts);
    }
    waiting = stillWaiting;
  }
  addRootlets(seed, store, deliver);
  deliveries.sort(
    (a, b) =>
      Date.parse(a.shipped_on ?? "") - Date.parse(b.shipped_on ?? "") || Number(a.delivery) - Number(b.delivery),
  );
  // Numbered as they left the house.
  const numbers = new Map([...new Set(deliveries.map((d) => d.delivery ?? ""))].map((d, i) => [d, i + 1]));
  for (const d of deliveries) d.delivery = `D${String(numbers.get(d.delivery ?? "")).padStart(4, "0")}`;
  return {
    customers: CUSTOMERS.map((c) => ({ customer: c.id, name: c.name, share: c.share, link_key: "", note: "" })),
    orders: orders
      .filter((o) => o.orderedOn <= LAST_DATE)
      .map((o) => ({
        order: o.id,
        customer: o.customer.id,
        variety: o.variety,
        mass_kg: String(o.bags * BAG_KILOGRAMS),
        due_on: o.dueOn,
        note: "",
      })),
    deliveries,
  };
}

function placeOrders(seed: number, fromDate: string): readonly Order[] {
  const orders: Omit<Order, "id">[] = [];
  for (const [c, customer] of CUSTOMERS.entries()) {
    if (customer.varieties.length === 0) continue;
    const r = randomStream(seed, "orders", c);
    for (let date = addDays(fromDate, r.integer(0, customer.everyDays)); date <= LAST_DATE; ) {
      const variety = r.weighted(customer.varieties);
      const bags = Math.max(2, Math.round(customer.bags * (1 + 0.25 * r.normal())));
      orders.push({ customer, variety, bags, orderedOn: date, dueOn: addDays(date, r.integer(14, 24)) });
      date = addDays(date, Math.max(5, Math.round(customer.everyDays * (1 + 0.2 * r.normal()))));
    }
  }
  orders.sort((a, b) => (a.orderedOn < b.orderedOn ? -1 : a.orderedOn > b.orderedOn ? 1 : 0));
  return orders.map((o, i) => ({ ...o, id: `O${String(i + 1).padStart(4, "0")}` }));
}

/** Rootlets go to a farm as feed, a few batches' worth at a time. */
function addRootlets(
  seed: number,
  store: readonly Stock[],
  deliver: (
    date: string,
    customer: string,
    parts: { run: string; kilograms: number; kind: string; count: number; product: string }[],
  ) => void,
): void {
  const r = randomStream(seed, "rootlets");
  for (let i = 6; i < store.length; i += r.integer(7, 11)) {
    const taken = store.slice(i - 5, i);
    const last = taken[taken.length - 1];
    if (!last) return;
    const date = localDate(last.unloadedAt + r.integer(1, 6) * DAY);
    if (date > LAST_DATE) return;
    deliver(
      date,
      "C06",
      taken
        .filter((s) => s.rootletsKilograms > 1)
        .map((s) => ({
          run: s.run,
          kilograms: Math.floor(s.rootletsKilograms),
          kind: "bag",
          count: 1,
          product: "rootlets",
        })),
    );
  }
}
