import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { get } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { JSDOM } from "jsdom";
import { h } from "preact";
import { describe, expect, it } from "vitest";
import { serveFolder, withPreviews } from "../../scripts/siteServer.ts";
import { renderBody } from "../../src/bodies/renderBody.ts";
import { SharedPages } from "../../src/bodies/SharedPages.tsx";
import type { SharedPagesResult } from "../../src/report/sharing/sharedPagesResult.ts";
import { wholeView } from "../../src/report/view.ts";
import { madeUpReport } from "../support/madeUpReport.ts";

const { window } = new JSDOM("");

function drawn(result: SharedPagesResult): { readonly html: string; readonly text: string } {
  const html = renderBody(h(SharedPages, { result }), {
    house: madeUpReport(1).house,
    view: wholeView,
    document: window.document,
    hrefTo: (path) => `/${path}`,
    built: true,
  });
  const text = new JSDOM(html).window.document.body.textContent?.replaceAll("\u00a0", " ") ?? "";
  return { html, text };
}

const result: SharedPagesResult = {
  customers: [
    {
      customer: `A "1" <&>`,
      shares: true,
      batchesSent: 3,
      lastSentOn: Date.UTC(2026, 3, 20),
      shown: { since: "2026-01-02", sealed: true, runs: ["24-1", "24-2"] },
    },
    { customer: "B", shares: true, batchesSent: 1, lastSentOn: null, shown: null },
  ],
  last: {
    on: "2026-10-31",
    changes: [
      { customer: "A", run: "24-2", kind: "added", figures: [] },
      { customer: "A", run: "24-1", kind: "altered", figures: [{ name: "Colour", was: "3.5 EBC", is: "3.6 EBC" }] },
    ],
    inQuestion: [{ run: "24-3", reasons: ["friability of 75 % is below its spec"], shared: false }],
  },
  recordFault: null,
  passes: [{ table: "deliveries", columns: ["shipped_on"] }],
};

describe("SharedPages", () => {
  it("says who sees what, since when, what changed, and what is held back", () => {
    const { text, html } = drawn(result);
    expect(text).toContain("1 customer can see 2 batches, as shared on 31 October 2026.");
    expect(text).toContain("1 batch held back. customers.csv says otherwise by now of B: share again.");
    expect(text).toContain("2 Jan 2026, sealed");
    expect(text).toContain("24-1: altered: Colour was 3.5 EBC, now 3.6 EBC");
    expect(text).toContain("24-3, held back: friability of 75 % is below its spec");
    expect(html).toContain('href="/runs/24-2/"');
  });

  it("says so where nothing was shared, or the record cannot be read", () => {
    expect(drawn({ ...result, last: null, customers: [] }).text).toContain(
      "Nothing has been shared yet. No customer has share = yes.",
    );
    expect(drawn({ ...result, last: null, recordFault: "It cannot be read." }).text).toContain("It cannot be read.");
  });
});

describe("withPreviews(html, preview)", () => {
  const key = "abcdefghijklmnopqrstuvwx";

  it("puts a link where the page keeps its place, whatever the customer is called, and nowhere else", () => {
    const { html } = drawn(result);
    expect(html).not.toContain("/preview/");
    const served = new JSDOM(withPreviews(html, { folder: "x", keys: new Map([[`A "1" <&>`, key]]) })).window.document;
    const links = [...served.querySelectorAll<HTMLAnchorElement>('a[href^="/preview/"]')];
    expect(links.map((link) => link.getAttribute("href"))).toEqual([`/preview/${key}/index.html`]);
    expect(links[0]?.closest("tr")?.textContent).toContain(`A "1" <&>`);
  });

  it("is asked for by this computer's own name alone: a stranger's page cannot read keys through a name that leads here", async () => {
    const folder = mkdtempSync(join(tmpdir(), "previews-"));
    mkdirSync(join(folder, "shared-pages"));
    mkdirSync(join(folder, key));
    writeFileSync(join(folder, "shared-pages", "index.html"), '<span data-preview="C">at home</span>');
    writeFileSync(join(folder, "404.html"), "nothing");
    writeFileSync(join(folder, key, "index.html"), "the pages of C");
    const { server, address } = await serveFolder(folder, 0, { folder, keys: new Map([["C", key]]) });
    const { port } = new URL(address);
    const read = (path: string, host: string): Promise<string> =>
      new Promise((resolve, reject) => {
        get({ port, path, host: "127.0.0.1", headers: { host } }, async (answer) => {
          let text = "";
          for await (const piece of answer) text += piece;
          resolve(text);
        }).on("error", reject);
      });
    try {
      for (const host of [`127.0.0.1:${port}`, `localhost:${port}`]) {
        expect(await read("/shared-pages/", host)).toContain(key);
        expect(await read(`/preview/${key}/`, host)).toBe("the pages of C");
      }
      expect(await read("/shared-pages/", `evil.example:${port}`)).not.toContain(key);
      expect(await read(`/preview/${key}/`, `evil.example:${port}`)).toBe("nothing");
    } finally {
      server.close();
      rmSync(folder, { recursive: true });
    }
  });

  it("leaves the page as it is without a key", () => {
    const { html } = drawn(result);
    expect(withPreviews(html, { folder: "x", keys: new Map([["C", key]]) })).toBe(html);
  });
});
