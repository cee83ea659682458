import {
  closeSync,
  existsSync,
  ftruncateSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { strToU8, zipSync } from "fflate";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { DEMO_LOGS } from "../../scripts/buildSite.ts";
import { openBrowser, savingOffered, type Watched, watchedPage } from "../support/browser.ts";

const site = inject("site");
const folder = inject("siteFolder");

let browser: Browser;
let scratch = "";
beforeAll(async () => {
  browser = await openBrowser();
  scratch = mkdtempSync(join(tmpdir(), "own-logs-"));
});
afterAll(async () => {
  await browser.close();
  rmSync(scratch, { recursive: true, force: true });
});

const LONG = { timeout: 120_000 };

const bodyText = (page: Page): Promise<string> =>
  page.evaluate(() => (document.getElementById("body")?.textContent ?? "").replace(/\s+/g, " ").trim());

/** The text of a page as it was built, once its script has put the buttons that save under its figures. */
async function builtText(path: string): Promise<string> {
  const { page, context } = await watchedPage(browser, site);
  await page.goto(site + path, { waitUntil: "networkidle" });
  await savingOffered(page);
  const text = await bodyText(page);
  await context.close();
  return text;
}

type Given = { readonly name: string; readonly mimeType: string; readonly buffer: Buffer };

const given = (name: string, content: string | Uint8Array): Given => ({
  name,
  mimeType: "text/csv",
  buffer: Buffer.from(content),
});

async function openYourLogs(): Promise<Watched> {
  const watched = await watchedPage(browser, site);
  await watched.page.goto(`${site}your-logs/`, { waitUntil: "networkidle" });
  return watched;
}

async function read(page: Page): Promise<void> {
  await page.locator('[data-own="read"]:not([disabled])').click();
  await page.locator("#shown, [role=alert]").first().waitFor(LONG);
}

/** The demo's logs chosen as a folder and read. */
async function readDemo(page: Page): Promise<void> {
  await page.setInputFiles('[data-own="folder"]', DEMO_LOGS);
  await read(page);
}

const follow = (page: Page, path: string): Promise<void> => page.locator(`header nav a[href*="/${path}"]`).click();

const KILNING = "run,kiln,loaded_at,unloaded_at\n26-1,K1,2026-03-01 10:00,2026-03-02 01:00\n";

describe("a reader's own logs", () => {
  it("make every page what the build makes of the same folder, batches, months and varieties too, and need no network", async () => {
    const { page, context, outside, faults } = await openYourLogs();
    const asked: { readonly method: string; readonly url: string }[] = [];
    context.on("request", (request) => asked.push({ method: request.method(), url: request.url() }));
    await readDemo(page);
    expect(await page.locator("#whose").textContent()).toContain("These pages show the logs of");
    expect(await page.locator('[data-slot="invented"]').isVisible()).toBe(false);

    // Nothing was asked for but files of the site, and nothing was sent.
    const fetched = asked.filter(({ url }) => !url.startsWith("blob:"));
    expect(fetched.length).toBeGreaterThan(0);
    for (const { method, url } of fetched) {
      expect(method).toBe("GET");
      expect(url.startsWith(site), url).toBe(true);
      expect(existsSync(join(folder, decodeURIComponent(new URL(url).pathname))), url).toBe(true);
      expect(new URL(url).search, url).toBe("");
    }
    asked.length = 0;
    await context.setOffline(true);

    const shows = async (path: string, shownAt: string): Promise<void> => {
      // Only the project's own invented house says that it is one.
      const built = (await builtText(path)).replaceAll(", an invented house", "");
      await expect.poll(() => bodyText(page), { ...LONG, message: path }).toBe(built);
      expect(page.url()).toBe(site + shownAt);
    };
    await follow(page, "kiln-hours/");
    await shows("kiln-hours/", "kiln-hours/");
    await follow(page, "thermostat/");
    await shows("thermostat/", "thermostat/");
    await follow(page, "varieties/");
    await page.locator('#every-variety a[href*="Brunolt"]').first().click();
    await shows("varieties/Brunolt/", "varieties/?of=Brunolt");
    await follow(page, "runs/");
    await page.locator("tbody a[href*='run=']").nth(5).click();
    await expect.poll(() => page.locator("figure svg").count()).toBeGreaterThan(0);
    const run = new URL(page.url()).searchParams.get("run") ?? "";
    await shows(`runs/${run}/`, `runs/?run=${run}`);
    await page.locator("header a.house-name").click();
    const month = page.locator('a[href*="month="]').first();
    const name = new URL((await month.getAttribute("href", LONG)) ?? "", site).searchParams.get("month") ?? "";
    await month.click();
    await shows(`review/${name}/`, `?month=${name}`);
    await page.goBack();
    await page.goBack();
    await shows(`runs/${run}/`, `runs/?run=${run}`);

    // The browser itself looks for the icon of each new address, and says that it finds no network.
    expect(asked.filter(({ url }) => !url.startsWith("blob:") && !url.endsWith("/icon.svg"))).toEqual([]);
    expect(outside).toEqual([]);
    expect(faults.filter((fault) => !fault.includes("ERR_INTERNET_DISCONNECTED"))).toEqual([]);
    await context.close();
  });

  it("follow a reader's choice of rows and units, and a page made with the site says that it has none of them", async () => {
    const { page, context, faults } = await openYourLogs();
    await readDemo(page);
    await follow(page, "kiln-hours/");
    await page.locator(".choose summary").click();
    const all = await page.locator("h1").textContent();
    await page.selectOption('[data-control="variety"]', "Brunolt");
    await expect.poll(() => page.locator("h1").textContent(), LONG).not.toBe(all);
    await page.selectOption('[data-control="units"]', "us");
    await expect.poll(() => bodyText(page), LONG).toContain("°F");
    await follow(page, "shared-pages/");
    await expect.poll(() => bodyText(page)).toContain("No page stands here for logs of your own");
    expect(await page.locator("#whose").isVisible()).toBe(true);
    expect(faults).toEqual([]);
    await context.close();
  });

  it("are known by their headings in files of any name, in a zip, and by dropping them", async () => {
    const names: Readonly<Record<string, string>> = {
      "kilning.csv": "oven.csv",
      "steeping.csv": "tanks 2024 to now.csv",
    };
    const demo = readdirSync(DEMO_LOGS, { recursive: true, encoding: "utf8" }).filter((path) =>
      /\.(csv|toml)$/.test(path),
    );
    const zip = zipSync(
      Object.fromEntries(
        demo.map((path) => [`logs/${names[path] ?? path}`, new Uint8Array(readFileSync(join(DEMO_LOGS, path)))]),
      ),
    );
    const { page, context, faults } = await openYourLogs();
    await page.setInputFiles('[data-own="files"]', given("logs.zip", zip));
    await read(page);
    await page.locator("#files summary").click();
    expect(await page.locator("#files").textContent()).toContain("oven.csv, read as kilning");
    await follow(page, "kiln-hours/");
    await expect.poll(() => bodyText(page), LONG).toBe(await builtText("kiln-hours/"));

    await page.locator("#whose a").click();
    await page.locator("#choose").waitFor();
    await page.locator('[data-own="none"]').click();
    const dropped = await page.evaluateHandle((text) => {
      const data = new DataTransfer();
      data.items.add(new File([text], "my kiln book.csv", { type: "text/csv" }));
      return data;
    }, KILNING);
    await page.dispatchEvent("body", "drop", { dataTransfer: dropped });
    await expect.poll(() => page.locator("#choose").textContent()).toContain("my kiln book.csv");
    await page.fill('[name="name"]', 'The "Old" Shed');
    await page.fill('[name="zone"]', "Nowhere/Atall");
    await page.locator('[data-own="read"]').click();
    await expect.poll(() => page.locator("[role=alert]").textContent()).toContain("no time zone called");
    await page.fill('[name="zone"]', "Europe/Berlin");
    await page.locator('[data-own="read"]').click();
    await expect.poll(() => page.locator("h1").textContent(), LONG).toMatch(/^1\sbatch read from 2\sfiles/);
    expect(await page.locator(".house-name").textContent()).toBe('The "Old" Shed');
    expect(faults).toEqual([]);
    await context.close();
  });

  it("are gone after a reload unless they are kept, come back on any page where they are, and are taken out by one button", async () => {
    const { page, context, faults } = await openYourLogs();
    await page.setInputFiles('[data-own="files"]', given("oven.csv", KILNING));
    await page.fill('[name="name"]', "Own House");
    await read(page);
    expect(await page.locator(".house-name").textContent()).toBe("Own House");
    const ownHouse = (): Promise<string | null> => page.locator(".house-name").textContent();
    const reload = () => page.goto(`${site}runs/`, { waitUntil: "networkidle" });

    await reload();
    expect(await ownHouse()).not.toBe("Own House");
    expect(await page.evaluate(async () => [localStorage.length, (await indexedDB.databases()).length])).toEqual([
      0, 0,
    ]);

    await page.goto(`${site}your-logs/`, { waitUntil: "networkidle" });
    await page.setInputFiles('[data-own="files"]', given("oven.csv", KILNING));
    await page.fill('[name="name"]', "Own House");
    await page.check('[name="keep"]');
    await read(page);
    await expect.poll(() => page.locator("#shown").textContent()).toContain("They are kept in this browser");
    await reload();
    await expect.poll(ownHouse, LONG).toBe("Own House");
    await expect.poll(() => page.locator("h1").textContent(), LONG).toContain("One batch");
    await page.goto(`${site}runs/?run=26-1`);
    await expect.poll(() => page.locator("h1").textContent(), LONG).toContain("26-1");

    await page.getByRole("button", { name: "Take them out of this browser" }).click();
    await expect.poll(ownHouse).not.toBe("Own House");
    expect(await page.locator("#whose").isVisible()).toBe(false);
    expect(new URL(page.url()).search).toBe("");
    await follow(page, "your-logs/");
    await page.getByRole("button", { name: "Show them again" }).click();
    await expect.poll(ownHouse, LONG).toBe("Own House");
    await reload();
    expect(await ownHouse()).not.toBe("Own House");
    expect(await page.evaluate(async () => [localStorage.length, (await indexedDB.databases()).length])).toEqual([
      0, 0,
    ]);
    expect(faults).toEqual([]);
    await context.close();
  });

  it("come back where they were put away, gave way to others or to a reading that was refused", async () => {
    const { page, context, faults } = await openYourLogs();
    const ownHouse = (): Promise<string | null> => page.locator(".house-name").textContent();
    await page.setInputFiles('[data-own="files"]', given("oven.csv", KILNING));
    await page.getByRole("button", { name: "Choose none of them" }).click();
    await page.getByRole("button", { name: "Choose them again" }).click();
    await page.getByText("Chosen: 1").waitFor();
    await page.fill('[name="name"]', "First House");
    await read(page);
    await expect.poll(ownHouse, LONG).toBe("First House");

    await page.fill('[name="name"]', "Second House");
    await page.locator('[data-own="read"]').click();
    await expect.poll(ownHouse, LONG).toBe("Second House");
    await page.getByRole("button", { name: "Show those again" }).click();
    await expect.poll(ownHouse, LONG).toBe("First House");

    await page.getByRole("button", { name: "Choose none of them" }).click();
    await page.setInputFiles('[data-own="files"]', given("empty.csv", ""));
    await page.locator('[data-own="read"]').click();
    await page.getByRole("alert").getByText("None of these files is a log that is known").waitFor();
    await page.getByRole("button", { name: "Show them again" }).click();
    await expect.poll(ownHouse, LONG).toBe("First House");
    expect(faults).toEqual([]);
    await context.close();
  });

  it("that were kept come back where others were kept instead of them", async () => {
    const { page, context, faults } = await openYourLogs();
    const ownHouse = (): Promise<string | null> => page.locator(".house-name").textContent();
    await page.setInputFiles('[data-own="files"]', given("oven.csv", KILNING));
    await page.check('[name="keep"]');
    for (const name of ["First House", "Second House"]) {
      await page.fill('[name="name"]', name);
      await page.locator('[data-own="read"]').click();
      await expect.poll(ownHouse, LONG).toBe(name);
      await expect.poll(() => page.locator("#shown").textContent()).toContain("They are kept in this browser");
    }
    await page.getByRole("button", { name: "Keep those again instead" }).click();
    await expect
      .poll(() => page.locator("#shown").textContent())
      .toContain("Those kept here from before come back then");
    await page.goto(`${site}runs/`, { waitUntil: "networkidle" });
    await expect.poll(ownHouse, LONG).toBe("First House");
    expect(faults).toEqual([]);
    await context.close();
  });

  it("have every problem listed by file, line and column with a hint, and saved as a list that no spreadsheet runs", async () => {
    const { page, context, faults } = await openYourLogs();
    const lines = ["run,kiln,loaded_at,bed_depth_cm", "26-1,K1,=1+1,40", "26-2,K1,2026-03-01 10:00,4000"];
    await page.setInputFiles('[data-own="files"]', [
      given("oven.csv", lines.join("\n")),
      given("accounts.csv", "day,amount\n2026-01-01,12\n"),
    ]);
    await read(page);
    const text = await bodyText(page);
    expect(text).toMatch(/oven\.csv: 2\splaces/);
    expect(text).toContain("line 2, loaded_at");
    expect(text).toContain("line 3, bed_depth_cm");
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.locator('[data-own="problems"]').click(),
    ]);
    const saved = readFileSync((await download.path()) ?? "", "utf8");
    const rows = parse(saved, { bom: true, columns: true }) as Record<string, string>[];
    expect(rows).toContainEqual(
      expect.objectContaining({
        file: "oven.csv",
        line: "2",
        column: "loaded_at",
        value: "'=1+1",
        "what became of it": "row set aside",
      }),
    );
    expect(rows).toContainEqual(expect.objectContaining({ file: "accounts.csv", rule: "unknown-file" }));
    expect(rows.every((row) => (row["what to do"] ?? "").length > 10)).toBe(true);
    expect(faults).toEqual([]);
    await context.close();
  });

  it("are read with progress, and given up at a press of cancel, with the site as it was", async () => {
    const second = (at: number): string =>
      new Date(Date.UTC(2026, 2, 1) + at * 1000).toISOString().slice(0, 19).replace("T", " ");
    const rows = Array.from({ length: 700_000 }, (_, at) => `K1,${second(at)},${60 + (at % 90) / 10},31.2`);
    const path = join(scratch, "logger.csv");
    writeFileSync(path, `kiln,at_utc,air_on_c,air_off_c\n${rows.join("\n")}\n`);
    writeFileSync(join(scratch, "oven.csv"), KILNING);
    const { page, context, faults } = await openYourLogs();
    const before = await page.locator(".house").textContent();
    await page.setInputFiles('[data-own="files"]', [path, join(scratch, "oven.csv")]);
    await page.locator('[data-own="read"]:not([disabled])').click();
    await expect
      .poll(() => page.locator('#read [data-slot="progress"]').textContent(), { ...LONG, interval: 20 })
      .toMatch(/Reading your logs: \d+\.\d of 2\d\.\d\sMB/);
    await page.locator('#read [data-action="cancel"]').click();
    await expect.poll(() => page.locator("[role=alert]").textContent()).toBe("Cancelled; nothing was read.");
    expect(await page.locator("#whose").isVisible()).toBe(false);
    expect(await page.locator(".house").textContent()).toBe(before);
    await read(page);
    await expect.poll(() => page.locator("h1").textContent(), LONG).toMatch(/^1\sbatch read from 3\sfiles/);
    expect(faults).toEqual([]);
    await context.close();
  });

  it("are refused with a sentence, before anything is read, where no browser has memory for them", async () => {
    const path = join(scratch, "huge.csv");
    const file = openSync(path, "w");
    ftruncateSync(file, 300_000_000);
    closeSync(file);
    const { page, context } = await openYourLogs();
    await page.setInputFiles('[data-own="files"]', path);
    await read(page);
    expect(await page.locator("[role=alert]").textContent()).toMatch(
      /huge\.csv holds 300\sMB, and one file may hold 250\sMB/,
    );
    await page.locator('[data-own="none"]').click();
    await page.setInputFiles('[data-own="files"]', given("photo.zip", strToU8("no archive")));
    await read(page);
    await expect.poll(() => page.locator("[role=alert]").textContent(), LONG).toContain("photo.zip cannot be unpacked");
    await context.close();
  });

  it("cannot be brought without JavaScript, and the page says what can be done instead", async () => {
    const { page, context } = await watchedPage(browser, site, { javaScriptEnabled: false });
    await page.goto(`${site}your-logs/`);
    expect(await page.locator(".without-scripting").first().isVisible()).toBe(true);
    expect(await page.locator("input:visible, button:visible").count()).toBe(0);
    await context.close();
  });
});
