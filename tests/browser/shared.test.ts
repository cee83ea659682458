import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import type { Server } from "node:http";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { readPassphrases } from "../../scripts/share/passphraseFile.ts";
import { serveFolder } from "../../scripts/siteServer.ts";
import { DESK, openBrowser, PHONE, watchedPage } from "../support/browser.ts";
import { pdfText } from "../support/pdfText.ts";
import { everyFile, keysIn, shareInChild } from "../support/shareInChild.ts";
import { tenRuns } from "../support/tenRuns.ts";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const faultsOnPage = `axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] })
  .then(({ violations }) => violations.map(({ id, nodes }) => id + ": " + nodes.map(({ target }) => target).join(" ")))`;

const place = mkdtempSync(join(tmpdir(), "shared-"));
const logs = join(place, "logs");
const out = join(place, "pages");
const kept = join(place, "passphrases.txt");

const LAST_DELIVERIES = 70;

/** Puts another value into one run's cell of kilning.csv. */
function setKilning(run: string, column: string, value: string): void {
  const path = join(logs, "kilning.csv");
  const [header = "", ...rows] = readFileSync(path, "utf8").split(/\r?\n/);
  const at = header.split(",").indexOf(column);
  const changed = rows.map((row) => {
    const cells = row.split(",");
    return cells[0] === run ? cells.with(at, value).join(",") : row;
  });
  writeFileSync(path, [header, ...changed].join("\n"));
}

/** A batch that the customer was sent and whose page is open: its bag code and kilning.csv's line, cell by cell. */
function aBatchOf(customer: string): { readonly bag: string; readonly run: string; readonly moisture: string } {
  const page = readFileSync(join(out, keys.get(customer) ?? "", "index.html"), "utf8");
  const bag = /<a href="[\w-]{16}\/index.html">(\w+)<\/a>/.exec(page)?.[1] ?? "";
  const [header = "", ...rows] = readFileSync(join(logs, "kilning.csv"), "utf8").split(/\r?\n/);
  const cells = rows.map((row) => row.split(",")).find((row) => row.includes(bag)) ?? [];
  const cell = (column: string): string => cells[header.split(",").indexOf(column)] ?? "";
  return { bag, run: cell("run"), moisture: cell("final_moisture_pct") };
}

/** Texts that would do harm if a page took them for anything but text. */
const HOSTILE = `</style><script>document.title="taken"</script><img src=x onerror="document.title='taken'">`;
const VARIETY = '=HYPERLINK("x")\u202edesrever ../../etc/passwd';

let browser: Browser;
let server: Server;
let site: string;
let keys: ReadonlyMap<string, string>;
let passphrase: string;
/** A run of which C01 had malt, logged wetter than its spec allows. */
let held: string;

beforeAll(async () => {
  cpSync("data/demo", logs, { recursive: true });
  // The last deliveries alone: sealing is slow on purpose.
  const [header, ...rows] = readFileSync(join(logs, "deliveries.csv"), "utf8").trimEnd().split(/\r?\n/);
  const last = rows.slice(-LAST_DELIVERIES);
  writeFileSync(join(logs, "deliveries.csv"), `${[header, ...last].join("\n")}\n`);
  held = last.find((row) => row.split(",")[1] === "C01")?.split(",")[2] ?? "";
  setKilning(held, "final_moisture_pct", "5.6");
  const { status, said } = shareInChild(
    ...[
      "--logs",
      logs,
      "--out",
      out,
      "--address",
      "https://malt.example/b",
      "--seal-for",
      "C02",
      "--passphrases",
      kept,
    ],
  );
  expect(said).toMatch(/4\s+new keys/);
  expect(said).toContain(`--despite ${held}`);
  expect(status).toBe(0);
  keys = keysIn(logs);
  passphrase = readPassphrases(kept).get("C02") ?? "";
  ({ server, address: site } = await serveFolder(out, 0));
  browser = await openBrowser();
});

afterAll(async () => {
  await browser?.close();
  server?.closeAllConnections();
  server?.close();
  rmSync(place, { recursive: true, force: true });
});

describe("a customer with a link", () => {
  it("opens it, finds the bag in hand, reads moisture against the spec, and prints one sheet with its code", async () => {
    const { page, outside, faults, context } = await watchedPage(browser, site);
    await page.goto(`${site}${keys.get("C01")}/`);
    const { bag, moisture: measured } = aBatchOf("C01");
    await page.getByRole("link", { name: bag, exact: true }).first().click();
    await page.waitForURL(/\/[\w-]{16}\/index\.html$/);
    expect((await page.locator(".kicker").textContent())?.trim()).toBe(`Batch ${bag}`);
    const moisture = page.getByRole("row", { name: /Final moisture/ });
    // kilning.csv and targets.csv of the invented house.
    expect(measured).toMatch(/^\d\.\d$/);
    expect(await moisture.textContent()).toContain(`${measured}\u00a0%`);
    expect(await moisture.textContent()).toContain("3.6 to 5.0\u00a0%");
    await page.getByRole("link", { name: "Sheet to print" }).click();
    await page.waitForURL(/\/sheet\/index\.html$/);
    expect(await page.getByRole("img", { name: /QR code/ }).count()).toBe(1);
    for (const format of ["A4", "Letter"]) {
      const pdf = await page.pdf({ format, preferCSSPageSize: false });
      expect(pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
      // The text on the paper itself, a piece a line.
      const printed = pdfText(pdf).replaceAll("\u00a0", " ");
      for (const words of [
        `Batch ${bag}`,
        `\n${measured} %\n`,
        "\n3.6 to 5.0 %\n",
        "the maltster at Ostrivel",
        "Statistics, not a food-safety release.",
      ]) {
        expect(printed, format).toContain(words);
      }
      expect(printed, format).not.toContain("This batch’s page");
      expect(printed, format).not.toContain("\ufffd");
    }
    await page.getByRole("link", { name: "This batch’s page" }).click();
    await page.getByRole("link", { name: "All you bought" }).click();
    await page.waitForURL(`${site}${keys.get("C01")}/index.html`);
    expect(outside).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
  });

  it.each([PHONE, DESK])("meets no fault that a program can find by WCAG 2.2 AA, at $width px", async (viewport) => {
    const { page, context } = await watchedPage(browser, site, { viewport });
    const folder = `${keys.get("C01")}/`;
    await page.goto(`${site}${folder}`);
    const batch = await page.locator("#bags a").first().getAttribute("href");
    const own = ["", batch ?? "", (batch ?? "").replace("index.html", "sheet/index.html")].map((path) => folder + path);
    // The page of those who come without a link among them.
    for (const path of [...own, "", "404.html"]) {
      await page.goto(`${site}${path}`);
      await page.evaluate(axe);
      expect(await page.evaluate(faultsOnPage), path).toEqual([]);
      expect(await page.evaluate("document.documentElement.scrollWidth - innerWidth"), path).toBeLessThanOrEqual(0);
    }
    await context.close();
  });

  it("reads it from a disk too, with its faces, and with scripts off", async () => {
    const { page, faults, outside, context } = await watchedPage(browser, "file:///", { javaScriptEnabled: false });
    await page.goto(pathToFileURL(join(out, keys.get("C01") ?? "", "index.html")).href);
    await page.locator("#bags a").first().click();
    expect(await page.locator("figure svg").count()).toBeGreaterThan(0);
    expect(await page.locator("h1").textContent()).toMatch(/moisture/);
    expect(faults).toEqual([]);
    expect(outside).toEqual([]);
    await context.close();
  });
});

describe("a batch that is held back", () => {
  it("shows the customer its delivery, and no figures", async () => {
    const page = readFileSync(join(out, keys.get("C01") ?? "", "index.html"), "utf8");
    expect(page).toContain("figures held back by the malthouse: please ask");
    for (const content of everyFile(out).values()) expect(content.includes("5.6\u00a0%")).toBe(false);
  });
});

describe("a sealed page", () => {
  const batchOf = async (html: string): Promise<string> => /href="([\w-]{16}\/index\.html)"/.exec(html)?.[1] ?? "";

  it.each(["http", "file"])("says nothing until it is given its words, over %s", async (over) => {
    const start = over === "http" ? site : `${pathToFileURL(out).href}/`;
    const { page, faults, outside, context } = await watchedPage(browser, start);
    const folder = `${start}${keys.get("C02")}/index.html`;
    await page.goto(folder);
    expect(await page.title()).toMatch(/^A sealed page/);
    await page.evaluate(axe);
    expect(await page.evaluate(faultsOnPage)).toEqual([]);

    const field = page.getByLabel("Passphrase");
    await field.fill(passphrase.replace(/\w+$/, "zebras"));
    await page.getByRole("button", { name: "Open" }).click();
    await page.getByText("That is not this page’s passphrase").waitFor();
    // Pasted as a message has it: in capitals, with more room between the words. Nothing on the page stops a paste.
    const pasted = await field.evaluate((input) => {
      const paste = new ClipboardEvent("paste", { clipboardData: new DataTransfer(), cancelable: true, bubbles: true });
      return input.dispatchEvent(paste);
    });
    expect(pasted).toBe(true);
    await field.fill(` ${passphrase.toUpperCase().replaceAll(" ", "  ")} `);
    await page.getByLabel(/Keep it/).check();
    await page.getByRole("button", { name: "Open" }).click();
    await page.locator("#deliveries").waitFor();
    expect(await page.title()).toMatch(/^What you bought/);
    await page.evaluate(axe);
    expect(await page.evaluate(faultsOnPage)).toEqual([]);

    await page.goto(`${start}${keys.get("C02")}/${await batchOf(await page.content())}`);
    await page.locator("#figures").waitFor();
    expect(await page.getByRole("row", { name: /Final moisture/ }).count()).toBe(1);
    expect(await page.locator("footer").textContent()).toContain("address and passphrase");
    await page.evaluate(axe);
    expect(await page.evaluate(faultsOnPage)).toEqual([]);
    expect(outside).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
  });

  it("holds nothing readable of what was bought, nor its words", () => {
    const bags = readFileSync(join(logs, "kilning.csv"), "utf8").match(/\b[BKSO]2\d{4}\b/g) ?? [];
    expect(bags.length).toBeGreaterThan(100);
    const sealed = [...everyFile(out)].filter(([path]) => path.startsWith(`${keys.get("C02")}/`));
    expect(sealed.length).toBeGreaterThan(10);
    for (const [path, content] of sealed) {
      const text = content.toString("utf8");
      for (const word of [...new Set(bags), passphrase, "Brunolt", "Sivrane", "Kestrop", "Oldruva"]) {
        expect(text.includes(word) || path.includes(word), `${word} in ${path}`).toBe(false);
      }
    }
  });
});

describe("a stranger", () => {
  it("guesses paths, and finds one page that says nothing", async () => {
    const key = keys.get("C01") ?? "";
    const nothing = readFileSync(join(out, "404.html"), "utf8");
    for (const path of [
      "",
      "C01/",
      "customers.csv",
      "faces/",
      ".shared.json",
      key.slice(0, -1),
      key.toLowerCase(),
      `${key}/sheet/`,
      "../logs/customers.csv",
      "sitemap.xml",
    ]) {
      const answer = await fetch(`${site}${path}`);
      expect([200, 404], path).toContain(answer.status);
      const text = await answer.text();
      expect(text, path).toBe(path === "" ? readFileSync(join(out, "index.html"), "utf8") : nothing);
    }
    expect(nothing).not.toContain(key);
  });
});

describe("logs that mean harm", () => {
  it("are shown as text: markup, script, formulas, path parts, turned letters, words without end", async () => {
    const hostile = join(place, "hostile");
    const pages = join(place, "hostile-pages");
    mkdirSync(hostile);
    const cell = (text: string): string => `"${text.replaceAll('"', '""')}"`;
    const long = "w".repeat(400);
    const replace = (text: string | undefined, pairs: readonly (readonly [string, string])[]): string =>
      pairs.reduce((all, [from, to]) => all.replaceAll(from, to), text ?? "");
    const changed: Readonly<Record<string, string>> = {
      ...tenRuns,
      "house.toml": `${tenRuns["house.toml"]}\n[shared]\ncontact = ${JSON.stringify(HOSTILE)}\nnote = ${JSON.stringify(long)}\n`,
      "customers.csv": `customer,share,link_key\n${cell(HOSTILE)},yes,\n`,
      "grain-lots.csv": replace(tenRuns["grain-lots.csv"], [["Specimen", cell(VARIETY)]]),
      "kilning.csv": replace(tenRuns["kilning.csv"], [["A-01", cell(HOSTILE)]]),
      "deliveries.csv": `delivery,customer,run,shipped_on,mass_kg,package_count\nD1,${cell(HOSTILE)},R01,2026-03-01,100,4\n`,
      "lab.csv": `run,tested_on,method_set,ph\nR01,2026-02-01,${cell(HOSTILE)},5.9\n`,
    };
    for (const [path, text] of Object.entries(changed)) {
      mkdirSync(join(hostile, path, ".."), { recursive: true });
      writeFileSync(join(hostile, path), text);
    }
    const { said, status } = shareInChild("--logs", hostile, "--out", pages, "--despite", "R01");
    expect(status, said).toBe(0);
    for (const path of everyFile(pages).keys()) expect(path).toMatch(/^[\w./-]+$/);

    const { page, faults, context } = await watchedPage(browser, "file:///");
    const paths = [...everyFile(pages).keys()].filter((path) => path.split("/").length > 1 && path.endsWith(".html"));
    expect(paths).toHaveLength(3);
    for (const path of paths) {
      await page.goto(pathToFileURL(join(pages, path)).href);
      expect(await page.title(), path).not.toBe("taken");
      expect(await page.locator("main script, main img, footer script, footer img").count(), path).toBe(0);
      expect(await page.evaluate("document.documentElement.scrollWidth - innerWidth"), path).toBeLessThanOrEqual(0);
      const text = await page.locator("body").textContent();
      expect(text, path).toContain(HOSTILE);
      expect(text, path).toContain(long);
      expect(text, path).not.toContain("\u202e");
      if (path.split("/").length > 2) expect(text, path).toContain(VARIETY.replace("\u202e", ""));
    }
    expect(faults).toEqual([]);
    await context.close();
  });
});

describe("a second share", () => {
  it("keeps links and words, says what was altered, and takes back what is no longer shared", () => {
    const { run, moisture } = aBatchOf("C01");
    const corrected = (Number(moisture) < 4.4 ? Number(moisture) + 0.1 : Number(moisture) - 0.1).toFixed(1);
    setKilning(run, "final_moisture_pct", corrected);
    const customers = join(logs, "customers.csv");
    writeFileSync(customers, readFileSync(customers, "utf8").replace(/^(C05,.*?),yes,/m, "$1,no,"));
    const { said, status } = shareInChild(
      ...[
        "--logs",
        logs,
        "--out",
        out,
        "--seal-for",
        "C02",
        "--passphrases",
        kept,
        "--new-key",
        "C03",
        "--despite",
        held,
      ],
    );
    expect(status, said).toBe(0);
    expect(said).toContain(`C01, ${run}: Final moisture was ${moisture}\u00a0%`);
    expect(said).toContain(`now ${corrected}\u00a0%`);
    expect(said).toMatch(/C05, 2\d-\d{3}: no longer shown/);
    expect(said).toContain(`Shared all the same: ${held}`);
    const now = keysIn(logs);
    expect(now.get("C01")).toBe(keys.get("C01"));
    expect(now.get("C03")).not.toBe(keys.get("C03"));
    expect(readPassphrases(kept).get("C02")).toBe(passphrase);
    const tops = new Set([...everyFile(out).keys()].map((path) => path.split("/")[0]));
    expect(tops).toContain(keys.get("C01"));
    expect(tops).not.toContain(keys.get("C03"));
    expect(tops).not.toContain(keys.get("C05"));
  });

  it("refuses to open what was sealed, and to write over files that it did not make", () => {
    const again = shareInChild("--logs", logs, "--out", out);
    expect(again.status).toBe(2);
    expect(again.said).toContain("sealed last time");
    const foreign = join(place, "foreign");
    mkdirSync(foreign);
    writeFileSync(join(foreign, "thesis.txt"), "three years");
    const over = shareInChild("--logs", logs, "--out", foreign, "--seal-for", "C02");
    expect(over.status).toBe(2);
    expect(readFileSync(join(foreign, "thesis.txt"), "utf8")).toBe("three years");
  });
});
