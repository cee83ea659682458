import type { Markish } from "@observablehq/plot";
import type { ControlChart } from "../../report/controlChartResult.ts";
import { printDate } from "../../units/instant.ts";
import { footAxis, footHeight, valueAxis } from "../axes.ts";
import { type FigureSettings, fullWidth, narrowWidth } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { type Label, labelLayer, lineHeight } from "../labelLayer.ts";
import { countOf, latestFirst } from "../listedRows.ts";
import { dotRadius, MOST_LINKED_MARKS, ringRadius, rings, scatter } from "../scatter.ts";
import { valueTicks } from "../ticks.ts";
import { batchPoints } from "./batchPoints.ts";
import { chartFrame } from "./chartFrame.ts";
import { chartWords, listed, runCell } from "./chartWords.ts";
import { endLabels } from "./endLabels.ts";
import { levelNames } from "./levelNames.ts";
import { nearLabels } from "./nearLabels.ts";
import { spanWithRoom, wordsOver } from "./spanWithRoom.ts";
import { spreadLevels, spreadMarks } from "./spreadLevels.ts";

/** A caption names this many uneven batches. */
const MOST_SAID = 4;

/**
 * How uneven each batch is in itself: the standard deviation of its samples, with limits that follow how many samples it
 * has. Batches over their limit are ringed and named. An uneven bed is another fault than an uneven month.
 *
 * @returns null where too few batches hold two samples
 */
export function withinSpreadFigure(chart: ControlChart, settings: FigureSettings): FigureSpec | null {
  const { within } = chart;
  if (within === null) return null;
  const words = chartWords(chart, settings, { finer: 1 });
  const spreadAt = (index: number): number | null => within.points[index]?.standardDeviation ?? null;
  const points = batchPoints(
    chart.runs,
    settings,
    (_, index) => spreadAt(index),
    (_, index) => `${words.size(spreadAt(index) ?? 0)} over ${countOf(within.points[index]?.count ?? 0, "sample")}`,
  );
  if (points.length === 0) return null;
  const names = new Set(within.unevenRuns);
  const uneven = chart.runs.flatMap((run, index) => {
    const y = spreadAt(index);
    return names.has(run.run) && y !== null ? [{ run, x: run.at, y }] : [];
  });

  const options = (frame: Frame) => {
    const shared = chartFrame(chart, settings, frame);
    const { size, x, months } = shared;
    const levels = spreadLevels(chart.runs, within.points, x[1]);
    const labels = uneven.slice(frame.narrow || points.length > MOST_LINKED_MARKS ? -4 : -8).map(
      ({ run, ...at }, priority): Label => ({
        ...at,
        reach: ringRadius(frame),
        priority,
        farthest: 70,
        role: "signal-words",
        lines: [{ text: `${run.run} uneven`, strong: true }],
      }),
    );
    const inner = frame.narrow ? 190 : 220;
    const heights = [0, ...points.map((p) => p.y), ...levels.map(({ high }) => high)];
    const y = spanWithRoom(heights, inner, { over: wordsOver(labels, size), under: 0 });
    const ticks = valueTicks(0, Math.max(...heights), 4);
    const marks: Markish[] = [
      ...spreadMarks(levels),
      valueAxis(
        ticks,
        frame.narrow ? "points within, limits by samples" : "points, standard deviation within the batch",
        size,
      ),
      footAxis(months, size),
      scatter(points, frame),
      rings(uneven, frame),
      endLabels(
        levelNames(
          levels.filter(({ to }) => to === x[1]),
          { narrow: frame.narrow, least: (lineHeight(size) * (y[1] - y[0])) / inner },
        ),
        size,
      ),
      labelLayer({
        size,
        labels,
        marks: [
          ...nearLabels(points, labels, shared).map((p) => ({ ...p, radius: dotRadius(frame) + 1 })),
          ...uneven.map((p) => ({ ...p, radius: ringRadius(frame) + 1, hard: true })),
        ],
      }),
    ];
    const marginTop = Math.round(size * 1.9);
    const marginBottom = footHeight(months, size);
    return {
      height: inner + marginTop + marginBottom,
      marginTop,
      marginRight: shared.right,
      marginBottom,
      marginLeft: shared.left,
      x: { domain: x },
      y: { domain: y },
      marks,
    };
  };

  const said = within.unevenRuns.slice(-MOST_SAID);
  const more = within.unevenRuns.length > said.length ? `, the latest ${said.length}` : "";
  const count = `${uneven.length === 0 ? "None" : uneven.length} of ${countOf(points.length, "batch")} with two samples or more ${uneven.length < 2 ? "is" : "are"} less even than ${uneven.length < 2 ? "its" : "their"} number of samples explains`;
  return {
    id: `${words.id}-within`,
    title: "Is each batch even in itself?",
    summary: `${count}${said.length === 0 ? "" : `${more}: ${listed(said)}`}. Samples of one batch usually spread by ${words.size(within.sigma)} (standard deviation, ${countOf(within.baselineRuns, "baseline batch")}).`,
    table: latestFirst(
      chart.runs
        .map((run, index) => ({ run, point: within.points[index] }))
        .filter(({ point }) => point !== undefined && point.standardDeviation !== null),
      "batch",
      [
        { label: "run", numeric: false },
        { label: "unloaded", numeric: false },
        { label: "variety", numeric: false },
        { label: "samples", numeric: true },
        { label: "spread within", unit: "points", numeric: true },
        { label: "lower limit", unit: "points", numeric: true },
        { label: "upper limit", unit: "points", numeric: true },
        { label: "signal", numeric: false },
      ],
      ({ run, point }) => [
        runCell(run.run, settings),
        printDate(run.at, settings.timeZone),
        run.variety,
        String(point?.count ?? 0),
        words.bareSize(point?.standardDeviation ?? 0),
        words.bareSize(point?.low ?? 0),
        words.bareSize(point?.high ?? 0),
        names.has(run.run) ? "uneven" : "",
      ],
    ),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}
