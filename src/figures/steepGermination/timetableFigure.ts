import { areaY, line, type Markish, ruleY } from "@observablehq/plot";
import type { GrowthModel } from "../../report/steepGerminationResult.ts";
import { print, printSigned } from "../../units/print.ts";
import { shownAs, toShown } from "../../units/quantity.ts";
import { footAxis, footHeight, valueAxis, valueAxisWidth } from "../axes.ts";
import { type FigureSettings, halfWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { labelLayer } from "../labelLayer.ts";
import { paddedSpan, valueTicks } from "../ticks.ts";

/**
 * How many hours sooner or later than the timetable a bed reaches the aim, by its temperature, with the 95 % band.
 *
 * @param said what to see, as the page's findings say it
 */
export function timetableFigure(
  { usualHours, rows }: NonNullable<GrowthModel["timetable"]>,
  said: string,
  settings: FigureSettings,
): FigureSpec | null {
  if (rows.length < 2) return null;
  const { units } = settings;
  const { unit } = shownAs("temperature", units);
  const points = rows.map(({ celsius, againstTimetableHours: { estimate, low, high } }) => ({
    x: toShown(celsius, "temperature", units),
    y: estimate,
    low,
    high,
  }));
  const whole = (hours: number): string => print(hours, "hours", units, { decimals: 0, bare: true });

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const x = paddedSpan(
      points.map((p) => p.x),
      0.02,
      1,
    );
    const y = paddedSpan([0, ...points.flatMap((p) => [p.low, p.high])], 0.1, 4);
    const down = valueTicks(y[0], y[1], frame.narrow ? 4 : 6, printSigned);
    const across = valueTicks(x[0], x[1], frame.narrow ? 5 : 7);
    const corner = (right: number, up: number) => ({ x: x[0] + (x[1] - x[0]) * right, y: y[0] + (y[1] - y[0]) * up });
    const marks: Markish[] = [
      valueAxis(down, "hours against the timetable", size),
      footAxis(across, size, { title: `bed, mean, ${unit}` }),
      areaY(points, { x: "x", y1: "low", y2: "high", className: "band germination", fill: "currentColor" }),
      ruleY([0], { className: "rule" }),
      line(points, { x: "x", y: "y", className: "line germination", stroke: "currentColor" }),
      labelLayer({
        size,
        lines: [points, x.map((at) => ({ x: at, y: 0 }))],
        washes: [points],
        labels: [
          {
            ...corner(0.02, 0),
            y: 0,
            prefer: 60,
            priority: 2,
            role: "ink",
            lines: [{ text: `timetable, ${print(usualHours, "hours", units, { decimals: 0 })}` }],
          },
          { ...corner(0.97, 0.98), prefer: 180, farthest: 40, role: "soft", lines: [{ text: "unload later" }] },
          { ...corner(0.03, 0.03), prefer: 0, farthest: 40, role: "soft", lines: [{ text: "unload sooner" }] },
        ],
      }),
    ];
    return {
      height: frame.narrow ? 280 : 340,
      marginTop: Math.round(size * 1.9),
      marginRight: 4,
      marginBottom: footHeight(across, size, true),
      marginLeft: valueAxisWidth(down, size),
      x: { domain: x },
      y: { domain: y },
      marks,
    };
  };

  return {
    id: "hours-against-timetable",
    title: "Hours sooner or later, by bed temperature",
    summary: said,
    table: {
      columns: [
        { label: "bed", unit, numeric: true },
        { label: "hours to the target", numeric: true },
        { label: "against the timetable", unit: "h", numeric: true },
      ],
      rows: rows.map(({ celsius, hours, againstTimetableHours: against }) => [
        print(celsius, "temperature", units, { bare: true }),
        `${whole(hours.estimate)} (${whole(hours.low)} to ${whole(hours.high)})`,
        `${printSigned(against.estimate, 0)} (${printSigned(against.low, 0)} to ${printSigned(against.high, 0)})`,
      ]),
    },
    wideWidth: halfWidth,
    narrowWidth,
    printAs: "narrow",
    options,
  };
}
