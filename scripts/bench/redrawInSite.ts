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
  /** Loads from a day on, which nobody could foresee. */
  readonly fromDay: Redraw;
  readonly megabytesFetched: number;
}

/** What is chosen on the charts' page alone, of all varieties, with the engine up. */
export interface ChartRedraw {
  readonly ruleChoice: Redraw;
  /** Each variety apart, for which the engine is not asked. */
  readonly apart: Redraw;
  /** A batch left out of the baselines by hand, in the opened table of batches; not one that the page has foreseen. */
  readonly leftOut: Redraw;
}

export interface LightRedraw {
  /** Typed in the very moment in which the field is entered. */
  readonly firstKeystroke: Redraw;
  /** On another fresh page, typed a while after the field was entered, as by a hand. */
  readonly enteredBefore: Redraw;
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
async function control(page: Page, name: string, value?: string, which = 0): Promise<Locator> {
  const found = page.locator(`[data-control="${name}"]${value === undefined ? "" : `[value="${value}"]`}`).nth(which);
  await found.evaluate((element) => {
    for (let fold = element.closest("details"); fold !== null; fold = fold.parentElement?.closest("details") ?? null) {
      fold.open = true;
    }
  });
  await found.scrollIntoViewIfNeeded();
  // What an opened fold or a scrolled page brings about is not the control's doing.
  await page.waitForTimeout(QUIET_MILLISECONDS);
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

/** The answer may have been made before, so that no word of the worker stands between the use and the frame. */
async function redrawnBy(page: Page, name: string, use: () => Promise<unknown>): Promise<Redraw> {
  const sign = `used ${name}`;
  return redrawOf(await notesOf(page, use, sign), name, sign);
}

/** Its place in the table of batches: the first of it is foreseen. */
const BATCH = 4;

/** A rule that few charts signal on, beside the usual pair. */
const RULE = "eightOnOneSide";

async function redrawOfCharts(page: Page): Promise<ChartRedraw> {
  const list = await control(page, "variety");
  await notesOf(page, () => list.selectOption(""), "used variety");
  const tick = async (name: string, value?: string, which?: number): Promise<Redraw> => {
    const box = await control(page, name, value, which);
    return redrawnBy(page, name, () => box.click());
  };
  return {
    ruleChoice: await tick("rules", RULE),
    apart: await tick("apart"),
    leftOut: await tick("without", undefined, BATCH),
  };
}

/** Chooses a variety on a page as a reader would who never was here, and then two others. */
export async function redrawByEngine(browser: Browser, address: string): Promise<SiteRedraw> {
  return visitByEngine(browser, address, async (_, redraw) => redraw);
}

/** {@link redrawByEngine} on the page of charts, and then what can be chosen there alone. */
export async function redrawCharts(browser: Browser, address: string): Promise<SiteRedraw & ChartRedraw> {
  return visitByEngine(browser, address, async (page, redraw) => ({ ...redraw, ...(await redrawOfCharts(page)) }));
}

async function visitByEngine<T>(
  browser: Browser,
  address: string,
  goOn: (page: Page, redraw: SiteRedraw) => Promise<T>,
): Promise<T> {
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
      return redrawnBy(page, "variety", () => listAgain.selectOption(variety));
    };
    const fromDay = async (): Promise<Redraw> => {
      const field = await control(page, "from");
      const [firstYear = "", ...monthAndDay] = ((await field.getAttribute("min")) ?? "").split("-");
      const day = [Number(firstYear) + 2, ...monthAndDay].join("-");
      const redraw = await redrawnBy(page, "from", () => field.fill(day));
      await notesOf(page, () => field.fill(""), "used from");
      return redraw;
    };
    return await goOn(page, {
      firstChoice: redrawOf(notes, "variety", REPORT),
      stages,
      secondChoice: await again(other),
      thirdChoice: await again(third),
      fromDay: await fromDay(),
      megabytesFetched: inside.fetched.reduce((sum, { bytes }) => sum + bytes, 0) / 1e6,
    });
  } finally {
    await page.context().close();
  }
}

async function typeHumidity(page: Page, text: string, enteredBefore = false): Promise<Redraw> {
  const field = await control(page, "humidity");
  if (enteredBefore) {
    await field.focus();
    await page.waitForTimeout(QUIET_MILLISECONDS);
  }
  return redrawnBy(page, "humidity", () => field.fill(text));
}

async function keystrokeAfterEntering(browser: Browser, address: string): Promise<Redraw> {
  const page = await freshPage(browser, address);
  try {
    return await typeHumidity(page, "71", true);
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
    const firstKeystroke = await typeHumidity(page, "71");
    const nextKeystroke = await typeHumidity(page, "75");
    const units = await control(page, "units");
    const unitSwitch = await redrawnBy(page, "units", () => units.selectOption("us"));
    if (engineAsked) throw new Error("the engine was fetched for what needs none");
    return {
      firstKeystroke,
      enteredBefore: await keystrokeAfterEntering(browser, address),
      nextKeystroke,
      unitSwitch,
    };
  } finally {
    await page.context().close();
  }
}
