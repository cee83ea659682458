import { whyNoFit } from "../../analysis/findFitFault.ts";
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

const WORDS: Readonly<Record<string, string>> = {
  relativeHumidityPercent: "humidity",
  bedDepthMetres: "bed depth",
  dryAirNeededTonnes: "air needed",
};

const OUTCOME_WORDS = { "kiln-hours": "kiln hours", "drying-hours": "drying hours" } as const;

type Columns = readonly { readonly name: string; readonly values: readonly number[] }[];

function whyNot(columns: Columns, hours: readonly number[], outcome: HoursAnalysis["outcome"]): string | null {
  const named = columns.map(({ name, values }) => ({ name: WORDS[name] ?? name, values }));
  return whyNoFit(named, hours, FEWEST_LOADS, { observations: "loads", response: OUTCOME_WORDS[outcome] });
}

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
  const tooLittle = whyNot(plainColumns, hours, outcome);
  if (tooLittle !== null) {
    return {
      ...common,
      humidityDepth: null,
      dryingAir: null,
      guesses: null,
      coverage: null,
      best: null,
      stretches: null,
      tooLittle,
    };
  }
  const plainSteps = rollingForecasts(plainColumns, hours, FEWEST_LOADS, PLANNING_LEVEL);
  const humidityDepth = humidityDepthModel(rows, plainSteps, outcome === "kiln-hours");

  const airRows = rows.filter(hasDryAir);
  const airHours = airRows.map((row) => row.hours);
  const airColumns = dryingAirColumns(airRows);
  const airFits = whyNot(airColumns, airHours, outcome) === null;
  const airSteps = airFits ? rollingForecasts(airColumns, airHours, FEWEST_LOADS, PLANNING_LEVEL) : [];
  const dryingAir = airFits ? dryingAirModel(airRows, filling, airSteps) : null;

  const ways = new Map<Guess["kind"], readonly OneStep[]>([
    ["humidity-and-depth", plainSteps],
    ["last-five", asSteps(rollingLastFew(hours, LAST_FEW))],
    ["mean-so-far", asSteps(rollingMean(hours, LAST_FEW))],
  ]);
  if (airFits) ways.set("drying-air", spread(rows, airRows, airSteps));
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
