import { type Markish, ruleY } from "@observablehq/plot";
import type { EnergySummary } from "../report/kilnHoursResult.ts";
import { printDate } from "../units/instant.ts";
import { print, printNumber } from "../units/print.ts";
import { shownAs, toShown } from "../units/quantity.ts";
import { footAxis, footHeight, valueAxis, valueAxisWidth } from "./axes.ts";
import { type FigureSettings, fullWidth, narrowWidth, textSize } from "./figureSettings.ts";
import type { FigureSpec, Frame } from "./figureSpec.ts";
import { labelLayer } from "./labelLayer.ts";
import { countOf, latestFirst } from "./listedRows.ts";
import { loadCell, loadHref } from "./loadPoints.ts";
import { dotRadius, scatter } from "./scatter.ts";
import { paddedSpan, valueTicks } from "./ticks.ts";
import { monthTicks } from "./timeTicks.ts";

/**
 * Energy for each mass of water dried off, load by load in time, over the least that evaporation alone takes.
 *
 * @param runsOf the runs of a load, for links; a load that it does not know is linked by its own name
 * @throws {RangeError} when the summary has no loads.
 */
export function energyFigure(
  energy: EnergySummary,
  settings: FigureSettings,
  runsOf: (load: string) => readonly string[] = (load) => [load],
): FigureSpec {
  const { loads, latentHeatFloor, medianPerKilogramWater } = energy;
  if (loads.length === 0) throw new RangeError("energyFigure requires at least one load; got 0");
  const { units, timeZone } = settings;
  const said = (perKilogram: number): string => print(perKilogram, "energyPerMass", units);
  const floor = toShown(latentHeatFloor, "energyPerMass", units);
  const points = loads.map((load) => ({
    x: load.loadedAt,
    y: toShown(load.kilowattHoursPerKilogramWater, "energyPerMass", units),
    href: loadHref(runsOf(load.load), load.load, settings),
    hint: () =>
      `${runsOf(load.load).join(", ")}, ${printDate(load.loadedAt, timeZone)}: ${said(load.kilowattHoursPerKilogramWater)} of water`,
  }));
  const lowest = Math.min(...points.map((p) => p.y));
  const floorText = `evaporation alone, at ${print(energy.floorCelsius, "temperature", units, { decimals: 0 })}: ${said(latentHeatFloor)}`;

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const x = paddedSpan(
      points.map((p) => p.x),
      0.015,
      14 * 86_400_000,
    );
    // From 0, so that the height above the floor can be judged against the floor itself.
    const y = [0, Math.max(...points.map((p) => p.y), floor) * 1.08] as const;
    const down = valueTicks(y[0], y[1], frame.narrow ? 4 : 5, printNumber);
    const months = monthTicks(x[0], x[1], frame.narrow ? 4 : 11, timeZone);
    const marks: Markish[] = [
      valueAxis(down, `${shownAs("energyPerMass", units).unit} of water`, size),
      footAxis(months, size),
      ruleY([floor], { className: "rule" }),
      scatter(points, frame),
      labelLayer({
        size,
        labels: [
          {
            x: x[0] + (x[1] - x[0]) * 0.5,
            y: floor,
            prefer: lowest > floor ? 90 : 270,
            role: "ink",
            lines: [{ text: floorText }],
          },
        ],
        lines: [x.map((at) => ({ x: at, y: floor }))],
        marks: points.map((p) => ({ ...p, radius: dotRadius(frame) + 1 })),
      }),
    ];
    return {
      height: frame.narrow ? 240 : 280,
      marginTop: Math.round(size * 1.9),
      marginRight: 2,
      marginBottom: footHeight(months, size),
      marginLeft: valueAxisWidth(down, size),
      x: { domain: x },
      y: { domain: y },
      marks,
    };
  };

  const times = printNumber(medianPerKilogramWater / latentHeatFloor, 1);
  return {
    id: "energy-per-water",
    title: "Energy for the water dried off",
    summary: `Half of ${countOf(loads.length, "load")} took more than ${said(medianPerKilogramWater)} of water, ${times} times what evaporation alone takes (${said(latentHeatFloor)}).`,
    table: latestFirst(
      loads,
      "load",
      [
        { label: "run", numeric: false },
        { label: "loaded", numeric: false },
        { label: "energy", unit: "kWh", numeric: true },
        { label: "water removed", unit: shownAs("mass", units).unit, numeric: true },
        { label: "energy for water", unit: shownAs("energyPerMass", units).unit, numeric: true },
      ],
      (load) => [
        loadCell(runsOf(load.load), load.load, settings),
        printDate(load.loadedAt, timeZone),
        print(load.kilowattHours, "energy", units, { bare: true }),
        print(load.waterRemovedKilograms, "mass", units, { bare: true }),
        print(load.kilowattHoursPerKilogramWater, "energyPerMass", units, { bare: true }),
      ],
    ),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}
