import { plot } from "@observablehq/plot";
import { textSize } from "./figureSettings.ts";
import type { FigureSpec } from "./figureSpec.ts";
import { tidyDrawing } from "./tidyDrawing.ts";

export interface RenderOptions {
  /** jsdom's in Node, the page's own in the browser; a web worker has none, so it cannot draw. */
  readonly document: Document;
  /** CSS px. Below {@link NARROW} the narrow design is drawn. */
  readonly width: number;
  /** Begins every id in the drawing; unique on the page. */
  readonly idPrefix: string;
}

/** Narrower than this a figure is drawn by its narrow design. */
const NARROW = 440;

/**
 * Draws a figure with Observable Plot and returns its SVG as markup for a page. Two calls with the same arguments give
 * the same bytes, in Node and in a browser. Colours, weights and line widths come from `styles/figures.css` by class.
 *
 * To assistive technology the drawing is one image with the figure's title and summary. Where marks carry links, the
 * image is the part without them and the rest is hidden: an image may not hold links, and the table has them all.
 *
 * @throws {RangeError} when the width is not positive, Plot did not draw one SVG, or a link leads out of the site.
 */
export function renderFigure(spec: FigureSpec, { document, width, idPrefix }: RenderOptions): string {
  if (!(width > 0)) throw new RangeError(`renderFigure requires a width above 0; got ${width}`);
  const frame = { width, narrow: width < NARROW };
  const drawn = plot({ axis: null, ...spec.options(frame), width, document, figure: false });
  if (drawn.localName !== "svg") throw new RangeError(`figure ${spec.id} must draw one svg; got <${drawn.localName}>`);
  tidyDrawing(drawn, idPrefix);

  for (const name of ["font-family", "fill", "text-anchor"]) drawn.removeAttribute(name);
  drawn.setAttribute("class", "plate");
  drawn.setAttribute("font-size", String(textSize(frame)));

  const svg = (name: string): Element => document.createElementNS("http://www.w3.org/2000/svg", name);
  const said = (["title", "desc"] as const).map((name) => {
    const element = svg(name);
    element.setAttribute("id", `${idPrefix}-${name}`);
    element.textContent = name === "title" ? spec.title : spec.summary;
    return element;
  });
  let image: Element = drawn;
  const layers = [...drawn.children];
  const firstWithLinks = layers.findIndex((child) => child.querySelector("a") !== null);
  if (firstWithLinks >= 0) {
    image = svg("g");
    const hidden = svg("g");
    hidden.setAttribute("aria-hidden", "true");
    image.append(...layers.slice(0, firstWithLinks));
    hidden.append(...layers.slice(firstWithLinks));
    drawn.append(image, hidden);
  }
  image.prepend(...said);
  image.setAttribute("role", "img");
  image.setAttribute("aria-labelledby", `${idPrefix}-title ${idPrefix}-desc`);
  return shortMarkup(drawn.outerHTML);
}

/** Inside an SVG an empty element may close itself, and a blank that does not break needs no name. */
function shortMarkup(markup: string): string {
  return markup.replace(/><\/(?:path|rect|circle|line)>/g, "/>").replaceAll("&nbsp;", "\u00a0");
}
