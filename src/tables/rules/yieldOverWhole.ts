import type { Table } from "../table.ts";
import { numbersOf, rowsBy, sumOver, textsOf } from "./columns.ts";
import type { Rule, RuleContext, RuleFault } from "./rule.ts";

/** Dry matter of the grain of each run, kg; runs that lack a mass or a moisture are left out. */
function dryGrain({ tables }: RuleContext): ReadonlyMap<string, number> {
  const steeping = tables.get("steeping");
  const dry = new Map<string, number>();
  if (!steeping) return dry;
  const lots = tables.get("grain-lots");
  const lotMoisture = new Map<string | null, number>();
  if (lots) {
    const moistures = numbersOf(lots, "moisture_pct");
    for (const [row, lot] of textsOf(lots, "lot").entries()) lotMoisture.set(lot, moistures[row] as number);
  }
  const mass = numbersOf(steeping, "grain_in_kg");
  const moisture = numbersOf(steeping, "grain_moisture_pct");
  const lot = textsOf(steeping, "lot");
  for (const [run, rows] of rowsBy(steeping, "run")) {
    let sum = 0;
    for (const row of rows) {
      const own = moisture[row] as number;
      const percent = Number.isNaN(own) ? (lotMoisture.get(lot[row] ?? null) ?? Number.NaN) : own;
      sum += (mass[row] as number) * (1 - percent / 100);
    }
    if (!Number.isNaN(sum)) dry.set(run, sum);
  }
  return dry;
}

/** Mean of what a table says of each run; blanks left out. */
function meansByRun(table: Table | undefined, column: string): ReadonlyMap<string, number> {
  const means = new Map<string, number>();
  if (!table) return means;
  const values = numbersOf(table, column);
  for (const [run, rows] of rowsBy(table, "run")) {
    const known = rows.filter((row) => !Number.isNaN(values[row]));
    const sum = sumOver(values, known);
    if (sum !== null) means.set(run, sum / known.length);
  }
  return means;
}

/**
 * Dry matter out over dry matter in. Malting only ever loses dry matter, so a yield over 100 % is a wrong mass or
 * moisture: the malt masses it came from are blanked, and with them the yield.
 */
export const yieldOverWhole: Rule = (context) => {
  const kilning = context.tables.get("kilning");
  if (!kilning) return [];
  const grain = dryGrain(context);
  const samples = meansByRun(context.tables.get("moisture-samples"), "moisture_pct");
  const certificates = meansByRun(context.tables.get("lab"), "moisture_pct");
  const moisture = numbersOf(kilning, "final_moisture_pct");
  const rootlets = numbersOf(kilning, "rootlets_kg");
  const faults: RuleFault[] = [];
  for (const [run, rows] of rowsBy(kilning, "run")) {
    const dryIn = grain.get(run);
    if (dryIn === undefined) continue;
    const dryShare = (row: number): number => {
      const logged = moisture[row] as number;
      return 1 - (Number.isNaN(logged) ? (samples.get(run) ?? certificates.get(run) ?? Number.NaN) : logged) / 100;
    };
    for (const column of ["malt_out_kg", "cleaned_out_kg"]) {
      const out = numbersOf(kilning, column);
      let dryOut = 0;
      for (const row of rows) {
        const taken = column === "malt_out_kg" ? rootlets[row] || 0 : 0;
        dryOut += ((out[row] as number) - taken) * dryShare(row);
      }
      if (!(dryOut > dryIn * (1 + 1e-12))) continue;
      for (const row of rows) {
        faults.push({
          table: "kilning",
          row,
          columns: [column],
          rule: "yield-over-100",
          message: `Run ${run} has a dry-matter yield of ${((100 * dryOut) / dryIn).toFixed(1)} %.`,
          hint: "Look up the weighings and the moistures of grain and malt.",
          effect: "value-blanked",
        });
      }
    }
  }
  return faults;
};
