import { describe, expect, it } from "vitest";
import { latenessOf } from "../../../src/report/review/promised/lateness.ts";
import { owedOrders } from "../../../src/report/review/promised/owed.ts";
import { paceOf } from "../../../src/report/review/promised/pace.ts";
import { promisedAgainstMade } from "../../../src/report/review/promised/promisedAgainstMade.ts";
import { storeByVariety } from "../../../src/report/review/promised/store.ts";
import { load } from "../../support/loads.ts";
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
    expect(pace?.spells).toBe(9);
  });

  it("is not known from logs of a few weeks", () => {
    expect(paceOf([{ ...load, loadedAt: asOf - 5 * WEEK }], 4, asOf)).toBeNull();
    expect(paceOf([], 4, asOf)).toBeNull();
  });
});

describe("latenessOf(loads, pressed, asOf)", () => {
  const DAY = 86_400_000;
  const end = day("2026-06-30");
  // A load comes off the kiln every fifth day, for two years.
  const steady = Array.from({ length: 150 }, (_, i) => {
    const unloadedAt = end - (150 - i) * 5 * DAY + DAY / 4;
    return load(i, { loadedAt: unloadedAt - DAY / 2, unloadedAt });
  });
  const pressed = (days: readonly number[], ahead = 0) => ({
    dueAt: days.map((left) => end + left * DAY),
    ahead,
    milliseconds: 7 * DAY,
  });
  const shareLate = (days: readonly number[], ahead = 0): number => {
    const found = latenessOf(steady, pressed(days, ahead), end);
    return found === null ? Number.NaN : found.late / found.spells;
  };

  it("is never late with what the steady pace makes in time, and always with what it cannot", () => {
    // From steep to bag takes a week, then a load comes within five days.
    expect(shareLate([12])).toBe(0);
    expect(shareLate([12, 17, 22])).toBe(0);
    expect(shareLate([5])).toBe(1);
    expect(shareLate([11, 11])).toBe(1);
  });

  it("is late in the share of spells in which the load falls after its day", () => {
    // The first new load comes between the seventh day and the twelfth, and is in time by the end of the ninth: three in five.
    expect(shareLate([9])).toLieWithin(0.4, 0.05);
    // Two by the end of the twelfth: only where the first comes within the first of those days.
    expect(shareLate([12, 12])).toLieWithin(0.8, 0.05);
  });

  it("takes what is under way first", () => {
    expect(shareLate([14], 1)).toBe(0);
    expect(shareLate([14], 3)).toBe(1);
  });

  it("is late for certain with what was due before", () => {
    expect(shareLate([-3])).toBe(1);
  });

  it("is not known from logs of a few weeks", () => {
    expect(latenessOf(steady.slice(-6), pressed([12]), end)).toBeNull();
    expect(latenessOf([], pressed([12]), end)).toBeNull();
  });
});

describe("promisedAgainstMade(promises)", () => {
  const DAY = 86_400_000;
  const report = madeUpReport(60);
  const done = report.runs.filter(({ unloadedAt }) => unloadedAt !== null);
  const [run] = done;
  if (run === undefined) throw new Error("the made-up report has no run");
  const end = Math.max(...report.loads.map(({ unloadedAt }) => unloadedAt ?? 0));
  const variety = run.variety ?? "";
  const usual = 338;
  const owing = (kilograms: number, dueInDays: number, name = "O1") => ({
    ...order(name, "2026-01-01", kilograms),
    variety,
    dueOn: end + dueInDays * DAY,
  });
  const promisedOf = (runs: readonly (typeof run)[], orders: readonly ReturnType<typeof owing>[]) => {
    const kept = runs.map((one) => ({ ...one, variety }));
    // All that was made has left the house.
    const deliveries = kept.flatMap((one) =>
      one.maltKilograms === null
        ? []
        : [{ ...delivery("2020-01-01", one.maltKilograms, "C9"), run: one.run, packageKind: null, packageCount: null }],
    );
    const { loads, kilnHours } = report;
    const found = promisedAgainstMade({ trade: { orders, deliveries }, runs: kept, loads, kilnHours, asOf: end });
    if (found === null) throw new Error("orders are kept");
    return found;
  };
  const inSteep = (name: string, daysAgo: number) => ({
    ...run,
    run: name,
    steepStartedAt: end - daysAgo * DAY,
    loadedAt: null,
    unloadedAt: null,
    maltKilograms: null,
  });

  it("counts a batch on the floor as coming, and none that went into steep a month ago", () => {
    const coming = (runs: readonly (typeof run)[]) => promisedOf(runs, [owing(100, 30)]).varieties[0]?.comingKilograms;
    expect(coming([...done, inSteep("a", 3)])).toBe(usual);
    expect(coming([...done, inSteep("a", 3), inSteep("b", 400)])).toBe(usual);
  });

  it("counts the loads that all orders take together, and says what to steep first and by when", () => {
    const promised = promisedOf(done, [owing(usual, 20), owing(usual / 2, 30, "O2")]);
    expect(promised.loadsNeeded).toBe(2);
    expect(promised.varieties[0]?.shortKilograms).toBe(1.5 * usual);
    expect(promised.startFirst.map(({ forOrder }) => forOrder)).toEqual(["O1"]);
    const steepToBag = (run.unloadedAt ?? 0) - (run.steepStartedAt ?? 0);
    expect(promised.startFirst[0]?.latestSteepAt).toLieWithin(end + 20 * DAY - steepToBag, 2 * DAY);
  });

  it("sets kiln nights against those of four weeks, at this season's hours", () => {
    const { hoursALoad, nightsNeeded, nightsThereAre } = promisedOf(done, [owing(2 * usual, 20)]);
    expect(hoursALoad?.high).toBeLessThan(22);
    expect(nightsNeeded).toBe(2);
    expect(nightsThereAre).toBe(28);
  });

  it("is late for certain with an order that no new batch can meet", () => {
    expect(promisedOf(done, [owing(usual, 2)]).chanceLate).toBe(1);
    expect(promisedOf(done, [owing(usual, 60)]).chanceLate).toBe(0);
  });

  it("is late for certain with what cannot be made in time, even where the pace is not known", () => {
    const few = { loads: report.loads.slice(-2), kilnHours: report.kilnHours, asOf: end };
    const late = promisedAgainstMade({
      trade: { orders: [owing(usual, 2)], deliveries: [] },
      runs: done.slice(0, 0),
      ...few,
    });
    // Without a batch nobody knows how long one takes, and only what is overdue is late for certain.
    expect(late?.chanceLate).toBeNull();
    const trade = { orders: [owing(9 * usual, 2)], deliveries: [] };
    const own = done.slice(-2).map((one) => ({ ...one, variety }));
    expect(promisedAgainstMade({ trade, runs: own, ...few })?.chanceLate).toBe(1);
  });

  it("says nothing of a house that keeps no orders", () => {
    const { loads, kilnHours } = report;
    const trade = { orders: [], deliveries: [] };
    expect(promisedAgainstMade({ trade, runs: done, loads, kilnHours, asOf: end })).toBeNull();
  });
});
