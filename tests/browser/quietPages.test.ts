import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { openBrowser, watchedPage } from "../support/browser.ts";

const site = inject("site");
const folder = inject("siteFolder");

const textFiles = (endings: RegExp): string[] =>
  readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((path) => endings.test(path));

const someRun = (): string => {
  const runs = textFiles(/^runs\/[^/]+\/index\.html$/).sort();
  return runs[Math.floor(runs.length / 2)]?.replace("index.html", "") ?? "";
};

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

describe("every kind of built page", () => {
  it.each([
    "",
    "review/2026-03/",
    "steep-and-germination/",
    "kiln-hours/",
    "varieties/",
    "varieties/Brunolt/",
    "changes/",
    "runs/",
    "a run",
    "write-up/",
    "ask/",
    "logs/",
    "your-logs/",
    "no-such-page/",
  ])("%s asks no other host for anything and breaks no policy", async (name) => {
    const { page, context, outside, faults } = await watchedPage(browser, site);
    await page.goto(`${site}${name === "a run" ? someRun() : name}`, { waitUntil: "networkidle" });
    // A page that is not there answers 404, which Chromium itself says on the console.
    const own = name === "no-such-page/" ? faults.filter((fault) => !fault.includes("404")) : faults;
    expect(outside).toEqual([]);
    expect(own).toEqual([]);
    await context.close();
  });

  it("carries a policy that names no other host and allows no inline script or eval", () => {
    const pages = textFiles(/\.html$/);
    expect(pages.length).toBeGreaterThan(100);
    for (const path of pages) {
      const policy =
        /http-equiv="content-security-policy" content="([^"]*)"/.exec(readFileSync(join(folder, path), "utf8"))?.[1] ??
        "";
      expect(policy, path).toContain("default-src 'none'");
      expect(policy, path).not.toMatch(/https?:|unsafe-inline|'unsafe-eval'|\*/);
    }
  });

  it("holds no style attribute, no plain engine and no source map", () => {
    const styled = textFiles(/\.(html|svg)$/).filter((path) =>
      /<[^>]+\sstyle=/.test(readFileSync(join(folder, path), "utf8")),
    );
    expect(styled).toEqual([]);
    expect(textFiles(/\.(wasm|map)$/)).toEqual([]);
  });

  it("keeps the page of every run under 25 kB, drawings and all", () => {
    const heavy = textFiles(/^runs\/[^/]+\/index\.html$/)
      .map((path) => ({ path, bytes: statSync(join(folder, path)).size }))
      .filter(({ bytes }) => bytes > 25_000);
    expect(heavy).toEqual([]);
  });

  it("names no other host anywhere but in the names of formats", () => {
    // Addresses that name a format or a licence are never fetched; the tests above watch that nothing is.
    const names =
      /https?:\/\/(www\.w3\.org|github\.com|arrow\.apache\.org|bugs\.|extensions\.duckdb\.org|[a-z.]*duckdb\.org)/;
    const found = textFiles(/\.(html|css|json|csv)$/).flatMap((path) =>
      [...readFileSync(join(folder, path), "utf8").matchAll(/https?:\/\/[^\s"'<)]+/g)].map(([address]) => address),
    );
    expect(found.filter((address) => !names.test(address))).toEqual([]);
  });
});
