/// <reference lib="webworker" />
import { allRules } from "../analysis/controlCharts/ruleChoice.ts";
import { openBrowserDatabase } from "../engine/browser.ts";
import type { CsvTable, LoadableDatabase } from "../engine/database.ts";
import { joinLogs } from "../engine/joinLogs.ts";
import { analyseParts } from "../report/analyseParts.ts";
import { type ChosenRows, chooseRows, viewRows } from "../report/chosenRows.ts";
import { type LoggedRows, readLoggedRows, wholeRows } from "../report/loggedRows.ts";
import { packReport } from "../report/packReport.ts";
import type { PublishedLogs } from "../report/publishedLogs.ts";
import type { ReportParts, ReportRows } from "../report/report.ts";
import { rowFilter } from "../report/rowFilter.ts";
import type { View } from "../report/view.ts";
import { answerAsks } from "./askLogs/answerAsk.ts";
import { findLater, withLater } from "./laterFindings.ts";
import { enterOwnLogs } from "./ownLogs/enterOwnLogs.ts";
import type { ReadingProgress } from "./ownLogs/readingProgress.ts";
import type { OpenRequest, WorkerAnswer, WorkerRequest } from "./protocol.ts";

// The worker that joins the engine to the report, so that neither ever holds up the page.

const say = (answer: WorkerAnswer, transfer: readonly ArrayBufferLike[] = []): void =>
  self.postMessage(answer, [...transfer] as Transferable[]);

async function fetchPart(address: string): Promise<Response> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address} answered ${response.status}`);
  return response;
}

async function fetchTables(folder: string, published: PublishedLogs): Promise<CsvTable[]> {
  const total = published.tables.reduce((sum, table) => sum + table.bytes, 0);
  let received = 0;
  return Promise.all(
    published.tables.map(async ({ name, columns, file }) => {
      const response = await fetchPart(`${folder}${file}`);
      const csv = new Uint8Array(await response.arrayBuffer());
      received += csv.byteLength;
      say({ kind: "progress", part: "tables", received, total });
      return { name, columns, csv };
    }),
  );
}

interface Opened {
  readonly database: LoadableDatabase;
  readonly published: PublishedLogs;
  readonly logged: LoggedRows;
  readonly whole: ReportRows;
  /** The loads' readings, of the reader's own logs alone: those of the site are files. */
  readonly readings: ReadonlyMap<string, Blob>;
}

let opened: Promise<Opened> | null = null;
/** The newest request: whatever an older one still had to say is of no use to anybody. */
let newest = 0;

const startEngine = (folder: string): Promise<LoadableDatabase> =>
  openBrowserDatabase({
    folder,
    onProgress: (received, total) => say({ kind: "progress", part: "engine", received, total }),
  });

type TablesIn = Pick<Opened, "database" | "published" | "readings">;

async function openSite({
  tables,
  published: name,
  engine,
}: Extract<OpenRequest, { kind: "open" }>): Promise<TablesIn> {
  const published = (await (await fetchPart(`${tables}${name}`)).json()) as PublishedLogs;
  const rows = await fetchTables(tables, published);
  const database = await startEngine(engine);
  await database.load(rows);
  await joinLogs(database);
  return { database, published, readings: new Map() };
}

async function openOwn({ files, house, engine }: Extract<OpenRequest, { kind: "open-own" }>): Promise<TablesIn> {
  const database = await startEngine(engine);
  const onProgress = (progress: ReadingProgress): void => say({ kind: "progress", part: "reading", ...progress });
  return { database, ...(await enterOwnLogs(files, database, { house, onProgress })) };
}

async function open(asked: OpenRequest): Promise<Opened> {
  const tablesIn = await (asked.kind === "open" ? openSite(asked) : openOwn(asked));
  const logged = await readLoggedRows(tablesIn.database);
  return { ...tablesIn, logged, whole: wholeRows(logged, tablesIn.published) };
}

const breath = new MessageChannel();
breath.port1.start();

/** Lets messages in that came meanwhile; a timer would add milliseconds of its own. */
function breathe(): Promise<void> {
  return new Promise((go) => {
    breath.port1.addEventListener("message", () => go(), { once: true });
    breath.port2.postMessage(null);
  });
}

/** A page that says nothing, since it was left or stands in the background, is waited for no longer than this, ms. */
const LONGEST_UNSEEN = 1000;
let seen: () => void = () => {};

/** Waits until the page has shown what it was sent, or asks something else: a small machine has no core for both. */
function pageShown(): Promise<void> {
  return new Promise((go) => {
    const timer = setTimeout(go, LONGEST_UNSEEN);
    seen = () => {
      clearTimeout(timer);
      go();
    };
  });
}

type ReportRequest = Extract<WorkerRequest, { kind: "report" }>;

interface Chosen {
  readonly chosen: ChosenRows;
  readonly rows: ReportRows;
}

interface Worked {
  readonly chosen: ChosenRows;
  readonly parts: Partial<ReportParts>;
}

/** Few choices are made again and again, and the same rows let what stands on them alone be kept (`report/forTheSame.ts`). */
const MOST_CHOICES = 8;
const choices = new Map<string, Chosen>();

async function rowsOf({ database, published, logged, whole }: Opened, view: View): Promise<Chosen> {
  const filter = rowFilter(view, published.house.timeZone);
  const key = JSON.stringify(filter);
  const known = choices.get(key);
  if (known !== undefined) return known;
  const chosen = await chooseRows(database, logged, filter);
  const found = { chosen, rows: viewRows(whole, chosen) };
  if (choices.size >= MOST_CHOICES) choices.clear();
  choices.set(key, found);
  return found;
}

/** What a request asks for; null once there is a newer one. */
async function workOut(ready: Opened, asked: ReportRequest): Promise<Worked | null> {
  const { request, view } = asked;
  if (request !== newest) return null;
  const { chosen, rows } = await rowsOf(ready, view);
  if (request !== newest) return null;
  const { published, logged } = ready;
  const analysed = analyseParts({ logged, published, view, rows });
  const found = await Promise.all(asked.parts.map(async (part) => [part, await analysed[part]()] as const));
  return request === newest ? { chosen, parts: Object.fromEntries(found) } : null;
}

async function report(asked: ReportRequest): Promise<void> {
  const { request } = asked;
  if (opened === null) throw new RangeError("a report was asked for before the engine was opened");
  const worked = await workOut(await opened, asked);
  if (worked === null) return;
  const { chosen, parts } = worked;
  const search = findLater(parts);
  let step = search.next();
  const packed = packReport(step.done ? withLater(parts, step.value) : parts);
  const buffers = packed.columns.map(({ buffer }) => buffer);
  say({ kind: "report", request, chosen, parts: packed }, buffers);
  await pageShown();
  if (!step.done) {
    while (!step.done) {
      await breathe();
      if (request !== newest) return;
      step = search.next();
    }
    say({ kind: "later", request, later: step.value });
  }
  await rehearse(await opened, asked);
}

/** Choices that are worked out for nobody: a browser compiles well only what has run before, and on data that differ. */
const REHEARSALS = 6;
let rehearsed = 0;

/** What is likely to be chosen next: another variety, and of all of them a batch to leave out or another rule. */
function likelyChoice({ whole }: Opened, view: View, turn: number): View {
  const varieties = [null, ...whole.choices.varieties].filter((variety) => variety !== view.variety);
  if (turn % 2 === 0) return { ...view, variety: varieties[(turn / 2) % varieties.length] ?? null };
  const without = whole.runs.slice(turn, turn + 1).map(({ run }) => run);
  return { ...view, variety: null, without, rules: turn % 4 === 1 ? allRules : null };
}

/** While nobody waits, so that the next choice meets code that is warm. */
async function rehearse(ready: Opened, asked: ReportRequest): Promise<void> {
  while (rehearsed < REHEARSALS) {
    await breathe();
    const worked = await workOut(ready, { ...asked, view: likelyChoice(ready, asked.view, rehearsed) });
    if (worked === null) return;
    packReport(worked.parts);
    rehearsed += 1;
  }
}

const answerAsk = answerAsks(async () => {
  if (opened === null) throw new RangeError("a question was asked before the engine was opened");
  const { database, published } = await opened;
  return { database, timeZone: published.house.timeZone };
}, say);

async function answer(request: WorkerRequest): Promise<void> {
  if (request.kind === "ask" || request.kind === "stop") {
    answerAsk(request);
  } else if (request.kind === "report") {
    await report(request);
  } else if (request.kind === "seen") {
    if (request.request === newest) seen();
  } else if (request.kind === "published") {
    if (opened === null) throw new RangeError("nothing was opened");
    say({ kind: "published", published: (await opened).published });
  } else if (request.kind === "readings") {
    const csv = (await opened)?.readings.get(request.file) ?? null;
    say({ kind: "readings", file: request.file, csv });
  } else {
    opened = open(request);
    const { whole } = await opened;
    say({ kind: "ready", rows: request.kind === "open-own" ? whole : null });
  }
}

self.onmessage = ({ data }: MessageEvent<WorkerRequest>) => {
  if (data.kind === "report") {
    newest = data.request;
    seen();
  }
  answer(data).catch((error: unknown) => {
    const message = error instanceof Error ? error.message : String(error);
    say({ kind: "failed", request: data.kind === "report" ? data.request : null, message });
  });
};
