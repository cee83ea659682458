import { hydrate, render } from "preact";
import { type BodyContext, BodyProvider } from "../bodies/context.ts";
import { navigationPage } from "../bodies/pageNames.ts";
import type { FigureSpec } from "../figures/figureSpec.ts";
import { formatView, type View, wholeView } from "../report/view.ts";
import type { Body, Showing } from "./pageBody.tsx";
import { queryPath } from "./queryPages.ts";

/** The part of a view that goes along from page to page; what a page alone asked for stays behind. */
const carried = ({ from, to, variety, kiln, without, units, air, rules, apart }: View): View => ({
  ...wholeView,
  from,
  to,
  variety,
  kiln,
  without,
  units,
  air,
  rules,
  apart,
});

type Logs = Showing["logs"];

interface Addressed {
  readonly root: string;
  readonly query: string;
  readonly logs: Logs;
  readonly hrefTo: (path: string) => string;
}

let addressed: Addressed | null = null;

/** What the figures of the page that is shown were drawn from. */
export const shownFigures = new Map<string, FigureSpec>();

/** Only the site's own logs have a built page for each batch. */
function addressOf(root: string, path: string, query: string, logs: Logs): string {
  const stands = logs === "own" ? queryPath(path) : path;
  return `${root}${stands}${stands.includes("?") ? query.replace("?", "&") : query}`;
}

/** One function for as long as the choice it carries stays, so that what was drawn with it need not be drawn again. */
function addressing(root: string, query: string, logs: Logs): (path: string) => string {
  if (addressed?.root !== root || addressed.query !== query || addressed.logs !== logs) {
    addressed = { root, query, logs, hrefTo: (path) => addressOf(root, path, query, logs) };
  }
  return addressed.hrefTo;
}

function contextOf({ report, view, places, logs }: Showing): BodyContext {
  const root = new URL(places.root).pathname;
  const hrefTo = addressing(root, formatView(carried(view)), logs);
  return { house: report.house, view, document, hrefTo, built: false, figures: shownFigures };
}

/** What stands outside the body and is not drawn anew: says in title and navigation where the reader is; the choice goes along. */
export function markWhereabouts(body: Body | null, { report, path, view, places: { root } }: Showing): void {
  if (body === null) return;
  document.title = path === "" ? report.house.name : `${body.name.title} · ${report.house.name}`;
  const printedTitle = document.querySelector(".house > .print-only");
  if (printedTitle !== null) printedTitle.textContent = path === "" ? "" : body.name.title;
  // The page of a batch or a variety stands below one of the navigation.
  const here = new URL(navigationPage(path)?.path ?? path, root).pathname;
  const query = formatView(carried(view));
  for (const link of document.querySelectorAll<HTMLAnchorElement>("header a[href]")) {
    if (link.pathname === here) link.setAttribute("aria-current", "page");
    else link.removeAttribute("aria-current");
    link.search = query;
  }
}

/**
 * Takes over the page as it was built, so that later redraws change what differs and leave the rest: an opened fold, a
 * field in use. Preact cannot do that with markup that it would draw otherwise.
 */
export function adoptPage(main: HTMLElement, body: Body | null, showing: Showing): void {
  if (body === null) main.replaceChildren();
  else hydrate(<BodyProvider value={{ ...contextOf(showing), standing: true }}>{body.content}</BodyProvider>, main);
}

/**
 * Draws a page's body: the same components that the build rendered.
 *
 * @param waits the places that may stay as they are for now
 */
export function renderPage(
  main: HTMLElement,
  body: Body | null,
  showing: Showing,
  waits: NonNullable<BodyContext["waits"]>,
): void {
  if (body === null) {
    const words =
      showing.logs === "own"
        ? "No page stands here for logs of your own: it is made with the site, or these logs hold no such batch."
        : "No page stands here for this choice of batches.";
    render(<p>{words}</p>, main);
    return;
  }
  render(<BodyProvider value={{ ...contextOf(showing), waits }}>{body.content}</BodyProvider>, main);
}
