import { areaY, line, type Markish } from "@observablehq/plot";
import type { Interval } from "../analysis/regressionFit.ts";
import type { AddedVariablePlot, HumidityDepthModel, Stretch } from "../report/kilnHoursResult.ts";
import { printDate } from "../units/instant.ts";
import { print, printNumber, printSigned } from "../units/print.ts";
import { type Quantity, shownAs, toShown } from "../units/quantity.ts";
import { footAxis, footHeight, valueAxis, valueAxisWidth } from "./axes.ts";
import { type FigureSettings, halfWidth, narrowWidth, textSize } from "./figureSettings.ts";
import type { FigureSpec, Frame } from "./figureSpec.ts";
import { type Label, labelLayer } from "./labelLayer.ts";
import { countOf, latestFirst } from "./listedRows.ts";
import { loadCell, loadHint, loadHref } from "./loadPoints.ts";
import { dotRadius, MOST_RINGS, ringRadius, rings, scatter } from "./scatter.ts";
import { stretchLabels } from "./stretchLabels.ts";
import { paddedSpan, valueTicks } from "./ticks.ts";

/** How an effect is said for one predictor: in which steps, and what the other one is called. */
interface Wording {
  readonly name: string;
  readonly quantity: Quantity;
  readonly axis: string;
  readonly step: string;
  readonly hours: Interval;
  readonly otherHeld: string;
}

const times = (interval: Interval, factor: number): Interval => ({
  estimate: interval.estimate * factor,
  low: interval.low * factor,
  high: interval.high * factor,
});

function wordingOf(model: HumidityDepthModel, plot: AddedVariablePlot, { units }: FigureSettings): Wording {
  if (plot.predictor === "relativeHumidityPercent") {
    return {
      name: "humidity",
      quantity: "percent",
      axis: "humidity of the air, %",
      step: "10 points",
      hours: model.hoursPerTenPoints,
      otherHeld: `bed held at ${print(plot.otherHeldAt, "bedDepth", units)}`,
    };
  }
  const { unit, factor } = shownAs("bedDepth", units);
  return {
    name: "bed depth",
    quantity: "bedDepth",
    axis: `bed depth, ${unit}`,
    step: `1 ${unit}`,
    // Per centimetre, times the centimetres that make one shown unit.
    hours: times(model.hoursPerCentimetre, 100 / factor),
    otherHeld: `humidity held at ${print(plot.otherHeldAt, "percent", units, { decimals: 0 })}`,
  };
}

/** What the fit says of one predictor: `Each 10 points of humidity add 0.74 h (0.60 to 0.88) …`. */
function effectSentence(w: Wording, loads: number): string {
  const range = `${printNumber(w.hours.low, 2)} to ${printNumber(w.hours.high, 2)}`;
  const each = `Each ${w.step} of ${w.name.replace("bed depth", "bed")}`;
  const more = w.hours.estimate >= 0;
  const verb = w.step.startsWith("1 ") ? (more ? "adds" : "takes off") : more ? "add" : "take off";
  const size = printNumber(Math.abs(w.hours.estimate), 2);
  const doubt =
    w.hours.low <= 0 && w.hours.high >= 0 ? " The interval holds 0: these logs cannot yet tell it from no effect." : "";
  return `${each} ${verb} ${size} h (95 % interval ${range}), with the ${w.otherHeld}; ${countOf(loads, "load")}.${doubt}`;
}

/**
 * Kiln hours against one predictor with the other taken out, the fitted line with the 95 % band of its mean, and the
 * effect said on the line. Loads of `stretches` are ringed.
 *
 * @throws {RangeError} when the model has no such predictor or no loads.
 */
export function addedVariableFigure(
  model: HumidityDepthModel,
  predictor: AddedVariablePlot["predictor"],
  settings: FigureSettings,
  stretches: readonly Stretch[] = [],
): FigureSpec {
  const plot = model.addedVariable.find((p) => p.predictor === predictor);
  if (!plot || plot.x.length === 0) throw new RangeError(`addedVariableFigure: no added-variable plot of ${predictor}`);
  const { units, timeZone } = settings;
  const words = wordingOf(model, plot, settings);
  const shown = (value: number): number => toShown(value, words.quantity, units);
  const points = model.loads.map((load, i) => ({
    x: shown(plot.x[i] ?? Number.NaN),
    y: plot.y[i] ?? Number.NaN,
    load: load.load,
    over: load.residualHours,
    href: loadHref(load.runs, load.load, settings),
    hint: () => loadHint(load, settings),
  }));
  const fitted = plot.line.map((p) => ({ ...p, x: shown(p.x) }));
  const few = stretches.filter((stretch) => stretch.loads.length <= MOST_RINGS);
  const inStretch = new Set(few.flatMap((stretch) => stretch.loads));
  const ringed = points.filter((p) => inStretch.has(p.load));

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const x = paddedSpan([...points.map((p) => p.x), ...fitted.map((p) => p.x)], 0.03);
    const y = paddedSpan([...points.map((p) => p.y), ...fitted.flatMap((p) => [p.low, p.high])], 0.06);
    const ticks = valueTicks(y[0], y[1], frame.narrow ? 4 : 6);
    const range = `${printNumber(words.hours.low, 2)} to ${printNumber(words.hours.high, 2)}`;
    const rising = words.hours.estimate >= 0;
    // Anchored where the line leaves most room above it: towards its high end.
    const anchor = fitted[Math.floor((fitted.length - 1) * (rising ? 0.8 : 0.2))];
    const effect = `${printSigned(words.hours.estimate, 2)} h for each ${words.step}`;
    const labels: Label[] = anchor
      ? [
          {
            x: anchor.x,
            y: anchor.y,
            prefer: 270,
            priority: 2,
            farthest: 140,
            role: "kiln",
            lines: [{ text: effect, strong: true }, { text: `(${range})` }],
          },
        ]
      : [];
    labels.push(...stretchLabels(few, points, settings, frame));
    const across = valueTicks(x[0], x[1], frame.narrow ? 5 : 7);
    const marks: Markish[] = [
      valueAxis(ticks, "kiln hours", size),
      footAxis(across, size, { title: words.axis }),
      areaY(fitted, { x: "x", y1: "low", y2: "high", className: "band kiln", fill: "currentColor" }),
      scatter(points, frame),
      line(fitted, { x: "x", y: "y", className: "line kiln", stroke: "currentColor" }),
      rings(ringed, frame),
      labelLayer({
        size,
        labels,
        lines: [fitted],
        washes: [fitted],
        marks: [
          ...points.map((p) => ({ ...p, radius: dotRadius(frame) + 1 })),
          ...ringed.map((p) => ({ ...p, radius: ringRadius(frame) + 1, hard: true })),
        ],
      }),
    ];
    return {
      height: frame.narrow ? 280 : 350,
      marginTop: Math.round(size * 1.9),
      marginRight: 4,
      marginBottom: footHeight(across, size, true),
      marginLeft: valueAxisWidth(ticks, size),
      x: { domain: x },
      y: { domain: y },
      marks,
    };
  };

  return {
    id: predictor === "relativeHumidityPercent" ? "hours-by-humidity" : "hours-by-depth",
    title: `Kiln hours by ${words.name}`,
    summary: effectSentence(words, model.loads.length),
    table: latestFirst(
      model.loads.map((load, i) => ({ load, x: plot.x[i] ?? Number.NaN, y: plot.y[i] ?? Number.NaN })),
      "load",
      [
        { label: "run", numeric: false },
        { label: "loaded", numeric: false },
        { label: `${words.name}, the other held`, unit: shownAs(words.quantity, units).unit, numeric: true },
        { label: "kiln hours, the other held", unit: "h", numeric: true },
      ],
      ({ load, x, y }) => [
        loadCell(load.runs, load.load, settings),
        printDate(load.loadedAt, timeZone),
        print(x, words.quantity, units, { bare: true }),
        print(y, "hours", units, { bare: true }),
      ],
    ),
    wideWidth: halfWidth,
    narrowWidth,
    printAs: "narrow",
    options,
  };
}
