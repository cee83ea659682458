import { addDays } from "./clock.ts";
import { KILN } from "./fan.ts";
import { type Plant, plantedOn } from "./plant.ts";
import { randomStream } from "./random.ts";
import type { Row } from "./rows.ts";
import { LOGGER_ERROR } from "./truths.ts";

type Adder = (date: string, clock: string, probe: string, reference: number, error: number, note: string) => void;

const LATER = [
  "2025-01-13",
  "2025-04-14",
  "2025-07-14",
  "2025-10-13",
  "2026-01-12",
  "2026-04-13",
  "2026-07-13",
  "2026-10-12",
] as const;

/** What stepped is held against a reference before the quarter is out: somebody wondered. */
const WONDERED_AFTER_DAYS = 21;

/**
 * The logger's probes against a reference: off at the first check, set right that day, sound in the checks after; of a quiet
 * house sound throughout, but for what is planted.
 */
export function logLoggerChecks(seed: number, quiet?: { readonly plant: Plant | null }): Row[] {
  const r = randomStream(seed, "logger-checks");
  const rows: Row[] = [];
  const tenth = (value: number): string => (Math.round(10 * value) / 10).toFixed(1);
  const add: Adder = (date, clock, probe, reference, error, note) => {
    const reading = reference + error + 0.05 * r.normal();
    rows.push({
      kiln: KILN.id,
      at: `${date} ${clock}`,
      probe,
      reference_c: tenth(reference),
      reading_c: tenth(reading),
      note,
    });
  };
  if (quiet === undefined) addFirst(add);
  const plant = quiet?.plant ?? null;
  const wondered = plant?.kind === "logger step" ? [addDays(plant.from, WONDERED_AFTER_DAYS)] : [];
  const own = quiet === undefined ? LATER : [LOGGER_ERROR.checkedOn, ...LATER, ...wondered].toSorted();
  for (const [i, date] of own.entries()) {
    const error = plantedOn(plant, date).loggerKelvin;
    add(date, "09:15", "air_on", 0, error, "ice point");
    add(date, "09:45", "air_on", 50, error, "water bath");
    if (i % 2 === 1) add(date, "10:10", "air_off", 50, 0, "water bath");
  }
  return rows;
}

function addFirst(add: Adder): void {
  const { checkedOn, atZeroCelsius, perKelvin } = LOGGER_ERROR;
  const first = (reference: number): number => atZeroCelsius + perKelvin * reference;
  add(checkedOn, "09:10", "air_on", 0, first(0), "ice point, as found");
  add(checkedOn, "09:40", "air_on", 50, first(50), "water bath, as found");
  add(checkedOn, "10:05", "air_on", 80, first(80), "water bath, as found");
  add(checkedOn, "11:00", "air_on", 0, 0, "ice point, adjusted");
  add(checkedOn, "11:20", "air_on", 50, 0, "water bath, adjusted");
  add(checkedOn, "11:40", "air_on", 80, 0, "water bath, adjusted");
}
