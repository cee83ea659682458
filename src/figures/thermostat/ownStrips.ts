import type { RenderFunction } from "@observablehq/plot";
import { layer } from "../layer.ts";
import { type Tick, valueTicks } from "../ticks.ts";

/** One of several strips under each other on one time axis, each with a scale of its own. */
export interface OwnStrip {
  readonly name: string;
  readonly ticks: readonly Tick[];
  /** Where its name stands, px from the top of the frame. */
  readonly nameAt: number;
  /** Where a value stands, px from the top of the frame: the figure's y scale is {@link stripScale}. */
  readonly heightOf: (value: number) => number;
}

export interface StripToPlace {
  readonly name: string;
  /** Everything that must be seen, at least one value. */
  readonly values: readonly number[];
  /** Span that is drawn at least, so that noise alone does not fill the strip. */
  readonly least: number;
  /** The values given are the ends of the scale. */
  readonly whole?: boolean;
}

interface StripDesign {
  /** Of each strip without its name, px. */
  readonly height: number;
  readonly size: number;
  /** Of values on each scale, about. */
  readonly count: number;
  readonly print?: (value: number, decimals: number) => string;
}

/** Room for a strip's name over it, px. */
const nameRoom = (size: number): number => Math.round(size * 2);
const GAP = 10;
/** A strip is this much taller than its values need, so that no mark lies on its edge. */
const PADDED = 1.12;

/** @throws {RangeError} when a strip has no value */
export function ownStrips(
  strips: readonly StripToPlace[],
  { height, size, count, print }: StripDesign,
): { readonly strips: readonly OwnStrip[]; readonly inner: number } {
  const pitch = nameRoom(size) + height + GAP;
  const placed = strips.map(({ name, values, least, whole = false }, row): OwnStrip => {
    if (values.length === 0) throw new RangeError(`the strip ${name} requires a value; got none`);
    const [low, high] = [Math.min(...values), Math.max(...values)];
    const span = Math.max((high - low) * (whole ? 1 : PADDED), least);
    const middle = (low + high) / 2;
    const from = middle - span / 2;
    const top = row * pitch + nameRoom(size);
    return {
      name,
      nameAt: top - Math.round(size * 0.85),
      ticks: valueTicks(from, from + span, count, print),
      heightOf: (value) => top + height - ((value - from) / span) * height,
    };
  });
  return { strips: placed, inner: strips.length * pitch };
}

/** The domain of a y scale that takes px from the top of the frame. */
export const stripScale = (inner: number): readonly [number, number] => [inner, 0];

/** Hairlines and values of each strip, its name at the left above them. */
export function ownStripAxes(strips: readonly OwnStrip[], size: number): RenderFunction {
  return layer("axis", ({ inside, pen }) => [
    pen.element("path", {
      class: "grid",
      d: strips
        .flatMap(({ ticks, heightOf }) =>
          ticks.map((t) => `M${inside.left},${inside.top + heightOf(t.at)}H${inside.right}`),
        )
        .join(""),
    }),
    ...strips.flatMap(({ ticks, heightOf, name, nameAt }) => [
      ...ticks.map((t) =>
        pen.element(
          "text",
          { x: inside.left - 8, y: inside.top + heightOf(t.at) + size * 0.34, "text-anchor": "end" },
          [t.label],
        ),
      ),
      pen.element("text", { class: "name strong", x: 0, y: inside.top + nameAt, "text-anchor": "start" }, [name]),
    ]),
  ]);
}
