import type { Place } from "../bodies/context.ts";

/** What of a page nobody sees at the moment. */
export interface UnseenPlaces {
  /** Everything that may wait. */
  readonly all: ReadonlySet<Place>;
  /**
   * The same in bits, each a set of places to draw at one go while all others stay as they are, in the order in which a reader
   * comes upon them. A bit names the places about it too, since a place is reached only through those.
   */
  readonly bits: readonly ReadonlySet<Place>[];
}

/** Beyond the edge of the window by more than this, px, a part is not seen before it has been drawn. */
const MARGIN = 100;

function isFar(element: Element): boolean {
  const { top, bottom } = element.getBoundingClientRect();
  return bottom < -MARGIN || top > innerHeight + MARGIN;
}

/** The parts of a figure that are drawn by themselves, by whether they show. */
function partsOf(figure: Element, id: string): { readonly shown: readonly Place[]; readonly hidden: readonly Place[] } {
  const shown: Place[] = [];
  const hidden: Place[] = [];
  for (const form of ["wide", "narrow"] as const) {
    const drawing = figure.querySelector(`.drawing-${form}`);
    if (drawing !== null) (drawing.checkVisibility() ? shown : hidden).push(`drawing ${id}-${form}`);
  }
  const numbers = figure.querySelector(":scope > details");
  if (numbers !== null) (numbers.hasAttribute("open") ? shown : hidden).push(`numbers ${id}`);
  return { shown, hidden };
}

/** Reads a page that stands, before it is drawn anew. */
export function unseenPlaces(main: HTMLElement): UnseenPlaces {
  const all = new Set<Place>();
  const soon: ReadonlySet<Place>[] = [];
  const last: ReadonlySet<Place>[] = [];
  for (const section of main.querySelectorAll("section.entry[id]")) {
    const entry: Place = `entry ${section.id}`;
    const entryIsFar = isFar(section);
    const withEntry = new Set<Place>([entry]);
    for (const drawn of section.querySelectorAll("figure.figure")) {
      const id = (drawn.getAttribute("aria-labelledby") ?? "").replace(/-title$/, "");
      const figure: Place = `figure ${id}`;
      const { shown, hidden } = partsOf(drawn, id);
      for (const part of hidden) all.add(part);
      if (hidden.length > 0) last.push(new Set([entry, figure, ...hidden]));
      if (shown.length === 0 || (!entryIsFar && !isFar(drawn))) continue;
      all.add(figure);
      if (entryIsFar) for (const place of [figure, ...shown]) withEntry.add(place);
      else soon.push(new Set([entry, figure, ...shown]));
    }
    if (!entryIsFar) continue;
    all.add(entry);
    soon.push(withEntry);
  }
  return { all, bits: [...soon, ...last] };
}
