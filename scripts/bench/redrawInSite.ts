import type { Browser, Locator, Page } from "playwright-core";
import { type Note, notePageScript } from "./pageNotes.ts";
import { type Fetched, type StageTimes, stageTimes } from "./redrawStages.ts";

/** Milliseconds from the use of a control to the frame that shows its answer, and to the frame that shows the last of it. */
export interface Redraw {
  /** What stands in the window, drawings, words and tables. */
  readonly seen: number;
  /** The whole page: what lies outside the window, and the forms of drawings that do not show. */
  readonly whole: number;
}

/** One visit with an empty cache. */
export interface SiteRedraw {
  readonly firstChoice: Redraw;
  readonly stages: StageTimes;
  readonly secondChoice: Redraw;
  readonly thirdChoice: Redraw;
  readonly megabytesFetched: number;
}

export interface LightRedraw {
  readonly firstKeystroke: Redraw;
  readonly nextKeystroke: Redraw;
  readonly unitSwitch: Redraw;
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

/** @param sign the note after which a frame holds the answer */
function redrawOf(notes: readonly Note[], control: string, sign: string): Redraw {
  const from = notes.find(({ what }) => what === `used ${control}`);
  const since = notes.findIndex(({ what }) => what === sign);
  const seen = notes.find(({ what }, i) => i > since && what === "frame shown");
  const whole = notes.findLast(({ what }) => what === "frame shown");
  if (!from || since < 0 || !seen || !whole) throw new Error(`no note of ${control} or of a frame after it`);
  return { seen: seen.at - from.at, whole: whole.at - from.at };
}

const REPORT = "worker says report";

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

/** Chooses a variety on a page as a reader would who never was here, and then two others. */
export async function redrawByEngine(browser: Browser, address: string): Promise<SiteRedraw> {
  const page = await freshPage(browser, address);
  try {
    const list = await control(page, "variety");
    const varieties = await list
      .locator("option")
      .evaluateAll((found) =>
        found.map((option) => (option as HTMLOptionElement).value).filter((value) => value !== ""),
      );
    const [one, other, third] = varieties;
    if (one === undefined || other === undefined || third === undefined)
      throw new Error("the page offers fewer than three varieties");
    const notes = await notesOf(page, () => list.selectOption(one), REPORT);
    const inside = await insideWorker(page);
    const stages = stageTimes([...notes, ...inside.notes], inside.fetched, "variety");
    const again = async (variety: string): Promise<Redraw> => {
      const listAgain = await control(page, "variety");
      return redrawOf(await notesOf(page, () => listAgain.selectOption(variety), REPORT), "variety", REPORT);
    };
    return {
      firstChoice: redrawOf(notes, "variety", REPORT),
      stages,
      secondChoice: await again(other),
      thirdChoice: await again(third),
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
      firstKeystroke: redrawOf(first, "humidity", "used humidity"),
      nextKeystroke: redrawOf(next, "humidity", "used humidity"),
      unitSwitch: redrawOf(switched, "units", "used units"),
    };
  } finally {
    await page.context().close();
  }
}
