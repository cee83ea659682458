import type { Markish, PlotOptions } from "@observablehq/plot";
import type { WhatIfEstimate } from "../report/whatIfAnswer.ts";
import { footAxis, footHeight } from "./axes.ts";
import { halfWidth, narrowWidth, textSize } from "./figureSettings.ts";
import type { FigureSpec, Frame } from "./figureSpec.ts";
import { lineHeight } from "./labelLayer.ts";
import { layer, type Pen } from "./layer.ts";
import { textWidth } from "./textWidth.ts";
import type { Tick } from "./ticks.ts";

const DAY = 1440;

/** `06:40` for 1840 minutes after midnight. */
export function clock(minutes: number): string {
  const within = ((Math.round(minutes) % DAY) + DAY) % DAY;
  return `${String(Math.floor(within / 60)).padStart(2, "0")}:${String(within % 60).padStart(2, "0")}`;
}

interface Moment {
  readonly name: string;
  readonly at: number;
  readonly low: number;
  readonly high: number;
}

/** Whole hours on a clock that starts at the midnight before loading; the turn of the day is named under 00:00. */
function clockTicks(from: number, to: number, count: number): Tick[] {
  const step = [60, 120, 180, 240, 360, 720].find((every) => (to - from) / every <= count) ?? DAY;
  const ticks: Tick[] = [];
  for (let at = Math.ceil(from / step) * step; at <= to; at += step) {
    const day = at / DAY;
    ticks.push({
      at,
      label: clock(at),
      ...(Number.isInteger(day) && day > 0 ? { under: day === 1 ? "next day" : `${day} days on` } : {}),
    });
  }
  return ticks;
}

/**
 * One night's estimate on a clock: loaded, ready for the ramp, off the kiln, each with its 90 % interval as a bar, and
 * the finish that is wanted.
 *
 * @param startedAtMinutes minutes after local midnight, as in the estimate's own moments
 */
export function whatIfInterval(estimate: WhatIfEstimate, startedAtMinutes: number): FigureSpec {
  const { dryingHours, readyAt, offAt, offEarliest, offLatest, latestStart, kilnHours } = estimate;
  const moments: Moment[] = [
    ...(dryingHours === null || readyAt === null
      ? []
      : [
          {
            name: "ready for the ramp",
            at: readyAt,
            low: startedAtMinutes + dryingHours.low * 60,
            high: startedAtMinutes + dryingHours.high * 60,
          },
        ]),
    { name: "off the kiln", at: offAt, low: offEarliest, high: offLatest },
  ];
  const wanted = latestStart === null ? null : latestStart + kilnHours.high * 60;
  const from = startedAtMinutes - 20;
  const to = Math.max(offLatest, wanted ?? 0) + 30;

  const options = (frame: Frame): PlotOptions => {
    const size = textSize(frame);
    const ticks = clockTicks(from, to, frame.narrow ? 5 : 8);
    const step = lineHeight(size) + 30;
    const head = wanted === null ? 4 : lineHeight(size) + 6;
    const marks: Markish[] = [
      footAxis(ticks, size),
      layer("night", ({ x, inside, pen }) => {
        const within = (centre: number, text: string, strong: boolean): number => {
          const half = textWidth(text, size, strong ? 600 : 400) / 2 + 2;
          return Math.min(Math.max(centre, inside.left + half), inside.right - half);
        };
        const rows = moments.map((moment, row) => {
          const text = `${moment.name} about ${clock(moment.at)}`;
          const middle = head + row * step + lineHeight(size) + 14;
          const centre = within(x(moment.at), text, true);
          const half = textWidth(text, size, 600) / 2 + 3;
          const foot = middle - 12;
          const words = { left: centre - half, right: centre + half, top: foot - lineHeight(size), bottom: foot };
          return { moment, text, middle, centre, words };
        });
        // An upright stops short of words and goes on below them.
        const upright = (at: number): string => {
          const struck = rows.filter(({ words }) => at > words.left && at < words.right);
          const cuts = [head, ...struck.flatMap(({ words }) => [words.top, words.bottom]), inside.bottom];
          return cuts.flatMap((y, i) => (i % 2 === 0 ? [`M${at},${y}V${cuts[i + 1]}`] : [])).join("");
        };
        const midnights = ticks.filter((t) => t.under !== undefined).map((t) => upright(x(t.at)));
        const drawn = [pen.element("path", { class: "grid", d: midnights.join("") })];
        if (wanted !== null) {
          const text = `wanted by ${clock(wanted)}`;
          const at = { x: within(x(wanted), text, false), y: size, "text-anchor": "middle" };
          drawn.push(
            pen.element("path", { class: "limit", d: upright(x(wanted)) }),
            pen.element("text", { class: "label soft", ...at }, [text]),
          );
        }
        for (const row of rows) drawn.push(...drawMoment(pen, x, startedAtMinutes, size, row));
        const first = rows[0];
        const loaded = `loaded ${clock(startedAtMinutes)}`;
        if (first && inside.left + textWidth(loaded, size) + 12 < first.words.left) {
          drawn.push(
            pen.element(
              "text",
              { class: "label soft", x: inside.left, y: first.middle - 14 - size * 0.2, "text-anchor": "start" },
              [loaded],
            ),
          );
        }
        return drawn;
      }),
    ];
    return {
      height: head + moments.length * step + 6 + footHeight(ticks, size),
      marginTop: head,
      marginRight: 1,
      marginBottom: footHeight(ticks, size),
      marginLeft: 1,
      x: { domain: [from, to] },
      marks,
    };
  };

  const range = (m: Moment): string => `${clock(m.low)} to ${clock(m.high)}`;
  return {
    id: "what-if",
    title: `Loaded at ${clock(startedAtMinutes)}`,
    summary: `${moments.map((m, i) => `${i === 0 ? m.name[0]?.toUpperCase() + m.name.slice(1) : m.name} about ${clock(m.at)} (${range(m)})`).join(", ")}; the bars hold 90 of 100 such loads.`,
    table: {
      columns: [
        { label: "moment", numeric: false },
        { label: "about", numeric: true },
        { label: "earliest", numeric: true },
        { label: "latest", numeric: true },
      ],
      rows: moments.map((m) => [m.name, clock(m.at), clock(m.low), clock(m.high)]),
    },
    wideWidth: halfWidth,
    narrowWidth,
    printAs: "narrow",
    options,
  };
}

interface MomentRow {
  readonly moment: Moment;
  readonly text: string;
  readonly middle: number;
  readonly centre: number;
}

/** A thread from loading to the estimate, the interval as a bar around it, the moment said above. */
function drawMoment(
  pen: Pen,
  x: (minutes: number) => number,
  from: number,
  size: number,
  { moment, text, middle, centre }: MomentRow,
): SVGElement[] {
  const words = { x: centre, y: middle - 14 - size * 0.2, "text-anchor": "middle" };
  return [
    pen.element("path", { class: "thread", d: `M${x(from)},${middle}H${x(moment.low)}` }),
    pen.element("circle", { class: "mark-ink", cx: x(from), cy: middle, r: 3 }),
    pen.element("rect", {
      class: "band kiln",
      x: x(moment.low),
      y: middle - 8,
      width: x(moment.high) - x(moment.low),
      height: 16,
    }),
    pen.element("rect", { class: "mark-kiln", x: x(moment.at) - 1.5, y: middle - 12, width: 3, height: 24 }),
    pen.element("text", { class: "label kiln strong", ...words }, [text]),
  ];
}
