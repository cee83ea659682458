import type { Markish } from "@observablehq/plot";
import type { ChangeEffect, ChangePoint, ChangeResult } from "../../report/changesResult.ts";
import { printDate } from "../../units/instant.ts";
import { maltMeasure, measureWithUnit } from "../../units/maltMeasure.ts";
import { printLevel } from "../../units/measureChange.ts";
import { toShown } from "../../units/quantity.ts";
import { footAxis, footHeight } from "../axes.ts";
import { type DatedEvent, eventMarks, eventRows } from "../eventMarks.ts";
import { type FigureSettings, fullWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { type Label, labelLayer } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { latestFirst } from "../listedRows.ts";
import { dotRadius, scatter } from "../scatter.ts";
import { type OwnStrip, ownStripAxes, ownStrips, stripScale } from "../thermostat/ownStrips.ts";
import { paddedSpan } from "../ticks.ts";
import { dayTicks, monthTicks } from "../timeTicks.ts";

const DAY = 86_400_000;
/** A shorter time than this is told in days. */
const FEW_DAYS = 70;
const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** A level over its side: where it begins and ends. */
interface Side {
  readonly from: number;
  readonly to: number;
  readonly level: ChangeEffect["before"];
}

function sidesOf({ points, before, after }: ChangeEffect, at: number): readonly Side[] {
  const [first, last] = [points[0]?.at ?? at, points.at(-1)?.at ?? at];
  return [
    { from: first, to: at, level: before },
    { from: at, to: last, level: after },
  ];
}

/**
 * What one change came to, batch by batch: each measure in a strip, values less what weather and variety explain, the level of
 * each side with its 95 % interval, and what else was logged in between.
 *
 * @returns null where nothing was compared
 */
export function changeInTime(
  change: ChangeResult,
  events: readonly DatedEvent[],
  settings: FigureSettings,
): FigureSpec | null {
  const { effects, at, id, event } = change;
  const { units, timeZone } = settings;
  if (effects.length === 0) return null;
  const shownOf = (effect: ChangeEffect, value: number): number =>
    toShown(value, maltMeasure(effect.measure).quantity, units);

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const x = paddedSpan(
      effects.flatMap(({ points }) => points.map((point) => point.at)),
      0.015,
      14 * DAY,
    );
    const shown = [{ on: at, what: event.what }, ...events.filter(({ on }) => on > x[0] && on < x[1])];
    const head = eventRows(shown, frame) * size * 1.3;
    const { strips, inner } = ownStrips(
      effects.map((effect) => ({
        name: capital(measureWithUnit(maltMeasure(effect.measure), units)),
        values: [
          ...effect.points.map(({ adjusted }) => adjusted),
          ...[effect.before, effect.after].flatMap(({ low, high }) => [low, high]),
        ].map((value) => shownOf(effect, value)),
        least: 2 * effect.tellable,
      })),
      { height: effects.length === 1 ? 180 : frame.narrow ? 96 : 118, size, count: 4 },
    );
    const drawn = effects.flatMap((effect, row) => {
      const strip = strips[row];
      return strip === undefined
        ? []
        : [{ effect, strip, heightOf: (v: number) => strip.heightOf(shownOf(effect, v)) }];
    });
    const points = drawn.flatMap(({ effect, heightOf }) =>
      effect.points.map((point) => ({
        x: point.at,
        y: heightOf(point.adjusted),
        href: settings.runHref(point.run),
        hint: () => hintOf(effect, point, settings),
      })),
    );
    const labels = drawn.flatMap(({ effect, heightOf }): Label[] =>
      sidesOf(effect, at).map(({ from, to, level }) => ({
        x: from + (to - from) / 2,
        y: heightOf(level.estimate),
        or: [0.2, 0.35, 0.65, 0.8].map((share) => ({
          x: from + (to - from) * share,
          y: heightOf(level.estimate),
        })),
        role: "ink",
        priority: 10,
        reach: 5,
        lines: [{ text: printLevel(effect.measure, level.estimate, units), strong: true }],
      })),
    );
    const days = (x[1] - x[0]) / DAY;
    const months =
      days < FEW_DAYS
        ? dayTicks(x[0], x[1], frame.narrow ? 3 : 8, timeZone)
        : monthTicks(x[0], x[1], frame.narrow ? 4 : 11, timeZone);
    const marks: Markish[] = [
      levelBands(drawn, at),
      ownStripAxes(strips, size),
      footAxis(months, size),
      eventMarks(shown, frame),
      scatter(points, frame),
      levelLines(drawn, at),
      labelLayer({
        size,
        labels,
        uprights: shown.map(({ on }) => on),
        // A level is written beside its own line and struck through by none.
        lines: drawn.flatMap(({ effect, heightOf }) =>
          sidesOf(effect, at).map(({ from, to, level }) =>
            [from, to].map((end) => ({ x: end, y: heightOf(level.estimate) })),
          ),
        ),
        marks: points.map(({ x: across, y }) => ({ x: across, y, radius: dotRadius(frame) + 1 })),
      }),
    ];
    const marginTop = Math.round(head + 4);
    const marginBottom = footHeight(months, size);
    return {
      height: inner + marginTop + marginBottom,
      marginTop,
      marginRight: 4,
      marginBottom,
      marginLeft: Math.max(44, size * 3.4),
      x: { domain: x },
      y: { domain: stripScale(inner) },
      marks,
    };
  };

  return {
    id: `${id}-in-time`,
    title: "Batch by batch, weather and variety taken out",
    summary: effects
      .map((effect) => {
        const level = (value: number): string => printLevel(effect.measure, value, units);
        return `${capital(maltMeasure(effect.measure).words)}: ${level(effect.before.estimate)} before, ${level(effect.after.estimate)} after.`;
      })
      .join(" "),
    table: tableOf(effects, settings),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}

interface DrawnEffect {
  readonly effect: ChangeEffect;
  readonly strip: OwnStrip;
  readonly heightOf: (value: number) => number;
}

function levelBands(drawn: readonly DrawnEffect[], at: number) {
  return layer("band", ({ x, y, pen }) =>
    drawn.flatMap(({ effect, heightOf }) =>
      sidesOf(effect, at).map(({ from, to, level }) => {
        const [top, foot] = [y(heightOf(level.high)), y(heightOf(level.low))];
        return pen.element("rect", { x: x(from), y: top, width: Math.max(0, x(to) - x(from)), height: foot - top });
      }),
    ),
  );
}

function levelLines(drawn: readonly DrawnEffect[], at: number) {
  return layer("line", ({ x, y, pen }) =>
    drawn.flatMap(({ effect, heightOf }) =>
      sidesOf(effect, at).map(({ from, to, level }) =>
        pen.element("path", { d: `M${x(from)},${y(heightOf(level.estimate))}H${x(to)}` }),
      ),
    ),
  );
}

function hintOf({ measure }: ChangeEffect, point: ChangePoint, { units, timeZone }: FigureSettings): string {
  const level = (value: number): string => printLevel(measure, value, units);
  return `${point.run}, ${printDate(point.at, timeZone)}: ${level(point.value)}, adjusted ${level(point.adjusted)}`;
}

function tableOf(effects: readonly ChangeEffect[], settings: FigureSettings): FigureSpec["table"] {
  const { units, timeZone } = settings;
  const byRun = new Map<string, { at: number; isAfter: boolean; values: Map<string, ChangePoint> }>();
  for (const { measure, points } of effects) {
    for (const point of points) {
      const row = byRun.get(point.run) ?? { at: point.at, isAfter: point.isAfter, values: new Map() };
      row.values.set(measure, point);
      byRun.set(point.run, row);
    }
  }
  const rows = [...byRun].sort(([, a], [, b]) => a.at - b.at);
  return latestFirst(
    rows,
    "batch",
    [
      { label: "batch", numeric: false },
      { label: "on", numeric: false },
      { label: "side", numeric: false },
      ...effects.flatMap(({ measure }) => [
        { label: measureWithUnit(maltMeasure(measure), units), numeric: true },
        { label: "adjusted", numeric: true },
      ]),
    ],
    ([run, { at, isAfter, values }]) => [
      { text: run, href: settings.runHref(run) },
      printDate(at, timeZone),
      isAfter ? "after" : "before",
      ...effects.flatMap(({ measure }) => {
        const point = values.get(measure);
        const cell = (value: number): string => printLevel(measure, value, units, true);
        return point === undefined ? ["", ""] : [cell(point.value), cell(point.adjusted)];
      }),
    ],
  );
}
