import { type Markish, ruleY } from "@observablehq/plot";
import type { ControlChart } from "../../report/controlChartResult.ts";
import { printDate } from "../../units/instant.ts";
import { footAxis, footHeight, valueAxis, valueAxisWidth } from "../axes.ts";
import { type FigureSettings, halfWidth, narrowWidth } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { countOf, latestFirst } from "../listedRows.ts";
import { scatter } from "../scatter.ts";
import { valueTicks } from "../ticks.ts";
import { batchPoints } from "./batchPoints.ts";
import { chartFrame } from "./chartFrame.ts";
import { chartWords, runCell } from "./chartWords.ts";
import { endLabels } from "./endLabels.ts";

/**
 * How far each batch lies from the one before it of the same variety, over the limit of the latest baseline. Nothing is
 * ringed: no rule signals on it.
 *
 * @returns null where the chart has no moving ranges
 */
export function movingRangeFigure(chart: ControlChart, settings: FigureSettings): FigureSpec | null {
  const moving = chart.movingRanges;
  if (moving === null) return null;
  const words = chartWords(chart, settings);
  const { ranges, centre, high } = moving;
  const points = batchPoints(
    chart.runs,
    settings,
    (_, index) => ranges[index] ?? null,
    (_, index) => `${words.size(ranges[index] ?? 0)} from the batch before`,
  );
  if (points.length === 0) return null;
  const over = points.filter(({ y }) => y > high).length;

  const options = (frame: Frame) => {
    const shared = chartFrame(chart, settings, frame);
    const { size, x, months } = shared;
    const top = Math.max(high, ...points.map((p) => p.y));
    const ticks = valueTicks(0, top, 4);
    const marks: Markish[] = [
      valueAxis(ticks, "points from the batch before", size),
      footAxis(months, size),
      ruleY([centre], { className: "rule", x1: x[0], x2: x[1] }),
      ruleY([high], { className: "limit", x1: x[0], x2: x[1] }),
      scatter(points, frame),
      endLabels(
        [
          { y: high, rows: ["limit", words.bareSize(high)], role: "soft" },
          { y: centre, rows: ["mean", words.bareSize(centre)], role: "ink" },
        ],
        size,
      ),
    ];
    const marginTop = Math.round(size * 1.9);
    const marginBottom = footHeight(months, size);
    return {
      height: 200 + marginTop + marginBottom,
      marginTop,
      marginRight: shared.right,
      marginBottom,
      marginLeft: valueAxisWidth(ticks, size),
      x: { domain: x },
      y: { domain: [0, top * 1.06] },
      marks,
    };
  };

  return {
    id: `${words.id}-moving-range`,
    title: "How far is one batch from the one before?",
    summary: `Batches of one variety lie ${words.size(centre)} apart on average over the baseline; ${over === 0 ? "none" : over} of ${countOf(points.length, "step")} ${over === 1 ? "is" : "are"} over ${words.size(high)}. In a quiet house about 1 in 100 is, and one batch far off makes two such steps, so no rule signals on them.`,
    table: latestFirst(
      chart.runs.map((run, index) => ({ run, range: ranges[index] ?? null })),
      "batch",
      [
        { label: "run", numeric: false },
        { label: "unloaded", numeric: false },
        { label: "variety", numeric: false },
        { label: words.measure, unit: "%", numeric: true },
        { label: "from the batch before", unit: "points", numeric: true },
      ],
      ({ run, range }) => [
        runCell(run.run, settings),
        printDate(run.at, settings.timeZone),
        run.variety,
        words.bareValue(run.value),
        range === null ? "first of its variety" : words.bareSize(range),
      ],
    ),
    wideWidth: halfWidth,
    narrowWidth,
    printAs: "narrow",
    options,
  };
}
