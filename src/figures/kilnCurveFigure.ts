import type { Markish, PlotOptions } from "@observablehq/plot";
import type { LoadRow } from "../report/loadRow.ts";
import type { KilnCurve } from "../report/runPageResult.ts";
import { printClock, printMoment } from "../units/instant.ts";
import { print } from "../units/print.ts";
import { shownAs, toShown } from "../units/quantity.ts";
import { footAxis, footHeight, valueAxis, valueAxisWidth } from "./axes.ts";
import { curveNames } from "./curveNames.ts";
import { type FigureSettings, fullWidth, narrowWidth, textSize } from "./figureSettings.ts";
import type { DataTable, FigureSpec, Frame } from "./figureSpec.ts";
import { type Label, labelLayer } from "./labelLayer.ts";
import { layer } from "./layer.ts";
import { textWidth } from "./textWidth.ts";
import { LINE, pathThrough, splitAtGaps, THIN_LINE, thinSeries } from "./thinSeries.ts";
import { paddedSpan, valueTicks } from "./ticks.ts";

const HOUR = 3_600_000;

export interface Probe {
  readonly name: string;
  readonly role: string;
  /** Width of its line, px, as `styles/figures.css` draws the role. */
  readonly lineWidth: number;
  readonly values: Float64Array;
}

/** The probes that read anything, hottest air first. */
export function probesOf(curve: KilnCurve): readonly Probe[] {
  return [
    { name: "air on", role: "kiln thin", lineWidth: THIN_LINE, values: curve.airOnCelsius },
    { name: "bed", role: "dashed", lineWidth: LINE, values: curve.bedCelsius },
    { name: "air off", role: "ink", lineWidth: LINE, values: curve.airOffCelsius },
  ].filter(({ values }) => values.some(Number.isFinite));
}

/** Lowest and highest reading and how long after loading, for the table: one row a probe. */
function probeRow(probe: Probe, curve: KilnCurve, load: LoadRow, { units }: FigureSettings) {
  let [lowest, highest] = [-1, -1];
  probe.values.forEach((value, i) => {
    if (!Number.isFinite(value)) return;
    if (lowest < 0 || value < (probe.values[lowest] ?? 0)) lowest = i;
    if (highest < 0 || value > (probe.values[highest] ?? 0)) highest = i;
  });
  const said = (i: number): string => print(probe.values[i] ?? 0, "temperature", units, { bare: true });
  const after = (i: number): string =>
    print(((curve.at[i] ?? 0) - load.loadedAt) / HOUR, "hours", units, { bare: true });
  return [probe.name, said(lowest), after(lowest), said(highest), after(highest)] as const;
}

/**
 * The kiln logger's readings over one load: air on, air off and bed over elapsed hours, with the set points and the
 * start of the cure. Thinned to what a pixel can show; gaps in the readings stay gaps.
 *
 * @param abreast for a run that was split over loads: two curves side by side, each drawn once, at a phone's width
 * @returns null where no probe read anything between loading and unloading.
 */
export function kilnCurveFigure(
  curve: KilnCurve,
  load: LoadRow,
  settings: FigureSettings,
  abreast = false,
): FigureSpec | null {
  const probes = probesOf(curve);
  if (probes.length === 0) return null;
  const { units, timeZone } = settings;
  const shown = (celsius: number): number => toShown(celsius, "temperature", units);
  const elapsed = (instant: number): number => (instant - load.loadedAt) / HOUR;
  const hours = Float64Array.from(curve.at, elapsed);
  const end = elapsed(load.unloadedAt ?? curve.at.at(-1) ?? load.loadedAt);
  const cure = load.cureStartedAt === null ? null : elapsed(load.cureStartedAt);
  const setPoints = [
    { name: "drying set", celsius: load.dryingSetCelsius, from: 0, to: cure ?? end },
    {
      name: "cure set",
      celsius: load.cureSetCelsius,
      from: cure ?? end,
      to: load.heatOffAt ? elapsed(load.heatOffAt) : end,
    },
  ].flatMap((set) => (set.celsius === null || set.to <= set.from ? [] : [{ ...set, at: shown(set.celsius) }]));
  const series = probes.map((probe) => ({ ...probe, parts: splitAtGaps(hours, probe.values.map(shown)) }));

  const options = (frame: Frame): PlotOptions => {
    const size = textSize(frame);
    const all = series.flatMap((s) => s.parts.flatMap((part) => part.map((p) => p.y)));
    const y = paddedSpan([...all, ...setPoints.map((s) => s.at)], 0.06);
    const down = valueTicks(y[0], y[1], frame.narrow ? 4 : 6);
    const x = [Math.min(0, hours[0] ?? 0), Math.max(end, hours.at(-1) ?? 0)] as const;
    const across = valueTicks(x[0], x[1], frame.narrow ? 5 : 9);
    const names = Math.max(...probes.map(({ name }) => textWidth(name, size, 600))) + 14;
    const marks: Markish[] = [
      valueAxis(down, `temperature, ${shownAs("temperature", units).unit}`, size),
      footAxis(across, size, { title: "hours since loading" }),
      layer("limit", ({ x: at, y: up, pen }) =>
        setPoints.map((set) => pen.element("path", { d: `M${at(set.from)},${up(set.at)}H${at(set.to)}` })),
      ),
      layer("events", ({ x: at, inside, pen }) =>
        cure === null
          ? []
          : [pen.element("path", { class: "event", d: `M${at(cure)},${inside.top - 4}V${inside.bottom}` })],
      ),
      // The quietest line first, so that the cycling air on does not cover it.
      ...[...series].reverse().map((s) =>
        layer(`line ${s.role}`, ({ x: at, y: up, pen }) => [
          pen.element("path", {
            d: s.parts
              .map((part) =>
                pathThrough(
                  thinSeries(
                    part.map((p) => ({ x: at(p.x), y: up(p.y) })),
                    s.lineWidth,
                  ),
                ),
              )
              .join(""),
          }),
        ]),
      ),
      curveNames(series, size),
      labelLayer({
        size,
        lines: series.flatMap((s) => s.parts),
        ...(cure === null ? {} : { uprights: [cure] }),
        labels: [
          ...setPoints.map(
            (set): Label => ({
              x: set.from + (set.to - set.from) * 0.5,
              y: set.at,
              prefer: 270,
              role: "soft",
              lines: [{ text: `${set.name} ${print(set.celsius ?? 0, "temperature", units, { decimals: 0 })}` }],
            }),
          ),
          ...(cure === null || load.cureStartedAt === null
            ? []
            : [
                {
                  x: cure,
                  y: y[0] + (y[1] - y[0]) * 0.05,
                  prefer: 0,
                  priority: 2,
                  role: "soft",
                  lines: [{ text: `cure from ${printClock(load.cureStartedAt, timeZone)}` }],
                },
              ]),
        ],
      }),
    ];
    return {
      height: frame.narrow ? 280 : 360,
      marginTop: Math.round(size * 1.9),
      marginRight: names,
      marginBottom: footHeight(across, size, true),
      marginLeft: valueAxisWidth(down, size),
      x: { domain: x },
      y: { domain: y },
      marks,
    };
  };

  return {
    id: `kiln-curve-${load.load.replace(/[^A-Za-z0-9-]/g, "_")}`,
    title: abreast ? `In the kiln: load ${load.load}` : "In the kiln",
    summary: curveSentence(curve, load, settings, probes),
    table: curveTable(probes, curve, load, settings),
    wideWidth: abreast ? narrowWidth : fullWidth,
    narrowWidth,
    printAs: abreast ? "narrow" : "wide",
    options,
  };
}

function curveTable(probes: readonly Probe[], curve: KilnCurve, load: LoadRow, settings: FigureSettings): DataTable {
  const { unit } = shownAs("temperature", settings.units);
  return {
    columns: [
      { label: "probe", numeric: false },
      { label: "lowest", unit, numeric: true },
      { label: "after", unit: "h", numeric: true },
      { label: "highest", unit, numeric: true },
      { label: "after", unit: "h", numeric: true },
    ],
    rows: probes.map((probe) => probeRow(probe, curve, load, settings)),
  };
}

function curveSentence(
  curve: KilnCurve,
  load: LoadRow,
  { units, timeZone }: FigureSettings,
  probes: readonly Probe[],
): string {
  const hottest = Math.max(...curve.airOnCelsius.filter(Number.isFinite));
  const airOn = Number.isFinite(hottest) ? ` Air on went up to ${print(hottest, "temperature", units)}.` : "";
  const taken = load.kilnHours === null ? "still in the kiln" : `${print(load.kilnHours, "hours", units)} in the kiln`;
  const cure = load.dryingHours === null ? "" : `, the cure begun after ${print(load.dryingHours, "hours", units)}`;
  const silent = 3 - probes.length;
  const missing = silent === 0 ? "" : ` ${silent === 1 ? "One probe was" : "Two probes were"} silent.`;
  return `Loaded ${printMoment(load.loadedAt, timeZone)}, ${taken}${cure}.${airOn}${missing}`;
}
