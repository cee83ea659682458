import { spawnSync } from "node:child_process";
import { appendFileSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { JSDOM } from "jsdom";
import type { VNode } from "preact";
import { afterAll, describe, expect, test } from "vitest";
import { noOwnLogs } from "../../src/bodies/ownLogs/ownLogsState.ts";
import {
  askLogsPage,
  changesPage,
  homePage,
  kilnHoursPage,
  logsPage,
  runsPage,
  steepGerminationPage,
  thermostatPage,
  varietiesPage,
  writeUpPage,
  yieldMoisturePage,
  yourLogsPage,
} from "../../src/bodies/pageNames.ts";
import { renderBody } from "../../src/bodies/renderBody.ts";
import { bodyOf } from "../../src/client/pageBody.tsx";
import { reportFromFolder } from "../../src/report/atBuild.ts";
import type { Report } from "../../src/report/report.ts";
import { wholeView } from "../../src/report/view.ts";
import { newHouseFiles } from "../../src/tables/newHouse.ts";

const parent = mkdtempSync(join(tmpdir(), "empty-house-"));
afterAll(() => rmSync(parent, { recursive: true }));

const run = (...words: string[]) => spawnSync(process.execPath, words, { encoding: "utf8" });

/** A house as it is on its first day; `rows` are put behind the headings of their logs. */
function madeHouse(units: "metric" | "us", rows: Readonly<Record<string, string>> = {}): string {
  const folder = mkdtempSync(join(parent, `${units}-`));
  expect(run("scripts/new-house.ts", folder, "--units", units).status).toBe(0);
  for (const [path, text] of Object.entries(rows)) appendFileSync(join(folder, path), text);
  return folder;
}

/** A row under the headings of a log: what is not named is blank. */
function rowOf(units: "metric" | "us", path: string, cells: Readonly<Record<string, string>>): string {
  const headings = newHouseFiles(readFileSync("data/templates/house.toml", "utf8"), units).get(path)?.trim().split(",");
  if (headings === undefined) throw new RangeError(`a new house has no ${path}`);
  for (const name of Object.keys(cells)) expect(headings).toContain(name);
  return `${headings.map((heading) => cells[heading] ?? "").join(",")}\n`;
}

const livePages = [
  homePage,
  steepGerminationPage,
  kilnHoursPage,
  yieldMoisturePage,
  thermostatPage,
  varietiesPage,
  changesPage,
  runsPage,
  logsPage,
  yourLogsPage,
  askLogsPage,
  writeUpPage,
];

async function printed(report: Report, path: string): Promise<Document> {
  const { window } = new JSDOM("", { url: "http://localhost/" });
  const body = await bodyOf({
    path,
    report,
    view: wholeView,
    places: { root: "http://localhost/" } as never,
    curve: () => Promise.reject(new Error("these logs hold no readings")),
    ask: () => Promise.reject(new Error("nothing is asked while a page is printed")),
    own: noOwnLogs,
    logs: "site",
  });
  const context = {
    house: report.house,
    view: wholeView,
    document: window.document,
    hrefTo: (to: string) => `/${to}`,
    built: true,
  };
  return new JSDOM(renderBody(body?.content as VNode, context)).window.document;
}

/** A page says something in whole words, and nothing that is only a number gone wrong. */
function expectWords(document: Document): void {
  const text = (document.body.textContent ?? "").replaceAll(/\s+/g, " ").trim();
  expect(document.querySelector("h1")?.textContent ?? "").toMatch(/\p{L}{2,} .*\p{L}/u);
  expect(text).not.toMatch(/\b(NaN|undefined|Infinity|null)\b|\[object/);
}

describe.each(["metric", "us"] as const)("a house of %s units without a row", (units) => {
  test("says on every page in a sentence what it lacks", async () => {
    const { report } = await reportFromFolder(madeHouse(units));
    expect(report.house.units).toBe(units);
    for (const { path } of livePages) expectWords(await printed(report, path));
  });

  test("is checked without a fault, and has no month to review", () => {
    const folder = madeHouse(units);
    const checked = run("scripts/check-logs.ts", folder);
    expect(checked.stdout + checked.stderr).not.toMatch(/\b(NaN|undefined)\b/);
    expect(checked.status).toBe(0);
    const review = run("scripts/review.ts", "--logs", folder);
    expect(review.status).toBe(2);
    expect(review.stdout + review.stderr).toMatch(/no batch|No batch|nothing/);
    expect(review.stdout + review.stderr).not.toMatch(/\bat .*:\d+:\d+/);
  });

  test("says it too once the first batch is in the steep, and once it has come off the kiln", async () => {
    const lot = rowOf(units, "grain-lots.csv", { lot: "L1", grain: "barley", variety: "First" });
    const steep = rowOf(units, "steeping.csv", { run: "R1", lot: "L1", started_at: "2026-03-01 06:00" });
    const kiln = rowOf(units, "kilning.csv", {
      run: "R1",
      kiln: "K1",
      loaded_at: "2026-03-06 08:00",
      unloaded_at: "2026-03-07 07:00",
      [units === "us" ? "bed_depth_in" : "bed_depth_cm"]: units === "us" ? "7" : "17",
    });
    const logs = { "grain-lots.csv": lot, "steeping.csv": steep };
    for (const rows of [logs, { ...logs, "kilning.csv": kiln }]) {
      const { report } = await reportFromFolder(madeHouse(units, rows));
      expect(report.runs.map((row) => row.run)).toEqual(["R1"]);
      for (const path of [...livePages.map((page) => page.path), `${runsPage.path}R1/`]) {
        expectWords(await printed(report, path));
      }
    }
  });

  test("is reviewed in a sentence in its first month", () => {
    const kiln = { run: "R1", kiln: "K1", loaded_at: "2026-03-06 08:00", unloaded_at: "2026-03-07 07:00" };
    const folder = madeHouse(units, { "kilning.csv": rowOf(units, "kilning.csv", kiln) });
    const { status, stdout, stderr } = run("scripts/review.ts", "--logs", folder);
    expect([0, 1]).toContain(status);
    expect(stdout).toMatch(/March 2026/);
    expect(stdout + stderr).not.toMatch(/\bat .*:\d+:\d+|\b(NaN|undefined)\b/);
  });
});
