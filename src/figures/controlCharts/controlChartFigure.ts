import { type Markish, ruleY } from "@observablehq/plot";
import type { ChartedRun, ControlChart } from "../../report/controlChartResult.ts";
import { printSigned } from "../../units/print.ts";
import { footAxis, footHeight, valueAxis } from "../axes.ts";
import { type DatedEvent, eventMarks, eventRows } from "../eventMarks.ts";
import { type FigureSettings, fullWidth, narrowWidth } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { labelLayer } from "../labelLayer.ts";
import { dotRadius, ringRadius, rings } from "../scatter.ts";
import { valueTicks } from "../ticks.ts";
import { baselineBrackets, bracketMarks, bracketStrip } from "./baselineBrackets.ts";
import { batchMarks } from "./batchMarks.ts";
import { batchPoints } from "./batchPoints.ts";
import { chartFrame } from "./chartFrame.ts";
import { chartSummary } from "./chartSummary.ts";
import { chartTable } from "./chartTable.ts";
import { type ChartWords, chartWords } from "./chartWords.ts";
import { endLabels } from "./endLabels.ts";
import { earlierLimitNames, limitNames, limitWashes } from "./limitNames.ts";
import { limitMarks, limitSteps } from "./limitSteps.ts";
import { nearLabels } from "./nearLabels.ts";
import { levelMarks, signalMarks } from "./signalMarks.ts";
import { spanWithRoom, wordsOver, wordsUnder } from "./spanWithRoom.ts";

export interface ControlChartOptions {
  /** What was logged about the house: an upright dotted line each. */
  readonly events?: readonly DatedEvent[];
}

/**
 * All batches in the order of unloading, each as its difference from its own variety's centre in the measure's unit,
 * with the limits of each phase, the baseline that set them, what was left out of it, and the signals in words. Where
 * the chart runs on residuals these are what is drawn, and the title of the axis says so. A batch that has no limits
 * yet is not drawn and is counted in the summary.
 *
 * @returns null where no batch has limits: the chart's `tooLittle` says why
 */
export function controlChartFigure(
  chart: ControlChart,
  settings: FigureSettings,
  { events = [] }: ControlChartOptions = {},
): FigureSpec | null {
  const words = chartWords(chart, settings);
  const onResiduals = chart.assumptions?.onResiduals ?? false;
  const points = batchPoints(
    chart.runs,
    settings,
    (run) => run.deviation,
    (run) => hintOf(run, words, onResiduals),
  );
  if (points.length === 0) return null;
  const marked = withPhases(chart, events);
  const brackets = baselineBrackets(chart);

  const options = (frame: Frame) => {
    const shared = chartFrame(chart, settings, frame);
    const { size, x, months } = shared;
    const steps = limitSteps(chart, x[1]);
    const shown = marked.filter(({ on }) => on >= x[0] && on <= x[1]);
    const head = eventRows(shown, frame) * size * 1.3;
    const inner = frame.narrow ? 250 : 320;
    const strip = bracketStrip(size);
    const signals = signalMarks(chart.runs, chart.signals, words, {
      frame,
      chart: shared,
      heightOf: (run) => run.deviation,
    });
    const heights = [...points.map((p) => p.y), ...steps.flatMap(({ reach }) => [reach, -reach])];
    const room = { over: wordsOver(signals.labels, size), under: wordsUnder(signals.labels, size) + strip };
    const y = spanWithRoom(heights, inner, room);
    const ticks = valueTicks(Math.min(...heights), Math.max(...heights), frame.narrow ? 4 : 6, printSigned);
    const marks: Markish[] = [
      ...limitMarks(steps),
      valueAxis(ticks, axisTitle(words, onResiduals, frame), size),
      footAxis(months, size),
      ruleY([0], { className: "rule", x1: x[0], x2: x[1] }),
      eventMarks(shown, frame),
      bracketMarks(brackets, size),
      ...batchMarks(points, frame),
      levelMarks(signals.levels),
      rings(signals.rings, frame),
      endLabels(limitNames(steps, words, frame, size), size),
      labelLayer({
        size,
        labels: [...signals.labels, ...(frame.narrow ? [] : earlierLimitNames(steps))],
        lines: signals.levels,
        uprights: shown.map(({ on }) => on),
        washes: limitWashes(steps, shared),
        bounds: (inside) => ({ ...inside, bottom: inside.bottom - strip + 8 }),
        marks: [
          ...nearLabels(points, signals.labels, shared).map((p) => ({ ...p, radius: dotRadius(frame) + 1 })),
          ...signals.rings.map((p) => ({ ...p, radius: ringRadius(frame) + 1, hard: true })),
        ],
      }),
    ];
    const marginTop = Math.round(size * 1.9 + head);
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

  return {
    id: `${words.id}-chart`,
    title: `Is the ${words.measure} steady?`,
    summary: chartSummary(chart, words, settings),
    table: chartTable(chart, words, settings),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}

function hintOf({ value, deviation }: ChartedRun, words: ChartWords, onResiduals: boolean): string {
  const off = deviation === null ? "" : words.difference(deviation);
  return `${words.value(value)}, ${off} ${onResiduals ? "from what the batch before let expect" : "from its centre"}`;
}

function axisTitle({ measure }: ChartWords, onResiduals: boolean, { narrow }: Frame): string {
  if (onResiduals)
    return narrow ? "points from expected" : `points of ${measure} from what the batch before let expect`;
  return narrow ? "points from own centre" : `points of ${measure} from the variety’s own centre`;
}

/** The events and, unless one of them says it already, what began each later phase. */
function withPhases(chart: ControlChart, events: readonly DatedEvent[]): readonly DatedEvent[] {
  const unsaid = chart.phases.slice(1).flatMap(({ name, from }, i) => {
    if (events.some(({ what }) => name === `since ${what}`)) return [];
    return [{ on: chart.runs.find((run) => run.phase === i + 1)?.at ?? from, what: name.replace(/^since /, "") }];
  });
  return [...events, ...unsaid];
}
