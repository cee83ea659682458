import type { MonthReview, MonthTotals } from "../../report/reviewResult.ts";
import { printMonth } from "../../units/instant.ts";
import { print, printNumber, printSigned } from "../../units/print.ts";
import { type Quantity, shownAs } from "../../units/quantity.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { counted, listed } from "../counted.ts";
import type { Sentence } from "../sentence.ts";

/** One figure of the month beside what it was before; a difference is the month's own less the other. Empty: not known. */
export interface TotalLine {
  /** With its unit: `grain in, kg`. */
  readonly name: string;
  readonly now: string;
  readonly lastMonth: string;
  readonly onLastMonth: string;
  readonly lastYear: string;
  readonly onLastYear: string;
}

interface Item {
  readonly name: string;
  /** `Energy was`: how a sentence about its gaps begins. */
  readonly logs: string;
  readonly quantity: Quantity;
  readonly of: (totals: MonthTotals) => number | null;
  /** Batches, or loads, that logged it, of how many there are; a sum of some is marked. */
  readonly logged: (totals: MonthTotals) => number;
  readonly counts: "batches" | "loads";
}

const items: readonly Item[] = [
  {
    name: "batches",
    logs: "Batches were",
    quantity: "count",
    of: ({ batches }) => batches,
    logged: ({ batches }) => batches,
    counts: "batches",
  },
  {
    name: "grain in",
    logs: "Grain in was",
    quantity: "mass",
    of: ({ grainInKilograms }) => grainInKilograms,
    logged: ({ logged }) => logged.grainIn,
    counts: "batches",
  },
  {
    name: "malt out",
    logs: "Malt out was",
    quantity: "mass",
    of: ({ maltOutKilograms }) => maltOutKilograms,
    logged: ({ logged }) => logged.maltOut,
    counts: "batches",
  },
  {
    name: "in the kiln",
    logs: "Kiln hours were",
    quantity: "hours",
    of: ({ kilnHours }) => kilnHours,
    logged: ({ logged }) => logged.kilnHours,
    counts: "loads",
  },
  {
    name: "energy",
    logs: "Energy was",
    quantity: "energy",
    of: ({ energyKilowattHours }) => energyKilowattHours,
    logged: ({ logged }) => logged.energy,
    counts: "loads",
  },
];

const isWhole = ({ logged, counts }: Item, totals: MonthTotals): boolean => logged(totals) >= totals[counts];

/** Sums of whole months are printed without decimals. */
const figure = (value: number | null, quantity: Quantity, units: UnitSystem): string =>
  value === null ? "" : print(value, quantity, units, { bare: true, decimals: 0 });

function difference(item: Item, now: MonthTotals, before: MonthTotals | null, units: UnitSystem): string {
  if (before === null || !isWhole(item, now) || !isWhole(item, before)) return "";
  const [value, other] = [item.of(now), item.of(before)];
  if (value === null || other === null) return "";
  // Of the figures as they are printed, so that whoever takes one from the other finds the same.
  const { factor, offset } = shownAs(item.quantity, units);
  const [shown, shownBefore] = [value, other].map((each) => Math.round(each * factor + offset));
  return printSigned((shown ?? 0) - (shownBefore ?? 0), 0);
}

/** Batches, grain in, malt out, hours and energy, each with the month before and the same month a year before. */
export function totalLines(
  { totals, lastMonth, sameMonthLastYear }: MonthReview,
  units: UnitSystem,
): readonly TotalLine[] {
  return items
    .filter((item) => [totals, lastMonth, sameMonthLastYear].some((month) => month !== null && item.of(month) !== null))
    .map((item) => {
      const { unit } = shownAs(item.quantity, units);
      const of = (month: MonthTotals | null): string =>
        month === null ? "" : figure(item.of(month), item.quantity, units);
      return {
        name: unit === "" ? item.name : `${item.name}, ${unit}`,
        now: of(totals),
        lastMonth: of(lastMonth),
        onLastMonth: difference(item, totals, lastMonth, units),
        lastYear: of(sameMonthLastYear),
        onLastYear: difference(item, totals, sameMonthLastYear, units),
      };
    });
}

const countOf = ({ counts }: Item, totals: MonthTotals): string =>
  counts === "loads" ? counted(totals.loads, "load") : counted(totals.batches, "batch", "batches");

/**
 * `Energy was logged for 5 of 6 loads in October 2026.`: sums that are short of a batch or load, whatever they are compared with.
 */
export function partSums({ totals, lastMonth, sameMonthLastYear }: MonthReview): Sentence {
  const short = items.flatMap((item) => {
    const months = [totals, lastMonth, sameMonthLastYear].flatMap((month) =>
      month === null || isWhole(item, month) || item.of(month) === null
        ? []
        : [`${printNumber(item.logged(month), 0)} of ${countOf(item, month)} in ${printMonth(month.month)}`],
    );
    return months.length === 0 ? [] : [`${item.logs} logged for only ${listed(months)}.`];
  });
  return short.length === 0 ? [] : [short.join(" ")];
}

/** Malt out of grain in, as is, with the change against last month: the one ratio that a month-end asks for. */
export function yieldLine({ totals, lastMonth }: MonthReview): Sentence {
  const share = (month: MonthTotals | null): number | null =>
    month === null ||
    !month.grainInKilograms ||
    month.maltOutKilograms === null ||
    month.logged.maltOut < month.batches ||
    month.logged.grainIn < month.batches
      ? null
      : (100 * month.maltOutKilograms) / month.grainInKilograms;
  const [now, before] = [share(totals), share(lastMonth)];
  if (now === null) return [];
  const change =
    before === null || lastMonth === null
      ? ""
      : `; ${Math.abs(now - before) < 0.05 ? "as" : `${printNumber(Math.abs(now - before), 1)} points ${now > before ? "more" : "less"} than`} in ${printMonth(lastMonth.month)}`;
  return [
    `${print(now, "percent", "metric")} of the grain became malt, weighed as it is and cleaned where that was logged${change}.`,
  ];
}
