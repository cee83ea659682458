import type { Place } from "../bodies/context.ts";

/** Which parts of a page stand, and which of them nobody sees at the moment. */
export interface StandingPlaces {
  readonly all: ReadonlySet<Place>;
  readonly unseen: ReadonlySet<Place>;
  /**
   * The unseen in bits, each a set of places to draw at one go while all others stay as they are, in the order in which a
   * reader comes upon them. A bit names the places about it too, since a place is reached only through those.
   */
  readonly bits: readonly ReadonlySet<Place>[];
}

/** Beyond the edge of the window by more than this, px, a part is not seen before it has been drawn. */
const MARGIN = 100;

function isFar(element: Element): boolean {
  // Who works by keyboard may have moved on before the window has followed.
  if (element.contains(document.activeElement)) return false;
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

/** Groups of a long table's rows that nobody sees: beyond the window, or in a fold that is closed. */
function unseenRows(section: Element, entryIsFar: boolean): readonly Place[] {
  const groups = [...section.querySelectorAll<HTMLElement>("tbody[data-rows]")];
  return groups
    .filter((group) => entryIsFar || !group.checkVisibility() || isFar(group))
    .map(({ dataset }): Place => `rows ${dataset.rows}`);
}

/** Reads a page that stands, before it is drawn anew. A browser that cannot tell what shows has nothing wait. */
export function standingPlaces(main: HTMLElement): StandingPlaces {
  const all = new Set<Place>();
  const unseen = new Set<Place>();
  const soon: ReadonlySet<Place>[] = [];
  const last: ReadonlySet<Place>[] = [];
  if (!("checkVisibility" in main)) return { all, unseen, bits: [] };
  for (const section of main.querySelectorAll("section.entry[id]")) {
    const entry: Place = `entry ${section.id}`;
    const entryIsFar = isFar(section);
    const withEntry = new Set<Place>([entry]);
    for (const drawn of section.querySelectorAll("figure.figure")) {
      const id = (drawn.getAttribute("aria-labelledby") ?? "").replace(/-title$/, "");
      const figure: Place = `figure ${id}`;
      const { shown, hidden } = partsOf(drawn, id);
      for (const place of [entry, figure, ...shown, ...hidden]) all.add(place);
      for (const part of hidden) unseen.add(part);
      if (hidden.length > 0) last.push(new Set([entry, figure, ...hidden]));
      if (shown.length === 0 || (!entryIsFar && !isFar(drawn))) continue;
      unseen.add(figure);
      if (entryIsFar) for (const place of [figure, ...shown]) withEntry.add(place);
      else soon.push(new Set([entry, figure, ...shown]));
    }
    const rows = unseenRows(section, entryIsFar);
    for (const place of rows) {
      all.add(place);
      unseen.add(place);
    }
    if (rows.length > 0) last.push(new Set([entry, ...rows]));
    all.add(entry);
    if (!entryIsFar) continue;
    unseen.add(entry);
    soon.push(withEntry);
  }
  return { all, unseen, bits: [...soon, ...last] };
}
