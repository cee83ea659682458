import type { BodyContext } from "../bodies/context.ts";
import type { Report } from "../report/report.ts";
import { wholeView } from "../report/view.ts";
import { drawingDocument, hrefTo } from "./siteBase.ts";

/** What a page's body may ask for while the site is built: the whole of the logs, in the house's own units. */
export function buildContext(report: Report): BodyContext {
  return { house: report.house, view: wholeView, document: drawingDocument, hrefTo, built: true };
}
