/// <reference lib="webworker" />
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
import { findLater, type LaterFindings, withLater } from "./laterFindings.ts";
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
type Wanted = Pick<ReportRequest, "request" | "view" | "parts">;

interface Chosen {
  readonly chosen: ChosenRows;
  readonly rows: ReportRows;
}

interface Worked {
  readonly chosen: ChosenRows;
  readonly parts: Partial<ReportParts>;
}

/** Few choices are made again and again, and the same rows let what stands on them alone be kept (`report/forTheSame.ts`). */
const MOST_CHOICES = 16;
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
async function workOut(ready: Opened, asked: Wanted): Promise<Worked | null> {
  const { request, view } = asked;
  if (request !== newest) return null;
  const { chosen, rows } = await rowsOf(ready, view);
  if (request !== newest) return null;
  const { published, logged } = ready;
  const analysed = analyseParts({ logged, published, view, rows });
  const found = await Promise.all(asked.parts.map(async (part) => [part, await analysed[part]()] as const));
  return request === newest ? { chosen, parts: Object.fromEntries(found) } : null;
}

type Step = IteratorResult<void, LaterFindings>;

/** Parts ready to be sent, with what was looked for behind them where that is known already. */
function packParts(parts: Worked["parts"], step: Step) {
  const packed = packReport(step.done ? withLater(parts, step.value) : parts);
  return { packed, buffers: packed.columns.map(({ buffer }) => buffer) };
}

async function report(asked: ReportRequest): Promise<void> {
  const { request } = asked;
  if (opened === null) throw new RangeError("a report was asked for before the engine was opened");
  const worked = await workOut(await opened, asked);
  if (worked === null) return;
  const { chosen, parts } = worked;
  const search = findLater(parts);
  let step = search.next();
  const { packed, buffers } = packParts(parts, step);
  say({ kind: "report", request, chosen, parts: packed }, buffers);
  if (step.done) return;
  await pageShown();
  while (!step.done) {
    await breathe();
    if (request !== newest) return;
    step = search.next();
  }
  say({ kind: "later", request, later: step.value });
}

/** While nobody waits, so that the next choice finds its answer made. */
async function foresee({ request, views, parts }: Extract<WorkerRequest, { kind: "foresee" }>): Promise<void> {
  if (opened === null) throw new RangeError("views were foreseen before the engine was opened");
  const ready = await opened;
  for (const view of views) {
    await breathe();
    const worked = await workOut(ready, { request, view, parts });
    // A question that came meanwhile waits for no more than a part of a guess.
    await breathe();
    if (worked === null || request !== newest) return;
    const { packed, buffers } = packParts(worked.parts, findLater(worked.parts).next());
    say({ kind: "foreseen", request, view, chosen: worked.chosen, parts: packed }, buffers);
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
  } else if (request.kind === "foresee") {
    await foresee(request);
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
  if (data.kind === "report" || data.kind === "foresee") {
    newest = data.request;
    seen();
  }
  answer(data).catch((error: unknown) => {
    const message = error instanceof Error ? error.message : String(error);
    const asked = data.kind === "report" || data.kind === "foresee" ? data.request : null;
    say({ kind: "failed", request: asked, message });
  });
};
