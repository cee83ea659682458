import type { Browser, Locator, Page } from "playwright-core";
import { type Note, notePageScript } from "./pageNotes.ts";
import { type Fetched, type StageTimes, stageTimes } from "./redrawStages.ts";

/** Milliseconds of one visit with an empty cache, each from the use of a control to the frame that shows its answer. */
export interface SiteRedraw {
  readonly firstChoice: number;
  readonly stages: StageTimes;
  readonly secondChoice: number;
  readonly megabytesFetched: number;
}

export interface LightRedraw {
  readonly firstKeystroke: number;
  readonly nextKeystroke: number;
  readonly unitSwitch: number;
}

const QUIET_MILLISECONDS = 400;
const LONGEST_MILLISECONDS = 120_000;

async function freshPage(browser: Browser, address: string): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, locale: "en-GB" });
  const page = await context.newPage();
  await page.addInitScript(notePageScript);
  await page.goto(address, { waitUntil: "networkidle" });
  return page;
}

/** The control by its name, with every fold about it opened as a reader would have opened it. */
async function control(page: Page, name: string): Promise<Locator> {
  const found = page.locator(`[data-control="${name}"]`).first();
  await found.evaluate((element) => {
    for (let fold = element.closest("details"); fold !== null; fold = fold.parentElement?.closest("details") ?? null)
      fold.open = true;
  });
  return found;
}

/** Uses a control, waits until the page has stood still for a while, and gives the notes made since. */
async function notesOf(page: Page, use: () => Promise<unknown>, sign: string): Promise<readonly Note[]> {
  await page.evaluate(() => {
    window.benchNotes.length = 0;
  });
  await use();
  await page.waitForFunction(
    ([wanted, quiet]) => {
      const since = window.benchNotes.findIndex(({ what }) => what === wanted);
      const frame = window.benchNotes.findLast(({ what }, i) => i > since && what === "frame shown");
      return since >= 0 && frame !== undefined && performance.timeOrigin + performance.now() - frame.at > quiet;
    },
    [sign, QUIET_MILLISECONDS] as const,
    { timeout: LONGEST_MILLISECONDS, polling: 50 },
  );
  return page.evaluate(() => window.benchNotes);
}

/** From the first use of a control to the last frame. */
function span(notes: readonly Note[], control: string): number {
  const from = notes.find(({ what }) => what === `used ${control}`);
  const to = notes.findLast(({ what }) => what === "frame shown");
  if (!from || !to) throw new Error(`no note of ${control} or of a frame after it`);
  return to.at - from.at;
}

async function insideWorker(page: Page): Promise<{ notes: readonly Note[]; fetched: readonly Fetched[] }> {
  for (const worker of page.workers()) {
    const inside = await worker.evaluate(() =>
      self.benchNotes === undefined
        ? null
        : {
            notes: self.benchNotes,
            fetched: (performance.getEntriesByType("resource") as PerformanceResourceTiming[]).map((entry) => ({
              address: entry.name,
              startedAt: performance.timeOrigin + entry.startTime,
              endedAt: performance.timeOrigin + entry.responseEnd,
              bytes: entry.encodedBodySize,
            })),
          },
    );
    if (inside) return inside;
  }
  throw new Error("the report worker was not found in the page");
}

/** Chooses a variety on the Kiln hours page as a reader would who never was here, and then another. */
export async function redrawByEngine(browser: Browser, address: string): Promise<SiteRedraw> {
  const page = await freshPage(browser, address);
  try {
    const list = await control(page, "variety");
    const varieties = await list
      .locator("option")
      .evaluateAll((found) =>
        found.map((option) => (option as HTMLOptionElement).value).filter((value) => value !== ""),
      );
    const [one, other] = varieties;
    if (one === undefined || other === undefined) throw new Error("the page offers fewer than two varieties");
    const notes = await notesOf(page, () => list.selectOption(one), "worker says report");
    const inside = await insideWorker(page);
    const stages = stageTimes([...notes, ...inside.notes], inside.fetched, "variety");
    const again = await control(page, "variety");
    const second = await notesOf(page, () => again.selectOption(other), "worker says report");
    return {
      firstChoice: span(notes, "variety"),
      stages,
      secondChoice: span(second, "variety"),
      megabytesFetched: inside.fetched.reduce((sum, { bytes }) => sum + bytes, 0) / 1e6,
    };
  } finally {
    await page.context().close();
  }
}

/** Asks *what if* and switches units, for which no engine is fetched. @throws {Error} when it is fetched all the same */
export async function redrawWithoutEngine(browser: Browser, address: string): Promise<LightRedraw> {
  const page = await freshPage(browser, address);
  let engineAsked = false;
  page.context().on("request", (request) => {
    engineAsked ||= request.url().includes("/engine/");
  });
  try {
    const type = async (text: string): Promise<readonly Note[]> => {
      const field = await control(page, "humidity");
      return notesOf(page, () => field.fill(text), "used humidity");
    };
    const first = await type("71");
    const next = await type("75");
    const units = await control(page, "units");
    const switched = await notesOf(page, () => units.selectOption("us"), "used units");
    if (engineAsked) throw new Error("the engine was fetched for what needs none");
    return {
      firstKeystroke: span(first, "humidity"),
      nextKeystroke: span(next, "humidity"),
      unitSwitch: span(switched, "units"),
    };
  } finally {
    await page.context().close();
  }
}
