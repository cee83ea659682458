import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { DEMO_LOGS } from "../../scripts/buildSite.ts";
import { reportFromFolder } from "../../src/report/atBuild.ts";
import { wholeView } from "../../src/report/view.ts";
import { readMatches } from "../../src/tables/foreign/readMatches.ts";
import { DESK, openBrowser, PHONE, type Watched, watchedPage } from "../support/browser.ts";
import { LOGGER_FILES, SHEET_FILE, writeForeignHouse } from "../support/foreignHouse.ts";
import { printedBody } from "../support/printedBody.tsx";

const site = inject("site");
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const LONG = { timeout: 120_000 };

let browser: Browser;
let scratch = "";
/** The house's files as they lie on its disk. */
let folder = "";
beforeAll(async () => {
  browser = await openBrowser();
  scratch = mkdtempSync(join(tmpdir(), "foreign-"));
  folder = join(scratch, "our files");
  writeForeignHouse(folder, DEMO_LOGS);
});
afterAll(async () => {
  await browser.close();
  rmSync(scratch, { recursive: true, force: true });
});

/** The text of a page, without the buttons that only a page with scripts has. */
const bodyText = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const body = document.getElementById("body")?.cloneNode(true) as HTMLElement;
    for (const buttons of body.querySelectorAll(".take")) buttons.remove();
    return (body.textContent ?? "").replace(/\s+/g, " ").trim();
  });

async function openYourLogs(viewport: { readonly width: number; readonly height: number } = DESK): Promise<Watched> {
  const watched = await watchedPage(browser, site, { viewport });
  await watched.page.goto(`${site}your-logs/`, { waitUntil: "networkidle" });
  return watched;
}

async function read(page: Page): Promise<void> {
  await page.locator('[data-own="read"]:not([disabled])').click();
  await page.locator("#shown, [role=alert]").first().waitFor(LONG);
}

async function match(page: Page, file: string): Promise<void> {
  await page.getByRole("button", { name: `Match its columns: ${file}` }).click();
  await page.locator("#match-title").waitFor();
}

const takeIn = (page: Page): Promise<void> => page.getByRole("button", { name: "Read it so" }).click();

async function matchBoth(page: Page): Promise<void> {
  await match(page, SHEET_FILE);
  await takeIn(page);
  await match(page, LOGGER_FILES[0]);
  await page.getByLabel("“closed” means").selectOption({ label: "on" });
  await page.getByLabel("“open” means").selectOption({ label: "off" });
  await takeIn(page);
}

const MATCHED = "Kiln logger";

describe("files with headings of their own", () => {
  it("go from a spreadsheet and a logger's export to the kiln hours of the command line", async () => {
    const { page, context, faults, outside } = await openYourLogs();
    await page.setInputFiles('[data-own="folder"]', folder);
    await matchBoth(page);
    await expect.poll(() => page.locator("#foreign").textContent()).toContain(MATCHED);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.locator("#foreign").getByRole("button", { name: "Save columns.toml" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("columns.toml");
    const saved = readFileSync((await download.path()) ?? "", "utf8");
    await read(page);
    await page.locator('header nav a[href*="/kiln-hours/"]').click();

    const house = join(scratch, "by the command line");
    writeForeignHouse(house, DEMO_LOGS);
    writeFileSync(join(house, "columns.toml"), saved);
    const { report } = await reportFromFolder(house, null);
    expect(report.runs.length).toBeGreaterThan(100);
    expect(report.loads.filter(({ readingsFile }) => readingsFile !== null).length).toBeGreaterThan(5);
    const printed = printedBody("kiln-hours/", report, wholeView, new Map());
    await expect.poll(() => bodyText(page), LONG).toBe(printed);
    expect(await page.locator("h1").textContent()).toMatch(/\d/);
    expect(outside).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
  });

  it("are kept as they were matched, where they are kept", async () => {
    const { page, context, faults } = await openYourLogs();
    await page.setInputFiles('[data-own="files"]', join(folder, SHEET_FILE));
    await match(page, SHEET_FILE);
    await takeIn(page);
    await page.check('[name="keep"]');
    await read(page);
    await expect.poll(() => bodyText(page), LONG).toContain("They are kept in this browser");
    const answer = await page.locator("h1").textContent();
    await page.goto(`${site}your-logs/`);
    await expect.poll(() => page.locator("h1").textContent(), LONG).toBe(answer);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.locator("#shown").getByRole("button", { name: "Save columns.toml" }).click(),
    ]);
    const { matches } = readMatches(readFileSync((await download.path()) ?? "", "utf8"));
    expect(matches.map(({ table }) => table)).toEqual(["steeping", "germination", "kilning"]);
    expect(faults).toEqual([]);
    await context.close();
  });

  it("need no matching once the saved columns.toml lies beside them, and what is matched later is added to it", async () => {
    const { page, context, faults } = await openYourLogs();
    await page.setInputFiles('[data-own="folder"]', folder);
    await match(page, LOGGER_FILES[0]);
    await takeIn(page);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.locator("#foreign").getByRole("button", { name: "Save columns.toml" }).click(),
    ]);
    const saved = readFileSync((await download.path()) ?? "", "utf8");
    const house = join(scratch, "next month");
    writeForeignHouse(house, DEMO_LOGS);
    writeFileSync(join(house, "columns.toml"), `# our own remark\n${saved}`);
    writeFileSync(join(house, "kiln logger 2026-03.csv"), readFileSync(join(house, LOGGER_FILES[1])));

    await page.locator('[data-own="none"]').click();
    await expect.poll(() => page.locator("#foreign").count()).toBe(0);
    await page.setInputFiles('[data-own="folder"]', house);
    await expect.poll(() => page.locator("#foreign").textContent()).toContain(SHEET_FILE);
    expect(await page.locator("#foreign").textContent()).toMatch(
      /kiln logger.*will be read as Kiln logger, as columns\.toml says/,
    );
    await match(page, SHEET_FILE);
    await takeIn(page);
    const [again] = await Promise.all([
      page.waitForEvent("download"),
      page.locator("#foreign").getByRole("button", { name: "Save columns.toml" }).click(),
    ]);
    const both = readFileSync((await again.path()) ?? "", "utf8");
    expect(both.startsWith(`# our own remark\n${saved.trimEnd()}`)).toBe(true);
    expect(readMatches(both)).toMatchObject({
      problems: [],
      matches: [{ table: "readings" }, { table: "steeping" }, { table: "germination" }, { table: "kilning" }],
    });
    writeFileSync(join(house, "columns.toml"), both);
    await page.locator('[data-own="none"]').click();
    await page.setInputFiles('[data-own="folder"]', house);
    await expect.poll(() => page.locator("#choose").textContent()).toContain("Chosen: 6");
    await read(page);
    expect(await page.getByRole("button", { name: /^Match its columns/ }).count()).toBe(0);
    await page.locator("#files summary").click();
    const files = await page.locator("#files").textContent();
    expect(files).toContain("kiln logger 2026-03.csv, read as readings");
    expect(faults).toEqual([]);
    await context.close();
  });

  it("are not read unasked, nor once a match is undone or left out", async () => {
    const { page, context, faults } = await openYourLogs();
    const kilning = "run,kiln,loaded_at,unloaded_at\n26-1,K1,2026-03-01 10:00,2026-03-02 01:00\n";
    await page.setInputFiles('[data-own="files"]', [
      { name: "oven.csv", mimeType: "text/csv", buffer: Buffer.from(kilning) },
      { name: SHEET_FILE, mimeType: "text/csv", buffer: readFileSync(join(folder, SHEET_FILE)) },
    ]);
    const list = page.locator("#foreign");
    await expect.poll(() => list.textContent()).toContain(`${SHEET_FILE} has headings of its own: Batch, Grain lot`);
    expect(await list.textContent()).not.toContain("oven.csv");
    expect(await page.locator("#read").textContent()).toMatch(/1\sfile has headings of its own and is not matched/);
    await read(page);
    expect(await page.locator("h1").textContent()).toMatch(/^1\sbatch read/);

    await match(page, SHEET_FILE);
    await takeIn(page);
    await expect.poll(() => list.textContent()).toContain("will be read as Steep, Germination and Kiln");
    // Looking again changes nothing until it is said so.
    await page.getByRole("button", { name: `Look again: ${SHEET_FILE}` }).click();
    await page.getByRole("button", { name: "Not in it: Germination" }).click();
    await page.getByRole("button", { name: "Leave it as it was" }).click();
    await expect.poll(() => page.locator("#match-title").count()).toBe(0);
    expect(await list.textContent()).toContain("will be read as Steep, Germination and Kiln");
    await page.getByRole("button", { name: `Undo: ${SHEET_FILE}` }).click();
    await expect.poll(() => list.textContent()).toContain("has headings of its own");
    expect(await page.getByRole("button", { name: "Save columns.toml" }).count()).toBe(0);
    await read(page);
    await expect.poll(() => page.locator("h1").textContent(), LONG).toMatch(/^1\sbatch read/);

    await match(page, SHEET_FILE);
    await page.getByRole("button", { name: "Leave this file out" }).click();
    await expect.poll(() => list.textContent()).toContain("is left out");
    expect(await page.locator("#match-title").count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });

  it("show their first rows anew at every choice, say what is doubtful, and refuse what cannot be read", async () => {
    const { page, context, faults } = await openYourLogs();
    await page.setInputFiles('[data-own="folder"]', folder);
    await match(page, SHEET_FILE);
    const rows = (table: string) => page.getByRole("table", { name: `${table}: the first rows` });
    expect(await rows("Kiln").locator("tbody tr").first().textContent()).toContain("29 Mar 2024, 17:10");
    expect(await rows("Steep").locator("tbody tr").first().textContent()).toContain("350");
    // What is sure stands in a line; what is not is open, with its reason.
    expect(await page.getByLabel("Kiln in is").count()).toBe(0);
    expect(await page.locator("#match-13-doubts").textContent()).toContain("Nothing in the file says the unit");
    await page.locator("#match-13-unit").selectOption({ label: "°F" });
    await expect.poll(() => rows("Kiln").locator("tbody tr").first().textContent()).toContain("−16.944");

    await page.getByLabel("Dates are written").first().selectOption("mdy");
    await expect.poll(() => page.locator(".match").textContent()).toContain("There is no such date");
    await page.getByLabel("Dates are written").first().selectOption("dmy");
    await page.getByRole("button", { name: "Change Kiln in" }).click();
    await page.getByLabel("Kiln in is").selectOption({ label: "not read" });
    await expect.poll(() => page.locator(".match").textContent()).toContain("no column is loaded, fan on");
    await takeIn(page);
    await expect.poll(() => page.locator(".match [role=alert]").textContent()).toContain("Kiln cannot be read yet");
    await page.getByLabel("Kiln in is").selectOption({ label: "Kiln: loaded, fan on" });
    await expect.poll(() => page.locator(".match [role=alert]").count()).toBe(0);
    await page.getByRole("button", { name: "Not in it: Germination" }).click();
    await takeIn(page);
    await expect.poll(() => page.locator("#foreign").textContent()).toContain("will be read as Steep and Kiln.");
    expect(faults).toEqual([]);
    await context.close();
  });

  it("can be matched on a phone and by keyboard alone, and break no rule of WCAG that a program can check", async () => {
    const { page, context, faults } = await openYourLogs(PHONE);
    mkdirSync(join(scratch, "logger"), { recursive: true });
    writeFileSync(
      join(scratch, "logger", "long.csv"),
      "When,Sensor,Reading\n2026-03-08 10:00,Inlet,54.5 °C\n2026-03-08 10:00,Outside wall,40.1 °C\n2026-03-08 10:01,Inlet,54.9 °C\n2026-03-08 10:01,Outside wall,40.0 °C\n",
    );
    await page.setInputFiles('[data-own="files"]', [
      join(scratch, "logger", "long.csv"),
      join(folder, LOGGER_FILES[0]),
    ]);
    await page.getByRole("button", { name: `Match its columns: ${LOGGER_FILES[0]}` }).focus();
    await page.keyboard.press("Enter");
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe("match-title");
    const wide = () => page.evaluate(() => document.documentElement.scrollWidth);
    expect(await wide()).toBe(PHONE.width);
    await page.evaluate(axe);
    const faultsByAxe = `axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] })
      .then(({ violations }) => violations.map(({ id, nodes }) => id + ": " + nodes.map(({ target }) => target).join(" ")))`;
    expect(await page.evaluate(faultsByAxe)).toEqual([]);
    await page.getByLabel("“closed” means").focus();
    await page.keyboard.press("ArrowDown");
    await expect.poll(() => page.locator(".match table tbody tr").first().textContent()).toContain("on");
    await page.getByRole("button", { name: "Read it so" }).focus();
    await page.keyboard.press("Enter");
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toContain("will be read as");

    await match(page, "long.csv");
    await expect.poll(() => page.locator(".match").textContent()).toContain("Outside wall is");
    await page.getByLabel("Outside wall is").selectOption({ label: "air off" });
    await expect
      .poll(() => page.locator(".match table tbody tr").first().textContent())
      .toMatch(/8 Mar 2026, 10:00.*54\.5.*40\.1/);
    expect(await wide()).toBe(PHONE.width);
    expect(faults).toEqual([]);
    await context.close();
  });
});
