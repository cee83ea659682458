import { addDays } from "../demo/clock.ts";
import type { Plant } from "../demo/plant.ts";
import { randomStream } from "../demo/random.ts";
import { type SimulatedHouse, simulateHouse } from "../demo/simulateHouse.ts";

/** Some twenty-six months, so that a year lies before the first date on which anything is planted. */
const RUNS = 160;
export const FIRST_PLANT = "2025-09-01";
const PLANT_DAYS = 303;

/** A house that has kept its logs for two years, in good order but for what is planted. */
export const studyHouse = (seed: number, plant: Plant | null): SimulatedHouse =>
  simulateHouse({ seed, runs: RUNS, readings: true, quiet: { plant } });

/** Any day of ten months, so that every season comes. */
export const plantDate = (seed: number): string =>
  addDays(FIRST_PLANT, randomStream(seed, "plant-date").integer(0, PLANT_DAYS));
