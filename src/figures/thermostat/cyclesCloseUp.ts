import type { Markish } from "@observablehq/plot";
import type { ThermostatLoad } from "../../malting/thermostat/thermostatLoad.ts";
import type { LoadRow } from "../../report/loadRow.ts";
import type { KilnCurve } from "../../report/runPageResult.ts";
import { printClock } from "../../units/instant.ts";
import { print } from "../../units/print.ts";
import { shownAs, toShown } from "../../units/quantity.ts";
import { footAxis, footHeight, valueAxis, valueAxisWidth } from "../axes.ts";
import { type EndLabel, endLabels } from "../controlCharts/endLabels.ts";
import { type FigureSettings, fullWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { layer } from "../layer.ts";
import { latestFirst } from "../listedRows.ts";
import { textWidth } from "../textWidth.ts";
import { pathThrough, splitAtGaps, thinSeries } from "../thinSeries.ts";
import { paddedSpan, valueTicks } from "../ticks.ts";
import { type CloseUpHold, closeUpHold } from "./closeUpHold.ts";
import { closeUpSentence } from "./closeUpSentence.ts";
import { minuteTicks } from "./minuteTicks.ts";
import { nameInId } from "./nameInId.ts";

/** Readings this far apart or more, px, are marked one by one, so that a coarse log is seen to be coarse. */
const APART = 5;

/** Where the probe sits, and the span to draw, milliseconds UTC; without one the last six cycles of the drying hold, or its last hour. */
export interface CloseUpOptions {
  /** Elsewhere the probe reads other air than the thermostat: nothing it reads is then called an error. */
  readonly probeAtBulb: boolean;
  readonly from?: number;
  readonly to?: number;
}

/**
 * The thermostat's cycles close up, reading by reading: air on, its set point, the mean of the hold over whole cycles and
 * the temperatures at which it switches. Readings are drawn less what the logger's check found at the set point.
 *
 * @returns null where no air-on reading lies in the span, or no hold was found and no span is given
 */
export function cyclesCloseUp(
  curve: KilnCurve,
  load: LoadRow,
  thermostatLoad: ThermostatLoad,
  settings: FigureSettings,
  options: CloseUpOptions,
): FigureSpec | null {
  const hold = closeUpHold(thermostatLoad, options);
  if (hold === null) return null;
  const { units, timeZone } = settings;
  const readings = readingsIn(curve, hold);
  if (!readings.some(({ celsius }) => Number.isFinite(celsius))) return null;
  const shown = (celsius: number): number => toShown(celsius, "temperature", units);
  const parts = splitAtGaps(
    readings.map(({ at }) => at),
    readings.map(({ celsius }) => shown(celsius - hold.loggerErrorKelvin)),
  );
  const said = (celsius: number): string => print(celsius, "temperature", units, { decimals: 1 });
  const levels = [
    { name: "off at", celsius: hold.switchOffCelsius, line: "event", role: "soft" as const },
    { name: "mean", celsius: hold.meanCelsius, line: "rule", role: "ink" as const },
    { name: "set", celsius: hold.setCelsius, line: "limit", role: "soft" as const },
    { name: "on at", celsius: hold.switchOnCelsius, line: "event", role: "soft" as const },
  ].flatMap(({ celsius, ...level }) =>
    celsius === null ? [] : [{ ...level, y: shown(celsius), said: said(celsius) }],
  );

  const plotOptions = (frame: Frame) => {
    const size = textSize(frame);
    const x = [hold.from, hold.to] as const;
    const y = paddedSpan([...parts.flatMap((part) => part.map((p) => p.y)), ...levels.map((level) => level.y)], 0.08);
    const down = valueTicks(y[0], y[1], frame.narrow ? 4 : 6);
    const across = minuteTicks(x[0], x[1], frame.narrow ? 4 : 12, timeZone);
    const rowsOf = ({ name, said: value }: { name: string; said: string }): string[] =>
      frame.narrow ? [name, value] : [`${name} ${value}`];
    const names = levels.map((level): EndLabel => ({ y: level.y, role: level.role, rows: rowsOf(level) }));
    const marks: Markish[] = [
      valueAxis(
        down,
        `air on${options.probeAtBulb ? "" : " at the logger’s probe"}, ${shownAs("temperature", units).unit}`,
        size,
      ),
      footAxis(across, size),
      layer("levels", ({ y: toY, inside, pen }) =>
        levels.map((level) =>
          pen.element("path", { class: level.line, d: `M${inside.left},${toY(level.y)}H${inside.right}` }),
        ),
      ),
      layer("line kiln thin", ({ x: toX, y: toY, pen }) => [
        pen.element("path", {
          d: parts.map((part) => pathThrough(thinSeries(part.map((p) => ({ x: toX(p.x), y: toY(p.y) }))))).join(""),
        }),
      ]),
      layer("readings", ({ x: toX, y: toY, inside, pen }) => {
        const points = parts.flat();
        if ((inside.right - inside.left) / points.length < APART) return [];
        return points.map((p) => pen.element("circle", { cx: toX(p.x), cy: toY(p.y), r: frame.narrow ? 1.6 : 2 }));
      }),
      endLabels(names, size),
    ];
    return {
      height: frame.narrow ? 270 : 330,
      marginTop: Math.round(size * 1.9),
      marginRight: Math.ceil(Math.max(...names.flatMap(({ rows }) => rows.map((row) => textWidth(row, size))), 0)) + 8,
      marginBottom: footHeight(across, size),
      marginLeft: valueAxisWidth(down, size),
      x: { domain: x },
      y: { domain: y },
      marks,
    };
  };

  const named = hold.hold === "drying" ? "drying hold" : "cure";
  const chosen = options.from !== undefined || options.to !== undefined;
  return {
    id: `thermostat-cycles-${nameInId(load.load)}`,
    title: chosen ? `Cycles of the ${named}` : `The last cycles of the ${named}`,
    summary: closeUpSentence(load, hold, settings, options.probeAtBulb),
    table: latestFirst(
      readings.filter(({ celsius }) => Number.isFinite(celsius)),
      "reading",
      [
        { label: "time", numeric: false },
        { label: "air on, as logged", unit: shownAs("temperature", units).unit, numeric: true },
      ],
      ({ at, celsius }) => [
        clockWithSeconds(at, settings),
        print(celsius, "temperature", units, { bare: true, decimals: 1 }),
      ],
    ),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options: plotOptions,
  };
}

interface Reading {
  readonly at: number;
  readonly celsius: number;
}

function readingsIn({ at, airOnCelsius }: KilnCurve, { from, to }: CloseUpHold): readonly Reading[] {
  const readings: Reading[] = [];
  at.forEach((moment, i) => {
    if (moment >= from && moment <= to) readings.push({ at: moment, celsius: airOnCelsius[i] ?? Number.NaN });
  });
  return readings;
}

/** `02:41`, with seconds where the reading was not on the minute. */
function clockWithSeconds(at: number, { timeZone }: FigureSettings): string {
  const seconds = Math.floor(at / 1000) % 60;
  return `${printClock(at, timeZone)}${seconds === 0 ? "" : `:${String(seconds).padStart(2, "0")}`}`;
}
