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

/**
 * An upright dotted line for each event, named in rows above the frame. The latest is named first; one whose name finds
 * no room keeps its line.
 */
export function eventMarks(events: readonly DatedEvent[], frame: Frame): RenderFunction {
  return layer("events", ({ x, inside, pen, width }) => {
    const size = textSize(frame);
    const rows = eventRows(events, frame);
    const rowTop = (row: number): number => inside.top - (rows - row) * size * 1.3 - 4;
    const seen = events
      .map((event) => ({ ...event, at: x(event.on) }))
      .filter(({ at }) => at >= inside.left && at <= inside.right)
      .sort((a, b) => b.at - a.at);
    const taken: { row: number; from: number; to: number; at: number }[] = [];
    return seen.flatMap(({ at, what }) => {
      const text = fitText(what, frame.narrow ? 150 : 220, size);
      const wide = textWidth(text, size);
      // Right of its line, else left of it; on the row nearest the frame that has room.
      for (let row = rows - 1; row >= 0; row--) {
        for (const side of ["start", "end"] as const) {
          const from = side === "start" ? at - 1 : at - wide - 7;
          const to = side === "start" ? at + wide + 7 : at + 1;
          // Lines hang from their own row, so only those from this row or above can strike a name out.
          const clash = taken.some(
            (t) =>
              (t.row === row && t.from < to && from < t.to) ||
              (t.row <= row && t.at > from - 3 && t.at < to + 3) ||
              (t.row > row && at > t.from - 3 && at < t.to + 3),
          );
          if (from < inside.left - 1 || to > width || clash) continue;
          taken.push({ row, from, to, at });
          return [
            pen.element("path", { class: "event", d: `M${at},${rowTop(row)}V${inside.bottom}` }),
            pen.element(
              "text",
              {
                class: "label soft",
                x: side === "start" ? at + 6 : at - 6,
                y: rowTop(row) + size * 0.95,
                "text-anchor": side,
              },
              [text],
            ),
          ];
        }
      }
      return [pen.element("path", { class: "event", d: `M${at},${inside.top}V${inside.bottom}` })];
    });
  });
}
