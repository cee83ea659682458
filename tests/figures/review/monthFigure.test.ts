import { JSDOM } from "jsdom";
import { describe, expect, it } from "vitest";
import { renderFigure } from "../../../src/figures/renderFigure.ts";
import { limitSteps, panelScale } from "../../../src/figures/review/measurePanel.ts";
import { monthFigure } from "../../../src/figures/review/monthFigure.ts";
import { type MonthMeasure, monthMeasures, monthSpan } from "../../../src/figures/review/monthMeasures.ts";
import { madeUpReport } from "../../support/madeUpReport.ts";

const { document } = new JSDOM("").window;
const settings = { units: "metric", timeZone: "UTC", runHref: (run: string) => `/runs/${run}/` } as const;
const month = "2026-10";
const day = (isoDate: string): number => Date.parse(`${isoDate}T12:00:00Z`);
const batch = (isoDate: string, value: number, high: number | null = null) => ({
  run: isoDate,
  at: day(isoDate),
  value,
  low: null,
  high,
});
const moisture: MonthMeasure = {
  name: "final moisture",
  quantity: "percent",
  decimals: 2,
  batches: [batch("2025-11-03", 4.2), batch("2026-05-04", 4.4), batch("2026-10-05", 4.7), batch("2026-10-20", 4.9)],
};

describe("monthMeasures(rows, span)", () => {
  it("takes the thirteen months and none of the batches before or after them", () => {
    const { runs, loads } = madeUpReport(60);
    const last = Math.max(...loads.map(({ unloadedAt }) => unloadedAt ?? 0));
    const name = new Date(last).toISOString().slice(0, 7);
    const span = monthSpan(name, "UTC");
    const measures = monthMeasures({ runs, loads, accepted: [] }, span);
    const hours = measures.find((measure) => measure.name === "kiln hours");
    const within = loads.filter(
      ({ unloadedAt }) => unloadedAt !== null && unloadedAt >= span.from && unloadedAt < span.to,
    );
    expect(hours?.batches).toHaveLength(within.length);
    expect(hours?.batches.length).toBeGreaterThan(10);
  });

  it("gives each batch the limits of its own variety", () => {
    const { runs, loads } = madeUpReport(20);
    const variety = runs[0]?.variety ?? "";
    const accepted = [{ measure: "final_moisture_pct", variety, low: 3.6, target: 4.4, high: 5 }];
    const name = new Date(runs[0]?.unloadedAt ?? 0).toISOString().slice(0, 7);
    const measures = monthMeasures({ runs, loads, accepted }, monthSpan(name, "UTC"));
    const found = measures.find((measure) => measure.name === "final moisture");
    const own = new Map(runs.map((run) => [run.run, run.variety]));
    expect(found?.batches.some(({ high }) => high === 5)).toBe(true);
    expect(found?.batches.every(({ run, high }) => (own.get(run) === variety ? high === 5 : high === null))).toBe(true);
  });
});

describe("limitSteps(batches, scale, side)", () => {
  const span = monthSpan(month, "UTC");
  const panel = { left: 0, top: 0, width: 300 };
  const design = { size: 14, field: 100, left: 40, right: 40 };

  it("draws one line where all batches share a limit, and steps where a variety has another", () => {
    const same = [batch("2026-01-10", 4, 5), batch("2026-03-10", 4, 5), batch("2026-06-10", 4, 5)];
    const other = [batch("2026-01-10", 4, 5), batch("2026-03-10", 4, 6), batch("2026-06-10", 4, 5)];
    const starts = (batches: typeof same) =>
      limitSteps(batches, panelScale(batches, span, panel, design), "high").match(/M/g)?.length;
    expect(starts(same)).toBe(1);
    expect(starts(other)).toBe(3);
  });

  it("draws nothing where there is no limit", () => {
    const { batches } = moisture;
    expect(limitSteps(batches, panelScale(batches, span, panel, design), "low")).toBe("");
  });
});

describe("monthFigure(measures, month, settings)", () => {
  it("is null where nothing was logged", () => {
    expect(monthFigure([], month, settings)).toBeNull();
  });

  it("says the month's mean and that of the twelve months before", () => {
    const spec = monthFigure([moisture], month, settings);
    expect(spec?.summary.replaceAll("\u00a0", " ")).toContain("Final moisture 4.80 % (before: 4.30 %)");
    expect(spec?.table.rows).toEqual([["final moisture, %", "4.80", "2", "4.30", "2"]]);
  });

  it.each(["wide", "narrow"] as const)("draws %s with a link for each batch of the month alone", (form) => {
    const spec = monthFigure([moisture], month, settings);
    if (spec === null) throw new RangeError("four batches make a figure");
    const width = form === "wide" ? spec.wideWidth : spec.narrowWidth;
    const markup = renderFigure(spec, { document, width, idPrefix: form });
    expect(markup.match(/<a [^>]*href="\/runs\//g)).toHaveLength(2);
    expect(markup).not.toMatch(/NaN|style=/);
  });

  it("says of a month without a batch that there is none", () => {
    const spec = monthFigure([{ ...moisture, batches: moisture.batches.slice(0, 2) }], month, settings);
    expect(spec?.summary).toContain("Final moisture none");
  });
});
