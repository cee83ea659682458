import type { Database } from "../../../engine/database.ts";

/** An order as it was logged. Dates are UTC midnights in milliseconds. */
export interface OrderRow {
  readonly order: string;
  readonly customer: string;
  readonly variety: string;
  readonly kilograms: number;
  readonly dueOn: number;
}

/** Malt that left the house: one run in one delivery. */
export interface DeliveryRow {
  readonly customer: string;
  readonly run: string;
  readonly shippedOn: number;
  readonly kilograms: number;
  readonly packageKind: string | null;
  readonly packageCount: number | null;
}

export interface TradeRows {
  readonly orders: readonly OrderRow[];
  readonly deliveries: readonly DeliveryRow[];
}

/** Orders with a due date, by that date, and deliveries of malt, by the day they left. */
export async function readTrade(database: Database): Promise<TradeRows> {
  return {
    orders: await database.query<OrderRow>(
      `SELECT "order", customer, variety, mass_kg AS kilograms, due_on AS "dueOn"
      FROM orders WHERE due_on IS NOT NULL ORDER BY due_on, "order"`,
    ),
    deliveries: await database.query<DeliveryRow>(
      `SELECT customer, run, shipped_on AS "shippedOn", mass_kg AS kilograms,
        package_kind AS "packageKind", package_count AS "packageCount"
      FROM deliveries WHERE coalesce(product, 'malt') = 'malt' ORDER BY shipped_on, delivery, run`,
    ),
  };
}
