import type { RenderFunction } from "@observablehq/plot";
import { textSize } from "./figureSettings.ts";
import type { Frame } from "./figureSpec.ts";
import { layer } from "./layer.ts";
import { fitText, textWidth } from "./textWidth.ts";

/** Something logged on a date: a change, a repair, a calibration. */
export interface DatedEvent {
  /** Milliseconds UTC. */
  readonly on: number;
  readonly what: string;
}

/** How many rows of words the events need above the frame. */
export function eventRows(events: readonly DatedEvent[], frame: Frame): number {
  return Math.min(events.length, frame.narrow ? 3 : 2);
}

interface Named {
  readonly row: number;
  readonly side: "start" | "end";
  readonly from: number;
  readonly to: number;
  readonly at: number;
  readonly text: string;
}

/** One way of naming some events: what it costs is names left out first, then rows used. */
interface Layout {
  readonly named: readonly (Named | null)[];
  readonly cost: number;
}

/** Layouts carried along while events are named one by one: enough that a name left out is left out for want of room. */
const LAYOUTS_KEPT = 60;
const ROOM = 3;

/** Lines hang from their own row down, so a name is struck out by a line from its row or above. */
function clashes(one: Named, other: Named): boolean {
  if (one.row === other.row) {
    if (one.from < other.to && other.from < one.to) return true;
  }
  const strikes = (line: Named, name: Named): boolean =>
    line.row <= name.row && line.at > name.from - ROOM && line.at < name.to + ROOM;
  const apart = Math.abs(one.at - other.at) >= 1;
  return apart ? strikes(one, other) || strikes(other, one) : one.row === other.row && one.side === other.side;
}

function layOut(choices: readonly (readonly Named[])[]): readonly (Named | null)[] {
  let layouts: readonly Layout[] = [{ named: [], cost: 0 }];
  for (const ways of choices) {
    const next = layouts.flatMap(({ named, cost }) => [
      ...ways
        .filter((way) => named.every((other) => other === null || !clashes(way, other)))
        .map((way) => ({ named: [...named, way], cost: cost - way.row + (way.side === "end" ? 0.5 : 0) })),
      { named: [...named, null], cost: cost + 20 },
    ]);
    layouts = next.sort((a, b) => a.cost - b.cost).slice(0, LAYOUTS_KEPT);
  }
  return layouts[0]?.named ?? [];
}

/**
 * An upright dotted line for each event, named in rows above the frame, as many as find room, the nearest row to the
 * frame first. One without room for its name keeps its line.
 *
 * @param keptFree height at the foot of the frame where other words stand, px: no line reaches down there
 */
export function eventMarks(events: readonly DatedEvent[], frame: Frame, keptFree = 0): RenderFunction {
  return layer("events", ({ x, inside, pen, width }) => {
    const size = textSize(frame);
    const rows = eventRows(events, frame);
    const foot = inside.bottom - keptFree;
    const topOf = (row: number): number => inside.top - (rows - row) * size * 1.3 - 4;
    const seen = events
      .map((event) => ({ ...event, at: x(event.on) }))
      .filter(({ at }) => at >= inside.left && at <= inside.right)
      .sort((a, b) => b.at - a.at);
    const choices = seen.map(({ at, what }) => {
      const text = fitText(what, frame.narrow ? 150 : 220, size);
      const wide = textWidth(text, size);
      return Array.from({ length: rows }, (_, row) => row).flatMap((row) =>
        (["start", "end"] as const)
          .map((side) => ({
            row,
            side,
            at,
            text,
            from: side === "start" ? at + 1 : at - wide - 7,
            to: side === "start" ? at + wide + 7 : at - 1,
          }))
          .filter(({ from, to }) => from >= inside.left - 1 && to <= width),
      );
    });
    return layOut(choices).flatMap((named, i) => {
      const at = seen[i]?.at ?? 0;
      if (!named) return [pen.element("path", { class: "event", d: `M${at},${inside.top}V${foot}` })];
      const { side, text, row } = named;
      return [
        pen.element("path", { class: "event", d: `M${at},${topOf(row)}V${foot}` }),
        pen.element(
          "text",
          {
            class: "label soft",
            x: side === "start" ? at + 6 : at - 6,
            y: topOf(row) + size * 0.95,
            "text-anchor": side,
          },
          [text],
        ),
      ];
    });
  });
}
