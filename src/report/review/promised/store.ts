import { median } from "../../../analysis/summary.ts";
import type { RunRow } from "../../runRow.ts";
import type { DeliveryRow } from "./readTrade.ts";

/** Malt in store of one variety: what its batches made less what was shipped of them. */
export interface Store {
  readonly kilograms: number;
  /** Whole packages of the house's usual mass that it would fill; null where it never shipped such. */
  readonly bags: number | null;
  readonly totes: number | null;
}

/** Usual mass of one package of a kind; null where none was logged with its count. */
function packageKilograms(deliveries: readonly DeliveryRow[], kind: string): number | null {
  const masses = deliveries.flatMap(({ packageKind, packageCount, kilograms }) =>
    packageKind === kind && packageCount !== null && packageCount > 0 ? [kilograms / packageCount] : [],
  );
  return masses.length === 0 ? null : median(masses);
}

/**
 * By variety. A batch from which more was shipped than it made holds nothing, not less: the Logs page says so of it.
 *
 * @param runs with malt made, of the whole house
 */
export function storeByVariety(
  runs: readonly RunRow[],
  deliveries: readonly DeliveryRow[],
): ReadonlyMap<string, Store> {
  const shipped = new Map<string, number>();
  for (const { run, kilograms } of deliveries) shipped.set(run, (shipped.get(run) ?? 0) + kilograms);
  const kilograms = new Map<string, number>();
  for (const { run, variety, maltKilograms } of runs) {
    if (variety === null || maltKilograms === null) continue;
    kilograms.set(variety, (kilograms.get(variety) ?? 0) + Math.max(0, maltKilograms - (shipped.get(run) ?? 0)));
  }
  const [bag, tote] = [packageKilograms(deliveries, "bag"), packageKilograms(deliveries, "tote")];
  const filled = (mass: number, one: number | null): number | null => (one === null ? null : Math.floor(mass / one));
  return new Map(
    [...kilograms].map(([variety, mass]) => [
      variety,
      { kilograms: mass, bags: filled(mass, bag), totes: filled(mass, tote) },
    ]),
  );
}
