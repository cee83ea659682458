import { describe, expect, test } from "vitest";
import { balanceFigure } from "../../../src/figures/controlCharts/balanceFigure.ts";
import { capabilityFigure } from "../../../src/figures/controlCharts/capabilityFigure.ts";
import { controlChartApart } from "../../../src/figures/controlCharts/controlChartApart.ts";
import { controlChartFigure } from "../../../src/figures/controlCharts/controlChartFigure.ts";
import { cumulativeSumFigure } from "../../../src/figures/controlCharts/cumulativeSumFigure.ts";
import { movingRangeFigure } from "../../../src/figures/controlCharts/movingRangeFigure.ts";
import { normalPlotFigure } from "../../../src/figures/controlCharts/normalPlotFigure.ts";
import { weightedMeanFigure } from "../../../src/figures/controlCharts/weightedMeanFigure.ts";
import { withinSpreadFigure } from "../../../src/figures/controlCharts/withinSpreadFigure.ts";
import { renderFigure } from "../../../src/figures/renderFigure.ts";
import { document, settings } from "../handMade.ts";
import { chartWith, dayOf, drawn, runName, signalOver } from "./handMadeChart.ts";

const interval = { estimate: 1, low: 0.5, high: 2 };

/** A chart that has everything, of as many batches as asked. */
function wholeChart(count: number) {
  const deviations = Array.from({ length: count }, (_, i) => 2.6 * Math.sin(i * 12.9898) * Math.sin(i * 78.233));
  const sums = Float64Array.from(deviations, (d) => Math.abs(d) * 2.5);
  return chartWith(
    { deviations, leftOut: [3], second: { at: Math.floor(count / 2), sigma: 0.9 } },
    {
      signals: [
        signalOver("beyondLimits", 10, 10, "above", 3.4),
        signalOver("weightedMean", 12, 20, "below", -0.5, 18),
        signalOver("cumulativeSum", 22, 30, "above", 0.7, 28),
        signalOver("sixRisingOrFalling", 31, 36, "rising", 2),
      ],
      cumulativeSums: { upper: sums, lower: sums.map((sum) => sum / 2), decision: 4.77 },
      movingRanges: { ranges: deviations.map((d) => Math.abs(d)), centre: 0.9, high: 2.94 },
      within: {
        sigma: 0.2,
        baselineRuns: 12,
        points: deviations.map((d, i) => ({
          count: 2 + (i % 3),
          standardDeviation: Math.abs(d) / 5,
          centre: 0.18,
          low: 0,
          high: 0.7 - (i % 3) / 10,
          falseSignalChance: 0.01,
          chance: 0.01,
        })),
        unevenRuns: [runName(7)],
        narrowerBy: 2,
      },
      assumptions: {
        lagOne: { estimate: 0, low: -0.2, high: 0.2 },
        onResiduals: false,
        skewness: { skewness: 0.1, z: 0.3, p: 0.7 },
        normalPlot: [...deviations].sort((a, b) => a - b).map((seen) => ({ expected: seen * 0.9, seen })),
        coarseStep: null,
        distinctValues: count,
      },
      capability: ["Alva", "Brisk"].map((variety) => ({
        variety,
        runs: count / 2,
        low: 77,
        target: 80,
        high: 83,
        cpk: interval,
        expectedOutsidePercent: interval,
        seenOutside: 0,
        seenOutsidePercent: interval,
      })),
    },
  );
}

const balance = ["Alva", "Brisk"].map((variety, i) => ({
  variety,
  batches: 20,
  asIsYieldPercent: 82,
  dryMatterYieldPercent: 91,
  lossPercent: 9,
  rootletsPercent: 3.9,
  steepAndRespirationPercent: 5.1 - 6 * i,
  negative: i,
  basis: "as is",
}));

function figuresOf(count: number) {
  const chart = wholeChart(count);
  const events = [{ on: dayOf(15), what: "grain scale checked" }];
  return [
    controlChartFigure(chart, settings, { events }),
    controlChartApart(chart, ["Alva", "Brisk"], settings),
    weightedMeanFigure(chart, settings),
    withinSpreadFigure(chart, settings),
    cumulativeSumFigure(chart, settings),
    movingRangeFigure(chart, settings),
    normalPlotFigure(chart, settings),
    capabilityFigure(chart, settings),
    balanceFigure(balance, settings),
  ].flatMap((spec) => spec ?? []);
}

const drawings = [60, 2000].flatMap((count) =>
  figuresOf(count).flatMap((spec) =>
    [spec.wideWidth, spec.narrowWidth].map((width) => ({ id: spec.id, count, spec, width })),
  ),
);

test("every figure of the page is drawn", () => {
  expect(new Set(drawings.map(({ id }) => id)).size).toBe(9);
});

describe.each(drawings)("the figure $id of $count batches at $width px", ({ count, spec, width }) => {
  const markup = renderFigure(spec, { document, width, idPrefix: "fig" });

  test("carries no style, no colour of its own, no script, and no number that is none", () => {
    expect(markup).not.toMatch(/<style|<script|\sstyle=|\son\w+=|NaN|undefined|Infinity/i);
    expect(markup).not.toMatch(/#[0-9a-f]{3,8}\b(?!-)|rgb\(/i);
  });

  test("gives the same bytes twice", () => {
    expect(renderFigure(spec, { document, width, idPrefix: "fig" })).toBe(markup);
  });

  test("keeps every word inside the drawing", () => {
    const svg = drawn(markup);
    const [wide, high] = [Number(svg.getAttribute("width")), Number(svg.getAttribute("height"))];
    for (const text of svg.querySelectorAll("text")) {
      const [x, y] = [Number(text.getAttribute("x")), Number(text.getAttribute("y"))];
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(wide);
      expect(y).toBeGreaterThan(0);
      expect(y).toBeLessThanOrEqual(high);
    }
  });

  test("has a table of at most 200 rows, and stays small where batches are many", () => {
    expect(spec.table.rows.length).toBeGreaterThan(0);
    expect(spec.table.rows.length).toBeLessThanOrEqual(200);
    if (count === 2000) {
      expect(markup).not.toContain("<a ");
      expect(markup.length).toBeLessThan(20_000);
    }
  });
});
