import { joinLogs } from "../../src/engine/joinLogs.ts";
import { openNodeDatabase } from "../../src/engine/node.ts";
import { reportFromFolder } from "../../src/report/atBuild.ts";
import { buildReport } from "../../src/report/buildReport.ts";
import type { PublishedLogs } from "../../src/report/publishedLogs.ts";
import type { Report } from "../../src/report/report.ts";
import type { KilnCurve } from "../../src/report/runPageResult.ts";
import { formatView, type View } from "../../src/report/view.ts";

export interface OpenedReports {
  /** Each view's report is made once; of its review, the month that the view shows. */
  of(view: View): Promise<Report>;
  /** The readings of each load, as their files have them. */
  readonly curves: ReadonlyMap<string, KilnCurve>;
  close(): Promise<void>;
}

/** The published tables of a folder of logs in Node's engine, ready to be asked for any view. */
export async function openReportsAtBuild(folder: string): Promise<OpenedReports> {
  const { report, files, publishedFile, curveOf } = await reportFromFolder(folder, null);
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
  const made = new Map<string, Promise<Report>>();
  const of = (view: View): Promise<Report> => {
    const key = formatView(view);
    const report = made.get(key) ?? buildReport(database, published, view, { everyMonth: false });
    made.set(key, report);
    return report;
  };
  return { of, curves, close: () => database.close() };
}
