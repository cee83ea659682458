import type { FigureSpec } from "../figures/figureSpec.ts";
import { useBody } from "./context.ts";
import { DataTableView, isShort } from "./DataTableView.tsx";
import { Drawing } from "./Drawing.tsx";
import { Later } from "./Later.tsx";
import { Said } from "./Said.tsx";

/** A drawing wider than this is made for the whole measure of the page; the others stand two abreast. */
const HALF_MEASURE = 640;

interface FigureProps {
  readonly spec: FigureSpec;
  /** Address of the table on the page that already holds the figure's numbers; without it the figure brings its own. */
  readonly numbersIn?: string;
}

function Drawings({ spec }: { readonly spec: FigureSpec }) {
  const { id, wideWidth, narrowWidth, printAs } = spec;
  const once = wideWidth === narrowWidth;
  const measure = wideWidth > HALF_MEASURE ? "drawings-full" : "drawings-half";
  return (
    <div class={once ? "drawings print-narrow" : `drawings ${measure} print-${printAs}`}>
      {once ? null : (
        <Later place={`drawing ${id}-wide`}>
          <Drawing spec={spec} form="wide" />
        </Later>
      )}
      <Later place={`drawing ${id}-narrow`}>
        <Drawing spec={spec} form="narrow" />
      </Later>
    </div>
  );
}

function Numbers({ spec: { id, table, title }, numbersIn }: FigureProps) {
  if (numbersIn !== undefined) {
    return (
      <p class="table-note needs-screen">
        <a href={numbersIn}>The numbers</a>
      </p>
    );
  }
  if (table.rows.length === 0) return null;
  return (
    <details class={isShort(table) ? "fold short" : "fold"}>
      <summary>The numbers</summary>
      <Later place={`numbers ${id}`}>
        <DataTableView table={table} caption={title} />
      </Later>
    </details>
  );
}

/** Offered where a script can answer: on a built page the script itself puts it there (`client/takeAway/offerSaving.ts`). */
function SaveFigure() {
  return (
    <p class="take needs-scripting">
      <span>Save</span>
      {(["csv", "svg", "png"] as const).map((form) => (
        <button type="button" data-take={form}>
          {form.toUpperCase()}
        </button>
      ))}
    </p>
  );
}

/**
 * One figure: title, the drawing that fits its column (a wide and a narrow one are in the page), what to see in it, and
 * its numbers as a table.
 */
export function Figure(props: FigureProps) {
  const { id, title, summary } = props.spec;
  const { built, figures } = useBody();
  figures?.set(id, props.spec);
  return (
    <figure class="figure" aria-labelledby={`${id}-title`}>
      <Later place={`figure ${id}`}>
        <h3 id={`${id}-title`}>{title}</h3>
        <Drawings spec={props.spec} />
        <figcaption>
          <Said sentence={[summary]} />
        </figcaption>
        <Numbers {...props} />
        {built ? null : <SaveFigure />}
      </Later>
    </figure>
  );
}
