import type { Markish } from "@observablehq/plot";
import type { AcrospireRun } from "../../report/steepGerminationResult.ts";
import { printDate } from "../../units/instant.ts";
import { print, printNumber } from "../../units/print.ts";
import { footAxis, valueAxis } from "../axes.ts";
import { runCell } from "../controlCharts/chartWords.ts";
import { type EndLabel, endLabels } from "../controlCharts/endLabels.ts";
import { nearLabels } from "../controlCharts/nearLabels.ts";
import { type FigureSettings, fullWidth, narrowWidth } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { type Label, labelLayer } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { latestFirst } from "../listedRows.ts";
import { dotRadius, MOST_LINKED_MARKS, MOST_RINGS, ringRadius, rings, scatter } from "../scatter.ts";
import { paddedSpan, valueTicks } from "../ticks.ts";
import { chartOptions, floorFrame } from "./floorFrame.ts";
import { targetBand } from "./targetBand.ts";

const length = (fraction: number): string => print(fraction, "fraction", "metric");
const share = ({ estimate, low, high }: AcrospireRun["evenPercent"]): string =>
  `${printNumber(estimate, 0)} (${printNumber(low, 0)} to ${printNumber(high, 0)})`;

/**
 * Mean acrospire length of every batch in time with what counting alone leaves open as an upright stroke, over the range
 * that is wanted. Batches whose whole stroke lies outside are ringed, the farthest of them named.
 *
 * @param outside the runs that are short or long beyond counting error
 * @param said what to see, as the page's findings say it
 * @returns null where nothing was counted
 */
export function meanLengthFigure(
  runs: readonly AcrospireRun[],
  outside: ReadonlyMap<string, "short" | "long">,
  said: string,
  settings: FigureSettings,
): FigureSpec | null {
  const latest = runs.at(-1);
  if (latest === undefined) return null;
  const { timeZone } = settings;
  const wanted = {
    low: latest.targets?.meanLow ?? null,
    target: latest.targets?.meanTarget ?? null,
    high: latest.targets?.meanHigh ?? null,
  };
  const points = runs.map((run) => ({
    run,
    x: run.at,
    y: run.meanLength.estimate,
    href: settings.runHref(run.run),
    hint: () =>
      `${run.run}, ${printDate(run.at, timeZone)}: ${length(run.meanLength.estimate)} (${length(run.meanLength.low)} to ${length(run.meanLength.high)}), ${run.counted} counted`,
  }));
  const strokes = [...points.flatMap(({ run }) => [run.meanLength.low, run.meanLength.high])];
  const edges = [wanted.low, wanted.high].flatMap((value) => value ?? []);

  const ends: readonly EndLabel[] = [
    ...(wanted.high === null
      ? []
      : [{ y: wanted.high, role: "soft" as const, rows: [`highest ${length(wanted.high)}`] }]),
    ...(wanted.target === null
      ? []
      : [{ y: wanted.target, role: "ink" as const, rows: [`target ${length(wanted.target)}`] }]),
    ...(wanted.low === null ? [] : [{ y: wanted.low, role: "soft" as const, rows: [`lowest ${length(wanted.low)}`] }]),
  ];

  const options = (frame: Frame) => {
    const shared = floorFrame(
      { runs },
      settings,
      frame,
      ends.flatMap(({ rows }) => rows),
    );
    const { size, months } = shared;
    const y = paddedSpan([...strokes, ...edges], 0.08, 0.1);
    const ticks = valueTicks(y[0], y[1], frame.narrow ? 4 : 5);
    const ringed = points.filter(({ run }) => outside.has(run.run)).slice(-MOST_RINGS);
    const middle = (y[0] + y[1]) / 2;
    const farthest = [...ringed].sort((a, b) => Math.abs(a.y - middle) - Math.abs(b.y - middle));
    const labels = farthest.slice(frame.narrow ? -2 : -4).map(({ run, x: at, y: height }, priority): Label => {
      const way = outside.get(run.run) ?? "short";
      return {
        x: at,
        y: height,
        reach: ringRadius(frame),
        priority,
        prefer: way === "short" ? 90 : 270,
        farthest: 60,
        role: "signal-words",
        lines: [{ text: `${run.run} ${way}`, strong: true }],
      };
    });
    const marks: Markish[] = [
      ...targetBand(wanted, (value) => value, y),
      valueAxis(ticks, "mean length, of the kernel", size),
      footAxis(months, size),
      ...(points.length > MOST_LINKED_MARKS
        ? []
        : [
            layer("reach", ({ x: toX, y: toY, pen }) => [
              pen.element("path", {
                d: runs.map(({ at, meanLength: m }) => `M${toX(at)},${toY(m.low)}V${toY(m.high)}`).join(""),
              }),
            ]),
          ]),
      scatter(points, frame, "mark-germination"),
      rings(ringed, frame),
      endLabels(ends, size),
      labelLayer({
        size,
        labels,
        marks: [
          ...nearLabels(points, labels, shared).map((p) => ({ x: p.x, y: p.y, radius: dotRadius(frame) + 1 })),
          ...ringed.map((p) => ({ x: p.x, y: p.y, radius: ringRadius(frame) + 1, hard: true })),
        ],
      }),
    ];
    return chartOptions(shared, { height: frame.narrow ? 250 : 280, y, marks });
  };

  return {
    id: "mean-length-in-time",
    title: "How long the acrospires are at unloading",
    summary: said,
    table: latestFirst(
      runs,
      "batch",
      [
        { label: "batch", numeric: false },
        { label: "unloaded", numeric: false },
        { label: "counted", numeric: true },
        { label: "mean length", unit: "of the kernel", numeric: true },
        { label: "half to full", unit: "%", numeric: true },
        { label: "undergrown", unit: "%", numeric: true },
        { label: "overgrown", unit: "%", numeric: true },
      ],
      (run) => [
        runCell(run.run, settings),
        printDate(run.at, timeZone),
        printNumber(run.counted, 0),
        `${length(run.meanLength.estimate)} (${length(run.meanLength.low)} to ${length(run.meanLength.high)})`,
        share(run.evenPercent),
        share(run.undergrownPercent),
        share(run.overgrownPercent),
      ],
    ),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}
