import type { Context, Dimensions, RenderFunction, ScaleFunctions } from "@observablehq/plot";
import type { Box } from "./box.ts";

/** What a layer drawn by ourselves knows: Plot's scales as plain functions, the inside of the frame, and a pen. */
export interface Sheet {
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
  readonly inside: Box;
  readonly width: number;
  readonly height: number;
  readonly pen: Pen;
}

export type Attributes = Readonly<Record<string, string | number>>;

/** Makes SVG elements in whatever document the figure is drawn with. */
export interface Pen {
  readonly element: (name: string, attributes?: Attributes, children?: readonly (SVGElement | string)[]) => SVGElement;
}

function penFor(document: Document): Pen {
  return {
    element: (name, attributes = {}, children = []) => {
      const made = document.createElementNS("http://www.w3.org/2000/svg", name) as SVGElement;
      for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, String(value));
      made.append(...children);
      return made;
    },
  };
}

function positions(scales: ScaleFunctions, name: "x" | "y"): (value: number) => number {
  const scale = scales[name];
  return (value) => {
    if (!scale) throw new RangeError(`this layer needs a ${name} scale; the figure has none`);
    return Number(scale(value));
  };
}

function sheetFor(scales: ScaleFunctions, d: Dimensions, context: Context): Sheet {
  return {
    x: positions(scales, "x"),
    y: positions(scales, "y"),
    inside: { left: d.marginLeft, top: d.marginTop, right: d.width - d.marginRight, bottom: d.height - d.marginBottom },
    width: d.width,
    height: d.height,
    pen: penFor(context.document),
  };
}

/** A Plot mark drawn by our own hand, on Plot's scales. `className` goes on its group. */
export function layer(className: string, draw: (sheet: Sheet) => readonly SVGElement[]): RenderFunction {
  return (_index, scales, _values, dimensions, context) => {
    const sheet = sheetFor(scales, dimensions, context);
    const drawn = draw(sheet);
    return drawn.length === 0 ? null : sheet.pen.element("g", { class: className }, drawn);
  };
}
