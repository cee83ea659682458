import { type Markish, ruleY } from "@observablehq/plot";
import type { ControlChart } from "../../report/controlChartResult.ts";
import { printDate, printDateInFull } from "../../units/instant.ts";
import { printNumber, printSigned } from "../../units/print.ts";
import { footAxis, footHeight, valueAxis } from "../axes.ts";
import { type FigureSettings, fullWidth, narrowWidth } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { type Label, labelLayer } from "../labelLayer.ts";
import { countOf, latestFirst } from "../listedRows.ts";
import { ringRadius, rings } from "../scatter.ts";
import { valueTicks } from "../ticks.ts";
import { chartFrame } from "./chartFrame.ts";
import { type ChartWords, chartWords, runCell } from "./chartWords.ts";
import { type EndLabel, endLabels } from "./endLabels.ts";
import { byPhase, runningBand, runningLine } from "./runningLine.ts";
import { placesOf } from "./signalGroups.ts";
import { isUpwards } from "./signalWords.ts";
import { spanWithRoom, wordsOver, wordsUnder } from "./spanWithRoom.ts";

/**
 * The running weighted mean of the differences with its limits, narrow at first, on the time axis of the control chart
 * that it stands beneath. Ringed where it first left its limits.
 *
 * @returns null where no batch has limits
 */
export function weightedMeanFigure(chart: ControlChart, settings: FigureSettings): FigureSpec | null {
  const running = chart.weightedMean;
  if (running === null) return null;
  const words = chartWords(chart, settings, { finer: 1 });
  const means = byPhase(chart, running.means);
  const reach = byPhase(chart, running.reach);
  const last = chart.runs.findLastIndex((_, index) => Number.isFinite(running.means[index]));
  if (last < 0) return null;
  const places = placesOf(chart.runs);
  const raised = chart.signals
    .filter(({ rule }) => rule === "weightedMean")
    .flatMap((signal) => {
      const place = places.get(signal.raisedAt);
      const run = place === undefined ? undefined : chart.runs[place];
      const y = running.means[place ?? -1];
      return run && y !== undefined && Number.isFinite(y) ? [{ signal, x: run.at, y }] : [];
    });

  const options = (frame: Frame) => {
    const shared = chartFrame(chart, settings, frame);
    const { size, x, months } = shared;
    const labels = raised.slice(frame.narrow ? -2 : -4).map(({ signal, ...at }, priority): Label => {
      const up = isUpwards(signal);
      const from = printDate(signal.from, settings.timeZone);
      const text = `${up ? "high" : "low"} since ${from}`;
      return {
        ...at,
        reach: ringRadius(frame),
        prefer: up ? 270 : 90,
        priority,
        farthest: 70,
        role: "signal-words",
        lines: [{ text, strong: true }],
      };
    });
    const inner = frame.narrow ? 150 : 170;
    const heights = [...means.flat().map((p) => p.y), ...reach.flat().flatMap((p) => [p.y, -p.y])];
    const room = { over: wordsOver(labels, size), under: wordsUnder(labels, size) };
    const y = spanWithRoom(heights, inner, room);
    const ticks = valueTicks(Math.min(...heights), Math.max(...heights), frame.narrow ? 3 : 4, printSigned);
    const marks: Markish[] = [
      ...runningBand(reach),
      valueAxis(ticks, frame.narrow ? "points, running mean" : `points, running mean of ${words.measure}`, size),
      footAxis(months, size),
      ruleY([0], { className: "rule", x1: x[0], x2: x[1] }),
      runningLine(means),
      rings(raised, frame),
      endLabels(endNames(running.reach[last] ?? 0, words, frame), size),
      labelLayer({
        size,
        labels,
        lines: means,
        marks: raised.map((p) => ({ ...p, radius: ringRadius(frame) + 1, hard: true })),
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

  const now = running.means[last] ?? 0;
  const limit = words.size(running.reach[last] ?? 0);
  const stands = Math.abs(now) > (running.reach[last] ?? 0) ? "outside" : "inside";
  const times = raised.map(({ signal, x }) => {
    const way = isUpwards(signal) ? "high" : "low";
    return `${printDateInFull(x, settings.timeZone)} (${way}, ${countOf(signal.runs.length, "batch")}, ${chartWords(chart, settings).difference(signal.size)})`;
  });
  const seen =
    times.length === 0 ? "It has not left its limits" : `It left its limits on ${times.slice(-3).join(", on ")}`;
  return {
    id: `${words.id}-running-mean`,
    title: "Has its level moved?",
    summary: `The running mean, in which each batch counts ${printNumber(100 * running.weight, 0)} in 100 and older ones ever less, stands at ${words.difference(now)}, ${stands} its limits of ±${limit}. ${seen}${times.length > 3 ? `, and ${times.length - 3} times before` : ""}.`,
    table: latestFirst(
      chart.runs
        .map((run, index) => ({
          run,
          mean: running.means[index] ?? Number.NaN,
          reach: running.reach[index] ?? Number.NaN,
        }))
        .filter(({ mean }) => Number.isFinite(mean)),
      "batch",
      [
        { label: "run", numeric: false },
        { label: "unloaded", numeric: false },
        { label: "running mean", unit: "points", numeric: true },
        { label: "limits, either side", unit: "points", numeric: true },
      ],
      ({ run, mean, reach: half }) => [
        runCell(run.run, settings),
        printDate(run.at, settings.timeZone),
        words.bareDifference(mean),
        words.bareSize(half),
      ],
    ),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}

function endNames(reach: number, words: ChartWords, { narrow }: Frame): EndLabel[] {
  const limits = [reach, -reach].map((y): EndLabel => {
    const text = words.bareDifference(y);
    return { y, role: "soft", rows: narrow ? ["limit", text] : [`limit ${text}`] };
  });
  return [...limits, { y: 0, role: "ink", rows: ["centre"] }];
}
