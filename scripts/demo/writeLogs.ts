import { localDate } from "./clock.ts";
import { leaveBlank } from "./leaveBlank.ts";
import { logLoggerChecks } from "./logChecks.ts";
import { LOT_COLUMNS, logAcrospireCounts, logGermination, logLots, logSteeping } from "./logFloor.ts";
import { houseToml, logEvents, logTargets, QUIET_BASELINE } from "./logHouse.ts";
import { logKilning } from "./logKiln.ts";
import { logLab } from "./logLab.ts";
import { logReadings } from "./logReadings.ts";
import { logTrade, type Stock } from "./logTrade.ts";
import { logWeather } from "./logWeather.ts";
import { csvText, LOGS_END, type Row } from "./rows.ts";
import type { SimulatedHouse } from "./simulateHouse.ts";
import { addSlips } from "./slips.ts";
import { LAST_DATE } from "./truths.ts";

/**
 * The logs of a simulated house as files: path inside the logs folder to text. Readings are there when the house was
 * simulated with them.
 *
 * @param options.slips blanks and slips of the pen as in real logs (usual)
 */
export function writeLogs(
  house: SimulatedHouse,
  options: { readonly slips?: boolean } = {},
): ReadonlyMap<string, string> {
  const { seed, quiet } = house.options;
  const grainOf = new Map<number, number>();
  const scaleOf = new Map<number, number>();
  for (const load of house.loads) {
    for (const [i, batch] of load.batches.entries()) {
      const index = batch.planned.index;
      grainOf.set(index, (grainOf.get(index) ?? 0) + (load.grainKilograms[i] ?? 0));
      scaleOf.set(index, load.logged.scaleShare);
    }
  }
  const usualGrain = 5 * Math.round([...grainOf.values()].reduce((sum, kg) => sum + kg, 0) / grainOf.size / 5);
  const floor = [...house.batches, ...house.coming];
  const grain = (index: number): number => grainOf.get(index) ?? usualGrain;
  const steeping = floor.flatMap((b) =>
    logSteeping(seed, b, grain(b.planned.index), scaleOf.get(b.planned.index) ?? 1),
  );
  const germination = floor.flatMap((b) => logGermination(seed, b, grain(b.planned.index)));
  const counts = floor.flatMap((b) => logAcrospireCounts(seed, b));

  const kilned = house.loads.map((load) => logKilning(seed, load));
  const kilning = kilned.flatMap((k) => k.kilning);
  const samples = kilned.flatMap((k) => k.samples);
  const stock: Stock[] = house.loads.flatMap((load, i) =>
    (kilned[i]?.made ?? []).map((made) => ({
      ...made,
      variety: load.batches.find((b) => b.planned.run === made.run)?.planned.variety.name ?? "",
      unloadedAt: load.fired.unloadedAt,
    })),
  );
  const trade = logTrade(seed, stock, house.loads[0]?.planned.date ?? LAST_DATE);
  const misset = house.loads.find((load) => load.faults.includes("mis-set scale"));
  const missetDate = localDate(misset?.fired.unloadedAt ?? LOGS_END);
  if (options.slips ?? true) addSlips(seed, { steeping, germination, kilning }, quiet === undefined);
  if (quiet?.plant) leaveBlank(seed, quiet.plant, { steeping, germination, kilning });

  const files = new Map<string, string>();
  const add = (path: string, rows: readonly Row[], columns?: readonly string[]): void => {
    const names = columns ?? columnsOf(rows);
    if (names.length > 0) files.set(path, csvText(names, rows));
  };
  files.set("house.toml", quiet === undefined ? houseToml() : houseToml(QUIET_BASELINE));
  add("grain-lots.csv", logLots(house.plan.lots), LOT_COLUMNS);
  add("steeping.csv", steeping);
  add("germination.csv", germination);
  add("acrospire-counts.csv", counts);
  add("kilning.csv", kilning);
  add("moisture-samples.csv", samples);
  add(
    "lab.csv",
    house.loads.flatMap((load) => logLab(seed, load)),
  );
  add("customers.csv", trade.customers);
  add("orders.csv", trade.orders);
  add("deliveries.csv", trade.deliveries);
  if (quiet === undefined) add("events.csv", logEvents(missetDate));
  add("targets.csv", logTargets());
  add("logger-checks.csv", logLoggerChecks(seed, quiet));
  for (const [path, text] of logWeather(house)) files.set(path, text);
  if (house.options.readings) for (const [path, text] of logReadings(house)) files.set(path, text);
  return files;
}

/** All columns that any row has, in the order of the row that has most of them. */
function columnsOf(rows: readonly Row[]): string[] {
  const fullest = rows.reduce<Row>(
    (best, row) => (Object.keys(row).length > Object.keys(best).length ? row : best),
    {},
  );
  return Object.keys(fullest);
}
