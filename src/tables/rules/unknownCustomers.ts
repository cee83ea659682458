import type { TableName } from "../declarations.ts";
import { rowsBy } from "./columns.ts";
import type { Rule } from "./rule.ts";

const named: readonly TableName[] = ["orders", "deliveries"];

/** A customer who is not in customers.csv: the row is kept; such a customer can have no page. */
export const unknownCustomers: Rule = ({ tables }) => {
  const customers = tables.get("customers");
  if (!customers) return [];
  const known = rowsBy(customers, "customer");
  return named.flatMap((table) =>
    [...rowsBy(tables.get(table), "customer")]
      .filter(([customer]) => !known.has(customer))
      .flatMap(([customer, rows]) =>
        rows.map((row) => ({
          table,
          row,
          columns: ["customer"],
          rule: "unknown-customer",
          message: `customers.csv has no customer ${customer}; the row is kept.`,
          hint: "Add the customer there, or mend the name here.",
          effect: "note" as const,
        })),
      ),
  );
};
