/// <reference lib="webworker" />
import { openBrowserDatabase } from "../engine/browser.ts";
import type { CsvTable, LoadableDatabase } from "../engine/database.ts";
import { joinLogs } from "../engine/joinLogs.ts";
import { buildReport } from "../report/buildReport.ts";
import type { PublishedLogs } from "../report/publishedLogs.ts";
import type { WorkerAnswer, WorkerRequest } from "./protocol.ts";

// The worker that joins the engine to the report, so that neither ever holds up the page.

const say = (answer: WorkerAnswer): void => self.postMessage(answer);

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
}

let opened: Promise<Opened> | null = null;

async function open({ tables, published: name, engine }: Extract<WorkerRequest, { kind: "open" }>): Promise<Opened> {
  const published = (await (await fetchPart(`${tables}${name}`)).json()) as PublishedLogs;
  const rows = await fetchTables(tables, published);
  const database = await openBrowserDatabase({
    folder: engine,
    onProgress: (received, total) => say({ kind: "progress", part: "engine", received, total }),
  });
  await database.load(rows);
  await joinLogs(database);
  return { database, published };
}

async function answer(request: WorkerRequest): Promise<void> {
  if (request.kind === "open") {
    opened = open(request);
    await opened;
    say({ kind: "ready" });
    return;
  }
  if (opened === null) throw new RangeError("a report was asked for before the engine was opened");
  const { database, published } = await opened;
  say({ kind: "report", request: request.request, report: await buildReport(database, published, request.view) });
}

self.onmessage = ({ data }: MessageEvent<WorkerRequest>) => {
  answer(data).catch((error: unknown) => {
    const message = error instanceof Error ? error.message : String(error);
    say({ kind: "failed", request: data.kind === "report" ? data.request : null, message });
  });
};
