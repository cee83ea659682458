import { numbersOf, rowsBy, sumOver, textsOf } from "./columns.ts";
import type { Rule, RuleFault } from "./rule.ts";

/** Two scales rarely agree to the last bag: a limit of ours. */
const SCALE_SLACK = 1.01;
const MS_A_DAY = 86_400_000;

/** More malt delivered than its run made, or delivered before it was made. Kept, with a note. */
export const deliveriesOverMade: Rule = ({ tables }) => {
  const kilning = tables.get("kilning");
  const deliveries = tables.get("deliveries");
  if (!kilning || !deliveries) return [];
  const cleaned = numbersOf(kilning, "cleaned_out_kg");
  const out = numbersOf(kilning, "malt_out_kg").map((mass, row) =>
    Number.isNaN(cleaned[row]) ? mass : (cleaned[row] as number),
  );
  const unloaded = numbersOf(kilning, "unloaded_at");
  const mass = numbersOf(deliveries, "mass_kg");
  const shipped = numbersOf(deliveries, "shipped_on");
  const product = textsOf(deliveries, "product");
  const made = rowsBy(kilning, "run");
  const faults: RuleFault[] = [];
  for (const [run, all] of rowsBy(deliveries, "run")) {
    const rows = all.filter((row) => (product[row] ?? "malt") === "malt");
    const loads = made.get(run) ?? [];
    const madeMass = sumOver(out, loads);
    let sent = 0;
    for (const row of rows) {
      sent += mass[row] as number;
      if (madeMass === null || sent <= madeMass * SCALE_SLACK) continue;
      faults.push({
        table: "deliveries",
        row,
        columns: ["mass_kg"],
        rule: "delivered-over-made",
        message: `With this delivery ${sent.toFixed(0)} kg of run ${run} have left the house, which made ${madeMass.toFixed(0)} kg of it.`,
        hint: "Look up the run on the bags and both masses.",
        effect: "note",
      });
    }
    const ready = loads.length === 0 ? Number.NaN : Math.min(...loads.map((row) => unloaded[row] as number));
    for (const row of all) {
      // A date has no time of day and no zone: only a whole day too early is beyond doubt.
      if (!((shipped[row] as number) + 2 * MS_A_DAY < ready)) continue;
      faults.push({
        table: "deliveries",
        row,
        columns: ["shipped_on"],
        rule: "shipped-before-made",
        message: `Run ${run} was shipped before it was out of the kiln.`,
        hint: "Look up the date, and the run on the bags.",
        effect: "note",
      });
    }
  }
  return faults;
};
