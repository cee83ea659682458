import type { MonthReview, MonthTotals } from "../../report/reviewResult.ts";
import { printMonth } from "../../units/instant.ts";
import { print, printNumber, printSigned } from "../../units/print.ts";
import type { Quantity } from "../../units/quantity.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";

/** One figure of the month with what it was before. Blank where it was not logged. */
export interface TotalLine {
  readonly name: string;
  readonly now: string;
  readonly lastMonth: string;
  readonly lastYear: string;
}

interface Item {
  readonly name: string;
  readonly quantity: Quantity;
  readonly of: (totals: MonthTotals) => number | null;
  /** Batches or loads that logged it; a sum of some is marked. */
  readonly logged: (totals: MonthTotals) => number;
}

const items: readonly Item[] = [
  { name: "Batches", quantity: "count", of: ({ batches }) => batches, logged: ({ batches }) => batches },
  {
    name: "Grain in",
    quantity: "mass",
    of: ({ grainInKilograms }) => grainInKilograms,
    logged: ({ logged }) => logged.grainIn,
  },
  {
    name: "Malt out",
    quantity: "mass",
    of: ({ maltOutKilograms }) => maltOutKilograms,
    logged: ({ logged }) => logged.maltOut,
  },
  { name: "Kiln hours", quantity: "hours", of: ({ kilnHours }) => kilnHours, logged: ({ batches }) => batches },
  {
    name: "Energy",
    quantity: "energy",
    of: ({ energyKilowattHours }) => energyKilowattHours,
    logged: ({ logged }) => logged.energy,
  },
];

function figure({ of, quantity, logged }: Item, totals: MonthTotals | null, units: UnitSystem): string {
  if (totals === null) return "";
  const value = of(totals);
  if (value === null) return "not logged";
  const decimals = quantity === "hours" ? { decimals: 0 } : {};
  const some =
    logged(totals) < totals.batches
      ? ` (${printNumber(logged(totals), 0)} of ${printNumber(totals.batches, 0)} batches)`
      : "";
  return `${print(value, quantity, units, decimals)}${some}`;
}

/** `7, 2 more than in September` is for the eye to make; the line gives the three figures abreast. */
export function totalLines(
  { totals, lastMonth, sameMonthLastYear }: MonthReview,
  units: UnitSystem,
): readonly TotalLine[] {
  return items.map((item) => ({
    name: item.name,
    now: figure(item, totals, units),
    lastMonth: figure(item, lastMonth, units),
    lastYear: figure(item, sameMonthLastYear, units),
  }));
}

/** Malt out of grain in, as is, with the change against last month: the one ratio that a month-end asks for. */
export function yieldLine({ totals, lastMonth }: MonthReview): string | null {
  const share = (month: MonthTotals | null): number | null =>
    month === null ||
    month.grainInKilograms === null ||
    month.maltOutKilograms === null ||
    month.logged.maltOut < month.batches
      ? null
      : (100 * month.maltOutKilograms) / month.grainInKilograms;
  const [now, before] = [share(totals), share(lastMonth)];
  if (now === null) return null;
  const change =
    before === null || lastMonth === null
      ? ""
      : `, ${printSigned(now - before, 1)} points on ${printMonth(lastMonth.month)}`;
  return `${print(now, "percent", "metric")} of the grain became malt, as is${change}.`;
}
