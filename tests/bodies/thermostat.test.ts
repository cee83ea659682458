import { JSDOM } from "jsdom";
import { h } from "preact";
import { describe, expect, it } from "vitest";
import { renderBody } from "../../src/bodies/renderBody.ts";
import { Thermostat } from "../../src/bodies/Thermostat.tsx";
import { shownLoad } from "../../src/bodies/thermostat/shownLoad.ts";
import { loadColumns } from "../../src/bodies/thermostat/thermostatRows.ts";
import type { Report } from "../../src/report/report.ts";
import type { KilnThermostat } from "../../src/report/thermostatResult.ts";
import { type View, wholeView } from "../../src/report/view.ts";
import { bareThermostatLoad } from "../support/bareThermostatLoad.ts";
import { madeUpReport } from "../support/madeUpReport.ts";
import { type MadeUpChange, madeUpCurve, madeUpKiln } from "../support/madeUpThermostat.ts";

const { document: drawing } = new JSDOM("").window;

function reportOf(count: number, change: MadeUpChange, changes: Partial<KilnThermostat> = {}): Report {
  const report = madeUpReport(count);
  return { ...report, thermostat: { kilns: [madeUpKiln(report.loads, change, changes)] } };
}

function markupOf(report: Report, view: Partial<View> = {}, asked: string | null = null): string {
  const load = shownLoad(report, asked);
  return renderBody(h(Thermostat, { report, load, curve: load === null ? null : madeUpCurve(load) }), {
    house: report.house,
    view: { ...wholeView, ...view },
    document: drawing,
    hrefTo: (path) => `/${path}`,
    built: true,
  });
}

const pageOf = (...asked: Parameters<typeof markupOf>): Document => new JSDOM(markupOf(...asked)).window.document;
const wordsOf = (node: Element | null): string => (node?.textContent ?? "").replaceAll("\u00a0", " ");
const creeping = reportOf(60, "creep");

describe.each([0, 1, 5, 14, 60])("Thermostat with logs of %i loads", (count) => {
  it.each(["creep", "step", "steady"] as const)("neither breaks nor bluffs (%s)", (change) => {
    for (const probeAtBulb of [true, false]) {
      const markup = markupOf(reportOf(count, change, { probeAtBulb }));
      const { body } = new JSDOM(markup).window.document;
      expect(wordsOf(body)).not.toMatch(/NaN|undefined|Infinity|null|\[object/);
      expect(markup).not.toMatch(/NaN|undefined|Infinity/);
      expect(markup).not.toMatch(/<[^>]*\s(style|on[a-z]+)=/);
      expect(body.querySelectorAll("h1")).toHaveLength(1);
      const ids = [...markup.matchAll(/\sid="([^"]+)"/g)].map((match) => match[1]);
      expect(ids).toHaveLength(new Set(ids).size);
      const targets = [...body.querySelectorAll('a[href^="#"]')].map((link) => link.getAttribute("href")?.slice(1));
      expect(targets.filter((target) => !ids.includes(target))).toEqual([]);
    }
  });
});

describe("Thermostat", () => {
  it("shows every figure where there are loads enough", () => {
    const titles = [...pageOf(creeping).querySelectorAll("figure")].map((figure) =>
      figure.getAttribute("aria-labelledby"),
    );
    // Offsets, swing and rise for two holds; checks; cycles of two holds; the fan.
    expect(titles).toHaveLength(8);
  });

  it("says that nothing was read where no load has readings", () => {
    expect(wordsOf(pageOf(madeUpReport(60)).querySelector("h1"))).toContain("No readings of a kiln are logged yet");
    expect(wordsOf(pageOf(reportOf(0, "creep")).querySelector("h1"))).toBe("No load of this kiln has readings yet.");
  });

  it("claims the effect on the malt with its interval, and none that cannot be told", () => {
    const effects = pageOf(creeping).querySelectorAll("#effects .facts > div");
    expect(wordsOf(effects[0] ?? null)).toContain("+0.4 h (−0.1 to +0.9 h)");
    expect(wordsOf(effects[1] ?? null)).toContain("cannot be told");
    expect(pageOf(reportOf(60, "steady")).querySelector("#effects")).toBeNull();
  });

  it("puts the doubt about the logger before every alarm: in the answer, in the entry and on the card", () => {
    const { logger } = madeUpKiln(madeUpReport(60).loads);
    const page = pageOf(reportOf(60, "creep", { logger: { ...logger, stale: true, daysSinceCheck: 140 } }));
    for (const place of ["h1", "#drying .entry-body", "#logger .entry-body", ".card-found"]) {
      expect(wordsOf(page.querySelector(place)).trim()).toMatch(/^The logger may be the one that is off/);
    }
    expect(wordsOf(page.querySelector("#cure"))).not.toContain("logger may");
  });

  it("offers every load with readings, the shown one chosen, the latest first", () => {
    const select = pageOf(creeping).querySelector<HTMLSelectElement>('[data-control="firing"]');
    expect(select?.value).toBe("L59");
    expect(select?.options).toHaveLength(60);
    expect(select?.options[0]?.value).toBe("L59");
    const asked = pageOf(creeping, {}, "L7");
    expect(asked.querySelector<HTMLSelectElement>('[data-control="firing"]')?.value).toBe("L7");
    expect(wordsOf(asked.querySelector("#close-up"))).toContain("R7, loaded");
  });

  it("has a card with the caution on opening a thermostat, and none where nothing was judged", () => {
    const card = pageOf(creeping).querySelector("#kiln-card .card");
    expect(wordsOf(card)).toContain("Opening a thermostat, heater or switchboard is a licensed electrician’s work");
    expect(card?.querySelectorAll("ol > li").length).toBeGreaterThan(3);
    expect(pageOf(reportOf(0, "creep")).querySelector(".kiln-card")).toBeNull();
  });

  it("says temperatures in °F alone to a reader who wants them", () => {
    const { logger } = madeUpKiln(madeUpReport(60).loads);
    const faults = [{ at: Date.UTC(2025, 9, 9), errorKelvin: 1.5, aboutCelsius: 80 }];
    const page = pageOf(reportOf(60, "creep", { logger: { ...logger, faults } }), { units: "us" });
    expect(wordsOf(page.body)).not.toContain("°C");
    expect(wordsOf(page.querySelector("#logger"))).toContain("read 2.7 °F too high at about 176 °F");
    expect(wordsOf(page.querySelector("h1"))).toContain("2.0 °F");
  });

  it("folds what was looked at away where nothing is alarmed", () => {
    const { drying } = madeUpKiln(madeUpReport(60).loads, "creep");
    const quiet = madeUpKiln(madeUpReport(60).loads, "steady").drying;
    if (drying === null || quiet === null) throw new RangeError("the made-up kiln has a drying hold");
    const page = pageOf(reportOf(60, "steady", { drying: { ...quiet, evidence: drying.evidence } }));
    expect(wordsOf(page.querySelector("#kind-of-change"))).toContain(
      "Nothing has changed that would have to be explained",
    );
    expect(page.querySelector("#kind-of-change details")).not.toBeNull();
  });

  it("gives each kiln of several its own entries and its own card", () => {
    const report = madeUpReport(60);
    const kilns = [madeUpKiln(report.loads), madeUpKiln(report.loads, "steady", { kiln: "K2" })];
    const markup = markupOf({ ...report, thermostat: { kilns } });
    const ids = [...markup.matchAll(/\sid="([^"]+)"/g)].map((match) => match[1]);
    expect(ids).toHaveLength(new Set(ids).size);
    const page = new JSDOM(markup).window.document;
    expect(wordsOf(page.querySelector("#kiln-card-2"))).toContain("kiln K2");
    expect(wordsOf(page.querySelector("#drying-2"))).toContain("Kiln K2");
  });

  it("lists no more than 200 loads, and says how many there are", () => {
    const page = pageOf(reportOf(230, "steady"));
    expect(page.querySelectorAll("#loads-behind tbody tr")).toHaveLength(200);
    expect(wordsOf(page.querySelector("#loads-behind"))).toContain("The latest 200 of 230");
  });

  it("never takes text from the logs for markup", () => {
    const evil = '<img src=x onerror="alert(1)">';
    const { logger, events } = madeUpKiln(madeUpReport(60).loads);
    const planted = reportOf(60, "creep", {
      kiln: evil,
      logger: { ...logger, checks: logger.checks.map((check) => ({ ...check, note: evil })) },
      events: events.map((event) => ({ ...event, what: evil })),
    });
    expect(pageOf(planted).querySelector("img")).toBeNull();
  });
});

describe("loadColumns(kiln, units)", () => {
  const kiln = madeUpKiln(madeUpReport(60).loads, "creep");
  const cells = (of: KilnThermostat, load = of.loads[30]): readonly string[] =>
    load === undefined ? [] : loadColumns(of, "metric").flatMap(({ columns }) => columns.map(({ cell }) => cell(load)));
  const labels = (of: KilnThermostat): readonly string[] =>
    loadColumns(of, "metric").flatMap(({ columns }) => columns.map(({ label }) => label));

  it("gives errors where the probe is at the bulb, else changes from the stretch's level", () => {
    const offset = kiln.drying?.points[30]?.offsetKelvin ?? Number.NaN;
    const place = labels(kiln).indexOf("offset, °C");
    const asNumber = (text: string | undefined): number => Number(text?.replace("−", "-"));
    expect(asNumber(cells(kiln)[place])).toLieWithin(offset, 0.005);
    const elsewhere = { ...kiln, probeAtBulb: false };
    expect(labels(elsewhere)[place]).toBe("change, °C");
    // The level of the made-up stretch before any change is 0.1 K.
    expect(asNumber(cells(elsewhere)[place])).toLieWithin(offset - 0.1, 0.005);
  });

  it("shows a dash wherever nothing could be read", () => {
    const bare = cells(kiln, bareThermostatLoad);
    expect(bare.filter((cell) => cell !== "–")).toEqual(["0"]);
  });
});
