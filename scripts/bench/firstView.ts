import { readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import type { Browser } from "playwright-core";

export const PARTS_OF_A_VIEW = ["html", "css", "js", "fonts", "other"] as const;

/** Bytes that a first view of a page takes, as a host that gzips text would send them; fonts are packed already. */
export type FirstView = Readonly<Record<(typeof PARTS_OF_A_VIEW)[number], number>>;

const PART_OF: Readonly<Record<string, keyof FirstView>> = {
  document: "html",
  stylesheet: "css",
  script: "js",
  font: "fonts",
};

const isText = (type: string): boolean => /^(text|application\/json|image\/svg)/.test(type);

/** What a host would send, at the level of compression that hosts use unless told otherwise. */
export const gzipped = (bytes: Uint8Array): number => gzipSync(bytes, { level: 6 }).length;

/**
 * Opens a page in an empty browser and adds up everything it asks for until it has come to rest. A reader's browser asks for
 * the page's icon as well, which one without a window leaves out: it is added.
 *
 * @param folder the built site, for the icon
 */
export async function firstView(browser: Browser, folder: string, address: string): Promise<FirstView> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  try {
    const page = await context.newPage();
    const sizes = { html: 0, css: 0, js: 0, fonts: 0, other: 0 };
    const waiting: Promise<void>[] = [];
    const asked = new Set<string>();
    page.on("response", (response) => {
      asked.add(response.url());
      const count = async (): Promise<void> => {
        const body = await response.body();
        const type = response.headers()["content-type"] ?? "";
        sizes[PART_OF[response.request().resourceType()] ?? "other"] += isText(type) ? gzipped(body) : body.length;
      };
      waiting.push(count());
    });
    await page.goto(address, { waitUntil: "networkidle" });
    await Promise.all(waiting);
    const icon = await page.evaluate(() => document.querySelector<HTMLLinkElement>('link[rel="icon"]')?.href ?? null);
    if (icon !== null && !asked.has(icon)) sizes.other += gzipped(readFileSync(`${folder}${new URL(icon).pathname}`));
    return sizes;
  } finally {
    await context.close();
  }
}
