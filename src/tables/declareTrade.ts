import { massFamily } from "../units/suffix.ts";
import type { Column, TableDeclaration } from "./declarations.ts";

const customer: Column = { stem: "customer", kind: "id", needed: true, meaning: "as in customers.csv" };
const mass: Column = {
  stem: "mass",
  kind: "number",
  needed: true,
  family: massFamily,
  range: [0.001, 500_000],
  meaning: "mass",
};
const note: Column = { stem: "note", kind: "text", meaning: "anything else; kept in the house" };

export const orders: TableDeclaration = {
  name: "orders",
  place: "orders.csv",
  meaning: "What was promised.",
  columns: [
    { stem: "order", kind: "id", needed: true, meaning: "the house's name for the order" },
    customer,
    { stem: "variety", kind: "id", needed: true, meaning: "variety or grain wanted" },
    { ...mass, meaning: "mass promised" },
    { stem: "due_on", kind: "date", needed: true, meaning: "day it is promised for" },
    note,
  ],
};

export const deliveries: TableDeclaration = {
  name: "deliveries",
  place: "deliveries.csv",
  meaning: "What left the house, one row for each run in a delivery.",
  columns: [
    { stem: "delivery", kind: "id", needed: true, meaning: "the house's name for the delivery" },
    customer,
    { stem: "run", kind: "id", needed: true, meaning: "the batch it came from" },
    { stem: "shipped_on", kind: "date", needed: true, meaning: "day it left" },
    { ...mass, meaning: "mass of this run in the delivery" },
    { stem: "package_kind", kind: "choice", choices: ["bag", "tote", "bulk"], meaning: "how it was packed" },
    { stem: "package_count", kind: "count", range: [0, 100_000], unit: "packages", meaning: "how many" },
    {
      stem: "product",
      kind: "choice",
      choices: ["malt", "rootlets", "screenings"],
      meaning: "what it was; blank is malt",
    },
    note,
  ],
};

export const customers: TableDeclaration = {
  name: "customers",
  place: "customers.csv",
  meaning: "Who buys, and who has agreed to a page of their own.",
  columns: [
    { ...customer, meaning: "the house's short name for the customer" },
    { stem: "name", kind: "text", meaning: "full name" },
    {
      stem: "share",
      kind: "choice",
      needed: true,
      choices: ["yes", "no"],
      meaning: "whether this customer gets a page of their own",
    },
    { stem: "link_key", kind: "id", meaning: "random name of that page's folder; written by the share command" },
    note,
  ],
};
