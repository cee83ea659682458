import { numbersOf } from "./columns.ts";
import { loadReadings, probeColumns } from "./loadReadings.ts";
import type { Rule, RuleFault } from "./rule.ts";

/** More than any burner does to a kiln in so short a time: limits of ours, *common practice*. */
const JUMP_CELSIUS = 20;
const JUMP_MINUTES = 5;

/** A probe that leaps between neighbouring readings: a loose wire, a door, a probe pulled out. One note a load and probe. */
export const readingsJump: Rule = (context) => {
  const readings = context.tables.get("readings");
  if (!readings) return [];
  const at = numbersOf(readings, "at");
  const faults: RuleFault[] = [];
  for (const column of probeColumns) {
    const values = numbersOf(readings, column);
    for (const { from, to, run } of loadReadings(context)) {
      let jumps = 0;
      let first = -1;
      let largest = 0;
      for (let row = from + 1; row < to; row++) {
        const step = Math.abs((values[row] as number) - (values[row - 1] as number));
        const minutes = ((at[row] as number) - (at[row - 1] as number)) / 60_000;
        if (!(step > JUMP_CELSIUS && minutes <= JUMP_MINUTES)) continue;
        jumps++;
        if (first < 0) first = row;
        largest = Math.max(largest, step);
      }
      if (jumps === 0) continue;
      faults.push({
        table: "readings",
        row: first,
        columns: [column],
        rule: "readings-jump",
        message: `The probe jumps ${jumps === 1 ? "once" : `${jumps} times`} in this load, by up to ${largest.toFixed(0)} °C between neighbouring readings (kept).`,
        hint: "See whether its wire is loose, or whether the door stood open.",
        effect: "note",
        run,
      });
    }
  }
  return faults;
};
