import { DataTableView } from "../../bodies/DataTableView.tsx";
import type { FigureSpec } from "../../figures/figureSpec.ts";
import { renderFigure } from "../../figures/renderFigure.ts";

interface SharedFigureProps {
  readonly spec: FigureSpec;
  /** Handed on to the drawing. */
  readonly document: Document;
}

/** A figure on a page that is built once and never redrawn: a wide and a narrow drawing, what to see, and its numbers. */
export function SharedFigure({ spec, document }: SharedFigureProps) {
  const { id, title, summary, table, wideWidth, narrowWidth, printAs } = spec;
  const drawing = (form: "wide" | "narrow") => ({
    __html: renderFigure(spec, {
      document,
      width: form === "wide" ? wideWidth : narrowWidth,
      idPrefix: `${id}-${form}`,
    }),
  });
  const measure = wideWidth > 640 ? "drawings-full" : "drawings-half";
  return (
    <figure class="figure" aria-labelledby={`${id}-title`}>
      <h3 id={`${id}-title`}>{title}</h3>
      <div class={`drawings ${measure} print-${printAs}`}>
        <div class="drawing drawing-wide" dangerouslySetInnerHTML={drawing("wide")} />
        <div class="drawing drawing-narrow" dangerouslySetInnerHTML={drawing("narrow")} />
      </div>
      <figcaption>{summary}</figcaption>
      {table.rows.length === 0 ? null : (
        <details class="fold short">
          <summary>The numbers</summary>
          <DataTableView table={table} caption={title} />
        </details>
      )}
    </figure>
  );
}
