import type { Frame } from "../figureSpec.ts";
import type { Label } from "../labelLayer.ts";
import { fitText } from "../textWidth.ts";
import type { ChartFrame } from "./chartFrame.ts";
import type { ChartWords } from "./chartWords.ts";
import type { EndLabel } from "./endLabels.ts";
import type { LimitStep } from "./limitSteps.ts";

const latestPhase = (steps: readonly LimitStep[]): number => Math.max(...steps.map(({ phase }) => phase));

/** `limit +2.4`, `centre`, `limit −2.4` at the ends of the latest lines. */
export function limitNames(steps: readonly LimitStep[], words: ChartWords, frame: Frame, size: number): EndLabel[] {
  const last = latestPhase(steps);
  const names = steps
    .filter(({ phase }) => phase === last)
    .flatMap(({ reach, varieties }) =>
      [reach, -reach].map((y): EndLabel => {
        const whose = varieties.length === 0 ? "limit" : varieties.join(", ");
        const reached = words.bareDifference(y);
        return {
          y,
          role: "soft",
          rows: frame.narrow ? [fitText(whose, 44, size), reached] : [`${fitText(whose, 80, size)} ${reached}`],
        };
      }),
    );
  return [...names, { y: 0, role: "ink", rows: ["centre"] }];
}

/** Whose limits an earlier phase's are, where its varieties have their own; words that give way to all others. */
export function earlierLimitNames(steps: readonly LimitStep[]): Label[] {
  const last = latestPhase(steps);
  return steps
    .filter(({ phase, varieties }) => phase < last && varieties.length > 0)
    .map(({ from, to, reach, varieties }) => ({
      x: (from + to) / 2,
      y: reach,
      or: [0.2, 0.8].map((share) => ({ x: from + (to - from) * share, y: reach })),
      priority: -1,
      farthest: 12,
      role: "soft",
      lines: [{ text: varieties.join(", ") }],
    }));
}

/** The limits as something that words rather keep off: a line through words costs about as much as a batch under them. */
export function limitWashes(steps: readonly LimitStep[], { acrossAt }: ChartFrame) {
  const every = 45;
  return steps.flatMap(({ from, to, reach }) => {
    const count = Math.max(1, Math.round((acrossAt(to) - acrossAt(from)) / every));
    const along = Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
    return [reach, -reach].map((y) => along.map((x) => ({ x, low: y, high: y })));
  });
}
