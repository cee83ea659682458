import { factoriseForFit } from "../../analysis/findFitFault.ts";
import { isFitFault, sayFitFault } from "../../analysis/fitFault.ts";
import { rollingForecasts } from "../../analysis/rollingForecasts.ts";
import { rollingLastFew, rollingMean } from "../../analysis/rollingMeans.ts";
import { median, quantile } from "../../analysis/summary.ts";
import type { Filling, Guess, HoursAnalysis } from "../kilnHoursResult.ts";
import { coverageOf } from "./coverage.ts";
import { type DryingAirRow, dryingAirColumns, dryingAirModel, hasDryAir } from "./dryingAirModel.ts";
import { compareGuesses } from "./guesses.ts";
import { humidityDepthColumns, humidityDepthModel } from "./humidityDepthModel.ts";
import type { ModelRow } from "./modelRow.ts";
import type { OneStep } from "./oneStep.ts";

/** A plane through fewer loads than this says more about the loads than about the kiln. */
export const FEWEST_LOADS = 12;
/** The level of the interval that a night is planned by. */
export const PLANNING_LEVEL = 0.9;
const FEWEST_FOR_RANGE = 10;
const LAST_FEW = 5;

const OUTCOME_WORDS = { "kiln-hours": "kiln hours", "drying-hours": "drying hours" } as const;

/** Puts one-step-ahead results of some rows back beside all rows. */
function spread(rows: readonly ModelRow[], part: readonly DryingAirRow[], steps: readonly OneStep[]): OneStep[] {
  const byRow = new Map<ModelRow, OneStep>(part.map((row, i) => [row, steps[i] ?? null]));
  return rows.map((row) => byRow.get(row) ?? null);
}

/**
 * Everything said of one outcome: both regressions, the ways of guessing judged on loads they had not seen, and how
 * often the planning interval held. Stretches that neither weather nor bed explains are looked for afterwards.
 *
 * @param rows loads in time order, each with everything that the plain regression needs
 */
export function hoursAnalysis(
  outcome: HoursAnalysis["outcome"],
  rows: readonly ModelRow[],
  allHours: readonly number[],
  filling: Filling,
): HoursAnalysis {
  const hours = rows.map((row) => row.hours);
  const common = {
    outcome,
    loadsWithHours: allHours.length,
    medianHours: allHours.length === 0 ? null : median(allHours),
    usualRange:
      allHours.length < FEWEST_FOR_RANGE ? null : ([quantile(allHours, 0.1), quantile(allHours, 0.9)] as const),
  };
  const plainColumns = humidityDepthColumns(rows);
  const plainDesign = factoriseForFit(plainColumns, hours, FEWEST_LOADS);
  if (isFitFault(plainDesign)) {
    return {
      ...common,
      humidityDepth: null,
      dryingAir: null,
      guesses: null,
      coverage: null,
      best: null,
      stretches: null,
      tooLittle: sayFitFault(plainDesign, { observations: "loads", response: OUTCOME_WORDS[outcome] }),
    };
  }
  const plainSteps = rollingForecasts(plainColumns, hours, FEWEST_LOADS, PLANNING_LEVEL);
  const humidityDepth = humidityDepthModel(rows, plainSteps, plainDesign, outcome === "kiln-hours");

  const airRows = rows.filter(hasDryAir);
  const airHours = airRows.map((row) => row.hours);
  const airColumns = dryingAirColumns(airRows);
  const airDesign = factoriseForFit(airColumns, airHours, FEWEST_LOADS);
  const airSteps = isFitFault(airDesign) ? [] : rollingForecasts(airColumns, airHours, FEWEST_LOADS, PLANNING_LEVEL);
  const dryingAir = isFitFault(airDesign) ? null : dryingAirModel(airRows, filling, airSteps, airDesign);

  const ways = new Map<Guess["kind"], readonly OneStep[]>([
    ["humidity-and-depth", plainSteps],
    ["last-five", asSteps(rollingLastFew(hours, LAST_FEW))],
    ["mean-so-far", asSteps(rollingMean(hours, LAST_FEW))],
  ]);
  if (dryingAir !== null) ways.set("drying-air", spread(rows, airRows, airSteps));
  const guesses = compareGuesses(hours, ways);
  const ranked = guesses?.guesses
    .map((guess) => guess.kind)
    .find((kind) => kind === "drying-air" || kind === "humidity-and-depth");
  const best = ranked === "drying-air" && dryingAir !== null ? dryingAir : humidityDepth;
  return {
    ...common,
    humidityDepth,
    dryingAir,
    guesses,
    coverage: coverageOf(best.loads),
    best: best.kind,
    stretches: null,
    tooLittle: null,
  };
}

/** A guess without an interval of its own takes part in the ranking by its estimate alone. */
function asSteps(estimates: readonly (number | null)[]): OneStep[] {
  return estimates.map((estimate) => (estimate === null ? null : { estimate, low: estimate, high: estimate }));
}
