import type { Markish } from "@observablehq/plot";
import { layer } from "../layer.ts";

/** What a house wants of a measure; null is *not set*. */
export interface Wanted {
  readonly low: number | null;
  readonly target: number | null;
  readonly high: number | null;
}

/**
 * The range that is wanted as a wash with its edges dashed, and the aim as a line, across the whole frame.
 *
 * @param heightOf where a value stands on the figure's y scale
 * @param ends where an open side of the range ends, low and high
 */
export function targetBand(
  { low, target, high }: Wanted,
  heightOf: (value: number) => number,
  ends: readonly [number, number],
): readonly Markish[] {
  const edges = [low, high].flatMap((value) => value ?? []);
  return [
    ...(edges.length === 0
      ? []
      : [
          layer("band", ({ y, inside, pen }) => {
            const [top, foot] = [y(heightOf(high ?? ends[1])), y(heightOf(low ?? ends[0]))];
            return [
              pen.element("rect", {
                x: inside.left,
                y: Math.min(top, foot),
                width: inside.right - inside.left,
                height: Math.abs(foot - top),
              }),
            ];
          }),
          layer("limit", ({ y, inside, pen }) => [
            pen.element("path", {
              d: edges.map((edge) => `M${inside.left},${y(heightOf(edge))}H${inside.right}`).join(""),
            }),
          ]),
        ]),
    ...(target === null
      ? []
      : [
          layer("rule", ({ y, inside, pen }) => [
            pen.element("path", { d: `M${inside.left},${y(heightOf(target))}H${inside.right}` }),
          ]),
        ]),
  ];
}
