import type { RenderFunction } from "@observablehq/plot";
import { type Box, boxAround } from "./box.ts";
import { layer, type Sheet } from "./layer.ts";
import { type LabelToPlace, type Obstacle, placeLabels } from "./placeLabels.ts";
import { type TextWeight, textWidth } from "./textWidth.ts";

/** One line of a label. Its class carries its colour and weight on the page. */
export interface LabelLine {
  readonly text: string;
  readonly strong?: boolean;
}

export interface Label {
  readonly x: number;
  readonly y: number;
  /** Other marks that it speaks for as well, and may stand at. */
  readonly or?: readonly { readonly x: number; readonly y: number }[];
  readonly lines: readonly LabelLine[];
  /** A role of figures.css: `kiln`, `signal`, `soft` … */
  readonly role: string;
  readonly reach?: number;
  readonly priority?: number;
  readonly prefer?: number;
  readonly farthest?: number;
}

/** A mark that labels keep off, in the figure's own units. */
export interface MarkAt {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly hard?: boolean;
}

export interface LabelLayerOptions {
  readonly labels: readonly Label[];
  readonly marks?: readonly MarkAt[];
  /** Upright lines that words rather keep off, by their x; where they cannot, their rim of paper parts the line. */
  readonly uprights?: readonly number[];
  /** Washes that words rather stand outside of: low and high at each x. */
  readonly washes?: readonly (readonly { readonly x: number; readonly low: number; readonly high: number }[])[];
  /** Lines to keep off, as points along each; they are walked at short steps. */
  readonly lines?: readonly (readonly { readonly x: number; readonly y: number }[])[];
  readonly size: number;
  /** Where labels may stand; the inside of the frame unless said otherwise. */
  readonly bounds?: (inside: Box, sheet: Sheet) => Box;
}

export const lineHeight = (size: number): number => Math.round(size * 1.25);
export const weightOf = (line: LabelLine): TextWeight => (line.strong ? 600 : 400);

/** Small squares along a line, close enough that no label slips between them. */
function alongLine(points: readonly { readonly x: number; readonly y: number }[]): Box[] {
  const boxes: Box[] = [];
  for (let i = 1; i < points.length; i++) {
    const from = points[i - 1];
    const to = points[i];
    if (!from || !to) continue;
    const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 6));
    for (let step = 0; step <= steps; step++) {
      const share = step / steps;
      boxes.push(boxAround({ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }, 1.5));
    }
  }
  return boxes;
}

/** Text at the labels' best places, with leader lines where they stand off. The one way figures put words on a drawing. */
export function labelLayer({
  labels,
  marks = [],
  uprights = [],
  washes = [],
  lines = [],
  size,
  bounds,
}: LabelLayerOptions): RenderFunction {
  return layer("labels", (sheet) => {
    const toPlace = labels.map((label): LabelToPlace => {
      const { lines: _lines, role: _role, or = [], x, y, ...rest } = label;
      return {
        ...rest,
        anchor: { x: sheet.x(x), y: sheet.y(y) },
        orAnchors: or.map((mark) => ({ x: sheet.x(mark.x), y: sheet.y(mark.y) })),
        width: Math.max(...label.lines.map((line) => textWidth(line.text, size, weightOf(line)))) + 2,
        height: label.lines.length * lineHeight(size),
      };
    });
    const obstacles: Obstacle[] = [
      ...marks.map((m) => ({
        box: boxAround({ x: sheet.x(m.x), y: sheet.y(m.y) }, m.radius),
        hard: m.hard ?? false,
      })),
      ...lines
        .flatMap((line) => alongLine(line.map((p) => ({ x: sheet.x(p.x), y: sheet.y(p.y) }))))
        .map((box) => ({ box, hard: true })),
      ...uprights.map(sheet.x).map((x) => ({
        box: { left: x - 2, right: x + 2, top: 0, bottom: sheet.height },
        hard: false,
      })),
      ...washes.flat().map((at) => ({
        box: { left: sheet.x(at.x) - 2, right: sheet.x(at.x) + 2, top: sheet.y(at.high), bottom: sheet.y(at.low) },
        hard: false,
      })),
    ];
    return placeLabels(toPlace, obstacles, bounds ? bounds(sheet.inside, sheet) : sheet.inside).flatMap((place, i) => {
      const label = labels[i];
      if (!place || !label) return [];
      const { box, leader, anchor } = place;
      const drawn: SVGElement[] = [];
      if (leader) {
        const { from, to } = leader;
        drawn.push(sheet.pen.element("path", { class: "leader", d: `M${from.x},${from.y}L${to.x},${to.y}` }));
      }
      // Set flush to the side that faces the anchor.
      const side = box.left >= anchor.x ? "start" : box.right <= anchor.x ? "end" : "middle";
      const at = side === "start" ? box.left + 1 : side === "end" ? box.right - 1 : (box.left + box.right) / 2;
      label.lines.forEach((line, row) => {
        const baseline = box.top + row * lineHeight(size) + size * 0.97;
        drawn.push(
          sheet.pen.element(
            "text",
            { class: `label ${label.role}${line.strong ? " strong" : ""}`, x: at, y: baseline, "text-anchor": side },
            [line.text],
          ),
        );
      });
      return drawn;
    });
  });
}
