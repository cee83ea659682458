import type { PlotOptions } from "@observablehq/plot";

/** Where one of several small drawings stands, px from the drawing's upper left corner. */
export interface Panel {
  readonly left: number;
  readonly top: number;
  readonly width: number;
}

interface GridDesign {
  readonly width: number;
  readonly columns: number;
  /** Clear paper between columns, px. */
  readonly gap: number;
}

/** Small drawings row by row, each row as high as its highest; and how high they come to together. */
export function panelGrid(
  heights: readonly number[],
  { width, columns, gap }: GridDesign,
): { readonly panels: readonly Panel[]; readonly height: number } {
  const wide = (width - gap * (columns - 1)) / columns;
  const panels: Panel[] = [];
  let top = 0;
  for (let first = 0; first < heights.length; first += columns) {
    const row = heights.slice(first, first + columns);
    row.forEach((_, column) => {
      panels.push({ left: column * (wide + gap), top, width: wide });
    });
    top += Math.max(...row);
  }
  return { panels, height: top };
}

/** Plot options of a drawing whose marks place themselves: x and y are px from its upper left corner. */
export function onPaper(width: number, height: number, marks: PlotOptions["marks"]): PlotOptions {
  return {
    height,
    marginTop: 0,
    marginRight: 0,
    marginBottom: 0,
    marginLeft: 0,
    x: { domain: [0, width], range: [0, width] },
    y: { domain: [0, height], range: [0, height] },
    ...(marks === undefined ? {} : { marks }),
  };
}
