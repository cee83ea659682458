import { readdirSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { DEMO_LOGS } from "../../scripts/buildSite.ts";
import { type LaterFindings, withLater } from "../../src/client/laterFindings.ts";
import { type ChosenRows, viewRows } from "../../src/report/chosenRows.ts";
import type { PackedReport } from "../../src/report/packed.ts";
import type { PartName, Report, ReportParts } from "../../src/report/report.ts";
import { unpackReport } from "../../src/report/unpackReport.ts";
import { parseView, type View, wholeView } from "../../src/report/view.ts";
import { openBrowser, savingOffered, watchedPage } from "../support/browser.ts";
import { farthestApart } from "../support/farthestApart.ts";
import { type OpenedReports, openReportsAtBuild } from "../support/openReportsAtBuild.ts";
import { printedBody } from "../support/printedBody.tsx";

const site = inject("site");
const folder = inject("siteFolder");

let browser: Browser;
let atBuild: OpenedReports;
beforeAll(async () => {
  browser = await openBrowser();
  atBuild = await openReportsAtBuild(DEMO_LOGS);
});
afterAll(async () => {
  await browser.close();
  await atBuild.close();
});

/** The text of the page's body as a reader sees it, drawings included; the buttons that only a script puts there apart. */
const bodyText = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const body = document.getElementById("body")?.cloneNode(true) as HTMLElement;
    for (const buttons of body.querySelectorAll(".take")) buttons.remove();
    return (body.textContent ?? "").replace(/\s+/g, " ").trim();
  });

/** So tall that Tonight stands in the window under the open fold of choices, and what comes after it does not. */
const TALL = { width: 1280, height: 1200 };

/** All but the review, of which the browser works out the month that is shown and the build every one. */
const PARTS: readonly Exclude<PartName, "review">[] = [
  "kilnHours",
  "yieldMoisture",
  "thermostat",
  "varieties",
  "steepGermination",
  "changes",
];

interface FromWorker {
  readonly chosen: ChosenRows;
  readonly parts: PackedReport;
  readonly later: LaterFindings;
}

/** What the worker answers for a view, asked from inside the page as the session asks it. Infinite numbers come as text. */
async function askWorker(page: Page, view: View): Promise<FromWorker> {
  const worker = readdirSync(join(folder, "assets")).find((name) => /^reportWorker.*\.js$/.test(name)) ?? "";
  const text = await page.evaluate(
    async ([script, wanted, parts]) => {
      const main = document.getElementById("body") as HTMLElement;
      const at = (path: string) => new URL(path, new URL(main.dataset.root ?? "", location.href)).href;
      const blob = URL.createObjectURL(
        new Blob([`import ${JSON.stringify(at(`assets/${script}`))};`], { type: "text/javascript" }),
      );
      const made = new Worker(blob, { type: "module" });
      return new Promise<string>((resolve, reject) => {
        let answer = {};
        made.onmessage = ({ data }) => {
          if (data.kind === "failed") reject(new Error(data.message));
          if (data.kind === "report") answer = { chosen: data.chosen, parts: data.parts };
          if (data.kind !== "later") return;
          const plain = (n: number) => (Number.isNaN(n) ? null : Number.isFinite(n) ? n : String(n));
          resolve(
            JSON.stringify({ ...answer, later: data.later }, (_, value) =>
              value instanceof Float64Array ? Array.from(value, plain) : value,
            ),
          );
          made.terminate();
        };
        made.postMessage({
          kind: "open",
          tables: at("tables/"),
          published: main.dataset.published,
          engine: at("engine/"),
        });
        made.postMessage({ kind: "report", request: 1, view: wanted, parts });
      });
    },
    [worker, view, PARTS] as const,
  );
  const answer = JSON.parse(text) as FromWorker;
  const columns = answer.parts.columns.map((column) =>
    Float64Array.from(column, (n) => (n === null ? NaN : Number(n))),
  );
  return { ...answer, parts: { ...answer.parts, columns } };
}

/** The whole report of a view, put together as the page puts it together from what the worker says. */
async function reportInBrowser(page: Page, whole: Report, view: View): Promise<Report> {
  const { chosen, parts, later } = await askWorker(page, view);
  return withLater({ ...viewRows(whole, chosen), ...unpackReport<ReportParts>(parts) }, later);
}

describe("the live page", () => {
  it("fetches no engine until other rows are chosen, then does, with progress, and asks no other host", async () => {
    const { page, context, outside, faults } = await watchedPage(browser, site);
    const engine: string[] = [];
    context.on("request", (request) => {
      if (request.url().includes("/engine/")) engine.push(request.url());
    });
    await page.goto(`${site}kiln-hours/`, { waitUntil: "networkidle" });
    const before = await bodyText(page);
    await page.fill('[data-control="humidity"]', "75");
    await page.waitForFunction(() => location.search.includes("humidity=75"));
    expect(engine).toEqual([]);

    await page.locator(".choose summary").click();
    const variety = await page.locator('[data-control="variety"] option').nth(1).getAttribute("value");
    await page.selectOption('[data-control="variety"]', variety ?? "");
    await page.waitForFunction(
      (old) =>
        (document.getElementById("body")?.textContent ?? "").replace(/\s+/g, " ") !== old &&
        !/Fetching|Starting/.test(document.querySelector('[data-slot="progress"]')?.textContent ?? ""),
      before,
      { timeout: 120_000 },
    );
    await expect.poll(() => page.locator("h1").textContent(), { timeout: 120_000 }).toBeTruthy();
    expect(engine.length).toBeGreaterThan(0);
    await expect.poll(() => new URL(page.url()).searchParams.get("variety")).toBe(variety);
    expect(outside).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
  });

  it("shows for all rows the very text that the build printed", async () => {
    const { page, context } = await watchedPage(browser, site);
    await page.goto(`${site}kiln-hours/`, { waitUntil: "networkidle" });
    await savingOffered(page);
    const built = await bodyText(page);
    // Another choice and back again: the body is then drawn by the browser.
    await page.fill('[data-control="humidity"]', "61");
    await page.waitForFunction(() => location.search.includes("humidity=61"));
    await expect.poll(() => bodyText(page)).not.toBe(built);
    await page.fill('[data-control="humidity"]', "");
    await expect.poll(() => bodyText(page), { timeout: 60_000 }).toBe(built);
    await context.close();
  });

  it.each(["", "review/2026-03/"])(
    "takes /%s over as it was built, whatever rows are chosen elsewhere, and says it in other units without the engine",
    async (path) => {
      const { page, context, faults } = await watchedPage(browser, site);
      const engine: string[] = [];
      context.on("request", (request) => {
        if (request.url().includes("/engine/")) engine.push(request.url());
      });
      await page.goto(`${site}${path}`, { waitUntil: "networkidle" });
      await savingOffered(page);
      const built = await bodyText(page);
      await page.locator(".choose summary").click();
      await page.selectOption('[data-control="units"]', "us");
      await expect.poll(() => bodyText(page)).toContain("grain in, lb");
      await page.selectOption('[data-control="units"]', "metric");
      await expect.poll(() => bodyText(page), { timeout: 60_000 }).toBe(built);
      await page.goto(`${site}${path}?variety=Brunolt`, { waitUntil: "networkidle" });
      await expect
        .poll(() => page.locator("nav[aria-label='Pages'] a").nth(2).getAttribute("href"))
        .toContain("Brunolt");
      expect(await bodyText(page)).toBe(built);
      expect(engine).toEqual([]);
      expect(faults).toEqual([]);
      await context.close();
    },
  );

  it.each([
    "steep-and-germination/",
    "kiln-hours/",
    "yield-and-moisture/",
    "thermostat/",
    "varieties/",
    "varieties/Brunolt/",
    "changes/",
  ] as const)("shows on %s for other rows the very text that the build would have printed for them", async (name) => {
    const { page, context } = await watchedPage(browser, site);
    const query = "from=2025-03-01&to=2026-08-31";
    const view = parseView(new URLSearchParams(query));
    await page.goto(`${site}${name}?${query}`);
    await expect
      .poll(() => bodyText(page), { timeout: 120_000 })
      .toBe(printedBody(name, await atBuild.of(view), view, atBuild.curves));
    await context.close();
  });

  it.each(["", "variety", "from=2025-06-01&to=2026-03-31", "air=mean", "without"])(
    "reaches the build's numbers to 1e-12 for the same choice: %s",
    async (choice) => {
      const { page, context } = await watchedPage(browser, site);
      await page.goto(`${site}kiln-hours/`);
      const whole = await atBuild.of(wholeView);
      const query =
        choice === "variety"
          ? `variety=${encodeURIComponent(whole.choices.varieties[0] ?? "")}`
          : choice === "without"
            ? `without=${encodeURIComponent(whole.runs[10]?.run ?? "")}`
            : choice;
      const view = parseView(new URLSearchParams(query));
      const inBrowser = await reportInBrowser(page, whole, view);
      const { review: _, ...built } = await atBuild.of(view);
      const { review: __, ...found } = inBrowser;
      const { relative, place, differing } = farthestApart(built, found);
      expect(differing).toEqual([]);
      expect(relative, place).toBeLessThan(1e-12);
      await context.close();
    },
  );

  it("draws first what stands in the window, in the form that shows, and the whole page before it is printed", async () => {
    const { page, context } = await watchedPage(browser, site, { viewport: TALL });
    // Without idle time, only what cannot wait is drawn.
    await page.addInitScript(() => {
      window.requestIdleCallback = () => 0;
    });
    await page.goto(`${site}kiln-hours/`, { waitUntil: "networkidle" });
    const degrees = (selector: string): Promise<string> =>
      page.evaluate(
        (wanted) => [...document.querySelectorAll(wanted)].map(({ textContent }) => textContent).join(" "),
        selector,
      );
    await page.locator(".choose summary").click();
    await page.selectOption('[data-control="units"]', "us");
    await expect.poll(() => degrees("#tonight")).toContain("°F");
    expect(await degrees("#reckoner caption")).toContain("°C");
    await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
    expect(await degrees("#body")).not.toContain("°C");
    await context.close();
  });

  it("draws the rest at once when a fold is opened", async () => {
    const { page, context } = await watchedPage(browser, site, { viewport: TALL });
    await page.addInitScript(() => {
      window.requestIdleCallback = () => 0;
    });
    await page.goto(`${site}kiln-hours/`, { waitUntil: "networkidle" });
    const heads = (): Promise<string | null> => page.locator("#loads-behind thead").textContent();
    await page.locator(".choose summary").click();
    await page.selectOption('[data-control="units"]', "us");
    await expect.poll(() => page.locator("#tonight").textContent()).toContain("°F");
    expect(await heads()).toContain("bed, cm");
    await page.locator("#loads-behind summary").click();
    await expect.poll(heads).toContain("bed, in");
    await context.close();
  });

  it("drops what an earlier choice still waits for when another is made", async () => {
    const { page, context, faults } = await watchedPage(browser, site);
    await page.goto(`${site}kiln-hours/?from=2025-03-01`);
    await expect.poll(() => page.locator(".choose summary").textContent(), { timeout: 120_000 }).toContain("from 2025");
    const varieties = await page
      .locator('[data-control="variety"] option')
      .evaluateAll((options) =>
        options.map((option) => (option as HTMLOptionElement).value).filter((value) => value !== ""),
      );
    await page.locator(".choose summary").click();
    await page.evaluate((names) => {
      const list = document.querySelector<HTMLSelectElement>('[data-control="variety"]');
      for (const name of names) {
        if (list) list.value = name;
        list?.dispatchEvent(new Event("change", { bubbles: true }));
      }
    }, varieties);
    const last = varieties.at(-1) ?? "";
    const view = parseView(new URLSearchParams({ from: "2025-03-01", variety: last }));
    await expect
      .poll(() => bodyText(page), { timeout: 120_000 })
      .toBe(printedBody("kiln-hours/", await atBuild.of(view), view, atBuild.curves));
    expect(faults).toEqual([]);
    await context.close();
  });

  it("opens an address that carries a choice with that choice, and leads back by the browser's own button", async () => {
    const { page, context } = await watchedPage(browser, site);
    await page.goto(`${site}kiln-hours/?units=us`);
    await expect.poll(() => bodyText(page)).toContain("°F");
    await page.goto(`${site}kiln-hours/`);
    expect(await bodyText(page)).toContain("°C");
    await page.goBack();
    await expect.poll(() => bodyText(page)).toContain("°F");
    await context.close();
  });

  it("keeps the session over links: the page changes, the script does not start anew, and the choice goes along", async () => {
    const { page, context } = await watchedPage(browser, site);
    await page.goto(`${site}kiln-hours/?units=us`);
    await expect.poll(() => bodyText(page)).toContain("°F");
    await page.evaluate(() => Object.assign(window, { sameDocument: true }));
    await page.locator('header a[href*="runs/"]').click();
    await expect.poll(() => page.locator("h1").textContent()).toMatch(/batches/i);
    expect(await page.evaluate(() => "sameDocument" in window)).toBe(true);
    await expect.poll(() => new URL(page.url()).searchParams.get("units")).toBe("us");
    await page.locator("tbody a[href*='runs/']").first().click();
    await expect.poll(() => page.locator("figure svg").count()).toBeGreaterThan(0);
    expect(await page.evaluate(() => "sameDocument" in window)).toBe(true);
    await context.close();
  });

  it("says what a trial would take when its difference is typed or its measure chosen, and fetches no engine for that", async () => {
    const { page, context } = await watchedPage(browser, site);
    const engine: string[] = [];
    page.on("request", (request) => {
      if (request.url().includes("/engine/")) engine.push(request.url());
    });
    await page.goto(`${site}changes/`, { waitUntil: "networkidle" });
    const answer = (): Promise<string | null> => page.locator('#next-trial [role="status"]').textContent();
    const usual = await answer();
    await page.fill('[data-control="difference"]', "0.5");
    await expect.poll(answer).toContain("To tell a difference of 0.5");
    expect(await answer()).not.toBe(usual);
    await page.fill('[data-control="difference"]', "nothing");
    await expect.poll(answer).toContain("must be a number above 0");
    await page.selectOption('[data-control="measure"]', "dry_yield_pct");
    await expect.poll(answer).toContain("in dry-matter yield");
    expect(await page.inputValue('[data-control="difference"]')).not.toBe("nothing");
    await expect.poll(() => new URL(page.url()).searchParams.get("measure")).toBe("dry_yield_pct");
    expect(engine).toEqual([]);
    await context.close();
  });

  it("draws a variety's page in place when its name is followed, and marks its place in the navigation", async () => {
    const { page, context, faults } = await watchedPage(browser, site);
    await page.goto(`${site}varieties/?units=us`);
    await expect.poll(() => page.locator("#every-variety a").first().getAttribute("href")).toContain("units=us");
    await page.evaluate(() => Object.assign(window, { sameDocument: true }));
    const variety = (await page.locator("#every-variety a").first().textContent()) ?? "";
    await page.locator("#every-variety a").first().click();
    await expect.poll(() => page.locator(".kicker").textContent()).toBe(`Varieties: ${variety}`);
    await expect.poll(() => page.locator("#in-order figure svg").count()).toBeGreaterThan(0);
    expect(await page.evaluate(() => "sameDocument" in window)).toBe(true);
    expect(await bodyText(page)).not.toMatch(/\d\u00a0EBC/);
    expect(await page.locator("header a[aria-current]").last().textContent()).toContain("Varieties");
    expect(faults).toEqual([]);
    await context.close();
  });

  it("shows another load's cycles close up when asked for, and fetches no engine for that", async () => {
    const { page, context, faults } = await watchedPage(browser, site);
    const engine: string[] = [];
    context.on("request", (request) => {
      if (request.url().includes("/engine/")) engine.push(request.url());
    });
    await page.goto(`${site}thermostat/`, { waitUntil: "networkidle" });
    const latest = await bodyText(page);
    const earlier = await page.locator('[data-control="firing"] option').nth(30).getAttribute("value");
    await page.selectOption('[data-control="firing"]', earlier ?? "");
    await expect.poll(() => bodyText(page), { timeout: 60_000 }).not.toBe(latest);
    await expect.poll(() => new URL(page.url()).searchParams.get("firing")).toBe(earlier);
    expect(engine).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
  });

  it("leaves a single run out of the fit at a tick, says so, and puts it back", async () => {
    const { page, context } = await watchedPage(browser, site);
    await page.goto(`${site}kiln-hours/`, { waitUntil: "networkidle" });
    await page.locator("#every-load").evaluate((place) => place.closest("details")?.setAttribute("open", ""));
    const tick = page.locator('tbody input[data-control="without"]').nth(3);
    const run = await tick.getAttribute("value");
    await tick.check();
    await expect.poll(() => bodyText(page), { timeout: 120_000 }).toContain("left out by hand");
    await expect.poll(() => new URL(page.url()).searchParams.getAll("without")).toEqual([run]);
    await page.locator(".choose summary").click();
    await page.locator('.choose-without input[data-control="without"]').click();
    await expect.poll(() => bodyText(page), { timeout: 120_000 }).not.toContain("left out by hand");
    await expect.poll(() => new URL(page.url()).search).toBe("");
    await context.close();
  });
});
