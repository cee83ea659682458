import { describe, expect, it } from "vitest";
import { owedOrders } from "../../../src/report/review/promised/owed.ts";
import { paceOf } from "../../../src/report/review/promised/pace.ts";
import { storeByVariety } from "../../../src/report/review/promised/store.ts";
import { madeUpReport } from "../../support/madeUpReport.ts";

const day = (text: string): number => Date.parse(`${text}T00:00:00Z`);
const order = (name: string, dueOn: string, kilograms: number, customer = "C1") => ({
  order: name,
  customer,
  variety: "Amber",
  kilograms,
  dueOn: day(dueOn),
});
const delivery = (shippedOn: string, kilograms: number, customer = "C1") => ({
  customer,
  run: "24-001",
  shippedOn: day(shippedOn),
  kilograms,
  packageKind: "bag",
  packageCount: kilograms / 25,
});
const varietyOf = new Map([["24-001", "Amber"]]);
const asOf = day("2026-06-30");

describe("owedOrders(trade, varietyOf, asOf)", () => {
  it("counts deliveries towards the order that is due first, and the rest towards the next", () => {
    const orders = [order("O1", "2026-06-10", 100), order("O2", "2026-07-10", 100)];
    const owed = owedOrders({ orders, deliveries: [delivery("2026-06-08", 150)] }, varietyOf, asOf);
    expect(owed.map(({ order: name, stillOwedKilograms }) => [name, stillOwedKilograms])).toEqual([["O2", 50]]);
  });

  it("leaves another customer's order, another variety's and one far ahead alone", () => {
    const orders = [order("O1", "2026-06-10", 100, "C2"), order("O2", "2026-12-10", 100)];
    const owed = owedOrders({ orders, deliveries: [delivery("2026-06-08", 100)] }, varietyOf, asOf);
    expect(owed.map(({ stillOwedKilograms }) => stillOwedKilograms)).toEqual([100, 100]);
  });

  it("says which orders are overdue: the day after they were due", () => {
    const orders = [order("O1", "2026-06-29", 100), order("O2", "2026-06-30", 100)];
    const owed = owedOrders({ orders, deliveries: [] }, varietyOf, asOf);
    expect(owed.map(({ overdue }) => overdue)).toEqual([true, false]);
  });
});

describe("storeByVariety(runs, deliveries)", () => {
  const [row] = madeUpReport(1).runs;
  if (row === undefined) throw new Error("the made-up report has no run");
  const made = { ...row, run: "24-001", variety: "Amber", maltKilograms: 260 };

  it("is what was made less what was shipped, and how many bags it fills", () => {
    const store = storeByVariety([made], [delivery("2026-06-08", 100)]).get("Amber");
    expect(store).toEqual({ kilograms: 160, bags: 6, totes: null });
  });

  it("is nothing, not less, where more was shipped than made", () => {
    const other = { ...made, run: "24-002", maltKilograms: 40 };
    expect(storeByVariety([made, other], [delivery("2026-06-08", 300)]).get("Amber")?.kilograms).toBe(40);
  });
});

describe("paceOf(loads, weeks, asOf)", () => {
  const loads = madeUpReport(1).loads.slice(0, 1);
  const [load] = loads;
  if (load === undefined) throw new Error("the made-up report has no load");
  const WEEK = 7 * 86_400_000;

  it("counts the loads of spells that end a week apart", () => {
    // One load a week for thirteen weeks: every spell of four weeks has four.
    const weekly = Array.from({ length: 13 }, (_, i) => ({ ...load, loadedAt: asOf - (13 - i) * WEEK + 1 }));
    const pace = paceOf(weekly, 4, asOf);
    expect(pace?.usual).toBe(4);
    expect(pace?.atLeast(5)).toBe(0);
    expect(pace?.atLeast(4)).toBe(pace?.spells);
  });

  it("is not known from logs of a few weeks", () => {
    expect(paceOf([{ ...load, loadedAt: asOf - 5 * WEEK }], 4, asOf)).toBeNull();
    expect(paceOf([], 4, asOf)).toBeNull();
  });
});
