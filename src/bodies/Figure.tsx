import { useMemo } from "preact/hooks";
import type { FigureSpec } from "../figures/figureSpec.ts";
import { renderFigure } from "../figures/renderFigure.ts";
import { useBody } from "./context.ts";
import { DataTableView, isShort } from "./DataTableView.tsx";

/** A drawing wider than this is made for the whole measure of the page; the others stand two abreast. */
const HALF_MEASURE = 640;

interface FigureProps {
  readonly spec: FigureSpec;
  /** Address of the table on the page that already holds the figure's numbers; without it the figure brings its own. */
  readonly numbersIn?: string;
}

/**
 * One figure: title, the drawing that fits its column (a wide and a narrow one are in the page), what to see in it, and
 * its numbers as a table.
 */
export function Figure({ spec, numbersIn }: FigureProps) {
  const { document } = useBody();
  // Drawing is most of what a redraw costs, so a figure is drawn again only when it is another.
  const drawings = useMemo(() => {
    const draw = (width: number, form: "wide" | "narrow") => ({
      __html: renderFigure(spec, { document, width, idPrefix: `${spec.id}-${form}` }),
    });
    return {
      wide: spec.wideWidth === spec.narrowWidth ? null : draw(spec.wideWidth, "wide"),
      narrow: draw(spec.narrowWidth, "narrow"),
    };
  }, [spec, document]);
  const measure = drawings.wide === null ? "" : spec.wideWidth > HALF_MEASURE ? "drawings-full" : "drawings-half";
  return (
    <figure class="figure" aria-labelledby={`${spec.id}-title`}>
      <h3 id={`${spec.id}-title`}>{spec.title}</h3>
      <div class={`drawings ${measure} print-${spec.printAs}`}>
        {drawings.wide === null ? null : <div class="drawing drawing-wide" dangerouslySetInnerHTML={drawings.wide} />}
        <div class="drawing drawing-narrow" dangerouslySetInnerHTML={drawings.narrow} />
      </div>
      <figcaption>{spec.summary}</figcaption>
      {numbersIn !== undefined ? (
        <p class="table-note needs-screen">
          <a href={numbersIn}>The numbers</a>
        </p>
      ) : spec.table.rows.length === 0 ? null : (
        <details class={isShort(spec.table) ? "fold short" : "fold"}>
          <summary>The numbers</summary>
          <DataTableView table={spec.table} caption={spec.title} />
        </details>
      )}
    </figure>
  );
}
