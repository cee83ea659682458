import type { Label } from "../labelLayer.ts";
import { MOST_LINKED_MARKS } from "../scatter.ts";
import type { ChartFrame } from "./chartFrame.ts";

/** How far to the side of what it names a label may reach, px: as far as it may stand off, and its own length. */
const SIDEWAYS = 420;

/** Of a crowd of points those that a label could cover; the rest need not be walked for every place that is tried. */
export function nearLabels<T extends { readonly x: number; readonly y: number }>(
  points: readonly T[],
  labels: readonly Label[],
  { acrossAt }: ChartFrame,
): readonly T[] {
  if (points.length <= MOST_LINKED_MARKS) return points;
  const anchors = labels.flatMap((label) => [label, ...(label.or ?? [])]).map(({ x }) => acrossAt(x));
  const seen = new Set<string>();
  return points.filter(({ x, y }) => {
    const across = acrossAt(x);
    const key = `${Math.round(across)} ${y.toFixed(1)}`;
    if (seen.has(key) || anchors.every((at) => Math.abs(at - across) > SIDEWAYS)) return false;
    seen.add(key);
    return true;
  });
}
