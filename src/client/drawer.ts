import type { Body, Showing } from "./pageBody.tsx";
import { markWhereabouts, renderPage } from "./renderPage.tsx";
import { type StandingPlaces, standingPlaces } from "./standingPlaces.ts";

/** Draws pages: what the reader sees at once, and the rest in bits while the browser has nothing else to do. */
export interface Drawer {
  /** @param afresh nothing of what stands may stay: it is of other logs */
  draw(body: Body | null, showing: Showing, afresh?: boolean): void;
}

/** A browser without idle time to offer gets short turns instead. */
const TURN = 50;

function whenIdle(work: () => void): () => void {
  if (typeof requestIdleCallback === "function") {
    const id = requestIdleCallback(work, { timeout: 1000 });
    return () => cancelIdleCallback(id);
  }
  const id = setTimeout(work, TURN);
  return () => clearTimeout(id);
}

/** @param builtPath path of the page that stands in `main` */
export function openDrawer(main: HTMLElement, builtPath: string): Drawer {
  let path = builtPath;
  /** Ends whatever still has to be drawn, by drawing all of it or none. */
  let finish: (() => void) | null = null;
  let drop: (() => void) | null = null;

  const drawRest = (body: Body | null, showing: Showing, { all, bits }: StandingPlaces): void => {
    const left = [...bits];
    let cancel = (): void => {};
    const end = (): void => {
      cancel();
      finish = null;
      drop = null;
    };
    // One at a time: what no longer waits is drawn once this turn is over, by what was said last of what waits.
    const next = (): void => {
      const bit = left.shift();
      if (bit !== undefined) renderPage(main, body, showing, (place) => all.has(place) && !bit.has(place));
      if (left.length > 0) cancel = whenIdle(next);
      else end();
    };
    drop = end;
    finish = () => {
      end();
      renderPage(main, body, showing, () => false);
    };
    cancel = whenIdle(next);
  };

  // What shows all of a sudden is drawn at once.
  addEventListener("beforeprint", () => finish?.());
  main.addEventListener("toggle", () => finish?.(), { capture: true });

  return {
    draw(body, showing, afresh = false) {
      drop?.();
      // Another page has nothing yet that could stay.
      const stays = !afresh && path === showing.path && body !== null;
      path = showing.path;
      const places = stays ? standingPlaces(main) : null;
      markWhereabouts(body, showing);
      renderPage(main, body, showing, (place) => places?.unseen.has(place) === true);
      if (places !== null && places.bits.length > 0) drawRest(body, showing, places);
    },
  };
}
