import type { RenderFunction } from "@observablehq/plot";
import type { RunRow } from "../report/runRow.ts";
import { print, printNumber } from "../units/print.ts";
import { layer } from "./layer.ts";
import { textWidth } from "./textWidth.ts";

const HOUR = 3_600_000;
/** Height of the bars, px. */
export const BAR = 32;

/** The moments of a batch that its story tells. */
export interface StoryRun
  extends Pick<
    RunRow,
    | "steepStartedAt"
    | "steepEndedAt"
    | "germinationStartedAt"
    | "germinationEndedAt"
    | "loadedAt"
    | "cureStartedAt"
    | "unloadedAt"
  > {}

export interface Stage {
  readonly name: string;
  readonly role: "steep" | "germination" | "kiln";
  readonly from: number;
  readonly to: number;
  /** Its length in words. */
  readonly said: string;
}

const days = (hours: number): string => `${printNumber(hours / 24, 1)}\u00a0days`;

/** The stages that have both ends, in order. */
export function storyStages(run: StoryRun): readonly Stage[] {
  const stages = [
    { name: "steep", role: "steep", from: run.steepStartedAt, to: run.steepEndedAt },
    { name: "bed", role: "germination", from: run.germinationStartedAt, to: run.germinationEndedAt },
    { name: "kiln", role: "kiln", from: run.loadedAt, to: run.unloadedAt },
  ] as const;
  return stages.flatMap(({ name, role, from, to }) => {
    if (from === null || to === null || to <= from) return [];
    const hours = (to - from) / HOUR;
    return [{ name, role, from, to, said: role === "germination" ? days(hours) : print(hours, "hours", "metric") }];
  });
}

/** The bars of all stages in the strip above the frame, and the kiln's bar opened out to the width of the curve below. */
export function stageStrip(stages: readonly Stage[], size: number, top: number, opensOut: boolean): RenderFunction {
  return layer("stages", ({ inside, width, pen }) => {
    const first = Math.min(...stages.map(({ from }) => from));
    const last = Math.max(...stages.map(({ to }) => to));
    const x = (at: number): number => 1 + ((at - first) / (last - first)) * (width - 2);
    const bars = stages.map((stage) => ({
      ...stage,
      left: x(stage.from),
      right: Math.max(x(stage.to), x(stage.from) + 2),
    }));
    const words = bars.map((bar) => `${bar.name} ${bar.said}`);
    let free = 0;
    return [
      ...bars.flatMap((bar) =>
        bar.role === "kiln" && opensOut
          ? [
              pen.element("path", {
                class: "band kiln",
                d: `M${bar.left},${top + BAR}L${inside.left},${inside.top}H${inside.right}L${bar.right},${top + BAR}Z`,
              }),
            ]
          : [],
      ),
      ...bars.map(({ role, left, right }) =>
        pen.element("rect", { class: `mark-${role}`, x: left, y: top, width: right - left, height: BAR }),
      ),
      ...bars.map(({ role, left, right }, i) => {
        const text = words[i] ?? "";
        const wide = textWidth(text, size, 600);
        if (wide + 16 <= right - left) {
          return pen.element(
            "text",
            { class: "on-bar", x: left + 8, y: top + BAR / 2 + size * 0.35, "text-anchor": "start" },
            [text],
          );
        }
        // Above its bar, pushed along where the one before stands.
        const at = Math.max(free, Math.min(left, width - wide));
        free = at + wide + 10;
        return pen.element("text", { class: `label strong ${role}`, x: at, y: top - 6, "text-anchor": "start" }, [
          text,
        ]);
      }),
    ];
  });
}
