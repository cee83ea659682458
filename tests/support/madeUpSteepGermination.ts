import { seededRandom } from "../../src/analysis/seededRandom.ts";
import type { AcrospireCounts } from "../../src/malting/acrospire.ts";
import type { RunRow } from "../../src/report/runRow.ts";
import { analyseSteepGermination } from "../../src/report/steepGermination/analyseSteepGermination.ts";
import type { BedRow, CountRow, TankRow } from "../../src/report/steepGermination/floorRows.ts";
import type { SteepGerminationResult } from "../../src/report/steepGerminationResult.ts";
import type { TargetRow } from "../../src/report/targetRow.ts";

const HOUR = 3_600_000;
/** Every bed of this house is kept so long, whatever the weather. */
export const TIMETABLE = 96;
const KERNELS = 100;
const KERNEL_SPREAD = 0.16;

const TARGETS: readonly TargetRow[] = [
  { variety: "any", measure: "steep_out_moisture_pct", low: 43, target: 44.5, high: 46 },
  { variety: "any", measure: "acrospire_mean", low: 0.62, target: 0.78, high: 0.92 },
  { variety: "any", measure: "acrospire_overgrown_pct", low: null, target: null, high: 15 },
];

/** The made-up truth: what a bed's kernels have grown to on average. */
const grown = (celsius: number, hours: number): number => 0.0007 * (celsius - 3) * hours - 0.05;

/** What a page is to be shown with. */
export interface MadeUpFloor {
  /** Kernels are counted on the way in every third batch. */
  readonly midway?: boolean;
  readonly targets?: boolean;
}

/** Steep and floor of a house with a cool second bed and a mean of its moisture meter above its scale. */
export function madeUpSteepGermination(
  runs: readonly RunRow[],
  { midway = true, targets = true }: MadeUpFloor = {},
): SteepGerminationResult {
  const { uniform } = seededRandom(23);
  const normal = (): number => Array.from({ length: 12 }, () => uniform()).reduce((sum, value) => sum + value, -6);
  const count = (mean: number): AcrospireCounts => {
    const counts = { none: 0, toQuarter: 0, toHalf: 0, toThreeQuarters: 0, toFull: 0, over: 0 };
    for (let i = 0; i < KERNELS; i += 1) {
      const length = mean + KERNEL_SPREAD * normal();
      if (length <= 0) counts.none += 1;
      else if (length <= 0.25) counts.toQuarter += 1;
      else if (length <= 0.5) counts.toHalf += 1;
      else if (length <= 0.75) counts.toThreeQuarters += 1;
      else if (length <= 1) counts.toFull += 1;
      else counts.over += 1;
    }
    return counts;
  };
  const tanks: TankRow[] = [];
  const beds: BedRow[] = [];
  const counts: CountRow[] = [];
  const rows = [...runs].reverse().map((run, i): RunRow => {
    const startedAt = run.steepStartedAt ?? 0;
    const [wetHours, water] = [11 + (i % 5) * 0.5, 11.5 + 2.5 * Math.sin(i / 6)];
    const percent = 44.1 + 0.5 * (wetHours - 12) + 0.12 * (water - 11.5) + 0.4 * normal();
    const grain = 400;
    const steepOutKilograms = (grain * (100 - 12.4)) / (100 - percent);
    const floorFrom = startedAt + 26 * HOUR;
    const celsius = 15 + 2.2 * Math.sin(i / 6 - 0.4) + 0.3 * normal();
    const offsets = i % 3 === 0 ? [0.8, -0.8] : [0];
    tanks.push({
      run: run.run,
      tank: "T1",
      grainInKilograms: grain,
      grainMoisturePercent: 12.4,
      startedAt,
      endedAt: floorFrom - HOUR,
      steepOutKilograms,
      measuredPercent: i % 2 === 0 ? percent + 0.4 + 0.2 * normal() : null,
    });
    offsets.forEach((offset, place) => {
      beds.push({
        run: run.run,
        bed: `B${place + 1}`,
        startedAt: floorFrom,
        endedAt: floorFrom + TIMETABLE * HOUR,
        meanCelsius: celsius + offset,
        counts: count(grown(celsius + offset, TIMETABLE)),
      });
    });
    if (midway && i % 3 === 0) {
      for (const hours of [48, 72]) {
        const countedAt = floorFrom + hours * HOUR;
        counts.push({ run: run.run, bed: "B1", countedAt, counts: count(grown(celsius + 0.8, hours)) });
      }
    }
    return {
      ...run,
      variety: i % 2 === 0 ? "Amber" : "Brindle",
      grainInKilograms: grain,
      steepWetHours: wetHours,
      steepWaterCelsius: water,
      steepOutKilograms,
      chittedPercent: i % 7 === 3 ? 74 : 86,
      germinationStartedAt: floorFrom,
      germinationEndedAt: floorFrom + TIMETABLE * HOUR,
      bedMeanCelsius: celsius,
    };
  });
  return analyseSteepGermination(rows, {
    floor: { tanks, beds, counts },
    targets: targets ? TARGETS : [],
    without: new Set(),
  });
}
