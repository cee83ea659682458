import { joinLogs } from "../../src/engine/joinLogs.ts";
import { openNodeDatabase } from "../../src/engine/node.ts";
import { reportFromFolder } from "../../src/report/atBuild.ts";
import { buildReport } from "../../src/report/buildReport.ts";
import type { PublishedLogs } from "../../src/report/publishedLogs.ts";
import type { Report } from "../../src/report/report.ts";
import type { KilnCurve } from "../../src/report/runPageResult.ts";
import type { View } from "../../src/report/view.ts";

export interface OpenedReports {
  of(view: View): Promise<Report>;
  /** The readings of each load, as their files have them. */
  readonly curves: ReadonlyMap<string, KilnCurve>;
  close(): Promise<void>;
}

/** The published tables of a folder of logs in Node's engine, ready to be asked for any view. */
export async function openReportsAtBuild(folder: string): Promise<OpenedReports> {
  const { report, files, publishedFile, curveOf } = await reportFromFolder(folder);
  const curves = new Map<string, KilnCurve>();
  for (const { load } of report.loads) {
    const curve = curveOf(load);
    if (curve !== null) curves.set(load, curve);
  }
  const published = JSON.parse(new TextDecoder().decode(files.get(publishedFile))) as PublishedLogs;
  const database = await openNodeDatabase(
    published.tables.map(({ name, columns, file }) => ({ name, columns, csv: files.get(file) ?? new Uint8Array() })),
  );
  await joinLogs(database);
  return { of: (view) => buildReport(database, published, view), curves, close: () => database.close() };
}
