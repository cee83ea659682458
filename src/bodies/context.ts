import { createContext } from "preact";
import { useContext, useMemo } from "preact/hooks";
import type { FigureSettings } from "../figures/figureSettings.ts";
import type { FigureSpec } from "../figures/figureSpec.ts";
import type { HouseBrief } from "../report/report.ts";
import type { View } from "../report/view.ts";
import { runPath } from "../units/runPath.ts";
import type { UnitSystem } from "../units/unitSystem.ts";

/** What every part of a page's body may ask for, at build and in the browser alike. */
export interface BodyContext {
  readonly house: HouseBrief;
  readonly view: View;
  /** Handed on to the drawing of figures; a body itself never touches it. */
  readonly document: Document;
  /** The address of a page of the site, given its path from the root: `hrefTo("runs/24-117/")`. */
  readonly hrefTo: (path: string) => string;
  /** True while the site is built: the numbers are those of the whole logs. */
  readonly built: boolean;
  /**
   * True for a place that nobody sees at the moment: what stands there may stay as it was drawn, since it will be drawn anew
   * a moment later. Absent: nothing waits.
   */
  readonly waits?: (place: Place) => boolean;
  /** Where a live page keeps what its figures were drawn from, by their ids, to save them as files. */
  readonly figures?: Map<string, FigureSpec>;
  /** True while a page is taken over as it was built: its drawings stand already, and are not drawn. */
  readonly standing?: boolean;
}

/** A part of a page that can be drawn by itself. */
export type Place =
  | `entry ${string}`
  | `figure ${string}`
  | `drawing ${string}`
  | `numbers ${string}`
  | `rows ${string}`;

const Context = createContext<BodyContext | null>(null);

export const BodyProvider = Context.Provider;

/** @throws {RangeError} outside a {@link BodyProvider} */
export function useBody(): BodyContext {
  const context = useContext(Context);
  if (context === null) throw new RangeError("useBody requires a BodyProvider around the body; got none");
  return context;
}

/** The units this reader sees: their own choice, else the house's. */
export function useUnits(): UnitSystem {
  const { house, view } = useBody();
  return view.units ?? house.units;
}

/** What figures need to know of reader and site. */
export function useFigureSettings(): FigureSettings {
  const { house, hrefTo } = useBody();
  const units = useUnits();
  const { timeZone } = house;
  // The same object while nothing changed, so that figures made with it can be kept.
  return useMemo(() => ({ units, timeZone, runHref: (run) => hrefTo(runPath(run)) }), [units, timeZone, hrefTo]);
}
