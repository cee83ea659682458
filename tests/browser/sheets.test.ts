import { JSDOM } from "jsdom";
import type { Browser } from "playwright-core";
import { h } from "preact";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { MonthReview } from "../../src/bodies/MonthReview.tsx";
import { renderBody } from "../../src/bodies/renderBody.ts";
import { wholeView } from "../../src/report/view.ts";
import { openBrowser, watchedPage } from "../support/browser.ts";
import { fullMonth } from "../support/fullMonth.ts";
import { madeUpReport } from "../support/madeUpReport.ts";
import { reviewOf } from "../support/madeUpReview.ts";
import { pdfText } from "../support/pdfText.ts";

const site = inject("site");
const { document: drawing } = new JSDOM("").window;

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

/** What the site would show of a month with seven long findings. */
function fullMarkup(): string {
  const report = madeUpReport(60, { review: reviewOf([fullMonth]) });
  return renderBody(h(MonthReview, { report, month: null }), {
    house: report.house,
    view: wholeView,
    document: drawing,
    hrefTo: (path) => `/${path}`,
    built: true,
  });
}

describe("a month with seven findings of full length", () => {
  it.each(["metric", "us"] as const)("fits on two sheets, each with its line for the binder (%s)", async (units) => {
    const { page, context } = await watchedPage(browser, site);
    await page.goto(site);
    // The built page keeps its own figure and orders; what differs from month to month is put in their place.
    await page.locator("main").evaluate(
      (main, { markup, of }) => {
        const full = new DOMParser().parseFromString(markup, "text/html");
        for (const id of ["findings", "open", "events"]) {
          const section = full.getElementById(id);
          if (section === null) throw new Error(`the full month has no #${id}`);
          const old = document.getElementById(id);
          if (old === null) document.getElementById("measures")?.before(section);
          else old.replaceWith(section);
        }
        main.setAttribute("data-units", of);
      },
      { markup: fullMarkup(), of: units },
    );
    expect(await page.locator("#findings .finding").count()).toBe(7);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    const printed = pdfText(pdf).replaceAll("\u00a0", " ");
    expect(pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)).toHaveLength(2);
    expect(printed.match(/made of run logs to/g)).toHaveLength(2);
    expect(printed).toContain("What this rests on");
    await context.close();
  });
});
