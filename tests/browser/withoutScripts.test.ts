import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { DESK, openBrowser, PHONE, watchedPage } from "../support/browser.ts";

const site = inject("site");

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
] as const)("on %s without JavaScript", (_, viewport) => {
  it("the Kiln hours page answers in a sentence, with figures and tables, and offers no control that would do nothing", async () => {
    const { page, context } = await watchedPage(browser, site, { viewport, javaScriptEnabled: false });
    await page.goto(`${site}kiln-hours/`);
    expect(await page.locator("h1").textContent()).toMatch(/\d+(\.\d)?\sh/);
    expect(await page.locator("figure svg:visible").count()).toBeGreaterThan(3);
    expect(await page.locator("table").count()).toBeGreaterThan(2);
    expect(await page.locator("[data-control]:visible").count()).toBe(0);
    await context.close();
  });

  it.each(["kiln-hours/", "varieties/", "varieties/Brunolt/"])(
    "one drawing of each figure of %s shows, and fits the page",
    async (path) => {
      const { page, context } = await watchedPage(browser, site, { viewport, javaScriptEnabled: false });
      await page.goto(`${site}${path}`);
      const figures = page.locator("figure.figure:visible");
      expect(await figures.count()).toBeGreaterThan(1);
      for (const figure of await figures.all()) {
        expect(await figure.locator(".drawing:visible").count()).toBe(1);
      }
      const wider = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(wider).toBe(0);
      await context.close();
    },
  );
});
