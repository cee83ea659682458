import { useRef } from "preact/hooks";
import type { FigureSpec } from "../figures/figureSpec.ts";
import { renderFigure } from "../figures/renderFigure.ts";
import { useBody } from "./context.ts";

interface DrawingProps {
  readonly spec: FigureSpec;
  readonly form: "wide" | "narrow";
}

/** One of a figure's drawings. Drawing is most of what a redraw costs, so it is made anew only for another figure. */
export function Drawing({ spec, form }: DrawingProps) {
  const { document, standing = false } = useBody();
  const drawn = useRef<{ readonly spec: FigureSpec; readonly markup: { readonly __html: string } } | null>(null);
  if (drawn.current?.spec !== spec) {
    const width = form === "wide" ? spec.wideWidth : spec.narrowWidth;
    // Whoever takes a built page over leaves this markup as it stands, whatever is said of it here.
    const html = standing ? "" : renderFigure(spec, { document, width, idPrefix: `${spec.id}-${form}` });
    drawn.current = { spec, markup: { __html: html } };
  }
  return <div class={`drawing drawing-${form}`} dangerouslySetInnerHTML={drawn.current.markup} />;
}
