import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { balanceFigure } from "../../../src/figures/controlCharts/balanceFigure.ts";
import { capabilityFigure } from "../../../src/figures/controlCharts/capabilityFigure.ts";
import { cumulativeSumFigure } from "../../../src/figures/controlCharts/cumulativeSumFigure.ts";
import { movingRangeFigure } from "../../../src/figures/controlCharts/movingRangeFigure.ts";
import { normalPlotFigure } from "../../../src/figures/controlCharts/normalPlotFigure.ts";
import { columnsOf } from "../../../src/figures/controlCharts/stackedDots.ts";
import { withinSpreadFigure } from "../../../src/figures/controlCharts/withinSpreadFigure.ts";
import type { FigureSpec } from "../../../src/figures/figureSpec.ts";
import { renderFigure } from "../../../src/figures/renderFigure.ts";
import type { Capability, VarietyBalance } from "../../../src/report/controlChartResult.ts";
import { document, settings, textsOf } from "../handMade.ts";
import { chartWith, drawn, heightScale, levelStrokes, runName, signalOver } from "./handMadeChart.ts";

const NBSP = "\u00a0";
const MINUS = "\u2212";
const draw = (spec: FigureSpec | null, width = 1040): string => {
  if (!spec) throw new Error("no figure");
  return renderFigure(spec, { document, width, idPrefix: "f" });
};
const wave = (count: number): number[] => Array.from({ length: count }, (_, i) => 1.4 * Math.sin(i * 2.4));

describe("movingRangeFigure(chart, settings)", () => {
  const ranges = [null, null, ...Array.from({ length: 18 }, (_, i) => (i === 4 ? 3.5 : 0.5 + (i % 4) / 4))];
  const chart = chartWith({ deviations: wave(20) }, { movingRanges: { ranges, centre: 0.9, high: 2.94 } });

  test("draws mean and limit where they are, and rings nothing", () => {
    const markup = draw(movingRangeFigure(chart, settings), 500);
    const svg = drawn(markup);
    const y = heightScale(svg);
    expect(Number(svg.querySelector(".limit line")?.getAttribute("y1"))).toLieWithin(y(2.94), 0.3);
    expect(Number(svg.querySelector(".rule line")?.getAttribute("y1"))).toLieWithin(y(0.9), 0.3);
    expect(svg.querySelectorAll(".dots circle")).toHaveLength(18);
    expect(svg.querySelectorAll(".signal")).toHaveLength(0);
  });

  test("counts the steps over the limit and says why none is a signal", () => {
    const spec = movingRangeFigure(chart, settings);
    expect(spec?.summary).toContain(`1 of 18 steps is over 2.9${NBSP}points.`);
    expect(spec?.summary).toContain("no rule signals on them");
    expect(spec?.table.rows.at(-1)?.at(-1)).toBe("first of its variety");
    expect(movingRangeFigure({ ...chart, movingRanges: null }, settings)).toBeNull();
  });
});

describe("withinSpreadFigure(chart, settings)", () => {
  const pointOf = (count: number, standardDeviation: number) =>
    count < 2
      ? { count, standardDeviation: null, centre: null, low: null, high: null, falseSignalChance: null, chance: null }
      : {
          count,
          standardDeviation,
          centre: 0.2,
          low: 0,
          high: count === 2 ? 0.7 : 0.5,
          falseSignalChance: 0.01,
          chance: 0.01,
        };
  const counts = [2, 2, 2, 1, 4, 4, 4, 4];
  const points = counts.map((count, i) => pointOf(count, i === 6 ? 0.62 : 0.1 + i / 50));
  const chart = chartWith(
    { deviations: wave(8) },
    { within: { sigma: 0.21, baselineRuns: 7, points, unevenRuns: [runName(6)], narrowerBy: 3 } },
  );

  test("lets its limits step with the number of samples, half-way between batches", () => {
    const svg = drawn(draw(withinSpreadFigure(chart, settings)));
    const y = heightScale(svg);
    const [two, four] = levelStrokes(svg, ".limit path");
    expect(two?.y).toLieWithin(y(0.7), 0.3);
    expect(four?.y).toLieWithin(y(0.5), 0.3);
    expect(two?.x2).toBe(four?.x1);
    const dots = [...svg.querySelectorAll(".dots circle")].map((dot) => Number(dot.getAttribute("cx")));
    expect(dots).toHaveLength(7);
    expect(two?.x2).toLieWithin(((dots[2] ?? 0) + (dots[3] ?? 0)) / 2, 0.2);
  });

  test("draws one named line for each number of samples where they change all the time", () => {
    const mixed = Array.from({ length: 40 }, (_, i) => pointOf(i % 2 === 0 ? 2 : 4, 0.2));
    const made = chartWith(
      { deviations: wave(40) },
      { within: { sigma: 0.21, baselineRuns: 40, points: mixed, unevenRuns: [], narrowerBy: null } },
    );
    for (const [width, names] of [
      [1040, ["4 samples", "2 samples"]],
      [340, ["of 4", "of 2"]],
    ] as const) {
      const markup = draw(withinSpreadFigure(made, settings), width);
      expect(levelStrokes(drawn(markup), ".limit path")).toHaveLength(2);
      for (const name of names) expect(textsOf(markup, ".label")).toContain(name);
    }
  });

  test("rings and names the uneven batch, and leaves out batches with one sample", () => {
    const spec = withinSpreadFigure(chart, settings);
    expect(textsOf(draw(spec), "g.signal circle")).toHaveLength(1);
    expect(textsOf(draw(spec), ".label")).toContain("25-007 uneven");
    expect(spec?.summary).toContain(
      "1 of 7 batches with two samples or more is less even than its number of samples explains: 25-007.",
    );
    expect(spec?.table.rows).toHaveLength(7);
    expect(withinSpreadFigure({ ...chart, within: null }, settings)).toBeNull();
  });
});

describe("cumulativeSumFigure(chart, settings)", () => {
  const upper = Float64Array.from({ length: 30 }, (_, i) => (i < 10 ? 0 : Math.min(6, (i - 9) * 0.8)));
  const lower = Float64Array.from({ length: 30 }, (_, i) => (i < 6 ? i / 3 : 0));
  const chart = chartWith(
    { deviations: wave(30), rules: ["cumulativeSum"] },
    {
      cumulativeSums: { upper, lower, decision: 4.77 },
      signals: [signalOver("cumulativeSum", 10, 20, "above", 0.9, 15)],
    },
  );

  test.each([1040, 340])(
    "draws both decision lines, the start of the shift and where it was seen, at %i px",
    (width) => {
      const svg = drawn(draw(cumulativeSumFigure(chart, settings), width));
      const y = heightScale(svg);
      const lines = [...svg.querySelectorAll(".limit line")].map((line) => Number(line.getAttribute("y1")));
      expect(lines[0]).toLieWithin(y(4.77), 0.3);
      expect(lines[1]).toLieWithin(y(-4.77), 0.3);
      const ring = svg.querySelector("g.signal circle");
      expect(Number(ring?.getAttribute("cy"))).toLieWithin(y(upper[15] ?? 0), 0.3);
      const start = Number(/^M([\d.]+),/.exec(svg.querySelector(".level path")?.getAttribute("d") ?? "")?.[1]);
      expect(start).toBeLessThan(Number(ring?.getAttribute("cx")));
    },
  );

  test("dates the shift, and says so where sums are not among the rules", () => {
    expect(cumulativeSumFigure(chart, settings)?.summary).toBe(
      `The sums passed their line once. Higher from about 15 February 2025, seen on 7 March 2025 (+0.9${NBSP}points over 11 batches).`,
    );
    const unchosen = { ...chart, rules: ["beyondLimits"] as const, signals: [] };
    const beyond = upper.filter((sum) => sum > 4.77).length;
    expect(cumulativeSumFigure(unchosen, settings)?.summary).toBe(
      `The sums are not among the rules chosen. At ${beyond} batches a sum stands beyond its line.`,
    );
    expect(cumulativeSumFigure({ ...chart, cumulativeSums: null }, settings)).toBeNull();
  });
});

describe("normalPlotFigure(chart, settings)", () => {
  const pairs = Array.from({ length: 90 }, (_, i) => ({ expected: (i - 44.5) / 20, seen: (i - 44.5) / 18 }));
  const chartOf = (skewness: { skewness: number; z: number; p: number } | null) =>
    chartWith(
      { deviations: wave(90) },
      {
        assumptions: {
          lagOne: { estimate: 0, low: -0.2, high: 0.2 },
          onResiduals: false,
          skewness,
          normalPlot: pairs,
          coarseStep: null,
          distinctValues: 90,
        },
      },
    );

  test("draws the line on which seen and normal agree", () => {
    const svg = drawn(draw(normalPlotFigure(chartOf(null), settings), 500));
    const y = heightScale(svg);
    const [, y1, y2] =
      /^M[\d.]+,([\d.]+)L[\d.]+,([\d.]+)$/.exec(svg.querySelector(".rule path")?.getAttribute("d") ?? "") ?? [];
    const reach = (44.5 / 20) * 1.1;
    expect(Number(y1)).toLieWithin(y(-reach), 0.5);
    expect(Number(y2)).toLieWithin(y(reach), 0.5);
  });

  test("says a lean only where chance would not give it, and lists one in so many", () => {
    expect(normalPlotFigure(chartOf({ skewness: 0.2, z: 0.8, p: 0.4 }), settings)?.summary).toContain("no lean");
    expect(normalPlotFigure(chartOf({ skewness: -1.5, z: -4, p: 0.0001 }), settings)?.summary).toContain(
      "the low side runs out further",
    );
    const table = normalPlotFigure(chartOf(null), settings)?.table;
    expect(table?.rows).toHaveLength(30);
    expect(table?.note).toBe("One in 3 of 90 batches, lowest first.");
    expect(normalPlotFigure({ ...chartOf(null), assumptions: null }, settings)).toBeNull();
  });
});

describe("capabilityFigure(chart, settings)", () => {
  const interval = (estimate: number) => ({ estimate, low: estimate / 2, high: estimate * 2 });
  const specOf = (variety: string, low: number | null, target: number | null, high: number | null): Capability => ({
    variety,
    runs: 20,
    low,
    target,
    high,
    cpk: interval(1),
    expectedOutsidePercent: interval(3),
    seenOutside: 0,
    seenOutsidePercent: interval(3),
  });
  const deviations = wave(40).map((d, i) => (i === 10 || i === 12 ? -3 : i === 14 ? 3 : d));
  const chart = chartWith(
    { deviations },
    { capability: [specOf("Alva", 79, 81, 83), specOf("Brisk", 77, null, null)] },
  );

  test.each([500, 340])("marks lowest, target and highest and counts what lies beyond, at %i px", (width) => {
    const markup = draw(capabilityFigure(chart, settings), width);
    const labels = textsOf(markup, ".label");
    for (const words of ["2 below 79.0", "1 above 83.0", "target 81.0", "0 below 77.0"]) {
      expect(labels).toContain(words);
    }
    expect(textsOf(markup, "g.limit path, .limit")).toHaveLength(2);
  });

  test("says what lies outside and what is expected", () => {
    expect(capabilityFigure(chart, settings)?.summary).toBe(
      `Alva: 3 of 20 batches outside 79.0 to 83.0${NBSP}%, 3.0 in 100 expected. Brisk: 0 of 20 batches below 77.0${NBSP}%, 3.0 in 100 expected.`,
    );
    expect(capabilityFigure({ ...chart, capability: [] }, settings)).toBeNull();
  });
});

describe("columnsOf(values, step, lines, x, clear)", () => {
  test("loses no value and sets none on the wrong side of a line", () => {
    const percent = fc.double({ min: 3, max: 6, noNaN: true });
    fc.assert(
      fc.property(fc.array(percent, { minLength: 1, maxLength: 60 }), percent, (values, line) => {
        const x = (value: number): number => value * 80;
        const columns = columnsOf(values, 0.25, [line], x, 3);
        expect(columns.reduce((sum, column) => sum + column.count, 0)).toBe(values.length);
        const beyond = columns.filter((column) => column.x > x(line) + 1e-6);
        const above = values.filter((value) => value > line).length;
        const on = values.filter((value) => value === line).length;
        const seen = beyond.reduce((sum, column) => sum + column.count, 0);
        expect(seen).toBeGreaterThanOrEqual(above);
        expect(seen).toBeLessThanOrEqual(above + on);
      }),
    );
  });
});

describe("balanceFigure(balance, settings)", () => {
  const row = (variety: string, parts: Partial<VarietyBalance>): VarietyBalance => ({
    variety,
    batches: 20,
    asIsYieldPercent: 82,
    dryMatterYieldPercent: 91,
    lossPercent: 9,
    rootletsPercent: 3.9,
    steepAndRespirationPercent: 5.1,
    negative: 0,
    basis: "as is",
    ...parts,
  });
  const negative = row("Brisk", { lossPercent: 3.4, steepAndRespirationPercent: -0.7, negative: 4 });

  test.each([500, 340])("draws a part that is below 0 below 0 and says it, at %i px", (width) => {
    const markup = draw(balanceFigure([row("Alva", {}), negative], settings), width);
    const bars = levelStrokes(drawn(markup), ".shares path");
    const zero = bars[0]?.x1;
    expect(bars.map(({ x1 }) => x1)).toEqual([zero, zero, zero, zero]);
    expect(bars.map(({ x1, x2 }) => Math.sign(x2 - x1))).toEqual([1, 1, 1, -1]);
    // One scale for all: 5.1 is to 3.9 as their bars are.
    const long = (i: number): number => (bars[i]?.x2 ?? 0) - (bars[i]?.x1 ?? 0);
    expect(long(1) / long(0)).toAgreeWithin(5.1 / 3.9, 0.01);
    expect(textsOf(markup, ".label")).toContain(`steep and respiration ${MINUS}0.7${NBSP}%, below 0`);
  });

  test("explains what is below 0, and says where parts are not known", () => {
    expect(balanceFigure([negative], settings)?.summary).toContain(
      "In 4 batches what is left for steep and respiration is below 0: a mass or a moisture in the log is off.",
    );
    const unknown = row("Cinder", { rootletsPercent: null, steepAndRespirationPercent: null });
    const markup = draw(balanceFigure([unknown], settings), 340);
    expect(textsOf(markup, ".label")).toContain("its parts are not known");
    expect(markup).not.toContain("NaN");
    expect(balanceFigure([row("Alva", { lossPercent: null })], settings)).toBeNull();
  });
});
