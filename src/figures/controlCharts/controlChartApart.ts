import type { Markish } from "@observablehq/plot";
import type { ChartedRun, ChartSignal, ControlChart } from "../../report/controlChartResult.ts";
import { footAxis, footHeight } from "../axes.ts";
import { type FigureSettings, fullWidth, narrowWidth } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { labelLayer } from "../labelLayer.ts";
import { countOf } from "../listedRows.ts";
import { dotRadius, ringRadius, rings } from "../scatter.ts";
import { valueTicks } from "../ticks.ts";
import { batchMarks } from "./batchMarks.ts";
import { batchPoints } from "./batchPoints.ts";
import { chartFrame } from "./chartFrame.ts";
import { chartTable } from "./chartTable.ts";
import { type ChartWords, capitalised, chartWords } from "./chartWords.ts";
import { type EndLabel, endLabels } from "./endLabels.ts";
import {
  type ExpectedStretch,
  expectedMarks,
  expectedStretches,
  followsBatchBefore,
  highOf,
  lowOf,
} from "./expectedStretches.ts";
import { nearLabels } from "./nearLabels.ts";
import { signalMarks } from "./signalMarks.ts";
import { stripAxes, stripNameMarks } from "./stripAxes.ts";

/** Words stay within their own strip, px. */
const FARTHEST = 46;

/**
 * The varieties apart: one strip each, in the order given, all on one scale of per cent and one time axis, with each
 * variety's own centre and limits in each phase. One drawing, so that the strips cannot come to have different scales.
 * Only "beyond the limits" is ringed: the other rules look at the batches of all varieties together.
 *
 * Where the chart runs on residuals a batch's centre and limits follow what the batch before it let expect.
 *
 * @param varieties those to draw, top to bottom; one that the chart does not hold is passed over
 * @returns null where no batch of these varieties is on the chart
 */
export function controlChartApart(
  chart: ControlChart,
  varieties: readonly string[],
  settings: FigureSettings,
): FigureSpec | null {
  const words = chartWords(chart, settings);
  const shown = varieties.filter((variety) => chart.runs.some((run) => run.variety === variety));
  const runs = chart.runs.filter((run) => shown.includes(run.variety));
  const latest = runs.at(-1);
  if (!latest) return null;
  const held = expectedStretches(chart, latest.at).filter(({ variety }) => shown.includes(variety));
  const heights = [
    ...runs.map((run) => run.value),
    ...held.flatMap(({ points }) => points.flatMap((p) => [lowOf(p), highOf(p)])),
  ];
  const [low, high] = [Math.min(...heights), Math.max(...heights)];

  const options = (frame: Frame) => {
    const inner = frame.narrow ? 100 : 120;
    const head = frame.narrow ? 40 : 36;
    const foot = 24;
    const perPixel = Math.max(high - low, 10 ** -words.decimals) / inner;
    const shared = chartFrame(chart, settings, frame);
    const { size, x, months } = shared;
    const strips = shown.map((variety, row) => ({
      name: `${variety}, ${countOf(runs.filter((run) => run.variety === variety).length, "batch")}`,
      shift: -row * (inner + head) * perPixel,
    }));
    const shifts = new Map(shown.map((variety, row) => [variety, strips[row]?.shift ?? 0]));
    const shiftOf = (variety: string): number => shifts.get(variety) ?? 0;
    const heightOf = (run: ChartedRun): number | null =>
      shifts.has(run.variety) ? run.value + shiftOf(run.variety) : null;
    const stretches = expectedStretches(chart, x[1]).filter(({ variety }) => shown.includes(variety));
    const points = batchPoints(runs, settings, heightOf, (run) => words.value(run.value));
    const signals = shown.map((variety) =>
      signalMarks(chart.runs, beyondOf(chart, variety), words, { frame, chart: shared, heightOf }),
    );
    const ringed = signals.flatMap((own) => own.rings);
    const labels = signals.flatMap((own) => own.labels.map((label) => ({ ...label, farthest: FARTHEST })));
    const marks: Markish[] = [
      ...expectedMarks(stretches, shiftOf),
      stripAxes(strips, valueTicks(low, high, 4), { top: high, unit: "%", size }),
      footAxis(months, size),
      ...batchMarks(points, frame),
      rings(ringed, frame),
      endLabels(
        stretches.flatMap((stretch) => centreNames(stretch, chart, shiftOf, words)),
        size,
      ),
      labelLayer({
        size,
        labels,
        marks: [
          ...nearLabels(points, labels, shared).map((p) => ({ ...p, radius: dotRadius(frame) + 1 })),
          ...ringed.map((p) => ({ ...p, radius: ringRadius(frame) + 1, hard: true })),
          ...stripNameMarks(strips, { top: high, perPixel }, shared),
        ],
      }),
    ];
    const marginBottom = footHeight(months, size);
    const bottom = low - (shown.length - 1) * (inner + head) * perPixel - foot * perPixel;
    const height = (inner + head) * shown.length + foot;
    return {
      height: height + marginBottom,
      marginTop: 0,
      marginRight: shared.right,
      marginBottom,
      marginLeft: shared.left,
      x: { domain: x },
      y: { domain: [bottom, bottom + height * perPixel] },
      marks,
    };
  };

  return {
    id: `${words.id}-apart`,
    title: `${capitalised(words.measure)}, each variety on its own`,
    summary: shown.map((variety) => varietySaid(variety, chart, words)).join(" "),
    table: chartTable({ ...chart, runs }, words, settings),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}

/** What lies beyond the limits of one variety, batch by batch of its own. */
function beyondOf(chart: ControlChart, variety: string): readonly ChartSignal[] {
  const own = new Map(chart.runs.filter((run) => run.variety === variety).map((run) => [run.run, run]));
  return chart.signals
    .filter(({ rule }) => rule === "beyondLimits")
    .flatMap((signal) =>
      signal.runs.flatMap((run) => {
        const held = own.get(run);
        if (!held || held.deviation === null) return [];
        return [{ ...signal, runs: [run], raisedAt: run, size: held.deviation, from: held.at, to: held.at }];
      }),
    );
}

/** `81.4 %` at the end of the latest centre line; nothing where the centre follows the batch before. */
function centreNames(
  { variety, phase, points }: ExpectedStretch,
  chart: ControlChart,
  shiftOf: (variety: string) => number,
  words: ChartWords,
): EndLabel[] {
  const latest = chart.runs.findLast((run) => run.variety === variety && run.sigma !== null);
  const [point] = points;
  if (!point || latest?.phase !== phase || followsBatchBefore(chart, phase)) return [];
  return [{ y: point.centre + shiftOf(variety), role: "ink", rows: [words.value(point.centre)] }];
}

/** `Alva: centre 81.4 %, limits 79.0 to 83.8 %, 2 of 90 batches beyond.` */
function varietySaid(variety: string, chart: ControlChart, words: ChartWords): string {
  const runs = chart.runs.filter((run) => run.variety === variety);
  const index = chart.phases.findLastIndex(({ centres }) => centres.some((centre) => centre.variety === variety));
  const own = chart.phases[index]?.centres.find((centre) => centre.variety === variety);
  if (!own) return `${variety}: ${countOf(runs.length, "batch")}, no limits yet.`;
  const { centre, reach } = own;
  const beyond = beyondOf(chart, variety).length;
  const limits = followsBatchBefore(chart, index)
    ? ", limits that follow the batch before"
    : `, limits ${words.bareValue(centre.estimate - reach)} to ${words.value(centre.estimate + reach)}`;
  const count = chart.rules.includes("beyondLimits") ? `, ${beyond} of ${countOf(runs.length, "batch")} beyond` : "";
  return `${variety}: centre ${words.value(centre.estimate)}${limits}${count}.`;
}
