import type { Markish } from "@observablehq/plot";
import type { Stretch } from "../report/kilnHoursResult.ts";
import { printDate } from "../units/instant.ts";
import { print, printNumber } from "../units/print.ts";
import { footAxis, footHeight, valueAxis, valueAxisWidth } from "./axes.ts";
import { type FigureSettings, halfWidth, narrowWidth, textSize } from "./figureSettings.ts";
import type { FigureSpec, Frame } from "./figureSpec.ts";
import { labelLayer } from "./labelLayer.ts";
import { layer } from "./layer.ts";
import { countOf, latestFirst } from "./listedRows.ts";
import { loadCell, loadHint, loadHref } from "./loadPoints.ts";
import type { FittedModel } from "./residualsInTime.ts";
import { dotRadius, MOST_RINGS, ringRadius, rings, scatter } from "./scatter.ts";
import { stretchLabels } from "./stretchLabels.ts";
import { paddedSpan, valueTicks } from "./ticks.ts";

/**
 * Hours that were logged against hours fitted, one scale both ways, with the line on which they are equal. Loads of
 * `stretches` are ringed.
 *
 * @throws {RangeError} when the model has no loads.
 */
export function fittedAgainstActual(
  model: FittedModel,
  settings: FigureSettings,
  stretches: readonly Stretch[] = [],
): FigureSpec {
  const { loads, fit } = model;
  if (loads.length === 0) throw new RangeError("fittedAgainstActual requires at least one load; got 0");
  const { units, timeZone } = settings;
  const points = loads.map((load) => ({
    x: load.fittedHours,
    y: load.hours,
    load: load.load,
    over: load.residualHours,
    href: loadHref(load.runs, load.load, settings),
    hint: () => loadHint(load, settings),
  }));
  const few = stretches.filter((stretch) => stretch.loads.length <= MOST_RINGS);
  const inStretch = new Set(few.flatMap((stretch) => stretch.loads));
  const ringed = points.filter((p) => inStretch.has(p.load));

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const span = paddedSpan(
      points.flatMap((p) => [p.x, p.y]),
      0.05,
    );
    const down = valueTicks(span[0], span[1], frame.narrow ? 4 : 6);
    const equal = span.map((at) => ({ x: at, y: at }));
    const corner = (across: number, up: number) => ({
      x: span[0] + (span[1] - span[0]) * across,
      y: span[0] + (span[1] - span[0]) * up,
    });
    const marks: Markish[] = [
      valueAxis(down, "hours taken", size),
      footAxis(down, size, { title: "hours fitted" }),
      layer("rule", ({ x, y, pen }) => [
        pen.element("path", { d: `M${x(span[0])},${y(span[0])}L${x(span[1])},${y(span[1])}` }),
      ]),
      scatter(points, frame),
      rings(ringed, frame),
      labelLayer({
        size,
        labels: [
          ...stretchLabels(few, points, settings, frame),
          { ...corner(0.03, 0.98), prefer: 0, farthest: 14, role: "soft", lines: [{ text: "slower than fitted" }] },
          { ...corner(0.97, 0.04), prefer: 180, farthest: 14, role: "soft", lines: [{ text: "faster than fitted" }] },
        ],
        lines: [equal],
        marks: [
          ...points.map((p) => ({ ...p, radius: dotRadius(frame) + 1 })),
          ...ringed.map((p) => ({ ...p, radius: ringRadius(frame) + 1, hard: true })),
        ],
      }),
    ];
    return {
      height: frame.narrow ? 320 : 440,
      marginTop: Math.round(size * 1.9),
      marginRight: 4,
      marginBottom: footHeight(down, size, true),
      marginLeft: valueAxisWidth(down, size),
      x: { domain: span },
      y: { domain: span },
      marks,
    };
  };

  const share = printNumber(100 * fit.rSquared, 0);
  const left = print(fit.residualStandardDeviation, "hours", units, { decimals: 2 });
  return {
    id: "fitted-against-actual",
    title: "Hours taken against hours fitted",
    summary: `The fit explains ${share} % of the spread of ${countOf(loads.length, "load")}; what it leaves over for one load has a standard deviation of ${left}.`,
    table: latestFirst(
      loads,
      "load",
      [
        { label: "run", numeric: false },
        { label: "loaded", numeric: false },
        { label: "taken", unit: "h", numeric: true },
        { label: "fitted", unit: "h", numeric: true },
      ],
      (load) => [
        loadCell(load.runs, load.load, settings),
        printDate(load.loadedAt, timeZone),
        print(load.hours, "hours", units, { bare: true }),
        print(load.fittedHours, "hours", units, { bare: true }),
      ],
    ),
    wideWidth: halfWidth,
    narrowWidth,
    printAs: "narrow",
    options,
  };
}
