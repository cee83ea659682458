import type { Markish } from "@observablehq/plot";
import type { ControlChart } from "../../report/controlChartResult.ts";
import { printPValue, printSigned } from "../../units/print.ts";
import { footAxis, footHeight, valueAxis, valueAxisWidth } from "../axes.ts";
import { type FigureSettings, halfWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { labelLayer } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { countOf } from "../listedRows.ts";
import { denseDots, dotRadius } from "../scatter.ts";
import { paddedSpan, valueTicks } from "../ticks.ts";
import { chartWords } from "./chartWords.ts";

/** Rows of the table under the plot. */
const MOST_LISTED = 41;

/**
 * The differences in order of size against what a normal process would give, both in standard deviations, with the line
 * on which the two agree.
 *
 * @returns null where the chart was not tested
 */
export function normalPlotFigure(chart: ControlChart, settings: FigureSettings): FigureSpec | null {
  const { assumptions } = chart;
  if (assumptions === null || assumptions.normalPlot.length === 0) return null;
  const words = chartWords(chart, settings);
  const { normalPlot: pairs, skewness } = assumptions;

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const x = paddedSpan(
      pairs.map((p) => p.expected),
      0.05,
    );
    const y = paddedSpan([...pairs.map((p) => p.seen), ...x], 0.03);
    const across = valueTicks(x[0], x[1], frame.narrow ? 4 : 6, printSigned);
    const down = valueTicks(y[0], y[1], frame.narrow ? 4 : 6, printSigned);
    const agreed = x.map((at) => ({ x: at, y: at }));
    const marks: Markish[] = [
      valueAxis(down, "seen, standard deviations", size),
      footAxis(across, size, { title: "if normal, standard deviations" }),
      layer("rule", ({ x: toX, y: toY, pen }) => [
        pen.element("path", { d: `M${toX(x[0])},${toY(x[0])}L${toX(x[1])},${toY(x[1])}` }),
      ]),
      layer("dense mark-ink", ({ x: toX, y: toY, pen }) => [
        pen.element("path", {
          "stroke-width": dotRadius(frame) * 1.6,
          d: denseDots(pairs.map((p) => ({ x: toX(p.expected), y: toY(p.seen) }))),
        }),
      ]),
      labelLayer({
        size,
        labels: [
          {
            x: x[0] + (x[1] - x[0]) * 0.3,
            y: x[0] + (x[1] - x[0]) * 0.3,
            prefer: 300,
            farthest: 160,
            role: "ink",
            lines: [{ text: "as a normal process" }],
          },
        ],
        lines: [agreed],
        marks: pairs.map((p) => ({ x: p.expected, y: p.seen, radius: dotRadius(frame) + 1 })),
      }),
    ];
    return {
      height: frame.narrow ? 290 : 330,
      marginTop: Math.round(size * 1.9),
      marginRight: 4,
      marginBottom: footHeight(across, size, true),
      marginLeft: valueAxisWidth(down, size),
      x: { domain: x },
      y: { domain: y },
      marks,
    };
  };

  const every = Math.ceil(pairs.length / MOST_LISTED);
  const listedPairs = pairs.map((pair, i) => ({ pair, place: i + 1 })).filter(({ place }) => (place - 1) % every === 0);
  return {
    id: `${words.id}-normal-plot`,
    title: "Do the batches spread as the limits suppose?",
    summary: `${countOf(pairs.length, "batch")} in order of size; a normal process lies along the line.${skewnessSaid(skewness)}`,
    table: {
      columns: [
        { label: "place", numeric: true },
        { label: "if normal", unit: "standard deviations", numeric: true },
        { label: "seen", unit: "standard deviations", numeric: true },
      ],
      rows: listedPairs.map(({ pair, place }) => [
        String(place),
        printSigned(pair.expected, 2),
        printSigned(pair.seen, 2),
      ]),
      ...(every > 1 ? { note: `One in ${every} of ${countOf(pairs.length, "batch")}, lowest first.` } : {}),
    },
    wideWidth: halfWidth,
    narrowWidth,
    printAs: "narrow",
    options,
  };
}

function skewnessSaid(found: NonNullable<ControlChart["assumptions"]>["skewness"]): string {
  if (found === null) return "";
  const { skewness, p } = found;
  const number = `Skewness ${printSigned(skewness, 2)} (p ${printPValue(p)})`;
  if (p >= 0.05) return ` ${number}: no lean to either side that chance would not give.`;
  return ` ${number}: the ${skewness > 0 ? "high" : "low"} side runs out further, so its limit is passed more often than it should be.`;
}
