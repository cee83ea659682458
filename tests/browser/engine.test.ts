import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { gunzipSync } from "node:zlib";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { openBrowser } from "../support/browser.ts";

const site = inject("site");
const folder = inject("siteFolder");

/** A built file whose name begins so. */
function built(inside: string, start: string): string {
  const name = readdirSync(join(folder, inside)).find((candidate) => candidate.startsWith(start));
  if (!name) throw new Error(`${inside} holds no file that begins ${start}`);
  return name;
}

const MODULE = "**/engine/duckdb-eh-*.bin";
const WORKER = "**/engine/duckdb-worker-*.js";

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** Opens the engine as the session does and tells what came of it: `ready`, or the sentence shown to the reader. */
function openEngine(page: Page): Promise<string> {
  return page.evaluate(
    (script) => {
      const main = document.getElementById("body") as HTMLElement;
      const at = (path: string) => new URL(path, new URL(main.dataset.root ?? "", location.href)).href;
      const start = new Blob([`import ${JSON.stringify(at(`assets/${script}`))};`], { type: "text/javascript" });
      const worker = new Worker(URL.createObjectURL(start), { type: "module" });
      return new Promise<string>((resolve) => {
        worker.onmessage = ({ data }) => {
          if (data.kind !== "ready" && data.kind !== "failed") return;
          worker.terminate();
          resolve(data.kind === "ready" ? "ready" : data.message);
        };
        worker.onerror = (event) => resolve(`the worker fell over: ${event.message}`);
        worker.postMessage({
          kind: "open",
          tables: at("tables/"),
          published: main.dataset.published,
          engine: at("engine/"),
        });
      });
    },
    built("assets", "reportWorker"),
  );
}

/** What opening the engine comes to in a browser of its own, with the network as `arrange` has it. */
async function outcome(arrange: (context: BrowserContext) => Promise<unknown>): Promise<string> {
  const context = await browser.newContext();
  await arrange(context);
  const page = await context.newPage();
  await page.goto(site);
  const said = await openEngine(page);
  await context.close();
  return said;
}

describe("the engine in the browser", () => {
  it("starts from the gzipped module, whatever the server calls it", async () => {
    expect(await outcome(async () => {})).toBe("ready");
  });

  it("starts where the server has unpacked the module on its way", async () => {
    const body = gunzipSync(readFileSync(join(folder, "engine", built("engine", "duckdb-eh"))));
    expect(await outcome((context) => context.route(MODULE, (route) => route.fulfill({ body })))).toBe("ready");
  });

  it("is fetched once and then kept by the browser", async () => {
    let asked = 0;
    const context = await browser.newContext();
    await context.route(MODULE, (route) => {
      asked += 1;
      return route.continue();
    });
    const page = await context.newPage();
    await page.goto(site);
    expect(await openEngine(page)).toBe("ready");
    expect(asked).toBe(1);
    await page.reload();
    expect(await openEngine(page)).toBe("ready");
    expect(asked).toBe(1);
    await context.close();
  });

  it("says so when the site does not have the module", async () => {
    const said = await outcome((context) => context.route(MODULE, (route) => route.fulfill({ status: 404 })));
    expect(said).toMatch(/could not be fetched.*404/);
  });

  it("says so when half of the module came", async () => {
    const whole = readFileSync(join(folder, "engine", built("engine", "duckdb-eh")));
    const body = whole.subarray(0, whole.length / 2);
    const said = await outcome((context) => context.route(MODULE, (route) => route.fulfill({ body })));
    expect(said).toMatch(/could not be unpacked/);
  });

  it("says so when its worker falls over, rather than wait", async () => {
    const body = "throw new Error('out of order')";
    const said = await outcome((context) => context.route(WORKER, (route) => route.fulfill({ body })));
    expect(said).toMatch(/engine failed.*out of order/);
  });
});
