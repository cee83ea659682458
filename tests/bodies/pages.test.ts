import { JSDOM } from "jsdom";
import { type ComponentChildren, h } from "preact";
import { describe, expect, it } from "vitest";
import { Changes } from "../../src/bodies/Changes.tsx";
import type { BodyContext } from "../../src/bodies/context.ts";
import { Home } from "../../src/bodies/Home.tsx";
import { KilnHours } from "../../src/bodies/KilnHours.tsx";
import { Logs } from "../../src/bodies/Logs.tsx";
import { RunPage } from "../../src/bodies/RunPage.tsx";
import { Runs } from "../../src/bodies/Runs.tsx";
import { renderBody } from "../../src/bodies/renderBody.ts";
import { SteepGermination } from "../../src/bodies/SteepGermination.tsx";
import { Varieties } from "../../src/bodies/Varieties.tsx";
import { VarietyPage } from "../../src/bodies/VarietyPage.tsx";
import { YieldMoisture } from "../../src/bodies/YieldMoisture.tsx";
import { answerTrial } from "../../src/report/changes/answerTrial.ts";
import { answerWhatIf } from "../../src/report/kilnHours/whatIf.ts";
import type { Report } from "../../src/report/report.ts";
import type { RunPageResult } from "../../src/report/runPageResult.ts";
import { type View, wholeView } from "../../src/report/view.ts";
import type { AnswerWhatIf } from "../../src/report/whatIfAnswer.ts";
import type { UnitSystem } from "../../src/units/unitSystem.ts";
import { madeUpChanges } from "../support/madeUpChanges.ts";
import { bareRun, madeUpProblem, madeUpReport } from "../support/madeUpReport.ts";
import { madeUpVarieties } from "../support/madeUpVarieties.ts";

const { document } = new JSDOM("").window;

const contextOf = (report: Report, view: Partial<View> = {}): BodyContext => ({
  house: report.house,
  view: { ...wholeView, ...view },
  document,
  hrefTo: (path) => `/${path}`,
  built: true,
});

function kilnHoursBody(report: Report, units: UnitSystem): ComponentChildren {
  const ask: AnswerWhatIf = (inputs) => answerWhatIf(report.kilnHours, inputs, units);
  const { usual } = report.kilnHours;
  const whatIf =
    usual === null
      ? ({ kind: "refusal", sentence: "These logs hold too little for an estimate." } as const)
      : ask(usual);
  return h(KilnHours, { report, whatIf, answerWhatIf: ask });
}

function changesBody(report: Report): ComponentChildren {
  const changes = madeUpChanges(report);
  return h(Changes, { report: { ...report, changes }, trial: answerTrial(changes.plans, wholeView) });
}

const runResult = (report: Report, index: number): RunPageResult => ({
  run: report.runs[index] ?? bareRun,
  loads: report.loads.filter((load) => load.load === report.runs[index]?.load),
  curves: new Map(),
  expectedHours: { estimate: 13.2, low: 12.1, high: 14.3 },
  counted: report.steepGermination.acrospires.find(({ run }) => run === report.runs[index]?.run) ?? null,
  loss: { totalPercent: 9.1, rootletsPercent: 3.6, restPercent: 5.5 },
  problems: [madeUpProblem],
  otherColumns: [{ table: "kilning", column: "smoke", value: "none" }],
  previousRun: report.runs[index + 1]?.run ?? null,
  nextRun: report.runs[index - 1]?.run ?? null,
});

function everyPage(report: Report, units: UnitSystem = "metric"): readonly (readonly [string, string])[] {
  const context = contextOf(report, { units });
  const bodies: readonly (readonly [string, ComponentChildren])[] = [
    ["Home", h(Home, { report })],
    ["Kiln hours", kilnHoursBody(report, units)],
    ["Steep and germination", h(SteepGermination, { report })],
    ["Yield and moisture", h(YieldMoisture, { report })],
    ["Runs", h(Runs, { report })],
    ["Changes", changesBody(report)],
    ["Logs", h(Logs, { report, taken: [] })],
    ["Varieties", h(Varieties, { report })],
    ["a variety", h(VarietyPage, { report, variety: report.varieties.scores[0]?.variety ?? "Amber" })],
    ["a run", h(RunPage, { result: runResult(report, 0) })],
  ];
  return bodies.map(([name, body]) => [name, renderBody(body, context)] as const);
}

/** The words of a page, marks and drawings' paths left out. */
function wordsOf(markup: string): string {
  const { body } = new JSDOM(markup).window.document;
  return body.textContent ?? "";
}

describe.each([0, 1, 2, 5, 14, 60])("with logs of %i runs", (count) => {
  const report = madeUpReport(count, count < 14 ? {} : { varieties: madeUpVarieties() });
  it.each(everyPage(report))("the body of %s neither breaks nor bluffs", (_, markup) => {
    expect(wordsOf(markup)).not.toMatch(/NaN|undefined|Infinity|null|\[object/);
    expect(markup).not.toMatch(/NaN|undefined|Infinity/);
  });

  it.each(everyPage(report))("the body of %s carries no style attribute and no handler", (_, markup) => {
    expect(markup).not.toMatch(/<[^>]*\s(style|on[a-z]+)=/);
  });

  it.each(everyPage(report))("the body of %s has one h1, and no heading level is jumped", (_, markup) => {
    const levels = [...markup.matchAll(/<h([1-6])/g)].map((match) => Number(match[1]));
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    levels.reduce((before, level) => {
      expect(level).toBeLessThanOrEqual(before + 1);
      return level;
    }, 0);
  });

  it.each(everyPage(report))("every id in the body of %s is its own", (_, markup) => {
    const ids = [...markup.matchAll(/\sid="([^"]+)"/g)].map((match) => match[1]);
    expect(ids).toHaveLength(new Set(ids).size);
  });
});

describe("KilnHours", () => {
  it("says how many loads it lacks where there are too few", () => {
    const [, page] = everyPage(madeUpReport(9))[1] ?? [];
    expect(wordsOf(page ?? "")).toMatch(/9 loads/);
    expect(page).not.toMatch(/hours-by-humidity|residuals-in-time|id="reckoner"|data-form="what-if"/);
  });

  it("shows its figures, the reckoner and the what-if where there are enough", () => {
    const [, page] = everyPage(madeUpReport(60))[1] ?? [];
    expect(page).toContain('id="residuals-in-time-title"');
    expect(page).toContain('id="reckoner"');
    for (const name of ["humidity", "temperature", "depth", "load", "setPoint", "start", "finish"]) {
      expect(page).toContain(`data-control="${name}"`);
    }
  });

  it("says every length in inches and every mass in pounds to a reader who wants them", () => {
    const [, page] = everyPage(madeUpReport(60), "us")[1] ?? [];
    const words = wordsOf(page ?? "");
    expect(words).toContain("inch of bed");
    expect(words).not.toMatch(/centimetre|\d\u00a0cm\b|\d\u00a0kg\b|°C/);
  });

  it("lists no more than 200 loads, and says how many there are", () => {
    const [, page] = everyPage(madeUpReport(230))[1] ?? [];
    expect(page?.match(/data-control="without"/g)?.length).toBe(200);
    expect(wordsOf(page ?? "")).toContain("The latest 200 of 230");
  });
});

describe("RunPage", () => {
  it("shows a run of which nothing but the number is known", () => {
    const report = madeUpReport(1);
    const result = {
      ...runResult(report, 0),
      run: bareRun,
      loads: [],
      expectedHours: null,
      loss: null,
      counted: null,
      problems: [],
      otherColumns: [],
    };
    const markup = renderBody(h(RunPage, { result }), contextOf(report));
    expect(wordsOf(markup)).not.toMatch(/NaN|undefined|null/);
    expect(wordsOf(markup)).toContain("Neither grain in nor malt out is logged.");
  });
});

describe("text from the logs", () => {
  it("is never markup", () => {
    const evil = '<img src=x onerror="alert(1)">';
    const report = madeUpReport(3);
    const runs = report.runs.map((run) => ({ ...run, run: evil, variety: evil, notes: evil, lot: evil }));
    const problems = [{ ...madeUpProblem, value: evil, column: evil, file: evil }];
    const { scores, details } = madeUpVarieties();
    const varieties = madeUpVarieties({
      scores: scores.map((score) => ({ ...score, variety: evil })),
      details: details.map((detail) => ({
        ...detail,
        variety: evil,
        lab: detail.lab.map((row) => ({ ...row, run: evil, laboratory: evil, methodSet: evil })),
        splits: detail.splits.map((split) => ({ ...split, lots: split.lots.map((lot) => ({ ...lot, lot: evil })) })),
      })),
    });
    const planted = { ...report, runs, varieties, logs: { ...report.logs, problems } };
    for (const [, markup] of everyPage(planted)) {
      expect(new JSDOM(markup).window.document.querySelector("img")).toBeNull();
    }
  });
});
