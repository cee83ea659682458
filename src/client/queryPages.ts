import { homePage, runsPage, varietiesPage } from "../bodies/pageNames.ts";
import type { View } from "../report/view.ts";

// A batch, a month and a variety have a page of their own in the built site. Logs of the reader's own have no built pages:
// there the query of a page that does exist names them, so that an address can be opened again.

const REVIEWS = "review/";

const folderIn = (path: string, above: string): string | null =>
  path.startsWith(above) && path.length > above.length ? path.slice(above.length, -1) : null;

/** The path of the page that an address shows: `runs/24-117/` for `runs/?run=24-117`. */
export function ownPath(path: string, { run, month, of }: Pick<View, "run" | "month" | "of">): string {
  if (path === runsPage.path && run !== null) return `${path}${encodeURIComponent(run)}/`;
  if (path === varietiesPage.path && of !== null) return `${path}${encodeURIComponent(of)}/`;
  if (path === homePage.path && month !== null) return `${REVIEWS}${month}/`;
  return path;
}

/** The inverse: an address that stands whatever pages were built. `runs/24-117/` becomes `runs/?run=24-117`. */
export function queryPath(path: string): string {
  const run = folderIn(path, runsPage.path);
  if (run !== null) return `${runsPage.path}?run=${run}`;
  const variety = folderIn(path, varietiesPage.path);
  if (variety !== null) return `${varietiesPage.path}?of=${variety}`;
  const month = folderIn(path, REVIEWS);
  return month === null ? path : `${homePage.path}?month=${month}`;
}
