import { areaY, type Markish, ruleY } from "@observablehq/plot";
import type { DryingAirModel, HumidityDepthModel, Stretch } from "../report/kilnHoursResult.ts";
import { printDate } from "../units/instant.ts";
import { print, printSigned } from "../units/print.ts";
import { footAxis, footHeight, valueAxis, valueAxisWidth } from "./axes.ts";
import { type DatedEvent, eventMarks, eventRows } from "./eventMarks.ts";
import { type FigureSettings, fullWidth, narrowWidth, textSize } from "./figureSettings.ts";
import type { FigureSpec, Frame } from "./figureSpec.ts";
import { type Label, labelLayer } from "./labelLayer.ts";
import { countOf, latestFirst } from "./listedRows.ts";
import { loadCell, loadHint, loadHref, stretchLabel, stretchSentence } from "./loadPoints.ts";
import { dotRadius, enclosures, MOST_RINGS, ringRadius, rings, scatter } from "./scatter.ts";
import { paddedSpan, valueTicks } from "./ticks.ts";
import { monthTicks } from "./timeTicks.ts";

/** 90 of 100 normal deviates lie within this many standard deviations of their mean (tables of the normal curve). */
const NINETY_OF_HUNDRED = 1.6449;

/** What the figures of a regression read: either model carries it. */
export type FittedModel = Pick<HumidityDepthModel | DryingAirModel, "fit" | "loads">;

export interface ResidualsOptions {
  readonly stretches?: readonly Stretch[];
  /** What was changed, repaired or calibrated: marked by an upright line each. */
  readonly events?: readonly DatedEvent[];
}

/**
 * Hours over what weather and bed account for, load by load in time, with the band that should hold 90 of 100 and the
 * stretches of loads that were slow or fast together, ringed.
 *
 * @throws {RangeError} when the model has no loads.
 */
export function residualsInTime(
  model: FittedModel,
  settings: FigureSettings,
  { stretches = [], events = [] }: ResidualsOptions = {},
): FigureSpec {
  const { loads, fit } = model;
  if (loads.length === 0) throw new RangeError("residualsInTime requires at least one load; got 0");
  const { units, timeZone } = settings;
  const half = NINETY_OF_HUNDRED * fit.residualStandardDeviation;
  const points = loads.map((load) => ({
    x: load.loadedAt,
    y: load.residualHours,
    load: load.load,
    href: loadHref(load.runs, load.load, settings),
    hint: () => loadHint(load, settings),
  }));
  const outside = points.filter((p) => Math.abs(p.y) > half).length;
  const grouped = stretches.map((stretch) => {
    const names = new Set(stretch.loads);
    return { stretch, points: points.filter((p) => names.has(p.load)) };
  });

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const x = paddedSpan(
      points.map((p) => p.x),
      0.015,
      14 * 86_400_000,
    );
    const y = paddedSpan([...points.map((p) => p.y), half, -half], 0.1);
    const ticks = valueTicks(y[0], y[1], frame.narrow ? 4 : 5, printSigned);
    const left = valueAxisWidth(ticks, size);
    const head = eventRows(events, frame) * size * 1.3;
    const labels = grouped.flatMap(({ stretch, points: held }): Label[] => {
      const slow = stretch.meanResidualHours > 0;
      // The point that stands out furthest carries the words.
      const peak = [...held].sort((a, b) => (slow ? b.y - a.y : a.y - b.y))[0];
      if (!peak) return [];
      return [
        {
          x: held.length > MOST_RINGS ? (stretch.from + stretch.to) / 2 : peak.x,
          y: peak.y,
          reach: ringRadius(frame),
          prefer: slow ? 270 : 90,
          priority: held.length,
          farthest: 200,
          role: "ink",
          lines: [{ text: stretchLabel(stretch, settings), strong: true }],
        },
      ];
    });
    const ringed = grouped.filter((g) => g.points.length <= MOST_RINGS).flatMap((g) => g.points);
    const enclosed = grouped.filter((g) => g.points.length > MOST_RINGS).map((g) => g.points);
    const months = monthTicks(x[0], x[1], frame.narrow ? 4 : 11, timeZone);
    const marks: Markish[] = [
      areaY(
        x.map((at) => ({ at })),
        { x: "at", y1: -half, y2: half, className: "band", fill: "currentColor" },
      ),
      valueAxis(ticks, "hours over expected", size),
      footAxis(months, size),
      ruleY([0], { className: "rule" }),
      eventMarks(events, frame),
      scatter(points, frame),
      rings(ringed, frame),
      enclosures(enclosed, frame),
      labelLayer({
        size,
        labels,
        uprights: events.map((event) => event.on),
        marks: [
          ...points.map((p) => ({ ...p, radius: dotRadius(frame) + 1 })),
          ...[...ringed, ...enclosed.flat()].map((p) => ({ ...p, radius: ringRadius(frame) + 1, hard: true })),
        ],
      }),
    ];
    return {
      height: (frame.narrow ? 250 : 300) + head,
      marginTop: Math.round(size * 1.9 + head),
      marginRight: 2,
      marginBottom: footHeight(months, size),
      marginLeft: left,
      x: { domain: x },
      y: { domain: y },
      marks,
    };
  };

  const band = print(half, "hours", units);
  return {
    id: "residuals-in-time",
    title: "Hours over expected, load by load",
    summary: `${outside === 0 ? "None" : outside} of ${countOf(loads.length, "load")} ${outside < 2 ? "lies" : "lie"} outside the band of ±${band} that should hold 90 of 100.${grouped
      .map(({ stretch }) => ` ${stretchSentence(stretch, settings)}.`)
      .join("")}`,
    table: latestFirst(
      loads,
      "load",
      [
        { label: "run", numeric: false },
        { label: "loaded", numeric: false },
        { label: "kiln hours", unit: "h", numeric: true },
        { label: "expected", unit: "h", numeric: true },
        { label: "over expected", unit: "h", numeric: true },
      ],
      (load) => [
        loadCell(load.runs, load.load, settings),
        printDate(load.loadedAt, timeZone),
        print(load.hours, "hours", units, { bare: true }),
        print(load.fittedHours, "hours", units, { bare: true }),
        print(load.residualHours, "hours", units, { bare: true, signed: true }),
      ],
    ),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}
