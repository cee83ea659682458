import type { Markish } from "@observablehq/plot";
import type { AcrospireRun, SteepGerminationResult } from "../../report/steepGerminationResult.ts";
import { printDate } from "../../units/instant.ts";
import { print, printPValue, printSigned } from "../../units/print.ts";
import { shownAs } from "../../units/quantity.ts";
import { footAxis } from "../axes.ts";
import { runCell } from "../controlCharts/chartWords.ts";
import { endLabels } from "../controlCharts/endLabels.ts";
import { type FigureSettings, fullWidth, narrowWidth } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { type Label, labelLayer } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { countOf, latestFirst } from "../listedRows.ts";
import { dotRadius, MOST_RINGS, ringRadius, rings, scatter } from "../scatter.ts";
import { ownStripAxes, ownStrips } from "../thermostat/ownStrips.ts";
import { floorFrame, nameLines, stripOptions } from "./floorFrame.ts";

/** One bed against the others of its batch. */
export interface BedBeside {
  readonly run: string;
  readonly at: number;
  readonly bed: string;
  readonly length: number;
  /** Mean length of the batch's other beds. */
  readonly others: number;
  readonly counted: number;
  readonly celsius: number | null;
}

/** Every bed of the batches that have two or more counted, in order of time. */
export function bedsBeside(runs: readonly AcrospireRun[]): readonly BedBeside[] {
  return runs.flatMap(({ run, at, beds }) => {
    const known = beds.flatMap((bed) => (bed.meanLength === null ? [] : [{ ...bed, meanLength: bed.meanLength }]));
    if (known.length < 2) return [];
    const sum = known.reduce((total, { meanLength }) => total + meanLength, 0);
    return known.map(({ bed, meanLength, counted, bedMeanCelsius }) => ({
      run,
      at,
      bed,
      length: meanLength,
      others: (sum - meanLength) / (known.length - 1),
      counted,
      celsius: bedMeanCelsius,
    }));
  });
}

const length = (fraction: number): string => print(fraction, "fraction", "metric");
const meanName = ({ difference: mean }: { readonly difference: { readonly estimate: number } }): string =>
  `mean ${difference(mean.estimate)}`;
const difference = (fraction: number): string => printSigned(fraction, 2);

/**
 * The beds of one batch held against each other: a strip for each bed, every dot a batch, its height how far this bed lay
 * from the others of the same batch; those apart beyond counting error are ringed and named.
 *
 * @param said what to see, as the page's findings say it
 * @returns null where no batch has two beds counted
 */
export function bedsFigure(
  runs: readonly AcrospireRun[],
  { lags, byBed }: SteepGerminationResult["beds"],
  said: string,
  settings: FigureSettings,
): FigureSpec | null {
  const beside = bedsBeside(runs);
  if (beside.length === 0) return null;
  const { timeZone, units } = settings;
  const names = [...new Set(beside.map(({ bed }) => bed))].sort();
  const apart = new Map(lags.map(({ run, bed, p }) => [JSON.stringify([run, bed]), p]));
  const chance = ({ run, bed }: BedBeside): string => {
    const p = apart.get(JSON.stringify([run, bed]));
    return p === undefined ? "" : printPValue(p);
  };
  const reach = Math.max(0.05, ...beside.map((one) => Math.abs(one.length - one.others))) * 1.12;

  const options = (frame: Frame) => {
    const shared = floorFrame({ runs: beside }, settings, frame, byBed.map(meanName));
    const { size, x, months } = shared;
    const { strips, inner } = ownStrips(
      names.map((name) => ({
        name: `bed ${name}, ${countOf(beside.filter(({ bed }) => bed === name).length, "batch")}`,
        values: [-reach, reach],
        least: 0,
        whole: true,
      })),
      { height: frame.narrow ? 80 : 90, size, count: 3, print: printSigned },
    );
    const placed = beside.map((one) => ({
      one,
      x: one.at,
      y: strips[names.indexOf(one.bed)]?.heightOf(one.length - one.others) ?? 0,
      href: settings.runHref(one.run),
      hint: () => `${one.run}, bed ${one.bed}: ${length(one.length)}, the others ${length(one.others)}`,
    }));
    const ringed = placed.filter(({ one }) => apart.has(JSON.stringify([one.run, one.bed]))).slice(-MOST_RINGS);
    const labels = ringed.slice(frame.narrow ? -4 : -8).map(
      ({ one, ...at }, priority): Label => ({
        x: at.x,
        y: at.y,
        reach: ringRadius(frame),
        priority,
        farthest: 40,
        prefer: 0,
        role: "signal-words",
        lines: [{ text: `${one.run} ${difference(one.length - one.others)}`, strong: true }],
      }),
    );
    const marks: Markish[] = [
      ownStripAxes(strips, size),
      footAxis(months, size),
      layer("rule", ({ y, inside, pen }) => [
        pen.element("path", {
          d: strips.map(({ heightOf }) => `M${inside.left},${y(heightOf(0))}H${inside.right}`).join(""),
        }),
      ]),
      scatter(placed, frame, "mark-germination"),
      rings(ringed, frame),
      endLabels(
        byBed.flatMap(({ bed, difference: mean }) => {
          const strip = strips[names.indexOf(bed)];
          return strip === undefined
            ? []
            : [{ y: strip.heightOf(mean.estimate), role: "ink" as const, rows: [meanName({ difference: mean })] }];
        }),
        size,
      ),
      labelLayer({
        size,
        labels,
        lines: [
          ...strips.map(({ heightOf }) => x.map((at) => ({ x: at, y: heightOf(0) }))),
          ...nameLines(strips, shared),
        ],
        marks: [
          ...placed.map((p) => ({ x: p.x, y: p.y, radius: dotRadius(frame) + 1 })),
          ...ringed.map((p) => ({ x: p.x, y: p.y, radius: ringRadius(frame) + 1, hard: true })),
        ],
      }),
    ];
    return stripOptions(shared, inner, marks);
  };

  return {
    id: "beds-beside",
    title: "Beds of one batch side by side: length against the other beds",
    summary: said,
    table: latestFirst(
      beside,
      "bed",
      [
        { label: "batch", numeric: false },
        { label: "unloaded", numeric: false },
        { label: "bed", numeric: false },
        { label: "counted", numeric: true },
        { label: "mean length", unit: "of the kernel", numeric: true },
        { label: "the others", unit: "of the kernel", numeric: true },
        { label: "difference", numeric: true },
        { label: "bed, mean", unit: shownAs("temperature", units).unit, numeric: true },
        { label: "by chance, where under 0.05", numeric: true },
      ],
      (one) => [
        runCell(one.run, settings),
        printDate(one.at, timeZone),
        one.bed,
        String(one.counted),
        length(one.length),
        length(one.others),
        difference(one.length - one.others),
        one.celsius === null ? "" : print(one.celsius, "temperature", units, { bare: true }),
        chance(one),
      ],
    ),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}
