import { JSDOM } from "jsdom";
import { h } from "preact";
import { describe, expect, it } from "vitest";
import { renderBody } from "../../src/bodies/renderBody.ts";
import { SteepGermination } from "../../src/bodies/SteepGermination.tsx";
import { floorBatches } from "../../src/bodies/steepGermination/floorBatches.ts";
import type { Report } from "../../src/report/report.ts";
import { type View, wholeView } from "../../src/report/view.ts";
import { acrospire, nothing, steep } from "../findings/handMadeFloor.ts";
import { madeUpReport } from "../support/madeUpReport.ts";
import { madeUpSteepGermination, TIMETABLE } from "../support/madeUpSteepGermination.ts";

const { document: drawing } = new JSDOM("").window;

function pageOf(report: Report, view: Partial<View> = {}): Document {
  const markup = renderBody(h(SteepGermination, { report }), {
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
const result = report.steepGermination;

describe("SteepGermination", () => {
  it("answers for the timetable first, and for steep and beds under it", () => {
    const page = pageOf(report);
    const h1 = wordsOf(page.querySelector("h1"));
    const under = wordsOf(page.querySelector(".lede"));
    expect(h1).toContain(`${TIMETABLE} h on the floor suit a bed at about`);
    expect(h1).toMatch(/too soon at \d\d °C and \d+ h too late at \d\d °C/);
    expect(under).toMatch(/Steep-out moisture met its range in \d\d of 60 batches/);
    expect(under).toMatch(/Bed B2 lags/);
  });

  it("shows hours to the aim for every bed temperature that the counts cover, and what the timetable does there", () => {
    const rows = [...pageOf(report).querySelectorAll("#timetable-table tbody tr")];
    expect(rows).toHaveLength(result.growth?.timetable?.rows.length ?? 0);
    expect(wordsOf(rows[0] ?? null)).toContain("ends too soon");
    expect(wordsOf(rows.at(-1) ?? null)).toContain("ends too late");
  });

  it("claims no hours without counts on the way, and says what a few would tell", () => {
    const floor = madeUpSteepGermination(report.runs, { midway: false });
    const page = pageOf({ ...report, steepGermination: floor });
    const words = wordsOf(page.querySelector("#timetable"));
    expect(words).toContain("hours and temperature cannot be told apart");
    expect(words).toContain("acrospire-counts.csv");
    expect(page.querySelectorAll("#timetable-table, #hours-against-timetable-title")).toHaveLength(0);
    expect(page.querySelector("#length-by-temperature-title")).not.toBeNull();
    expect(wordsOf(page.querySelector("h1"))).not.toMatch(/too soon|too late/);
  });

  it("holds nothing against a target where none is set", () => {
    const floor = madeUpSteepGermination(report.runs, { targets: false });
    const words = wordsOf(pageOf({ ...report, steepGermination: floor }).body);
    expect(words).not.toMatch(/met its range|short of its range/);
    expect(words).toContain("it is held against nothing");
  });

  it("finds the bias put in between meter and mass gain", () => {
    expect(wordsOf(pageOf(report).querySelector("#bias"))).toMatch(/Measured moisture reads 0\.[34]\d points above/);
  });

  it("links every bed that stood apart to its batch", () => {
    const page = pageOf(report);
    const named = [...page.querySelectorAll("#beds .lines a")].map((link) => link.getAttribute("href"));
    expect(named.length).toBeGreaterThan(0);
    const lags = result.beds.lags.map(({ run }) => `/runs/${run}/`);
    for (const href of named) expect(lags).toContain(href);
  });

  it("says how many kernels to count, more for a smaller difference", () => {
    const counts = [...pageOf(report).querySelectorAll("#count-size table:first-of-type tbody td")].map((cell) =>
      Number(wordsOf(cell)),
    );
    expect(counts.length).toBeGreaterThan(1);
    expect(counts.slice(0, 3)).toEqual([...counts.slice(0, 3)].sort((a, b) => a - b));
  });

  it("says temperatures in degrees Fahrenheit to a reader who wants them, every one of them", () => {
    const words = wordsOf(pageOf(report, { units: "us" }).body);
    expect(words).toContain("°F");
    expect(words).not.toContain("°C");
  });

  it("warns of carbon dioxide, of closed spaces, and of what only a laboratory finds", () => {
    const cautions = [...pageOf(report).querySelectorAll(".caution")].map(wordsOf);
    expect(cautions[0]).toMatch(/carbon dioxide.*OSHA, from memory/);
    expect(cautions[1]).toContain("1910.146");
    expect(cautions[2]).toContain("they need a laboratory");
  });

  it("lists no more than 200 batches, and says how many there are", () => {
    const page = pageOf(madeUpReport(230));
    expect(page.querySelectorAll('#batches-behind [data-control="without"]')).toHaveLength(200);
    expect(wordsOf(page.querySelector("#batches-behind"))).toContain("The latest 200 of 230");
  });

  it("says what is lacking where nothing is logged, and draws nothing", () => {
    const page = pageOf({ ...report, steepGermination: nothing });
    expect(wordsOf(page.querySelector("h1"))).toContain("No steep is logged");
    expect(page.querySelectorAll("figure")).toHaveLength(0);
  });
});

describe("floorBatches(result)", () => {
  it("joins steep and floor of a batch and keeps what has only one of them, the latest first", () => {
    const batches = floorBatches({
      ...nothing,
      steeps: [steep(1, 44), steep(2, 45)],
      acrospires: [acrospire(2, 0.7), acrospire(9, 0.8)],
    });
    expect(batches.map(({ run }) => run)).toEqual(["R9", "R2", "R1"]);
    expect(batches.map((batch) => [batch.steep?.run ?? null, batch.acrospire?.run ?? null])).toEqual([
      [null, "R9"],
      ["R2", "R2"],
      ["R1", null],
    ]);
  });
});
