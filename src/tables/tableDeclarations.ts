import type { TableDeclaration, TableName } from "./declarations.ts";
import { grainLots } from "./declareGrain.ts";
import { acrospireCounts, germination, steeping } from "./declareGrowth.ts";
import { events, targets } from "./declareHouse.ts";
import { kilning, moistureSamples } from "./declareKiln.ts";
import { lab } from "./declareLab.ts";
import { loggerChecks, readings, weather } from "./declareLogger.ts";
import { customers, deliveries, orders } from "./declareTrade.ts";

/** Every table of the log format, in the order in which a maltster meets them. */
export const tableDeclarations: readonly TableDeclaration[] = [
  grainLots,
  steeping,
  germination,
  acrospireCounts,
  kilning,
  moistureSamples,
  readings,
  weather,
  loggerChecks,
  lab,
  orders,
  deliveries,
  customers,
  events,
  targets,
];

const byName = new Map(tableDeclarations.map((declaration) => [declaration.name, declaration]));

/**
 * The declaration of one table.
 *
 * @throws {RangeError} when no table has that name
 */
export function declarationOf(name: TableName): TableDeclaration {
  const declaration = byName.get(name);
  if (!declaration) throw new RangeError(`declarationOf requires a table of the log format; got ${name}`);
  return declaration;
}
