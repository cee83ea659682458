import type { PlotOptions } from "@observablehq/plot";

/** A table of a figure's own numbers, printed as text: what stands under every drawing. */
export interface DataTable {
  readonly columns: readonly { readonly label: string; readonly unit?: string; readonly numeric: boolean }[];
  readonly rows: readonly (readonly DataCell[])[];
  /** All rows where `rows` lists only some of them: what a saved file holds. */
  readonly every?: readonly (readonly DataCell[])[];
  /** Said under the table where not all rows are shown. */
  readonly note?: string;
}

export type DataCell = string | { readonly text: string; readonly href: string };

/** What a drawing may know of the paper it is drawn on. */
export interface Frame {
  readonly width: number;
  /** The narrow drawing, for a phone or half a page. */
  readonly narrow: boolean;
}

/**
 * A figure before it is drawn: pure data and one function from a frame to Plot's options. No document, no colours (marks
 * name roles by class), no statistics (every number is already computed).
 */
export interface FigureSpec {
  /** Unique on its page; becomes the prefix of every id inside the drawing. */
  readonly id: string;
  /** What question it answers, in a few words. */
  readonly title: string;
  /** What to see, as a computed sentence: the drawing's accessible description and its caption. */
  readonly summary: string;
  readonly table: DataTable;
  /**
   * Widths it is drawn at, CSS px. Both drawings are in the page; a container query shows one. Where both are the same it
   * is drawn once.
   */
  readonly wideWidth: number;
  readonly narrowWidth: number;
  readonly printAs: "wide" | "narrow";
  readonly options: (frame: Frame) => PlotOptions;
}
