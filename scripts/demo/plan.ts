import { addDays, instantAt, MINUTE, toFiveMinutes } from "./clock.ts";
import { type GrainLot, lotInUse, makeLots, VARIETIES, type Variety } from "./grains.ts";
import type { Plant } from "./plant.ts";
import { randomStream } from "./random.ts";
import { LAST_DATE } from "./truths.ts";

/** One batch as planned. */
export interface PlannedRun {
  readonly run: string;
  readonly index: number;
  readonly variety: Variety;
  readonly lot: GrainLot;
  /** How many tanks and beds it fills. */
  readonly parts: 1 | 2;
}

/** One firing as planned: its evening, and the runs in it with the share of each. */
export interface PlannedLoad {
  readonly index: number;
  readonly date: string;
  readonly loadedAt: number;
  readonly runs: readonly { readonly run: PlannedRun; readonly share: number }[];
}

/** A batch under way when the logs end: in the steep or on the floor, to be loaded on a later evening. */
export interface ComingRun {
  readonly run: PlannedRun;
  readonly loadedAt: number;
}

export interface Plan {
  readonly lots: readonly GrainLot[];
  readonly runs: readonly PlannedRun[];
  readonly loads: readonly PlannedLoad[];
  readonly coming: readonly ComingRun[];
}

/** Days between firings, with weights: three to seven, mostly four or five. */
const GAPS: readonly (readonly [number, number])[] = [
  [3, 8],
  [4, 30],
  [5, 34],
  [6, 20],
  [7, 8],
];

/** The house shuts for a fortnight in July and about the turn of the year. */
function isShut(date: string): boolean {
  const day = date.slice(5);
  return (day >= "07-08" && day <= "07-22") || day >= "12-22" || day <= "01-04";
}

/**
 * A night on which the clocks go back falls in a firing: its turning up is to lie in the hour that comes twice.
 */
export const CLOCK_CHANGE_EVENING = "2025-10-25";

/** Share of batches that fill two tanks and two beds; in a quiet house so many that its beds can be compared within a season. */
const TWO_BEDS = 0.14;
const QUIET_TWO_BEDS = 0.5;

/** Evenings of `count` firings, oldest first, the last on the last date of the logs. */
function firingDates(seed: number, count: number, meanGapShrink: number): string[] {
  const r = randomStream(seed, "firing-gaps");
  const dates: string[] = [LAST_DATE];
  let date = LAST_DATE;
  let owed = 0;
  while (dates.length < count) {
    const gap = r.weighted(GAPS) / meanGapShrink + owed;
    const whole = Math.max(1, Math.floor(gap));
    owed = gap - whole;
    date = addDays(date, -whole);
    while (isShut(date)) date = addDays(date, -1);
    if (date === dates[0]) date = addDays(date, -1);
    dates.unshift(date);
  }
  if (!dates.includes(CLOCK_CHANGE_EVENING)) {
    const near = dates.findIndex((d) => Math.abs(Date.parse(d) - Date.parse(CLOCK_CHANGE_EVENING)) <= 2 * 86_400_000);
    if (near > 0) dates[near] = CLOCK_CHANGE_EVENING;
  }
  return dates;
}

/**
 * What was malted when: `count` runs to the end of the logs. In the standard plan two firings hold two half runs each and
 * one double run is split over two firings; elsewhere one run is one firing.
 *
 * @param years spread the runs over this many years; without it at the house's own pace
 * @param quiet a house in good order, but for what is planted in it
 */
export function makePlan(
  seed: number,
  count: number,
  years: number | null,
  quiet?: { readonly plant: Plant | null },
): Plan {
  const shared = new Set([Math.round(count * 0.31), Math.round(count * 0.72)]);
  const split = Math.round(count * 0.52);
  const special = count >= 60;
  const firings = special ? count - 1 : count;
  const shrink = years === null ? 1 : Math.max(0.2, (4.75 * count) / (years * 345));
  const dates = firingDates(seed, firings, shrink);
  if (special) dates[split + 1] = addDays(dates[split] ?? LAST_DATE, 1);
  const lots = makeLots(seed, dates[0] ?? LAST_DATE, LAST_DATE, quiet);

  const runs: PlannedRun[] = [];
  const loads: PlannedLoad[] = [];
  const addRun = (date: string, variety: Variety, parts: 1 | 2): PlannedRun => {
    const index = runs.length;
    const startDate = addDays(date, -5);
    const run: PlannedRun = {
      run: `${startDate.slice(2, 4)}-${String(index + 1).padStart(3, "0")}`,
      index,
      variety,
      lot: lotInUse(lots, variety, startDate),
      parts,
    };
    runs.push(run);
    return run;
  };
  let carried: PlannedRun | null = null;
  for (const [i, date] of dates.entries()) {
    const r = randomStream(seed, "load-plan", i);
    const evening = instantAt(date, 17) + (40 + 35 * r.normal()) * MINUTE;
    const loadedAt = date === CLOCK_CHANGE_EVENING ? instantAt(date, 19, 10) : toFiveMinutes(evening);
    const variety = r.weighted(owedVarieties(runs));
    const parts = r.chance(quiet === undefined ? TWO_BEDS : QUIET_TWO_BEDS) ? 2 : 1;
    if (carried) {
      loads.push({ index: i, date, loadedAt, runs: [{ run: carried, share: 0.5 }] });
      carried = null;
    } else if (special && shared.has(i)) {
      const both = [addRun(date, variety, 1), addRun(date, variety, 1)];
      loads.push({ index: i, date, loadedAt, runs: both.map((run) => ({ run, share: 1 })) });
    } else if (special && i === split) {
      carried = addRun(date, variety, 2);
      loads.push({ index: i, date, loadedAt, runs: [{ run: carried, share: 0.5 }] });
    } else {
      const run = addRun(date, variety, parts);
      loads.push({ index: i, date, loadedAt, runs: [{ run, share: 1 }] });
    }
  }
  const coming = [3, 5].map((days) => {
    const date = addDays(LAST_DATE, days);
    const r = randomStream(seed, "coming", days);
    const variety = r.weighted(owedVarieties(runs));
    return { run: addRun(date, variety, 1), loadedAt: instantAt(date, 17, 30) };
  });
  return { lots, runs, loads, coming };
}

/** Varieties by how far each has fallen behind its share of the batches so far: what the store is short of comes next. */
function owedVarieties(runs: readonly PlannedRun[]): readonly (readonly [Variety, number])[] {
  const recent = runs.slice(-40);
  return VARIETIES.map((variety) => {
    const made = recent.filter((run) => run.variety === variety).length;
    return [variety, Math.max(0.04, variety.weight * (recent.length + 5) - made)] as const;
  });
}
