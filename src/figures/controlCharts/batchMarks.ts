import type { Markish } from "@observablehq/plot";
import type { Frame } from "../figureSpec.ts";
import { layer } from "../layer.ts";
import { dotRadius, MOST_LINKED_MARKS, type ScatterPoint, scatter } from "../scatter.ts";

/** A batch on a chart; hollow where it was left out of the baseline by an event or by hand. */
export interface BatchPoint extends ScatterPoint {
  readonly hollow: boolean;
}

/** Dots that are links each. By our own hand, since hundreds of them are drawn anew at every choice and Plot's take twice as long. */
function linkedDots(className: string, points: readonly BatchPoint[], frame: Frame): Markish {
  const r = dotRadius(frame);
  return layer(className, ({ x, y, pen }) =>
    points.map((point) => {
      const [cx, cy] = [x(point.x).toFixed(1), y(point.y).toFixed(1)];
      const title = pen.element("title", {}, [point.hint()]);
      return pen.element("a", { href: point.href, tabindex: -1 }, [pen.element("circle", { cx, cy, r }, [title])]);
    }),
  );
}

/** Batches in ink, those left out as hollow dots. Where they are many none carries a link: the table has them. */
export function batchMarks(points: readonly BatchPoint[], frame: Frame): readonly Markish[] {
  const full = points.filter(({ hollow }) => !hollow);
  const hollow = points.filter((point) => point.hollow);
  if (points.length <= MOST_LINKED_MARKS) {
    return [linkedDots("dots mark-ink", full, frame), linkedDots("hollow", hollow, frame)];
  }
  // Together they are a crowd, so the full ones are drawn as one even where they alone would not be.
  return [
    scatter(full, frame, "mark-ink", { dense: true }),
    layer("hollow", ({ x, y, pen }) =>
      hollow.map((point) => pen.element("circle", { cx: x(point.x), cy: y(point.y), r: dotRadius(frame) })),
    ),
  ];
}
