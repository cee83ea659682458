import type { Pen } from "../layer.ts";
import { denseDots } from "../scatter.ts";

/** Values of one strip that stand in one column, px. */
export interface Column {
  readonly x: number;
  readonly count: number;
}

/** Dots flatter than this, px, no longer read as batches: columns are drawn as bars. */
const FLATTEST = 2.2;

/**
 * Values gathered into columns `step` apart. No column straddles a line of `lines`: what lies beyond one stands beyond it
 * on the drawing too.
 *
 * @param values in the unit of `x`; `clear` px are kept between a column and a line
 */
export function columnsOf(
  values: readonly number[],
  step: number,
  lines: readonly number[],
  x: (value: number) => number,
  clear: number,
): readonly Column[] {
  const columns = new Map<string, { x: number; count: number }>();
  for (const value of values) {
    const place = Math.round(value / step);
    // A value on a line counts as below it for the line itself: limits of a specification include their own value.
    const sides = lines.map((line) => (value > line ? 1 : value < line ? -1 : 0));
    const key = `${place} ${sides.join(" ")}`;
    const known = columns.get(key);
    if (known) {
      known.count += 1;
      continue;
    }
    let at = x(place * step);
    lines.forEach((line, i) => {
      if (sides[i] === 1) at = Math.max(at, x(line) + clear);
      if (sides[i] === -1) at = Math.min(at, x(line) - clear);
    });
    columns.set(key, { x: at, count: 1 });
  }
  return [...columns.values()].sort((a, b) => a.x - b.x);
}

/** Columns as stacked dots, or as bars where they are too tall for dots, on a floor at `foot`. */
export function columnMarks(
  columns: readonly Column[],
  { foot, height, radius, pen }: { foot: number; height: number; radius: number; pen: Pen },
): SVGElement {
  const tallest = Math.max(...columns.map(({ count }) => count));
  const pitch = Math.min(radius * 2 + 0.5, height / tallest);
  if (pitch < FLATTEST) {
    const path = columns.map(({ x, count }) => `M${x},${foot}v${-count * pitch}`).join("");
    return pen.element("g", { class: "shares" }, [pen.element("path", { "stroke-width": radius * 1.8, d: path })]);
  }
  const places = columns.flatMap(({ x, count }) =>
    Array.from({ length: count }, (_, i) => ({ x, y: foot - radius - i * pitch })),
  );
  return pen.element("g", { class: "dense mark-ink" }, [
    pen.element("path", { "stroke-width": Math.min(radius * 2, pitch + 1), d: denseDots(places) }),
  ]);
}
