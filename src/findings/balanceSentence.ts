import type { VarietyBalance } from "../report/controlChartResult.ts";
import { printNumber } from "../units/print.ts";
import type { UnitSystem } from "../units/unitSystem.ts";
import { counted } from "./counted.ts";
import { type Sentence, strong } from "./sentence.ts";

/** Middle of the varieties, each weighing as many batches as it has; null where none has the number. */
function overall(rows: readonly VarietyBalance[], of: (row: VarietyBalance) => number | null): number | null {
  const held = rows.flatMap((row) => {
    const value = of(row);
    return value === null || row.batches === 0 ? [] : [{ value, batches: row.batches }];
  });
  const batches = held.reduce((sum, one) => sum + one.batches, 0);
  return batches === 0 ? null : held.reduce((sum, one) => sum + one.value * one.batches, 0) / batches;
}

const tenth = (value: number): number => Number(value.toFixed(1));

/** Where 100 units of the grain's dry matter go: malt, rootlets, and the rest by difference. */
export function balanceSentence(rows: readonly VarietyBalance[], units: UnitSystem): Sentence {
  const malt = overall(rows, (row) => row.dryMatterYieldPercent);
  if (malt === null) return ["No batch has grain in, malt out and both moistures logged, so nothing is balanced yet."];
  const unit = units === "us" ? "lb" : "kg";
  const mass = (value: number): string => `${printNumber(value, 1)}\u00a0${unit}`;
  const start: Sentence = [`Of 100\u00a0${unit} of the grain’s dry matter `, strong(mass(malt)), " leave as malt"];
  // Varieties without rootlets weighed would mix two sums, so all three are said of those that have all.
  const whole = rows.filter((row) => row.rootletsPercent !== null && row.dryMatterYieldPercent !== null);
  const rootlets = overall(whole, (row) => row.rootletsPercent);
  if (rootlets === null || whole.length !== rows.length) {
    return [
      ...start,
      `; ${mass(100 - malt)} are lost. Rootlets are not weighed for every variety, so the loss is not parted.`,
    ];
  }
  return [
    ...start,
    ", ",
    strong(mass(rootlets)),
    " as rootlets, and ",
    strong(mass(100 - tenth(malt) - tenth(rootlets))),
    " in steep and by respiration, by difference.",
  ];
}

/** Why a part by difference can stand below 0. Empty where none does. */
export function negativeSentence(rows: readonly VarietyBalance[]): Sentence {
  const negative = rows.reduce((sum, row) => sum + row.negative, 0);
  if (negative === 0) return [];
  return [
    `In ${counted(negative, "batch", "batches")} steep and respiration come out below 0, which no grain does. They are what is left once malt and rootlets are taken off, so every error of scale and meter lands there: malt weighed with its rootlets, a mis-set scale or a moisture read wrong. They are shown as they are.`,
  ];
}
