import { basename } from "node:path";
import { logFolder } from "../engine/logFolder.ts";
import { openNodeDatabase } from "../engine/node.ts";
import { buildReport } from "./buildReport.ts";
import { contentDigest } from "./contentDigest.ts";
import { enterLogs } from "./enterLogs.ts";
import { type LoadCurve, parseLoadReadings } from "./loadCurve.ts";
import type { Report } from "./report.ts";
import { reportFiles } from "./reportFiles.ts";
import { runPage } from "./runPage.ts";
import type { KilnCurve, RunPageResult } from "./runPageResult.ts";
import { wholeView } from "./view.ts";

/** All that the pages are made from, and the files that go out beside them. */
export interface BuiltReport {
  readonly report: Report;
  /** The readings of a load as its own file has them; null without readings. */
  readonly curveOf: (load: string) => LoadCurve | null;
  /** By name inside the tables' folder. */
  readonly files: ReadonlyMap<string, Uint8Array>;
  /** Name of the file that the engine starts from, and the digest in the names of the report's own files. */
  readonly publishedFile: string;
  readonly reportDigest: string;
}

/** The invented house's folder; every page made from it says that it is invented. */
const INVENTED = "demo";

/**
 * Reads a folder of logs and makes the report of all of it. The tables that go out are the very bytes that the engine was
 * given here, so that a browser that loads them gets the same numbers.
 *
 * @param onlyMonth review this month alone (`2026-10`; null: the latest) rather than all of them
 * @throws {Error} when the folder cannot be read
 */
export async function reportFromFolder(folder: string, onlyMonth?: string | null): Promise<BuiltReport> {
  const database = await openNodeDatabase([]);
  try {
    const { published, tables, readings } = await enterLogs(logFolder(folder), database, {
      invented: basename(folder) === INVENTED,
    });
    const view = { ...wholeView, month: onlyMonth ?? null };
    const report = await buildReport(database, published, view, { everyMonth: onlyMonth === undefined });
    const list = new TextEncoder().encode(JSON.stringify(published));
    const publishedFile = `published.${contentDigest(list)}.json`;
    const pieces = reportFiles(report);
    const files = new Map([...readings, ...tables, [publishedFile, list] as const, ...pieces.files]);
    const fileOf = new Map(report.loads.map(({ load, readingsFile }) => [load, readingsFile]));
    const curveOf = (load: string): LoadCurve | null => {
      const csv = readings.get(fileOf.get(load) ?? "");
      return csv === undefined ? null : parseLoadReadings(new TextDecoder().decode(csv));
    };
    return { report, curveOf, files, publishedFile, reportDigest: pieces.digest };
  } finally {
    await database.close();
  }
}

let built: Promise<BuiltReport> | null = null;

/** The report of the folder that the build was started with, made once however many pages ask for it. */
export function getBuilt(): Promise<BuiltReport> {
  built ??= reportFromFolder(process.env.PIECEBOOK_LOGS ?? "data/demo");
  return built;
}

export const getReport = async (): Promise<Report> => (await getBuilt()).report;

/** @throws {RangeError} when the logs hold no such run */
export async function getRunPage(run: string): Promise<RunPageResult> {
  const { report, curveOf } = await getBuilt();
  const row = report.runs.find((candidate) => candidate.run === run);
  if (row === undefined) throw new RangeError(`the logs hold no run ${run}`);
  const curves = new Map<string, KilnCurve>();
  for (const { load, runs } of report.loads) {
    const curve = runs.includes(run) ? curveOf(load) : null;
    if (curve !== null) curves.set(load, curve);
  }
  return runPage(report, row, curves);
}
