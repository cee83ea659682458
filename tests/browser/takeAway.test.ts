import { readFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import { JSDOM } from "jsdom";
import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { openBrowser, PHONE, watchedPage } from "../support/browser.ts";

const site = inject("site");

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

async function saved(page: Page, button: Locator): Promise<{ readonly name: string; readonly bytes: Buffer }> {
  const [download] = await Promise.all([page.waitForEvent("download", { timeout: 120_000 }), button.click()]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

const figureOf = (page: Page, id: string): Locator => page.locator(`figure[aria-labelledby="${id}-title"]`);

describe("a figure taken away", () => {
  it("gives its numbers as CSV, as many rows as its table", async () => {
    const { page, context, outside, faults } = await watchedPage(browser, site);
    await page.goto(`${site}kiln-hours/`);
    const figure = figureOf(page, "residuals-in-time");
    const rows = await figure.locator("tbody tr").count();
    const { name, bytes } = await saved(page, figure.locator('[data-take="csv"]'));
    expect(name).toBe("residuals-in-time.csv");
    const lines = bytes.toString("utf8").trim().split("\r\n");
    expect(lines.length - 1).toBeGreaterThanOrEqual(rows);
    expect(lines[0]).toContain("kiln hours, h");
    for (const line of lines.slice(1)) expect(line).toMatch(/,-?\d+(\.\d+)?$/);
    expect(outside).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
  });

  it.each([
    ["a desk", undefined],
    ["a phone", PHONE],
  ])("gives the drawing as an SVG that needs nothing else, on %s", async (_, viewport) => {
    const { page, context, faults } = await watchedPage(browser, site, viewport === undefined ? {} : { viewport });
    await page.goto(`${site}kiln-hours/`);
    const figure = figureOf(page, "residuals-in-time");
    const title = await figure.locator("h3").textContent();
    const circles = await figure.locator(".drawing-wide svg circle").count();
    const { bytes } = await saved(page, figure.locator('[data-take="svg"]'));
    const { document } = new JSDOM(bytes.toString("utf8"), { contentType: "image/svg+xml" }).window;
    const root = document.documentElement;
    expect(root.localName).toBe("svg");
    expect(root.querySelector("title")?.textContent).toBe(title);
    expect([...root.querySelectorAll("text")].map((text) => text.textContent)).toContain(title);
    expect(root.querySelectorAll("circle")).toHaveLength(circles);
    // Colours, faces and addresses stand in the file itself.
    expect(root.querySelectorAll("[class], [style], a, image, script")).toHaveLength(0);
    const text = bytes.toString("utf8").replace(/url\(data:[^)]*\)/g, "");
    expect(text).not.toMatch(/var\(|currentColor|href/);
    const colours = new Set([...root.querySelectorAll("[fill]")].map((mark) => mark.getAttribute("fill")));
    expect(colours.size).toBeGreaterThan(2);
    expect(faults).toEqual([]);
    await context.close();
  });

  it("gives the drawing as a PNG, twice as fine as on the page, with ink on it", async () => {
    const { page, context, faults } = await watchedPage(browser, site);
    await page.goto(`${site}kiln-hours/`);
    const figure = figureOf(page, "residuals-in-time");
    const { bytes } = await saved(page, figure.locator('[data-take="png"]'));
    expect(bytes.subarray(1, 4).toString("latin1")).toBe("PNG");
    const width = await figure.locator(".drawing-wide svg").evaluate((svg: SVGSVGElement) => svg.viewBox.baseVal.width);
    expect(bytes.readUInt32BE(16)).toBe(2 * (width + 32));
    const inked = await page.evaluate(
      async (address) => {
        const picture = new Image();
        picture.src = address;
        await picture.decode();
        const canvas = document.createElement("canvas");
        [canvas.width, canvas.height] = [picture.width, picture.height];
        const pen = canvas.getContext("2d");
        pen?.drawImage(picture, 0, 0);
        const data = pen?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
        let dark = 0;
        for (let at = 0; at < data.length; at += 4) if ((data[at] ?? 255) < 100) dark += 1;
        return dark / (data.length / 4);
      },
      `data:image/png;base64,${bytes.toString("base64")}`,
    );
    expect(inked).toBeGreaterThan(0.002);
    expect(inked).toBeLessThan(0.5);
    expect(faults).toEqual([]);
    await context.close();
  });

  it("is not offered where no script runs", async () => {
    const { page, context } = await watchedPage(browser, site, { javaScriptEnabled: false });
    await page.goto(`${site}kiln-hours/`);
    expect(await page.locator("[data-take]").count()).toBe(0);
    await page.goto(`${site}logs/`);
    expect(await page.locator("[data-take]:visible").count()).toBe(0);
    await context.close();
  });
});

describe("the logs taken away", () => {
  it("are files in the log format, and all batches one table", async () => {
    const { page, context, outside, faults } = await watchedPage(browser, site);
    await page.goto(`${site}logs/`);
    const kilning = await saved(page, page.locator('[data-take="kilning"]'));
    expect(kilning.name).toBe("kilning.csv");
    expect(kilning.bytes.toString("utf8")).toMatch(/^run,kiln,load,loaded_at_utc,/);
    const batches = await saved(page, page.locator('[data-take="runs"]'));
    const lines = batches.bytes.toString("utf8").trim().split("\r\n");
    expect(lines[0]).toMatch(/^run,lot,/);
    await page
      .locator('[data-slot="taken"]')
      .getByText(`Saved batches.csv: ${lines.length - 1} rows.`)
      .waitFor();
    expect(outside).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
  });

  it("are one zip, with settings and readings, that gives the same pages again where it is chosen", async () => {
    const { page, context, outside, faults } = await watchedPage(browser, site);
    const bodyText = (): Promise<string> =>
      page.evaluate(() => (document.getElementById("body")?.textContent ?? "").replace(/\s+/g, " ").trim());
    const built = new Map<string, string>();
    for (const path of ["kiln-hours/", "thermostat/"]) {
      await page.goto(site + path, { waitUntil: "networkidle" });
      // Only the project's own invented house says that it is one.
      built.set(path, (await bodyText()).replaceAll(", an invented house", ""));
    }
    await page.goto(`${site}logs/`);
    const { name, bytes } = await saved(page, page.locator('[data-take="folder"]'));
    expect(name).toBe("cleaned-logs.zip");
    const files = unzipSync(bytes);
    expect(strFromU8(files["logs/house.toml"] ?? new Uint8Array())).toContain('time_zone = "Europe/Tallinn"');
    expect(Object.keys(files).filter((path) => path.startsWith("logs/readings/")).length).toBeGreaterThan(100);
    await page.getByText(`Saved cleaned-logs.zip: ${Object.keys(files).length} files.`).waitFor();

    await page.goto(`${site}your-logs/`, { waitUntil: "networkidle" });
    await page.setInputFiles('[data-own="files"]', { name, mimeType: "application/zip", buffer: bytes });
    await page.locator('[data-own="read"]:not([disabled])').click();
    await page.locator("#shown").waitFor({ timeout: 120_000 });
    for (const [path, text] of built) {
      await page.locator(`header nav a[href*="/${path}"]`).click();
      await expect.poll(bodyText, { timeout: 120_000, message: path }).toBe(text);
    }
    expect(outside).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
  }, 300_000);

  it("say how far saving has come, and save nothing once it is cancelled", async () => {
    const { page, context, faults } = await watchedPage(browser, site);
    await page.goto(`${site}logs/`, { waitUntil: "networkidle" });
    let downloads = 0;
    page.on("download", () => (downloads += 1));
    // The readings of one load do not come until the test lets them.
    let comes = (): void => {};
    const held = new Promise<void>((resolve) => {
      comes = resolve;
    });
    await page.route("**/readings/*.csv", async (route) => {
      await held;
      await route.continue();
    });
    await page.locator('[data-take="folder"]').click();
    const progress = page.locator('#take-away [data-slot="progress"]');
    await expect.poll(() => progress.textContent(), { timeout: 90_000 }).toMatch(/^Packing the logs: \d+ of \d+$/);
    await page.locator('#take-away [data-action="cancel"]').click();
    await page.getByText("Cancelled; nothing was saved.").waitFor();
    expect(await progress.textContent()).toBe("");
    // What was given up can be begun again.
    comes();
    await saved(page, page.locator('[data-take="folder"]'));
    expect(downloads).toBe(1);
    expect(faults).toEqual([]);
    await context.close();
  }, 300_000);
});
