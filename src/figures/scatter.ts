import { dot, type Markish } from "@observablehq/plot";
import type { Frame } from "./figureSpec.ts";
import { layer } from "./layer.ts";

/** One load or run as a point, with where it leads and what a pointer resting on it is told, put into words where it is asked. */
export interface ScatterPoint {
  readonly x: number;
  readonly y: number;
  readonly href: string;
  readonly hint: () => string;
}

/** Above this many marks none carries a link or a hint of its own: the table, which lists as many, has both. */
export const MOST_LINKED_MARKS = 200;

export const dotRadius = (frame: Frame): number => (frame.narrow ? 2.5 : 2.8);
/** Dots of a dense drawing are smaller: there the shape of the cloud speaks, not each load. */
const denseRadius = (frame: Frame): number => (frame.narrow ? 1.7 : 2);
export const ringRadius = (frame: Frame): number => (frame.narrow ? 5 : 5.8);

/**
 * All points of a figure in ink. Few are links each; many are one path, so that 2,000 stay small.
 *
 * @param dense draw as many even where these are few, because others of their figure are more
 */
export function scatter(
  points: readonly ScatterPoint[],
  frame: Frame,
  className = "mark-ink",
  { dense = points.length > MOST_LINKED_MARKS }: { readonly dense?: boolean } = {},
): Markish {
  if (!dense) {
    return dot(points, {
      x: "x",
      y: "y",
      r: dotRadius(frame),
      href: "href",
      title: (point: ScatterPoint) => point.hint(),
      className: `dots ${className}`,
      fill: "currentColor",
    });
  }
  return [
    // Plot never sees the points of the path below, so its scales must be given by the figure.
    layer(`dense ${className}`, ({ x, y, pen }) => [
      pen.element("path", {
        "stroke-width": denseRadius(frame) * 2,
        d: denseDots(points.map((p) => ({ x: x(p.x), y: y(p.y) }))),
      }),
    ]),
  ];
}

/**
 * Dots as round-capped strokes of no length on whole pixels, each place once, moved between by relative steps: finer
 * places would double the bytes and show nothing, since the dots are four pixels across.
 */
export function denseDots(places: readonly { readonly x: number; readonly y: number }[]): string {
  const seen = new Map<string, readonly [number, number]>();
  for (const { x, y } of places) {
    const place = [Math.round(x), Math.round(y)] as const;
    seen.set(place.join(" "), place);
  }
  // Strips of 12 pixels, walked up and down: short steps are short numbers.
  const strip = (x: number): number => Math.floor(x / 12);
  const sorted = [...seen.values()].sort(
    (a, b) => strip(a[0]) - strip(b[0]) || (strip(a[0]) % 2 === 0 ? a[1] - b[1] : b[1] - a[1]) || a[0] - b[0],
  );
  let path = "";
  let [atX, atY] = [0, 0];
  for (const [x, y] of sorted) {
    const dy = y - atY;
    path += `${path === "" ? "M" : "m"}${x - atX}${dy < 0 ? "" : " "}${dy}h0`;
    [atX, atY] = [x, y];
  }
  return path;
}

/** More points than this are not ringed one by one. */
export const MOST_RINGS = 20;

/** The one signal form: a ring around the point, in ink; its label says in words what is wrong. */
export function rings(points: readonly { readonly x: number; readonly y: number }[], frame: Frame): Markish {
  const r = ringRadius(frame);
  return layer("signal", ({ x, y, pen }) =>
    points.map((point) => pen.element("circle", { cx: x(point.x).toFixed(1), cy: y(point.y).toFixed(1), r })),
  );
}

/** The same signal for a crowd: one rounded outline around all of its points. */
export function enclosures(
  crowds: readonly (readonly { readonly x: number; readonly y: number }[])[],
  frame: Frame,
): Markish {
  const reach = ringRadius(frame);
  return layer("signal", ({ x, y, pen }) =>
    crowds.map((crowd) => {
      const [across, down] = [crowd.map((p) => x(p.x)), crowd.map((p) => y(p.y))];
      const [left, top] = [Math.min(...across) - reach, Math.min(...down) - reach];
      return pen.element("rect", {
        x: left,
        y: top,
        width: Math.max(...across) + reach - left,
        height: Math.max(...down) + reach - top,
        rx: reach,
      });
    }),
  );
}
