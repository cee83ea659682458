import type { UptakeModel } from "../../report/steepGerminationResult.ts";
import { print, printNumber } from "../../units/print.ts";
import { shownAs, toShown } from "../../units/quantity.ts";
import { runCell } from "../controlCharts/chartWords.ts";
import { type FigureSettings, halfWidth, narrowWidth } from "../figureSettings.ts";
import type { FigureSpec } from "../figureSpec.ts";
import { latestFirst } from "../listedRows.ts";
import { lineScatter } from "./lineScatter.ts";

/** Batches that the fit cannot account for are ringed up to here, the latest. */
const MOST_UNLIKE = 6;

/** A drawing names this many varieties' lines; with more of them each line would be in the way of the next. */
const MOST_LINES = 4;

const hint = (
  { run, wetHours, waterCelsius, percent }: UptakeModel["points"][number],
  units: FigureSettings["units"],
) =>
  `${run}: ${print(percent, "percent", units)} after ${print(wetHours, "hours", units)} wet${
    waterCelsius === null ? "" : ` at ${print(waterCelsius, "temperature", units)}`
  }`;

function unlikeIn({ points, unlikeTheRest }: UptakeModel): UptakeModel["points"] {
  const unlike = new Set(unlikeTheRest);
  return points.filter(({ run }) => unlike.has(run)).slice(-MOST_UNLIKE);
}

function tableOf({ points }: UptakeModel, settings: FigureSettings): FigureSpec["table"] {
  const { units } = settings;
  return latestFirst(
    points,
    "batch",
    [
      { label: "batch", numeric: false },
      { label: "wet hours", numeric: true },
      { label: "water", unit: shownAs("temperature", units).unit, numeric: true },
      { label: "steep-out", unit: "%", numeric: true },
      { label: "fitted", unit: "%", numeric: true },
    ],
    (point) => [
      runCell(point.run, settings),
      printNumber(point.wetHours, 1),
      point.waterCelsius === null ? "" : print(point.waterCelsius, "temperature", units, { bare: true }),
      print(point.percent, "percent", units, { bare: true }),
      print(point.fittedPercent, "percent", units, { bare: true }),
    ],
  );
}

/**
 * Steep-out moisture against hours under water, each variety's line at its usual water.
 *
 * @param said what to see, as the page's findings say it
 */
export function uptakeHoursFigure(uptake: UptakeModel, said: string, settings: FigureSettings): FigureSpec | null {
  if (uptake.points.length === 0) return null;
  const { units } = settings;
  const named = uptake.lines.length <= MOST_LINES;
  return {
    id: "uptake-by-hours",
    title: "Steep-out moisture by wet hours",
    summary: said,
    table: tableOf(uptake, settings),
    wideWidth: halfWidth,
    narrowWidth,
    printAs: "narrow",
    options: lineScatter({
      stage: "steep",
      points: uptake.points.map((point) => ({
        x: point.wetHours,
        y: point.percent,
        href: settings.runHref(point.run),
        hint: () => hint(point, units),
      })),
      lines: uptake.lines.map(({ variety, line }) => ({
        name: named ? variety : "",
        points: line.map(({ wetHours, percent, low, high }) => ({ x: wetHours, y: percent, low, high })),
      })),
      ringed: unlikeIn(uptake).map((point) => ({ x: point.wetHours, y: point.percent, name: point.run })),
      xTitle: "hours under water",
      yTitle: "% at steep-out",
      leastX: 2,
      leastY: 2,
    }),
  };
}

/**
 * What the water's temperature does, hours and variety held: what each batch is off the line, set on the slope of the fit.
 *
 * @param said what to see, as the page's findings say it
 * @returns null where water temperatures are not part of the fit
 */
export function uptakeWaterFigure(uptake: UptakeModel, said: string, settings: FigureSettings): FigureSpec | null {
  const { pointsPerKelvin: slope } = uptake;
  const warm = uptake.points.flatMap((point) =>
    point.waterCelsius === null ? [] : [{ ...point, waterCelsius: point.waterCelsius }],
  );
  if (slope === null || warm.length === 0) return null;
  const { units } = settings;
  const mean = warm.reduce((sum, { waterCelsius }) => sum + waterCelsius, 0) / warm.length;
  const shown = (celsius: number): number => toShown(celsius, "temperature", units);
  const heightOf = (point: (typeof warm)[number]): number =>
    slope.estimate * (point.waterCelsius - mean) + point.percent - point.fittedPercent;
  const unlike = new Set(unlikeIn(uptake).map(({ run }) => run));
  const ends = [Math.min(...warm.map((p) => p.waterCelsius)), mean, Math.max(...warm.map((p) => p.waterCelsius))];
  return {
    id: "uptake-by-water",
    title: "Steep-out moisture by water temperature, hours held",
    summary: said,
    table: tableOf(uptake, settings),
    wideWidth: halfWidth,
    narrowWidth,
    printAs: "narrow",
    options: lineScatter({
      stage: "steep",
      points: warm.map((point) => ({
        x: shown(point.waterCelsius),
        y: heightOf(point),
        href: settings.runHref(point.run),
        hint: () => hint(point, units),
      })),
      lines: [
        {
          name: "",
          points: ends.map((celsius) => {
            const from = celsius - mean;
            const [a, b] = [slope.low * from, slope.high * from];
            return { x: shown(celsius), y: slope.estimate * from, low: Math.min(a, b), high: Math.max(a, b) };
          }),
        },
      ],
      ringed: warm
        .filter(({ run }) => unlike.has(run))
        .map((point) => ({ x: shown(point.waterCelsius), y: heightOf(point), name: point.run })),
      xTitle: `water, ${shownAs("temperature", units).unit}`,
      yTitle: "points off the usual",
      leastX: 2,
      leastY: 2,
    }),
  };
}
