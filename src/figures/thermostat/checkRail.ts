import type { RenderFunction } from "@observablehq/plot";
import type { LoggerTrust } from "../../report/thermostatResult.ts";
import type { Frame } from "../figureSpec.ts";
import { layer } from "../layer.ts";

const DAY = 86_400_000;
/** More checks than this are ticks along the foot alone: their uprights would be a fence before the loads. */
const mostUprights = (frame: Frame): number => (frame.narrow ? 6 : 16);

/** Height of the strip along the foot that the checks stand in, px. */
export const RAIL = 16;

/** One moment for each day on which the logger was checked, of those on the drawing. */
export function checkDays({ checks }: LoggerTrust, [from, to]: readonly [number, number]): readonly number[] {
  const days = new Map<number, number>();
  for (const { at } of checks) if (!days.has(Math.floor(at / DAY))) days.set(Math.floor(at / DAY), at);
  return [...days.values()].filter((at) => at >= from && at <= to);
}

/** A tick along the foot of the frame for each check of the logger; a faint upright too where they are few. */
export function checkMarks(days: readonly number[], frame: Frame): RenderFunction {
  return layer("checks", ({ x, inside, pen }) => {
    if (days.length === 0) return [];
    const path = (top: number, bottom: number): string => days.map((at) => `M${x(at)},${top}V${bottom}`).join("");
    const ticks = pen.element("path", { class: "tick", d: path(inside.bottom - RAIL + 4, inside.bottom) });
    if (days.length > mostUprights(frame)) return [ticks];
    return [pen.element("path", { class: "grid", d: path(inside.top, inside.bottom - RAIL) }), ticks];
  });
}
