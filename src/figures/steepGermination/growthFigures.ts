import type { AcrospireRun, GrowthModel, SteepGerminationResult } from "../../report/steepGerminationResult.ts";
import { print, printNumber } from "../../units/print.ts";
import { shownAs, toShown } from "../../units/quantity.ts";
import { runCell } from "../controlCharts/chartWords.ts";
import { type FigureSettings, halfWidth, narrowWidth } from "../figureSettings.ts";
import type { FigureSpec } from "../figureSpec.ts";
import { latestFirst } from "../listedRows.ts";
import { lineScatter } from "./lineScatter.ts";

const length = (fraction: number): string => print(fraction, "fraction", "metric");

/** A degree-hour of the reader's own degrees. */
const perDegree = (units: FigureSettings["units"]): number => shownAs("temperatureDifference", units).factor;

/**
 * Mean length of every count against degree-hours above the base, with the line through them.
 *
 * @param said what to see, as the page's findings say it
 */
export function growthFigure(growth: GrowthModel, said: string, settings: FigureSettings): FigureSpec | null {
  const { points, line, timetable } = growth;
  if (points.length === 0) return null;
  const { units } = settings;
  const factor = perDegree(units);
  return {
    id: "growth-by-degree-hours",
    title: "Acrospire length by degree-hours",
    summary: said,
    table: latestFirst(
      points,
      "count",
      [
        { label: "batch", numeric: false },
        { label: "variety", numeric: false },
        { label: "on the floor", unit: "h", numeric: true },
        { label: "degree-hours", numeric: true },
        { label: "mean length", unit: "of the kernel", numeric: true },
        { label: "counted", numeric: true },
      ],
      (point) => [
        runCell(point.run, settings),
        point.variety ?? "",
        printNumber(point.hours, 0),
        printNumber(point.degreeHours * factor, 0),
        length(point.length),
        printNumber(point.counted, 0),
      ],
    ),
    wideWidth: halfWidth,
    narrowWidth,
    printAs: "narrow",
    options: lineScatter({
      stage: "germination",
      points: points.map((point) => ({
        x: point.degreeHours * factor,
        y: point.length,
        href: settings.runHref(point.run),
        hint: () =>
          `${point.run}: ${length(point.length)} after ${print(point.hours, "hours", units, { decimals: 0 })}`,
      })),
      lines: [
        {
          name: "",
          points: line.map(({ degreeHours, length: y, low, high }) => ({ x: degreeHours * factor, y, low, high })),
        },
      ],
      ...(timetable === null ? {} : { aim: { y: timetable.aimLength, name: `target ${length(timetable.aimLength)}` } }),
      xTitle: `degree-hours of the bed, ${shownAs("temperature", units).unit} × h`,
      yTitle: "mean length, of the kernel",
      leastX: 100,
      leastY: 0.1,
    }),
  };
}

/**
 * Length at unloading against the bed's mean temperature: all that a fixed timetable with one count a batch can show.
 *
 * @param said what to see, as the page's findings say it
 */
export function lengthByTemperatureFigure(
  fit: NonNullable<SteepGerminationResult["lengthOnTemperature"]>,
  runs: readonly AcrospireRun[],
  said: string,
  settings: FigureSettings,
): FigureSpec | null {
  const { units } = settings;
  const warm = runs.flatMap((run) => (run.bedMeanCelsius === null ? [] : [{ ...run, celsius: run.bedMeanCelsius }]));
  if (warm.length === 0) return null;
  const shown = (celsius: number): number => toShown(celsius, "temperature", units);
  const { unit } = shownAs("temperature", units);
  return {
    id: "length-by-temperature",
    title: "Acrospire length at unloading by bed temperature",
    summary: said,
    table: latestFirst(
      warm,
      "batch",
      [
        { label: "batch", numeric: false },
        { label: "bed", unit, numeric: true },
        { label: "mean length", unit: "of the kernel", numeric: true },
        { label: "on the floor", unit: "h", numeric: true },
      ],
      (run) => [
        runCell(run.run, settings),
        print(run.celsius, "temperature", units, { bare: true }),
        length(run.meanLength.estimate),
        run.hours === null ? "" : printNumber(run.hours, 0),
      ],
    ),
    wideWidth: halfWidth,
    narrowWidth,
    printAs: "narrow",
    options: lineScatter({
      stage: "germination",
      points: warm.map((run) => ({
        x: shown(run.celsius),
        y: run.meanLength.estimate,
        href: settings.runHref(run.run),
        hint: () =>
          `${run.run}: ${length(run.meanLength.estimate)} in a bed of ${print(run.celsius, "temperature", units)}`,
      })),
      lines: [
        {
          name: "",
          points: fit.line.map(({ celsius, length: y, low, high }) => ({ x: shown(celsius), y, low, high })),
        },
      ],
      xTitle: `bed, mean, ${unit}`,
      yTitle: "mean length, of the kernel",
      leastX: 2,
      leastY: 0.1,
    }),
  };
}
