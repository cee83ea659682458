import { JSDOM } from "jsdom";
import { h } from "preact";
import { beforeAll, describe, expect, it } from "vitest";
import { MonthReview } from "../../src/bodies/MonthReview.tsx";
import { renderBody } from "../../src/bodies/renderBody.ts";
import { reportFromFolder } from "../../src/report/atBuild.ts";
import type { Report } from "../../src/report/report.ts";
import type { MonthReview as Review } from "../../src/report/reviewResult.ts";
import { type View, wholeView } from "../../src/report/view.ts";
import { madeUpReport } from "../support/madeUpReport.ts";
import { everyFact, findingOf, madeUpMonth, madeUpPromised, reviewOf, totalsOf } from "../support/madeUpReview.ts";

const { document: drawing } = new JSDOM("").window;

function markupOf(report: Report, month: string | null = null, view: Partial<View> = {}): string {
  return renderBody(h(MonthReview, { report, month }), {
    house: report.house,
    view: { ...wholeView, ...view },
    document: drawing,
    hrefTo: (path) => `/${path}`,
    built: true,
  });
}

const pageOf = (...asked: Parameters<typeof markupOf>): Document => new JSDOM(markupOf(...asked)).window.document;
const wordsOf = (node: Element | null): string => (node?.textContent ?? "").replace(/\s+/g, " ");
const withMonths = (...months: readonly Review[]): Report => madeUpReport(60, { review: reviewOf(months) });

const event = { on: Date.UTC(2026, 9, 14), kind: "change", scope: "kiln", what: "belt replaced", alters: null };
const full = madeUpMonth({
  findings: everyFact.map((fact) => findingOf(fact)),
  open: everyFact.slice(0, 4).map((fact) => ({ id: fact.kind, lastMonth: findingOf(fact), now: "gone" as const })),
  events: [{ event, changeId: "2026-10-14", effect: null, tooLittle: "3 loads after are too few." }],
  promised: madeUpPromised,
});

describe.each([
  ["a quiet month", withMonths(madeUpMonth())],
  ["a month with a finding of every kind", withMonths(full)],
  ["a month without a batch", withMonths(madeUpMonth({ totals: totalsOf("2026-10", 0), lookedAt: [] }))],
  ["no month at all", madeUpReport(0)],
] as const)("MonthReview of %s", (_, report) => {
  it.each(["metric", "us"] as const)("neither breaks nor bluffs (%s)", (units) => {
    const markup = markupOf(report, null, { units });
    const { body } = new JSDOM(markup).window.document;
    expect(wordsOf(body)).not.toMatch(/NaN|undefined|Infinity|null|\[object/);
    expect(markup).not.toMatch(/NaN|undefined|Infinity/);
    expect(markup).not.toMatch(/<[^>]*\s(style|on[a-z]+)=/);
    expect(body.querySelectorAll("h1")).toHaveLength(1);
    const ids = [...markup.matchAll(/\sid="([^"]+)"/g)].map((match) => match[1]);
    expect(ids).toHaveLength(new Set(ids).size);
  });
});

describe("MonthReview", () => {
  it("shows seven findings and folds the rest", () => {
    const page = pageOf(withMonths(full));
    expect(page.querySelectorAll("#findings .findings > li")).toHaveLength(everyFact.length);
    expect(page.querySelectorAll("#findings details .findings > li")).toHaveLength(everyFact.length - 7);
  });

  it("leads from a finding to its page and its runs", () => {
    const links = [...pageOf(withMonths(full)).querySelectorAll("#findings .finding-seen a")].map((link) =>
      link.getAttribute("href"),
    );
    expect(links).toContain("/kiln-hours/#evidence");
    expect(links).toContain("/runs/26-171/");
    expect(links).toContain("#promised");
  });

  it("leads from a change to what it changed", () => {
    const link = pageOf(withMonths(full)).querySelector("#events a");
    expect(link?.getAttribute("href")).toBe("/changes/#2026-10-14");
  });

  it("says of a quiet month that it is quiet and what was looked at, and lists nothing to look at", () => {
    const page = pageOf(withMonths(madeUpMonth()));
    expect(wordsOf(page.querySelector("h1"))).toContain("was quiet");
    expect(wordsOf(page.querySelector("header.answer"))).toContain("Looked at: kiln hours");
    expect(page.querySelector("#findings")).toBeNull();
  });

  it("leads to the months beside it, the latest of which is the front page", () => {
    const months = ["2026-10", "2026-09", "2026-08"].map((name) => madeUpMonth({ totals: totalsOf(name, 6) }));
    const links = [...pageOf(withMonths(...months), "2026-09").querySelectorAll("nav a")];
    expect(links.map((link) => link.getAttribute("href"))).toEqual(["/review/2026-08/", "/"]);
  });

  it("carries a line for the binder on each of its two sheets", () => {
    const binders = [...pageOf(withMonths(full)).querySelectorAll(".binder")].map(wordsOf);
    expect(binders).toHaveLength(2);
    for (const binder of binders) {
      expect(binder).toContain("Example Malthouse, an invented house");
      expect(binder).toContain("October 2026 in review");
    }
  });

  it("says pounds, Fahrenheit and no kilograms to a reader who wants US units", () => {
    const words = wordsOf(pageOf(withMonths(full), null, { units: "us" }).body);
    expect(words).toContain("grain in, lb");
    expect(words).not.toMatch(/\d kg\b|°C/);
  });
});

describe("the invented house, in which a slack belt and a creeping thermostat were put", () => {
  let report: Report;
  beforeAll(async () => {
    report = (await reportFromFolder("data/demo")).report;
  });

  it("opens March 2026 with the kiln that gets too little air, from two witnesses", () => {
    const page = pageOf(report, "2026-03");
    expect(wordsOf(page.querySelector("h1"))).toContain("too little air or heat");
    const [first] = page.querySelectorAll("#findings .findings > li");
    expect([...(first?.querySelectorAll(".finding-seen > li > a:first-child") ?? [])].map(wordsOf)).toEqual([
      "Kiln hours",
      "Yield and moisture",
    ]);
    expect(wordsOf(first ?? null)).toContain("belt");
  });

  it("opens October 2026 with the drying thermostat, and when it leaves its tolerance", () => {
    const page = pageOf(report, null);
    expect(wordsOf(page.querySelector("h1"))).toMatch(/drying thermostat of kiln K1/);
    expect(wordsOf(page.querySelector("#findings"))).toContain("leaves its tolerance");
    expect(page.querySelector("#promised")).not.toBeNull();
  });

  it("says that a month with nothing put in was quiet", () => {
    expect(wordsOf(pageOf(report, "2025-08").querySelector("h1"))).toContain("August 2025 was quiet");
  });

  it("has a review for each month of its logs", () => {
    const { months, monthsThereAre } = report.review;
    expect(months.map(({ totals }) => totals.month)).toEqual(monthsThereAre);
    expect(months.length).toBeGreaterThan(24);
  });
});
