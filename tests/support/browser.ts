import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from "playwright-core";

export const PHONE = { width: 390, height: 844 } as const;
export const DESK = { width: 1280, height: 900 } as const;

/** Chromium without its own traffic, so that any request seen is the page's. */
export function openBrowser(): Promise<Browser> {
  const executablePath = process.env.CHROMIUM_PATH;
  if (!executablePath) throw new Error("CHROMIUM_PATH is not set: run the tests by npm test, which finds a browser");
  return chromium.launch({
    executablePath,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
}

/** Everything a page did that it should not have done. */
export interface Watched {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Addresses asked for outside the site. */
  readonly outside: readonly string[];
  /** Console errors, uncaught exceptions and breaches of the page's policy, as text. */
  readonly faults: readonly string[];
}

/** A fresh page that keeps a list of outside requests, console errors, exceptions and policy breaches from its first moment. */
export async function watchedPage(
  browser: Browser,
  site: string,
  options: BrowserContextOptions = {},
): Promise<Watched> {
  const context = await browser.newContext({ viewport: DESK, locale: "en-GB", timezoneId: "UTC", ...options });
  // What a page shows in the end is asked, not how soon: a busy machine of two cores takes its time.
  context.setDefaultTimeout(120_000);
  const page = await context.newPage();
  const outside: string[] = [];
  const faults: string[] = [];
  const origin = new URL(site).origin;
  context.on("request", (request) => {
    const { protocol, origin: asked } = new URL(request.url());
    if (asked !== origin && protocol !== "blob:" && protocol !== "data:") outside.push(request.url());
  });
  context.on("weberror", (error) => faults.push(`exception: ${error.error().message}`));
  context.on("console", (message) => {
    if (message.type() === "error") faults.push(`console: ${message.text()}`);
  });
  await page.addInitScript(() => {
    document.addEventListener("securitypolicyviolation", (event) => {
      // Chromium reports it on the console as well; said here again so that a quiet console cannot hide it.
      console.error(`policy breach: ${event.violatedDirective} ${event.blockedURI}`);
    });
  });
  return { page, context, outside, faults };
}

/** Waits until the script of a built page has put the buttons that save under its figures: before that its text is another. */
export async function savingOffered(page: Page): Promise<void> {
  await page.waitForFunction(() => document.querySelector("figure.figure:not(:has(> .take))") === null);
}
