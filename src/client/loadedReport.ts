import type { PartName, ReportParts, ReportRows, ReportWith } from "../report/report.ts";

/** A report as far as it has come: the rows of a view, and the parts that were asked for. */
export type LoadedReport = ReportRows & Partial<ReportParts>;

/** Has everything come that a page needs? */
export function holds<Part extends PartName>(
  report: LoadedReport,
  parts: readonly Part[],
): report is LoadedReport & ReportWith<Part> {
  return parts.every((part) => report[part] !== undefined);
}
