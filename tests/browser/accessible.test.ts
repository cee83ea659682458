import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { DESK, openBrowser, PHONE, watchedPage } from "../support/browser.ts";

const site = inject("site");
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** A page's faults by the rules of WCAG 2.2 A and AA, as axe-core finds them. */
const faultsOnPage = `axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] })
  .then(({ violations }) => violations.map(({ id, nodes }) => id + ": " + nodes.map(({ target }) => target).join(" ")))`;

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

describe.each([
  ["a phone", PHONE],
  ["a desk", DESK],
] as const)("on %s", (_, viewport) => {
  it.each([
    "",
    "review/2026-03/",
    "steep-and-germination/",
    "kiln-hours/",
    "yield-and-moisture/",
    "thermostat/",
    "varieties/",
    "varieties/Brunolt/",
    "changes/",
    "runs/",
    "runs/25-090/",
    "shared-pages/",
    "write-up/",
    "ask/",
    "logs/",
    "your-logs/",
    "kiln-hours/?units=us",
  ])("/%s keeps the rules of WCAG 2.2 AA that a program can check", async (path) => {
    const { page, context } = await watchedPage(browser, site, { viewport });
    await page.goto(`${site}${path}`, { waitUntil: "networkidle" });
    await page.evaluate(axe);
    expect(await page.evaluate(faultsOnPage)).toEqual([]);
    await context.close();
  });
});

describe("on paper", () => {
  it.each([
    "",
    "review/2026-03/",
    "steep-and-germination/",
    "kiln-hours/",
    "yield-and-moisture/",
    "thermostat/",
    "varieties/",
    "varieties/Brunolt/",
    "changes/",
    "runs/25-090/",
    "logs/",
  ])("/%s prints its answer and its figures, and neither navigation nor controls", async (path) => {
    const { page, context } = await watchedPage(browser, site);
    await page.goto(`${site}${path}`);
    await page.emulateMedia({ media: "print" });
    expect(await page.locator("h1:visible").count()).toBe(1);
    expect(await page.locator("figure svg:visible").count()).toBeGreaterThan(0);
    expect(await page.locator("nav[aria-label='Pages'] a:visible").count()).toBe(0);
    expect(await page.locator("[data-control]:visible").count()).toBe(0);
    await context.close();
  });

  it.each(["", "review/2026-03/", "review/2025-08/"])(
    "/%s fits on two sheets, A4 for a house that counts in metric units and Letter for one that does not",
    async (path) => {
      const { page, context } = await watchedPage(browser, site);
      await page.goto(`${site}${path}`);
      for (const [units, width] of [
        ["metric", 595],
        ["us", 612],
      ] as const) {
        await page.locator("main").evaluate((main, of) => main.setAttribute("data-units", of), units);
        const sheets = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
        expect(sheets.match(/\/Type\s*\/Page\b/g)).toHaveLength(2);
        const [, across] = /MediaBox\s*\[0 0 ([\d.]+)/.exec(sheets) ?? [];
        expect(Math.round(Number(across))).toBe(width);
      }
      await context.close();
    },
  );
});
