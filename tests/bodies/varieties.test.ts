import { JSDOM } from "jsdom";
import { h } from "preact";
import { describe, expect, it } from "vitest";
import { renderBody } from "../../src/bodies/renderBody.ts";
import { Varieties } from "../../src/bodies/Varieties.tsx";
import { VarietyPage } from "../../src/bodies/VarietyPage.tsx";
import type { Report } from "../../src/report/report.ts";
import { type View, wholeView } from "../../src/report/view.ts";
import { madeUpReport } from "../support/madeUpReport.ts";
import { madeUpVarieties } from "../support/madeUpVarieties.ts";

const { document: drawing } = new JSDOM("").window;
const report: Report = { ...madeUpReport(14), varieties: madeUpVarieties() };

function pageOf(variety: string | null, of: Report = report, view: Partial<View> = {}): Document {
  const body = variety === null ? h(Varieties, { report: of }) : h(VarietyPage, { report: of, variety });
  const markup = renderBody(body, {
    house: of.house,
    view: { ...wholeView, ...view },
    document: drawing,
    hrefTo: (path) => `/${path}`,
    built: true,
  });
  return new JSDOM(markup).window.document;
}

const wordsOf = (node: Element | null): string => (node?.textContent ?? "").replaceAll("\u00a0", " ");
const figuresOf = (page: Document, entry: string): readonly string[] =>
  [...page.querySelectorAll(`${entry} figure h3`)].map(wordsOf);

describe("Varieties", () => {
  const page = pageOf(null);

  it("answers in one sentence: which variety, and where it starts", () => {
    expect(wordsOf(page.querySelector("h1"))).toBe(
      "Amber is the least even and the least on target: the next batch meets every tolerance with a chance of 46 in 100 (34 to 58).",
    );
  });

  it("tables both numbers of every variety beside the batches seen, and leads to each variety's page", () => {
    const rows = [...page.querySelectorAll("#every-variety tbody tr")].map((row) =>
      [...row.children].map((cell) => wordsOf(cell)),
    );
    expect(rows[0]?.slice(0, 4)).toEqual(["Amber", "46 (34 to 58)", "52 (40 to 64)", "11 of 24 (28 to 65 %)"]);
    expect(rows.map(([name]) => name)).toEqual(["Amber", "Brindle", "Cresset", "Dunlin"]);
    expect(page.querySelector("#every-variety a")?.getAttribute("href")).toBe("/varieties/Amber/");
  });

  it("gives a variety without a score a sentence and no mark", () => {
    expect(wordsOf(page.querySelector("#scores"))).toContain(
      "Dunlin: no score. 3 batches with every measure; a score needs 5.",
    );
    expect(wordsOf(page.querySelector("#scores figure"))).not.toContain("Dunlin");
  });

  it("says where the tolerances come from", () => {
    expect(wordsOf(page.querySelector("#scores"))).toContain("Tolerances come from targets.csv");
  });

  it("folds the test of past scores, with a drawing of each number", () => {
    const fold = page.querySelector("#worked-out details");
    expect(wordsOf(page.querySelector("#worked-out p"))).toMatch(/^Put to the test on 41 batches/);
    expect(fold?.hasAttribute("open")).toBe(false);
    expect(wordsOf(fold ?? null)).toContain("Brier score");
    expect(figuresOf(page, "#worked-out")).toEqual([
      "On target: did what was foretold come?",
      "Even: did what was foretold come?",
    ]);
  });

  it("says of a choice that kiln hours and spreads are worked out from it alone", () => {
    const chosen = "From the chosen batches alone";
    expect(wordsOf(page.querySelector("header"))).not.toContain(chosen);
    expect(wordsOf(pageOf(null, report, { variety: "Amber" }).querySelector("header"))).toContain(chosen);
    expect(wordsOf(pageOf("Amber", report, { from: "2025-01-01" }).querySelector("header"))).toContain(chosen);
  });

  it("compares this quarter with the last by intervals", () => {
    expect(wordsOf(page.querySelector("#periods"))).toContain("July to September 2026 against April to June 2026.");
    expect(page.querySelector("#periods")?.textContent).not.toMatch(/[↑↓▲▼]/);
  });

  it("says what is lacking, and draws nothing, where there is no score", () => {
    const none = madeUpVarieties({
      scores: [],
      details: [],
      backTest: null,
      periods: [],
      tooLittle: "No batch of a known variety is off the kiln yet.",
    });
    const bare = pageOf(null, { ...report, varieties: none });
    expect(wordsOf(bare.querySelector("h1"))).toBe("No batch of a known variety is off the kiln yet.");
    expect(bare.querySelectorAll("figure")).toHaveLength(0);
  });
});

describe("VarietyPage", () => {
  const page = pageOf("Amber");

  it("links its batches, and leads back to all varieties", () => {
    expect(page.querySelector("#in-order a[href='/runs/A1/']")).not.toBeNull();
    expect(page.querySelector("nav a")?.getAttribute("href")).toBe("/varieties/");
  });

  it("tells a lot at another level from one that is uneven in itself", () => {
    const lots = wordsOf(page.querySelector("#lots-of-grain"));
    expect(lots).toContain("Lot AL4 has another level");
    expect(lots).toContain("Lot AL2 is uneven in itself");
    expect(wordsOf(page.querySelector("header"))).toContain(
      "With lot AL4 left out, on target rises to 71 in 100, from 20 batches: no more than a guide",
    );
  });

  it("tells a change of grain from one of process", () => {
    const terms = [...page.querySelectorAll("#spread dt")].map(wordsOf);
    expect(terms).toEqual(["A lot stands out", "The grain changed"]);
    expect(wordsOf(pageOf("Brindle").querySelector("#spread"))).toContain(
      "Nothing that was logged of grain or process",
    );
  });

  it("says how many columns were looked at beside the best and worst quarter", () => {
    const quarters = page.querySelector("#quarters");
    expect(wordsOf(quarters)).toContain("14 columns were looked at");
    expect(wordsOf(quarters?.querySelector("tbody tr") ?? null)).toContain("+1.30 (+0.70 to +1.90)");
  });

  it("draws each set of methods by itself, and calls a blank not tested", () => {
    expect(figuresOf(page, "#laboratory")).toEqual(["Laboratory results by EBC", "Laboratory results by ASBC"]);
    const table = wordsOf(page.querySelector("#certificates-1"));
    expect(table).toContain("not tested");
    expect(table).not.toContain("–");
    const asbc = [...page.querySelectorAll("#certificates-2 tbody tr")].map((row) => wordsOf(row.querySelector("th")));
    expect(asbc).toEqual(["A6", "A2"]);
  });

  it("says colour in SRM, and diastatic power in degrees Lintner, to a reader of US customary units", () => {
    const us = wordsOf(pageOf("Amber", report, { units: "us" }).querySelector("#laboratory"));
    expect(us).toContain("colour, SRM");
    expect(us).toContain("diastatic power, °L");
    expect(us).not.toContain("colour, EBC");
  });

  it("gives extract on both bases", () => {
    const heads = [...page.querySelectorAll("#certificates-1 thead th")].map(wordsOf);
    expect(heads).toContain("extract, dry basis, %");
    expect(heads).toContain("extract as is, %");
    const row = [...page.querySelectorAll("#certificates-1 tbody tr")].find((one) => wordsOf(one).startsWith("A3"));
    expect(wordsOf(row?.lastElementChild ?? null)).toBe("77.0");
  });

  it("says so where the choice holds no batch of it", () => {
    const gone = pageOf("Amber", { ...report, varieties: madeUpVarieties({ scores: [], details: [] }) });
    expect(wordsOf(gone.querySelector("h1"))).toBe("This choice holds no batch of Amber.");
    expect(gone.querySelectorAll("figure")).toHaveLength(0);
  });
});
