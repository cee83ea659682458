import type { Stretch } from "../report/kilnHoursResult.ts";
import type { FigureSettings } from "./figureSettings.ts";
import type { Frame } from "./figureSpec.ts";
import type { Label } from "./labelLayer.ts";
import { stretchLabel } from "./loadPoints.ts";
import { ringRadius } from "./scatter.ts";

interface StretchPoint {
  readonly x: number;
  readonly y: number;
  readonly load: string;
  /** Hours over expected: the load furthest off carries the words, unless there is no room. */
  readonly over: number;
}

/** What is said of each ringed stretch, at the ring that stands out furthest or another of them. */
export function stretchLabels(
  stretches: readonly Stretch[],
  points: readonly StretchPoint[],
  settings: FigureSettings,
  frame: Frame,
): Label[] {
  return stretches.flatMap((stretch): Label[] => {
    const names = new Set(stretch.loads);
    const slow = stretch.meanResidualHours > 0;
    const [furthest, ...or] = points
      .filter((p) => names.has(p.load))
      .sort((a, b) => (slow ? b.over - a.over : a.over - b.over));
    if (!furthest) return [];
    return [
      {
        x: furthest.x,
        y: furthest.y,
        or,
        reach: ringRadius(frame),
        prefer: slow ? 270 : 90,
        priority: 1,
        farthest: 160,
        role: "ink",
        lines: [{ text: stretchLabel(stretch, settings), strong: true }],
      },
    ];
  });
}
