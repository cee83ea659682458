import type { Markish } from "@observablehq/plot";
import type { LoadRow } from "../report/loadRow.ts";
import type { KilnCurve } from "../report/runPageResult.ts";
import { print, printNumber } from "../units/print.ts";
import { fromShown, shownAs, toShown } from "../units/quantity.ts";
import type { UnitSystem } from "../units/unitSystem.ts";
import { footAxis, valueAxis } from "./axes.ts";
import type { StoryRun } from "./batchStages.ts";
import { curveNames } from "./curveNames.ts";
import { type FigureSettings, textSize } from "./figureSettings.ts";
import type { Frame } from "./figureSpec.ts";
import { probesOf } from "./kilnCurveFigure.ts";
import { type Label, labelLayer } from "./labelLayer.ts";
import { layer } from "./layer.ts";
import { textWidth } from "./textWidth.ts";
import { pathThrough, splitAtGaps, thinSeries } from "./thinSeries.ts";
import { paddedSpan, type Tick, valueTicks } from "./ticks.ts";

const HOUR = 3_600_000;

export type StoryLoad = Pick<LoadRow, "heatOffAt" | "dryingSetCelsius" | "cureSetCelsius">;

/** Both unit systems on one axis: `40 (104)`. */
function bothDegrees(units: UnitSystem): (value: number, decimals: number) => string {
  const other = units === "metric" ? "us" : "metric";
  return (value, decimals) => {
    const said = toShown(fromShown(value, "temperature", units), "temperature", other);
    return `${printNumber(value, decimals)} (${printNumber(said, 0)})`;
  };
}

/** A batch as its story needs it; without readings the curve is null. */
export interface Story {
  readonly run: StoryRun;
  readonly load: StoryLoad | null;
  readonly curve: KilnCurve | null;
}

/** The kiln's part of the drawing, and the room it needs. */
export interface StoryCurve {
  readonly marks: readonly Markish[];
  readonly across: readonly Tick[];
  readonly down: readonly Tick[];
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  /** Width of the probes' names at the right, px. */
  readonly names: number;
}

/** The curve of the kiln's readings over hours since loading, with the set points and the start of the cure. */
export function storyCurve(
  { run, load, curve }: Story,
  frame: Frame,
  { units }: Pick<FigureSettings, "units">,
): StoryCurve | null {
  if (curve === null || run.loadedAt === null || run.unloadedAt === null) return null;
  const probes = probesOf(curve);
  if (probes.length === 0) return null;
  const size = textSize(frame);
  const loadedAt = run.loadedAt;
  const shown = (celsius: number): number => toShown(celsius, "temperature", units);
  const elapsed = (at: number): number => (at - loadedAt) / HOUR;
  const hours = Float64Array.from(curve.at, elapsed);
  const end = elapsed(run.unloadedAt);
  const cure = run.cureStartedAt === null ? null : elapsed(run.cureStartedAt);
  const series = probes.map((probe) => ({ ...probe, parts: splitAtGaps(hours, probe.values.map(shown)) }));
  const sets = [
    { name: "drying set", celsius: load?.dryingSetCelsius ?? null, from: 0, to: cure ?? end },
    {
      name: "cure set",
      celsius: load?.cureSetCelsius ?? null,
      from: cure ?? end,
      to: typeof load?.heatOffAt === "number" ? elapsed(load.heatOffAt) : end,
    },
  ].flatMap((set) => (set.celsius === null || set.to <= set.from ? [] : [{ ...set, celsius: set.celsius }]));
  const y = paddedSpan(
    [...series.flatMap((s) => s.parts.flat().map((p) => p.y)), ...sets.map((s) => shown(s.celsius))],
    0.06,
  );
  const across = valueTicks(0, Math.max(end, hours.at(-1) ?? 0), frame.narrow ? 5 : 9);
  const down = valueTicks(y[0], y[1], frame.narrow ? 4 : 6, bothDegrees(units));
  const other = units === "metric" ? "us" : "metric";
  const degrees = (system: UnitSystem): string => shownAs("temperature", system).unit;
  const both = (celsius: number): string =>
    `${print(celsius, "temperature", units, { decimals: 0 })} (${print(celsius, "temperature", other, { decimals: 0 })})`;
  const marks: Markish[] = [
    valueAxis(down, "", size),
    footAxis(across, size, { title: `hours since loading; temperature, ${degrees(units)} (${degrees(other)})` }),
    layer("limit", ({ x, y: up, pen }) =>
      sets.map((set) => pen.element("path", { d: `M${x(set.from)},${up(shown(set.celsius))}H${x(set.to)}` })),
    ),
    layer("events", ({ x, inside, pen }) =>
      cure === null ? [] : [pen.element("path", { class: "event", d: `M${x(cure)},${inside.top}V${inside.bottom}` })],
    ),
    ...series.toReversed().map((s) =>
      layer(`line ${s.role}`, ({ x, y: up, pen }) => [
        pen.element("path", {
          d: s.parts
            .map((part) =>
              pathThrough(
                thinSeries(
                  part.map((p) => ({ x: x(p.x), y: up(p.y) })),
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
        ...sets.map(
          (set): Label => ({
            x: (set.from + set.to) / 2,
            y: shown(set.celsius),
            prefer: 270,
            role: "soft",
            lines: [{ text: `${set.name} ${both(set.celsius)}` }],
          }),
        ),
        ...(cure === null
          ? []
          : [
              {
                x: cure,
                y: y[0] + (y[1] - y[0]) * 0.05,
                prefer: 0,
                priority: 2,
                role: "soft",
                lines: [{ text: "cure" }],
              },
            ]),
      ],
    }),
  ];
  const names = Math.max(...probes.map(({ name }) => textWidth(name, size, 600))) + 14;
  return { marks, across, down, y, x: [0, Math.max(end, hours.at(-1) ?? 0)] as const, names };
}
