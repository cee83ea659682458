import { hydrate, render } from "preact";
import { type BodyContext, BodyProvider } from "../bodies/context.ts";
import { navigationPage } from "../bodies/pageNames.ts";
import { formatView, type View, wholeView } from "../report/view.ts";
import type { Body, Showing } from "./pageBody.tsx";

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

let addressed: { readonly root: string; readonly query: string; readonly hrefTo: (path: string) => string } | null =
  null;

/** One function for as long as the choice it carries stays, so that what was drawn with it need not be drawn again. */
function addressing(root: string, query: string): (path: string) => string {
  if (addressed?.root !== root || addressed.query !== query) {
    addressed = { root, query, hrefTo: (path) => `${root}${path}${query}` };
  }
  return addressed.hrefTo;
}

function contextOf({ report, view, places }: Showing): BodyContext {
  const root = new URL(places.root).pathname;
  const hrefTo = addressing(root, formatView(carried(view)));
  return { house: report.house, view, document, hrefTo, built: false };
}

/** What stands outside the body and is not drawn anew: says in title and navigation where the reader is; the choice goes along. */
export function markWhereabouts(body: Body | null, { report, path, view, places: { root } }: Showing): void {
  if (body === null) return;
  document.title = path === "" ? report.house.name : `${body.name.title} · ${report.house.name}`;
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
    render(<p>No page stands here for this choice of batches.</p>, main);
    return;
  }
  render(<BodyProvider value={{ ...contextOf(showing), waits }}>{body.content}</BodyProvider>, main);
}
