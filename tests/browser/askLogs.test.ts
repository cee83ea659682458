import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { openBrowser, watchedPage } from "../support/browser.ts";

const site = inject("site");

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

const ready = (page: Page) => page.locator(".ask-questions button:enabled").first().waitFor();

/** Asks, and gives the text of what came of it. */
async function ask(page: Page, sql: string): Promise<string> {
  await page.fill("#ask-sql", sql);
  await page.keyboard.press("Control+Enter");
  await page.locator('.ask-buttons button[type="submit"]:enabled').waitFor({ timeout: 120_000 });
  return (await page.locator("#answer").textContent()) ?? "";
}

describe("the page that asks the logs", () => {
  it("fetches no engine before a question, answers one with a drawing and rows, and asks no other host", async () => {
    const { page, context, outside, faults } = await watchedPage(browser, site);
    const engine: string[] = [];
    context.on("request", (request) => {
      if (request.url().includes("/engine/")) engine.push(request.url());
    });
    await page.goto(`${site}ask/`, { waitUntil: "networkidle" });
    await ready(page);
    expect(engine).toEqual([]);
    await page.getByRole("button", { name: "How long does each variety lie on the kiln?" }).click();
    await page.locator("#answer table").waitFor({ timeout: 120_000 });
    expect(engine.length).toBeGreaterThan(0);
    const rows = await page.locator("#answer tbody tr").count();
    expect(rows).toBeGreaterThan(1);
    expect(await page.locator("#answer .drawing-wide rect.mark-ink").count()).toBe(rows);
    expect(await page.inputValue("#ask-sql")).toContain("median(kiln_hours)");

    // Typed since: the sheet says what the answer answers, and shows nothing that only a screen can use.
    await page.fill("#ask-sql", "SELECT 1");
    await page.emulateMedia({ media: "print" });
    await page.locator("#answer pre").getByText("median(kiln_hours)").waitFor();
    const tools = page.locator("main :is(button, textarea)");
    expect(await tools.evaluateAll((found) => found.filter((one) => one.checkVisibility()).length)).toBe(0);
    expect(outside).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
  });

  it("says in plain words what is wrong with a question, changes nothing, and goes on answering", async () => {
    const { page, context, faults } = await watchedPage(browser, site);
    await page.goto(`${site}ask/`);
    await ready(page);
    expect(await ask(page, "SELECT kiln_hour FROM load_rows")).toMatch(
      /has a column kiln_hour\. Near it: .*kiln_hours/,
    );
    expect(await ask(page, "COMMIT; DROP TABLE run_rows")).toContain("not changed");
    expect(await ask(page, "SELECT 1; DROP TABLE run_rows")).toContain("one question at a time");
    expect(await ask(page, "SELECT count(*) AS batches FROM run_rows")).toMatch(/1\srow/);
    expect(faults).toEqual([]);
    await context.close();
  });

  it("puts the reader's own question back where a worked one took its place", async () => {
    const { page, context, faults } = await watchedPage(browser, site);
    await page.goto(`${site}ask/`);
    await ready(page);
    const own = "SELECT count(*) AS mine FROM run_rows";
    await page.fill("#ask-sql", own);
    await page.getByRole("button", { name: "How long does each variety lie on the kiln?" }).click();
    await page.locator("#answer table").waitFor();
    expect(await page.inputValue("#ask-sql")).toContain("median(kiln_hours)");
    const back = page.getByRole("button", { name: "Put my own question back" });
    await back.click();
    expect(await page.inputValue("#ask-sql")).toBe(own);
    expect(await back.count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });

  it("stops a query that runs away, by its button, and answers the next", async () => {
    const { page, context, faults } = await watchedPage(browser, site);
    await page.goto(`${site}ask/`);
    await ready(page);
    await ask(page, "SELECT 1 AS one");
    await page.fill(
      "#ask-sql",
      "SELECT count(*) FROM weather a, weather b, weather c WHERE a.ambient_c + b.ambient_c > c.ambient_c",
    );
    await page.keyboard.press("Control+Enter");
    await page.getByText(/Asking for \d/).waitFor();
    await page.getByRole("button", { name: "Stop" }).click();
    await page.locator("#answer").getByText("Stopped. Nothing was changed.").waitFor({ timeout: 10_000 });
    expect(await ask(page, "SELECT 42 AS answer, 'text' AS kind")).toContain("42");
    expect(faults).toEqual([]);
    await context.close();
  });

  it("saves the rows as CSV with what a spreadsheet would run guarded", async () => {
    const { page, context } = await watchedPage(browser, site);
    await page.goto(`${site}ask/`);
    await ready(page);
    await ask(page, "SELECT '=1+1' AS text, -2.5::DOUBLE AS number, TIMESTAMP '2026-03-08 06:30:00' AS t");
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save 1 row as CSV" }).click(),
    ]);
    expect(readFileSync(await download.path(), "utf8")).toBe("text,number,t\r\n'=1+1,-2.5,2026-03-08 06:30:00\r\n");
    await context.close();
  });

  it("answers when it is come to in place from another page", async () => {
    const { page, context } = await watchedPage(browser, site);
    await page.goto(`${site}ask/`);
    await ready(page);
    await page.getByRole("link", { name: "Runs", exact: true }).click();
    await page
      .locator("h1")
      .getByText(/batches/)
      .waitFor();
    await page.getByRole("link", { name: "Ask the logs" }).click();
    await ready(page);
    expect(await ask(page, "SELECT count(*) AS n FROM load_rows")).toMatch(/1\srow/);
    await context.close();
  });
});
