import { numbersOf } from "./columns.ts";
import { loadReadings, probeColumns } from "./loadReadings.ts";
import type { Rule, RuleFault } from "./rule.ts";

/** No kiln under fire holds a probe to the last digit for so long: a limit of ours, *common practice*. */
const STILL_HOURS = 2;
const FEWEST_READINGS = 10;
const MS_AN_HOUR = 3_600_000;

/** A probe that says the same for hours while the kiln is loaded: stuck, unplugged or frozen. A note for each stretch. */
export const readingsStandStill: Rule = (context) => {
  const readings = context.tables.get("readings");
  if (!readings) return [];
  const at = numbersOf(readings, "at");
  const faults: RuleFault[] = [];
  for (const column of probeColumns) {
    const values = numbersOf(readings, column);
    for (const { from, to, run } of loadReadings(context)) {
      let start = from;
      for (let row = from + 1; row <= to; row++) {
        if (row < to && values[row] === values[start]) continue;
        const hours = ((at[row - 1] as number) - (at[start] as number)) / MS_AN_HOUR;
        if (hours >= STILL_HOURS && row - start >= FEWEST_READINGS) {
          faults.push({
            table: "readings",
            row: start,
            columns: [column],
            rule: "readings-stand-still",
            message: `The probe says the same for ${hours.toFixed(1)} h while the kiln was loaded (${row - start} readings, kept).`,
            hint: "See whether the probe is stuck, unplugged or off the air stream.",
            effect: "note",
            run,
          });
        }
        start = row;
      }
    }
  }
  return faults;
};
