import { addDays } from "../demo/clock.ts";
import type { Plant, PlantKind } from "../demo/plant.ts";
import { randomStream } from "../demo/random.ts";
import { type SimulatedHouse, simulateHouse } from "../demo/simulateHouse.ts";

/** Some twenty-six months, so that a year lies before the first date on which anything is planted. */
const RUNS = 160;
export const FIRST_PLANT = "2025-09-01";
const PLANT_DAYS = 303;

/** A house that has kept its logs for two years, in good order but for what is planted. */
export const studyHouse = (seed: number, plant: Plant | null): SimulatedHouse =>
  simulateHouse({ seed, runs: RUNS, readings: true, quiet: { plant } });

/** A room cooler fails when it has something to cool. */
const WARM: Partial<Record<PlantKind, { readonly from: string; readonly days: number }>> = {
  "failing cooler": { from: "2026-04-15", days: 110 },
};

/** Any day of ten months, so that every season comes; but for what can only happen in one. */
export function plantDate(seed: number, kind: PlantKind): string {
  const { from, days } = WARM[kind] ?? { from: FIRST_PLANT, days: PLANT_DAYS };
  return addDays(from, randomStream(seed, `plant-date ${kind}`).integer(0, days));
}
