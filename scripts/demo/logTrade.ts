import { addDays, DAY, localDate } from "./clock.ts";
import { BAG_KILOGRAMS, CUSTOMERS, FEED_CUSTOMER, type Order, placeOrders } from "./customers.ts";
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

export interface Trade {
  readonly customers: readonly Row[];
  readonly orders: readonly Row[];
  readonly deliveries: readonly Row[];
}

/** One lorry: what left, on one day, for one customer. */
interface Shipment {
  readonly on: string;
  readonly customer: string;
  readonly parts: readonly { readonly run: string; readonly kilograms: number; readonly count: number }[];
  readonly kind: "bag" | "tote";
  readonly product: "" | "rootlets";
}

/** Malt rests before it is sold (common practice). */
const REST_DAYS = 14;

/** Orders, and deliveries from what had rested in store: oldest batch first, late where the store was short. */
export function logTrade(seed: number, stock: readonly Stock[], firstDate: string): Trade {
  const made = new Map<string, number>();
  for (const { variety, maltKilograms } of stock) made.set(variety, (made.get(variety) ?? 0) + maltKilograms);
  const orders = placeOrders(seed, addDays(firstDate, 25), made);
  const shipments = [...fillOrders(orders, stock), ...sellRootlets(seed, stock)];
  shipments.sort((a, b) => Date.parse(a.on) - Date.parse(b.on));
  const customer = ({ id, name, share }: { id: string; name: string; share: string }): Row => ({
    customer: id,
    name,
    share,
    link_key: "",
    note: "",
  });
  return {
    customers: [...CUSTOMERS, FEED_CUSTOMER].map(customer),
    orders: orders.map((o) => ({
      order: o.id,
      customer: o.customer.id,
      variety: o.variety,
      mass_kg: String(o.bags * BAG_KILOGRAMS),
      due_on: o.dueOn,
      note: "",
    })),
    deliveries: shipments.flatMap((s, i) =>
      s.parts.map((part) => ({
        delivery: `D${String(i + 1).padStart(4, "0")}`,
        customer: s.customer,
        run: part.run,
        shipped_on: s.on,
        mass_kg: String(part.kilograms),
        package_kind: s.kind,
        package_count: String(part.count),
        product: s.product,
        note: "",
      })),
    ),
  };
}

/** Each variety's orders in the order they fall due, from its batches as they were made. */
function fillOrders(orders: readonly Order[], stock: readonly Stock[]): readonly Shipment[] {
  const shipments: Shipment[] = [];
  for (const variety of new Set(orders.map((o) => o.variety))) {
    const batches = stock.filter((s) => s.variety === variety);
    const bags = batches.map((s) => Math.floor(s.maltKilograms / BAG_KILOGRAMS));
    let next = 0;
    const due = orders.filter((o) => o.variety === variety).sort((a, b) => Date.parse(a.dueOn) - Date.parse(b.dueOn));
    for (const order of due) {
      const parts: { run: string; kilograms: number; count: number }[] = [];
      let left = order.bags;
      let on = addDays(order.dueOn, -2);
      for (; left > 0 && next < batches.length; ) {
        const batch = batches[next] as Stock;
        const taken = Math.min(left, bags[next] as number);
        if (taken > 0) {
          const count = order.customer.kind === "tote" ? 1 : taken;
          parts.push({ run: batch.run, kilograms: taken * BAG_KILOGRAMS, count });
          const rested = localDate(batch.unloadedAt + REST_DAYS * DAY);
          if (rested > on) on = rested;
        }
        left -= taken;
        bags[next] = (bags[next] as number) - taken;
        if (bags[next] === 0) next++;
      }
      // The store cannot fill it yet: nor any later one, since none is passed over.
      if (left > 0 || on > LAST_DATE) break;
      shipments.push({ on, customer: order.customer.id, parts, kind: order.customer.kind, product: "" });
    }
  }
  return shipments;
}

/** Rootlets go to a farm as feed, a few batches' worth at a time. */
function sellRootlets(seed: number, stock: readonly Stock[]): readonly Shipment[] {
  const r = randomStream(seed, "rootlets");
  const shipments: Shipment[] = [];
  for (let i = 6; i < stock.length; i += r.integer(7, 11)) {
    const taken = stock.slice(i - 5, i);
    const last = taken[taken.length - 1] as Stock;
    const on = localDate(last.unloadedAt + r.integer(1, 6) * DAY);
    if (on > LAST_DATE) break;
    const parts = taken
      .filter((s) => s.rootletsKilograms > 1)
      .map((s) => ({ run: s.run, kilograms: Math.floor(s.rootletsKilograms), count: 1 }));
    shipments.push({ on, customer: FEED_CUSTOMER.id, parts, kind: "bag", product: "rootlets" });
  }
  return shipments;
}
