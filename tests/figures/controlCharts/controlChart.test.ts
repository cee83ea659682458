import { describe, expect, test } from "vitest";
import { controlChartApart } from "../../../src/figures/controlCharts/controlChartApart.ts";
import { controlChartFigure } from "../../../src/figures/controlCharts/controlChartFigure.ts";
import { weightedMeanFigure } from "../../../src/figures/controlCharts/weightedMeanFigure.ts";
import type { FigureSpec } from "../../../src/figures/figureSpec.ts";
import { renderFigure } from "../../../src/figures/renderFigure.ts";
import type { ControlChart } from "../../../src/report/controlChartResult.ts";
import { document, settings, textsOf } from "../handMade.ts";
import { CENTRES, chartWith, dayOf, drawn, heightScale, levelStrokes, runName, signalOver } from "./handMadeChart.ts";

const NBSP = "\u00a0";
const MINUS = "\u2212";
const wave = (count: number): number[] => Array.from({ length: count }, (_, i) => 1.4 * Math.sin(i * 2.4));
const draw = (spec: FigureSpec | null, width = 1040): string => {
  if (!spec) throw new Error("no figure");
  return renderFigure(spec, { document, width, idPrefix: "f" });
};
const figureOf = (chart: ControlChart): FigureSpec => {
  const spec = controlChartFigure(chart, settings);
  if (!spec) throw new Error("no figure");
  return spec;
};

describe("controlChartFigure(chart, settings)", () => {
  const chart = chartWith(
    { deviations: wave(40).map((d, i) => (i === 30 ? -3.6 : d)), second: { at: 20, sigma: 0.8 }, leftOut: [2, 3] },
    { signals: [signalOver("beyondLimits", 30, 30, "below", -3.6)] },
  );

  test.each([1040, 340])("draws each phase's limits where its numbers are, at %i px", (width) => {
    const svg = drawn(draw(figureOf(chart), width));
    const y = heightScale(svg);
    const lines = levelStrokes(svg, ".limit path");
    expect(lines).toHaveLength(4);
    [3, -3, 2.4, -2.4].forEach((reach, i) => {
      expect(lines[i]?.y).toLieWithin(y(reach), 0.3);
    });
    // The first phase ends where the second begins.
    expect(lines[0]?.x2).toBe(lines[2]?.x1);
    const bands = [...svg.querySelectorAll(".band rect")];
    expect(bands).toHaveLength(2);
    expect(Number(bands[1]?.getAttribute("height"))).toLieWithin(y(-2.4) - y(2.4), 0.3);
  });

  test("draws every batch at its difference from its own centre, those left out hollow", () => {
    const svg = drawn(draw(figureOf(chart)));
    const y = heightScale(svg);
    const full = [...svg.querySelectorAll(".dots circle")].map((dot) => Number(dot.getAttribute("cy")));
    const hollow = [...svg.querySelectorAll(".hollow circle")].map((dot) => Number(dot.getAttribute("cy")));
    expect([full.length, hollow.length]).toEqual([38, 2]);
    const seen = chart.runs.filter((run) => run.leftOut === null).map((run) => y(run.deviation ?? Number.NaN));
    full.forEach((at, i) => {
      expect(at).toLieWithin(seen[i] ?? Number.NaN, 0.3);
    });
    expect(hollow[0]).toLieWithin(y(chart.runs[2]?.deviation ?? Number.NaN), 0.3);
  });

  test("tells the variety in the mark's own words", () => {
    expect(textsOf(draw(figureOf(chart)), ".dots title")[1]).toBe(
      `25-002, 10 Jan 2025, Brisk: 79.9${NBSP}%, +0.9${NBSP}points from its centre`,
    );
  });

  test("rings the batch beyond its limits and says so in words", () => {
    const markup = draw(figureOf(chart));
    expect(textsOf(markup, "g.signal circle")).toHaveLength(1);
    expect(textsOf(markup, ".label")).toContain(`below the limits, ${MINUS}3.6${NBSP}points`);
  });

  test("names the latest limits, the baselines, and what began the second phase", () => {
    const labels = textsOf(draw(figureOf(chart)), ".label");
    for (const words of ["limit +2.4", `limit ${MINUS}2.4`, "centre", "baseline, 6 batches", "baseline, 8 batches"]) {
      expect(labels).toContain(words);
    }
    expect(labels).toContain("the bed was laid shallower");
    const events = [{ on: dayOf(19), what: "the bed was laid shallower" }];
    const once = textsOf(draw(controlChartFigure(chart, settings, { events })), ".label");
    expect(once.filter((words) => words === "the bed was laid shallower")).toHaveLength(1);
  });

  test("says signals, limits and baseline in its summary", () => {
    expect(figureOf(chart).summary).toBe(
      `1 signal in 40 batches: 25-031 on 6 May 2025 below the limits (${MINUS}3.6${NBSP}points). Limits since the bed was laid shallower ±2.4${NBSP}points, set by 8 baseline batches.`,
    );
    expect(figureOf(chartWith({ deviations: wave(12) })).summary).toBe(
      `None of 12 batches signals. Limits ±3.0${NBSP}points, set by 8 baseline batches.`,
    );
  });

  test("says which variety makes the limits provisional", () => {
    const made = chartWith({ deviations: wave(12), varieties: ["Alva", "Alva", "Brisk"] });
    const phases = made.phases.map((phase) => ({ ...phase, provisional: true }));
    expect(figureOf({ ...made, phases }).summary).toContain(
      "set by 8 baseline batches, provisional while Brisk has 2.",
    );
    expect(textsOf(draw(figureOf({ ...made, phases })), ".label")).toContain("provisional baseline, 8 batches");
  });

  test("draws a stretch as a line at its mean, rings the batch it was seen at, and counts it", () => {
    const lifted = wave(40).map((d, i) => (i >= 28 && i < 34 ? d / 4 + 0.6 : d));
    const size = lifted.slice(28, 34).reduce((sum, d) => sum + d, 0) / 6;
    const made = chartWith(
      { deviations: lifted },
      { signals: [signalOver("weightedMean", 28, 33, "above", size, 31)] },
    );
    const svg = drawn(draw(figureOf(made)));
    const [level] = [...svg.querySelectorAll(".level path")].map((path) => path.getAttribute("d") ?? "");
    const [, y1, y2] = /^M[\d.]+,([\d.]+)L[\d.]+,([\d.]+)$/.exec(level ?? "") ?? [];
    expect(y1).toBe(y2);
    expect(Number(y1)).toLieWithin(heightScale(svg)(size), 0.3);
    expect(svg.querySelectorAll("g.signal circle")).toHaveLength(1);
    expect(textsOf(draw(figureOf(made)), ".label")).toContain(
      `running mean high, 6 batches, +${size.toFixed(1)}${NBSP}points`,
    );
  });

  test("names several batches beyond one limit together where they stand close", () => {
    const made = chartWith(
      { deviations: wave(80).map((d, i) => (i === 40 || i === 42 ? 3.4 : d)) },
      { signals: [40, 42].map((i) => signalOver("beyondLimits", i, i, "above", 3.4)) },
    );
    const markup = draw(figureOf(made), 340);
    expect(textsOf(markup, "g.signal circle")).toHaveLength(2);
    expect(textsOf(markup, ".signal-words")).toEqual(["2 above the limits"]);
  });

  test("gives varieties with spreads of their own a pair of limits each, named", () => {
    const svg = draw(figureOf(chartWith({ deviations: wave(30), sigma: { Alva: 0.6, Brisk: 1 } })));
    const y = heightScale(drawn(svg));
    const lines = levelStrokes(drawn(svg), ".limit path").map((line) => line.y);
    [1.8, -1.8, 3, -3].forEach((reach, i) => {
      expect(lines[i]).toLieWithin(y(reach), 0.3);
    });
    expect(textsOf(svg, ".label")).toContain("Brisk +3.0");
  });

  test("lists batches latest first, with links, standing and signal, the latest 200 of more", () => {
    const { table } = figureOf(chart);
    expect(table.rows[9]).toEqual([
      { text: runName(30), href: `../runs/${runName(30)}/` },
      "6 May 2025",
      "Alva",
      "77.4",
      "81.0",
      `${MINUS}3.6`,
      "2.4",
      "below the limits",
      "",
    ]);
    expect(table.rows[37]?.at(-1)).toBe("left out of the baseline: left out by hand");
    const many = figureOf(chartWith({ deviations: wave(201) })).table;
    expect(many.rows).toHaveLength(200);
    expect(many.note).toBe("The latest 200 of 201 batches.");
  });

  test("says where it runs on what the batch before let expect", () => {
    const interval = { estimate: 0.4, low: 0.2, high: 0.6 };
    const assumptions = {
      lagOne: interval,
      onResiduals: true,
      skewness: null,
      normalPlot: [],
      coarseStep: null,
      distinctValues: 9,
    };
    const spec = figureOf({ ...chart, assumptions });
    expect(spec.summary).toContain("each is judged by what the batch before it let expect");
    expect(textsOf(draw(spec), ".axis .title")).toContain(
      "points of dry-matter yield from what the batch before let expect",
    );
  });

  test("is null without limits, and counts batches of a variety that has none", () => {
    const without = chart.runs.map((run) => ({ ...run, deviation: null, sigma: null, centre: null }));
    expect(controlChartFigure({ ...chart, runs: without }, settings)).toBeNull();
    expect(controlChartFigure({ ...chart, runs: [] }, settings)).toBeNull();
    const some = chart.runs.map((run, i) => (i < 2 ? (without[i] ?? run) : run));
    expect(figureOf({ ...chart, runs: some }).summary).toContain(
      "2 batches of a variety without limits are not drawn.",
    );
  });

  test.each([1040, 340])("keeps 2,000 batches with 40 signals small at %i px, without a link a mark", (width) => {
    const made = chartWith(
      {
        deviations: Array.from({ length: 2000 }, (_, i) =>
          i % 50 === 49 ? 3.3 : 2.4 * Math.sin(i * 12.9898) * Math.sin(i * 78.233),
        ),
      },
      {
        signals: Array.from({ length: 40 }, (_, i) =>
          signalOver("beyondLimits", i * 50 + 49, i * 50 + 49, "above", 3.3),
        ),
      },
    );
    const markup = draw(figureOf(made), width);
    expect(markup).not.toContain("<a ");
    expect(markup.length).toBeLessThan(20_000);
    expect(textsOf(markup, "g.signal circle")).toHaveLength(40);
  });
});

describe("controlChartApart(chart, varieties, settings)", () => {
  const chart = chartWith(
    { deviations: wave(40).map((d, i) => (i === 31 ? 3.5 : d)) },
    { signals: [signalOver("beyondLimits", 31, 31, "above", 3.5), signalOver("weightedMean", 20, 25, "below", -0.5)] },
  );
  const spec = controlChartApart(chart, ["Brisk", "Alva", "none such"], settings);

  test.each([1040, 340])(
    "draws one strip a variety on one scale, each with its own centre and limits, at %i px",
    (width) => {
      const svg = drawn(draw(spec, width));
      expect([...svg.querySelectorAll(".axis .name")].map((name) => name.textContent)).toEqual([
        "Brisk, 20 batches",
        "Alva, 20 batches",
      ]);
      const scales = [heightScale(svg, 0, 2), heightScale(svg, 1, 2)];
      expect((scales[0]?.(80) ?? 0) - (scales[0]?.(81) ?? 0)).toAgreeWithin(
        (scales[1]?.(80) ?? 0) - (scales[1]?.(81) ?? 0),
        0.01,
      );
      const heights = [...svg.querySelectorAll(".centre path")].map((path) =>
        Number(/^M[\d.]+,([\d.]+)/.exec(path.getAttribute("d") ?? "")?.[1]),
      );
      // Drawn in the order in which varieties first appear: Alva stands in the second strip.
      expect(heights[0]).toLieWithin(scales[1]?.(CENTRES.Alva ?? 0) ?? 0, 0.3);
      expect(heights[1]).toLieWithin(scales[0]?.(CENTRES.Brisk ?? 0) ?? 0, 0.3);
      const limits = [...svg.querySelectorAll(".limit path")].map((path) =>
        [...(path.getAttribute("d") ?? "").matchAll(/M[\d.]+,([\d.]+)/g)].map(([, y]) => Number(y)),
      );
      [84, 78].forEach((limit, i) => {
        expect(limits[0]?.[i]).toLieWithin(scales[1]?.(limit) ?? 0, 0.3);
      });
    },
  );

  test("rings what lies beyond a variety's limits alone", () => {
    expect(textsOf(draw(spec), "g.signal circle")).toHaveLength(1);
    expect(spec?.summary).toBe(
      `Brisk: centre 79.0${NBSP}%, limits 76.0 to 82.0${NBSP}%, 1 of 20 batches beyond. Alva: centre 81.0${NBSP}%, limits 78.0 to 84.0${NBSP}%, 0 of 20 batches beyond.`,
    );
  });

  test("draws values that have no limits yet, and is null where there are no batches", () => {
    const without = chart.runs.map((run) => ({ ...run, deviation: null, sigma: null, centre: null }));
    const phases = chart.phases.map((phase) => ({ ...phase, centres: [] }));
    const bare = controlChartApart({ ...chart, runs: without, phases, signals: [] }, ["Alva"], settings);
    expect(textsOf(draw(bare), ".dots circle")).toHaveLength(20);
    expect(bare?.summary).toBe("Alva: 20 batches, no limits yet.");
    expect(controlChartApart(chart, ["none such"], settings)).toBeNull();
  });

  test("lets centre and limits follow the batch before where the chart runs on residuals", () => {
    const runs = chart.runs.map((run, i) => ({ ...run, deviation: (run.deviation ?? 0) - (i % 3) / 10 }));
    const following = controlChartApart({ ...chart, runs }, ["Alva"], settings);
    expect(following?.summary).toContain("limits that follow the batch before");
    const steps = drawn(draw(following)).querySelector(".centre path")?.getAttribute("d") ?? "";
    expect(steps.length).toBeGreaterThan(60);
  });
});

describe("weightedMeanFigure(chart, settings)", () => {
  const chart = chartWith(
    { deviations: wave(60).map((d, i) => (i > 40 ? 1 : d)) },
    { signals: [signalOver("weightedMean", 41, 59, "above", 1, 50)] },
  );

  test.each([1040, 340])("stands on the control chart's own time axis at %i px", (width) => {
    const months = (markup: string): string[] =>
      [...drawn(markup).querySelectorAll(".axis text[text-anchor=middle]")].map(
        (text) => `${text.textContent} ${text.getAttribute("x")}`,
      );
    const own = months(draw(weightedMeanFigure(chart, settings), width));
    expect(own.length).toBeGreaterThan(1);
    expect(own).toEqual(months(draw(controlChartFigure(chart, settings), width)));
  });

  test("draws limits that widen from the first batch, and rings where the mean left them", () => {
    const svg = drawn(draw(weightedMeanFigure(chart, settings)));
    const y = heightScale(svg);
    const start = Number(/^M[\d.]+,([\d.]+)/.exec(svg.querySelector(".limit path")?.getAttribute("d") ?? "")?.[1]);
    expect(start).toLieWithin(y(0.28), 0.3);
    const ring = svg.querySelector("g.signal circle");
    expect(Number(ring?.getAttribute("cy"))).toLieWithin(y(chart.weightedMean?.means[50] ?? Number.NaN), 0.3);
    expect(textsOf(svg.outerHTML, ".label")).toContain("high since 19 Jun 2025");
  });

  test("says where it stands and when it left its limits", () => {
    const mean = (chart.weightedMean?.means[59] ?? Number.NaN).toFixed(2);
    expect(weightedMeanFigure(chart, settings)?.summary).toBe(
      `The running mean, in which each batch counts 10 in 100 and older ones ever less, stands at +${mean}${NBSP}points, outside its limits of ±0.60${NBSP}points. It left its limits on 25 July 2025 (high, 19 batches, +1.0${NBSP}points).`,
    );
    expect(weightedMeanFigure(chartWith({ deviations: wave(9) }), settings)?.summary).toContain(
      "It has not left its limits.",
    );
  });

  test("starts its line anew with each phase, and is null without limits", () => {
    const two = chartWith({ deviations: wave(40), second: { at: 20, sigma: 1 } });
    expect(drawn(draw(weightedMeanFigure(two, settings))).querySelectorAll(".line path")).toHaveLength(2);
    expect(weightedMeanFigure({ ...chart, weightedMean: null }, settings)).toBeNull();
    const nothing = new Float64Array(60).fill(Number.NaN);
    expect(
      weightedMeanFigure({ ...chart, weightedMean: { means: nothing, reach: nothing, weight: 0.1 } }, settings),
    ).toBeNull();
  });
});
