import { type Markish, ruleY } from "@observablehq/plot";
import type { ControlChart } from "../../report/controlChartResult.ts";
import { printDate, printDateInFull } from "../../units/instant.ts";
import { printNumber, printSigned } from "../../units/print.ts";
import { footAxis, footHeight, valueAxis } from "../axes.ts";
import { type FigureSettings, fullWidth, narrowWidth } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { type Label, labelLayer } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { countOf, latestFirst } from "../listedRows.ts";
import { ringRadius, rings } from "../scatter.ts";
import { valueTicks } from "../ticks.ts";
import { chartFrame } from "./chartFrame.ts";
import { chartWords, runCell } from "./chartWords.ts";
import { endLabels } from "./endLabels.ts";
import { byPhase, runningLine } from "./runningLine.ts";
import { placesOf } from "./signalGroups.ts";
import { isUpwards } from "./signalWords.ts";
import { spanWithRoom, wordsOver, wordsUnder } from "./spanWithRoom.ts";

/** A caption names this many shifts. */
const MOST_SAID = 3;

/**
 * Both cumulative sums, what lies above the centre upwards and what lies below it downwards, with the decision lines. A
 * sum that passes its line is ringed there, and the batch with which its shift seems to have begun is marked.
 *
 * @returns null where no batch has limits
 */
export function cumulativeSumFigure(chart: ControlChart, settings: FigureSettings): FigureSpec | null {
  const sums = chart.cumulativeSums;
  if (sums === null) return null;
  const words = chartWords(chart, settings);
  const upper = byPhase(chart, sums.upper);
  const lower = byPhase(
    chart,
    sums.lower.map((sum) => -sum),
  );
  const judged = upper.flat().length;
  if (judged === 0) return null;
  const { decision } = sums;
  const places = placesOf(chart.runs);
  const shifts = chart.signals
    .filter(({ rule }) => rule === "cumulativeSum")
    .flatMap((signal) => {
      const place = places.get(signal.raisedAt) ?? -1;
      const run = chart.runs[place];
      const up = isUpwards(signal);
      const sum = (up ? sums.upper : sums.lower)[place];
      return run && sum !== undefined && Number.isFinite(sum) ? [{ signal, up, x: run.at, y: up ? sum : -sum }] : [];
    });

  const options = (frame: Frame) => {
    const shared = chartFrame(chart, settings, frame);
    const { size, x, months } = shared;
    const labels = shifts.slice(frame.narrow ? -2 : -5).map(({ signal, up, ...at }, priority): Label => {
      const from = printDate(signal.from, settings.timeZone);
      return {
        ...at,
        or: [{ x: signal.from, y: 0 }],
        reach: ringRadius(frame),
        prefer: up ? 270 : 90,
        priority,
        farthest: 50,
        role: "signal-words",
        lines: [{ text: `${up ? "higher" : "lower"} from ${from}`, strong: true }],
      };
    });
    const inner = frame.narrow ? 200 : 230;
    const heights = [...[...upper, ...lower].flat().map((p) => p.y), decision, -decision];
    const y = spanWithRoom(heights, inner, { over: wordsOver(labels, size), under: wordsUnder(labels, size) });
    const ticks = valueTicks(Math.min(...heights), Math.max(...heights), frame.narrow ? 4 : 6, printSigned);
    const narrow = frame.narrow;
    const marks: Markish[] = [
      valueAxis(ticks, narrow ? "standard deviations" : "sum of differences, in standard deviations", size),
      footAxis(months, size),
      ruleY([0], { className: "rule", x1: x[0], x2: x[1] }),
      ruleY([decision, -decision], { className: "limit", x1: x[0], x2: x[1] }),
      runningLine([...upper, ...lower], "line thin"),
      layer("signal level", ({ x: toX, y: toY, pen }) =>
        shifts.map((shift) => pen.element("path", { d: `M${toX(shift.signal.from)},${toY(0) - 6}v12` })),
      ),
      rings(shifts, frame),
      endLabels(
        [decision, -decision].map((at) => {
          const text = printSigned(at, 2);
          return { y: at, rows: narrow ? ["limit", text] : [`limit ${text}`], role: "soft" as const };
        }),
        size,
      ),
      labelLayer({
        size,
        labels,
        lines: [...upper, ...lower],
        marks: shifts.map((p) => ({ ...p, radius: ringRadius(frame) + 1, hard: true })),
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

  const beyond = [...upper, ...lower].flat().filter((p) => Math.abs(p.y) > decision).length;
  const found = shifts.slice(-MOST_SAID).map(({ signal, up, x }) => {
    const dates = `from about ${printDateInFull(signal.from, settings.timeZone)}, seen on ${printDateInFull(x, settings.timeZone)}`;
    return `${up ? "Higher" : "Lower"} ${dates} (${words.difference(signal.size)} over ${countOf(signal.runs.length, "batch")}).`;
  });
  const chosen = chart.rules.includes("cumulativeSum");
  const outcome =
    shifts.length > 0
      ? `The sums passed their line ${shifts.length === 1 ? "once" : `${shifts.length} times`}${shifts.length > MOST_SAID ? `, the latest ${MOST_SAID}` : ""}. ${found.join(" ")}`
      : beyond > 0
        ? `${chosen ? "" : "The sums are not among the rules chosen. "}At ${countOf(beyond, "batch")} a sum stands beyond its line.`
        : `No sum has passed its line in ${countOf(judged, "batch")}.`;
  return {
    id: `${words.id}-cumulative-sums`,
    title: "When did its level move?",
    summary: outcome,
    table: latestFirst(
      chart.runs
        .map((run, index) => ({ run, up: sums.upper[index] ?? Number.NaN, down: sums.lower[index] ?? Number.NaN }))
        .filter(({ up }) => Number.isFinite(up)),
      "batch",
      [
        { label: "run", numeric: false },
        { label: "unloaded", numeric: false },
        { label: "sum above", unit: "standard deviations", numeric: true },
        { label: "sum below", unit: "standard deviations", numeric: true },
      ],
      ({ run, up, down }) => [
        runCell(run.run, settings),
        printDate(run.at, settings.timeZone),
        printNumber(up, 2),
        printNumber(down, 2),
      ],
    ),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}
