import type { UnitSystem } from "../units/unitSystem.ts";
import type { Frame } from "./figureSpec.ts";

/** What every figure needs to know of its reader and its site. */
export interface FigureSettings {
  readonly units: UnitSystem;
  /** The house's IANA zone: every date and clock time on a drawing is local. */
  readonly timeZone: string;
  /** The address of a run's page from the page the figure stands on. */
  readonly runHref: (run: string) => string;
}

/** Drawn at the whole measure of a page, or two abreast. */
export const fullWidth = 1040;
export const halfWidth = 500;
export const narrowWidth = 340;

/** Size of all text on a drawing, px: legible still where the page shows a drawing a little smaller than drawn. */
export const textSize = (frame: Frame): number => (frame.narrow ? 13 : 14);
