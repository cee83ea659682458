import { JSDOM } from "jsdom";
import { h } from "preact";
import { describe, expect, it } from "vitest";
import { renderBody } from "../../src/bodies/renderBody.ts";
import { YieldMoisture } from "../../src/bodies/YieldMoisture.tsx";
import { chartedBatches } from "../../src/bodies/yieldMoisture/chartedBatches.ts";
import type { Report } from "../../src/report/report.ts";
import { type View, wholeView } from "../../src/report/view.ts";
import { madeUpReport } from "../support/madeUpReport.ts";

const { document: drawing } = new JSDOM("").window;

function pageOf(report: Report, view: Partial<View> = {}): Document {
  const markup = renderBody(h(YieldMoisture, { report }), {
    house: report.house,
    view: { ...wholeView, ...view },
    document: drawing,
    hrefTo: (path) => `/${path}`,
    built: true,
  });
  return new JSDOM(markup).window.document;
}

const wordsOf = (node: Element | null): string => (node?.textContent ?? "").replaceAll("\u00a0", " ");
const report = madeUpReport(60);

describe("YieldMoisture", () => {
  it("answers first, in one sentence a measure", () => {
    const h1 = wordsOf(pageOf(report).querySelector("h1"));
    expect(h1).toMatch(/Yield holds at \d\d\.\d % of the grain’s dry matter; moisture runs 0\.3 points high since/);
    expect(h1).toContain("Yield met its spec in all 60 batches");
  });

  it("puts each signal into words, with links to its batches", () => {
    const page = pageOf(report);
    const [signal] = page.querySelectorAll("#dry-yield-pct .lines > li");
    expect(wordsOf(signal ?? null)).toContain("lay 3.0 points below its centre");
    expect(wordsOf(signal ?? null)).toContain("scale found mis-set");
    expect(signal?.querySelector("a")?.getAttribute("href")).toBe("/runs/R20/");
  });

  it("says what the chosen rules cost beside the signals and beside the choice", () => {
    const page = pageOf(report);
    for (const place of ["#dry-yield-pct", "#final-moisture-pct", ".chart-choices"]) {
      expect(wordsOf(page.querySelector(place))).toContain("cries wolf about once in 190 batches");
    }
  });

  it("offers every rule, the chosen ones ticked, and varieties apart only where there are several", () => {
    const page = pageOf(report);
    const rules = [...page.querySelectorAll<HTMLInputElement>('[data-control="rules"]')];
    expect(rules).toHaveLength(7);
    expect(rules.filter((rule) => rule.checked).map((rule) => rule.value)).toEqual(["beyondLimits", "weightedMean"]);
    expect(page.querySelectorAll('[data-control="apart"]')).toHaveLength(1);
    const charts = report.yieldMoisture.charts.map((chart) => ({
      ...chart,
      runs: chart.runs.map((run) => ({ ...run, variety: "Amber" })),
    }));
    const one = pageOf({ ...report, yieldMoisture: { ...report.yieldMoisture, charts } });
    expect(one.querySelectorAll('[data-control="apart"]')).toHaveLength(0);
  });

  it("links the baseline and what was left out of it", () => {
    const words = wordsOf(pageOf(report).querySelector("#dry-yield-pct"));
    expect(words).toContain("Baseline: from R0 to R15. Later batches move no limit.");
    expect(words).toContain("Charted, but in no baseline: R3: water off");
  });

  it("tells an uneven bed apart from an uneven month, for moisture alone", () => {
    const page = pageOf(report);
    expect(wordsOf(page.querySelector("#final-moisture-pct"))).toContain("An uneven bed is another fault");
    expect(wordsOf(page.querySelector("#dry-yield-pct"))).not.toContain("uneven bed");
  });

  it("says masses in pounds to a reader who wants them", () => {
    const words = wordsOf(pageOf(report, { units: "us" }).body);
    expect(words).toContain("220 lb a year");
    expect(words).toContain("Of 100 lb of the grain’s dry matter");
    expect(words).not.toMatch(/\d kg\b/);
  });

  it("shows a part below 0 as it is, and explains it", () => {
    const words = wordsOf(pageOf(report).querySelector("#balance"));
    expect(words).toContain("−0.4");
    expect(words).toContain("In 1 batch steep and respiration come out below 0");
  });

  it("has no chart and no control of charts where there is too little, and says so", () => {
    const page = pageOf(madeUpReport(3));
    expect(wordsOf(page.querySelector("h1"))).toContain("limits need at least five");
    expect(page.querySelectorAll("[id$=-pct] figure, #spec, [data-control='rules']")).toHaveLength(0);
    expect(wordsOf(pageOf(madeUpReport(0)).querySelector("h1"))).toBe(
      "These logs hold no yield and no final moisture yet.",
    );
  });

  it("lists no more than 200 batches, and says how many there are", () => {
    const page = pageOf(madeUpReport(230));
    expect(page.querySelectorAll('#batches-behind tbody [data-control="without"]')).toHaveLength(200);
    expect(wordsOf(page.querySelector("#batches-behind"))).toContain("The latest 200 of 230");
  });
});

describe("chartedBatches(charts)", () => {
  it("joins both measures of a batch, the latest first", () => {
    const [yields, moisture] = report.yieldMoisture.charts;
    if (yields === undefined || moisture === undefined) throw new RangeError("the made-up report has two charts");
    const batches = chartedBatches([yields, { ...moisture, runs: moisture.runs.slice(0, 1) }]);
    expect(batches).toHaveLength(60);
    expect(batches[0]?.run).toBe("R59");
    expect(batches[0]?.moisture).toBeNull();
    expect(batches[59]?.moisture?.charted.value).toBe(moisture.runs[0]?.value);
    expect(batches[59]?.dryYield?.charted.value).toBe(yields.runs[0]?.value);
  });
});
