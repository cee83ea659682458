import type { Point } from "../box.ts";

/**
 * A path of slanting strokes over a convex area, px: how a drawing marks what has not happened yet. Empty where the area
 * is none.
 *
 * @param corners of the area, in order around it
 */
export function hatch(corners: readonly Point[], spacing = 8): string {
  const sums = corners.map(({ x, y }) => x + y);
  const strokes: string[] = [];
  const first = Math.ceil(Math.min(...sums) / spacing) * spacing;
  for (let sum = first; sum < Math.max(...sums); sum += spacing) {
    const ends = corners.flatMap((from, i) => {
      const to = corners[(i + 1) % corners.length];
      if (!to) return [];
      const [a, b] = [from.x + from.y - sum, to.x + to.y - sum];
      // Either end on the stroke counts once, with the side that begins at it.
      if (a === b || a > 0 === b > 0) return [];
      const share = a / (a - b);
      return [{ x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) }];
    });
    const [start, end] = ends;
    if (start && end && Math.abs(start.x - end.x) > 0.5) strokes.push(`M${start.x},${start.y}L${end.x},${end.y}`);
  }
  return strokes.join("");
}
