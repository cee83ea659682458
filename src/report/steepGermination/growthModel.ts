import { median } from "../../analysis/summary.ts";
import { fitGrowth, type GrowthFit } from "../../malting/germination/growthFit.ts";
import type { AcrospireRun, GrowthModel } from "../steepGerminationResult.ts";
import { aimOf } from "../targetMoisture.ts";
import { evenSteps } from "./evenSteps.ts";
import type { GrowthCounts } from "./growthCounts.ts";

/** Fewer batches with two counts on the way do not part hours from temperature. */
export const FEWEST_RUNS_COUNTED_TWICE = 10;

const extent = (values: readonly number[]): readonly [number, number] => [Math.min(...values), Math.max(...values)];

/** What most of the batches with an aim are meant to reach: a house with one aim for all has it here. */
function usualAim(acrospires: readonly AcrospireRun[]): number | null {
  const aims = acrospires.flatMap(({ targets }) => {
    const aim = targets && aimOf({ low: targets.meanLow, target: targets.meanTarget, high: targets.meanHigh });
    return aim === null ? [] : [aim];
  });
  const counts = new Map<number, number>();
  for (const aim of aims) counts.set(aim, (counts.get(aim) ?? 0) + 1);
  const ranked = [...counts].sort(([a, m], [b, n]) => n - m || a - b);
  return ranked[0]?.[0] ?? null;
}

/** Hours are named for a bed up to this much longer on the floor than any that was counted. */
const LONGEST_BEYOND_HOURS = 24;

type Timetable = NonNullable<GrowthModel["timetable"]>;

/** Whole degrees that the counts cover; hours only where the aim lies within degree-hours that were counted. */
function timetableOf(
  fit: GrowthFit,
  acrospires: readonly AcrospireRun[],
  covers: Pick<GrowthModel, "coversCelsius" | "coversDegreeHours">,
  longestHours: number,
): GrowthModel["timetable"] {
  const hours = acrospires.flatMap((run) => (run.hours === null ? [] : [run.hours]));
  const aimLength = usualAim(acrospires);
  if (aimLength === null || hours.length === 0) return null;
  const usualHours = median(hours);
  const [coolest, warmest] = covers.coversCelsius;
  const [fewest, most] = covers.coversDegreeHours;
  const rows: Timetable["rows"][number][] = [];
  const refused: Timetable["refused"][number][] = [];
  for (let celsius = Math.ceil(coolest); celsius <= Math.floor(warmest); celsius += 1) {
    const found = fit.hoursTo(aimLength, celsius);
    const refuse = (reason: string): unknown => refused.push({ celsius, reason });
    if (found === null) {
      refuse("Growth at this temperature is not clear of none.");
      continue;
    }
    const degreeHours = found.estimate * (celsius - fit.baseCelsius.estimate);
    if (degreeHours < fewest || degreeHours > most)
      refuse("The target lies beyond the degree-hours that were counted.");
    else if (found.estimate > longestHours + LONGEST_BEYOND_HOURS) {
      refuse("It would take over a day longer than any bed that was counted.");
    } else {
      const { estimate, low, high } = found;
      rows.push({
        celsius,
        hours: found,
        againstTimetableHours: { estimate: estimate - usualHours, low: low - usualHours, high: high - usualHours },
        beyondHoursCounted: estimate > longestHours,
        lengthAtUsualHours: fit.lengthAt(celsius, usualHours),
      });
    }
  }
  return { aimLength, usualHours, rows, refused };
}

/**
 * Growth against degree-hours above the house's own base, where enough batches were counted on the way to part hours from
 * temperature; else the sentence that says why there is none.
 */
export function growthModel(
  { counts, runsCountedTwice }: GrowthCounts,
  acrospires: readonly AcrospireRun[],
): GrowthModel | string {
  if (runsCountedTwice < FEWEST_RUNS_COUNTED_TWICE) {
    const soFar =
      runsCountedTwice === 0 ? "no batch has" : runsCountedTwice === 1 ? "1 has" : `${runsCountedTwice} have`;
    return `Growth by degree-hours needs two counts on the way in ${FEWEST_RUNS_COUNTED_TWICE} batches whose bed temperature is known; so far ${soFar} them.`;
  }
  const fit = fitGrowth(counts);
  if (fit === null) {
    return "The counts on the way do not show that warmer beds grow faster, so no base temperature can be told from them.";
  }
  const base = fit.baseCelsius.estimate;
  const points = counts.map(({ run, variety, hours, celsius, length, counted }) => {
    return { run, variety: variety || null, hours, celsius, degreeHours: (celsius - base) * hours, length, counted };
  });
  const centre = points.reduce((sum, { celsius }) => sum + celsius, 0) / points.length;
  const coversDegreeHours = extent(points.map(({ degreeHours }) => degreeHours));
  const covers = { coversCelsius: extent(points.map(({ celsius }) => celsius)), coversDegreeHours };
  const residuals = counts.map(({ celsius, hours, length }) => length - fit.lengthAt(celsius, hours).estimate);
  return {
    runs: fit.runs,
    counts: fit.counts,
    runsCountedTwice,
    baseCelsius: fit.baseCelsius,
    lengthPerHundredDegreeHours: fit.lengthPerHundredDegreeHours,
    lag: fit.lag,
    runToRunPercent: fit.runToRunPercent,
    residualLength: Math.sqrt(residuals.reduce((sum, residual) => sum + residual * residual, 0) / residuals.length),
    points,
    line: evenSteps(...coversDegreeHours, 13).map((degreeHours) => {
      const mean = fit.lengthAt(centre, degreeHours / (centre - base));
      return { degreeHours, length: mean.estimate, low: mean.low, high: mean.high };
    }),
    ...covers,
    timetable: timetableOf(fit, acrospires, covers, Math.max(...counts.map(({ hours }) => hours))),
  };
}
