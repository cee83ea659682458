import type { Markish, RenderFunction } from "@observablehq/plot";
import type { HoldJudgement, OffsetPoint } from "../../report/thermostatResult.ts";
import { printDate } from "../../units/instant.ts";
import { shownAs } from "../../units/quantity.ts";
import { footAxis, footHeight } from "../axes.ts";
import { type DatedEvent, eventMarks, eventRows } from "../eventMarks.ts";
import { type FigureSettings, fullWidth, narrowWidth } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { layer } from "../layer.ts";
import { countOf, latestFirst } from "../listedRows.ts";
import { loadCell, loadHref } from "../loadPoints.ts";
import { scatter } from "../scatter.ts";
import { degreeWords } from "./degreeWords.ts";
import { ownStripAxes, ownStrips, stripScale } from "./ownStrips.ts";
import { type ThermostatFrame, thermostatFrame } from "./thermostatFrame.ts";

/** One of the two measures: what it is called and what a load has of it. */
interface Measure {
  readonly name: string;
  readonly kelvinOf: (point: OffsetPoint) => number | null;
  readonly decimals: number;
  readonly after: string;
  /** Kelvins that the strip spans at least. */
  readonly least: number;
  readonly fromZero: boolean;
}

const SWING: Measure = {
  name: "swing",
  kelvinOf: (point) => point.swingKelvin,
  decimals: 1,
  after: "",
  least: 1,
  fromZero: true,
};
const RISE: Measure = {
  name: "rise at full power",
  kelvinOf: (point) => point.riseKelvinPerMinute,
  decimals: 2,
  after: " a minute",
  least: 0.4,
  fromZero: true,
};

/**
 * How far air on swings in each load's cycles and how fast it rises at full power, in two strips on the time axis of
 * `offsetsFigure`, which they stand beneath: worn contacts widen the swing, a weak heater or fan slows or hastens the
 * rise.
 *
 * @returns null where no load has either
 */
export function swingAndRiseFigure(judgement: HoldJudgement, settings: FigureSettings): FigureSpec | null {
  const { timeZone, units } = settings;
  const { unit } = shownAs("temperatureDifference", units);
  const measures = [SWING, RISE].filter(({ kelvinOf }) => judgement.points.some((point) => kelvinOf(point) !== null));
  if (measures.length === 0) return null;
  const said = (measure: Measure, kelvin: number): string =>
    `${degreeWords(settings, measure.decimals).size(kelvin)}${measure.after}`;
  const events = judgement.stretches.flatMap(({ event }): DatedEvent[] => (event === null ? [] : [event]));

  const options = (frame: Frame) => {
    const shared = thermostatFrame(judgement, settings, frame);
    const { size, x, months } = shared;
    const shown = events.filter(({ on }) => on >= x[0] && on <= x[1]);
    const head = eventRows(shown, frame) * size * 1.3;
    const { shown: toDegrees } = degreeWords(settings);
    const seen = judgement.points.filter(({ at }) => at >= x[0] && at <= x[1]);
    const drawn = measures.flatMap((measure) => {
      const values = seen.flatMap((point) => measure.kelvinOf(point) ?? []).map(toDegrees);
      return values.length === 0 ? [] : [{ measure, values }];
    });
    const { strips, inner } = ownStrips(
      drawn.map(({ measure, values }) => ({
        name: `${measure.name}, ${unit}${measure.after}`,
        values: measure.fromZero ? [0, ...values] : values,
        least: toDegrees(measure.least),
      })),
      { height: frame.narrow ? 70 : 84, size, count: 3 },
    );
    const points = drawn.flatMap(({ measure }, row) =>
      seen.flatMap((point) => {
        const kelvin = measure.kelvinOf(point);
        const strip = strips[row];
        if (kelvin === null || !strip) return [];
        return [
          {
            x: point.at,
            y: strip.heightOf(toDegrees(kelvin)),
            href: loadHref(point.runs, point.load, settings),
            hint: `${point.runs.join(", ")}, ${printDate(point.at, timeZone)}: ${measure.name} ${said(measure, kelvin)}`,
          },
        ];
      }),
    );
    const marks: Markish[] = [
      ownStripAxes(strips, size),
      footAxis(months, size),
      eventMarks(shown, frame),
      scatter(points, frame),
      ...beganWords(shared, settings),
    ];
    const marginTop = Math.round(head + 4);
    const marginBottom = footHeight(months, size);
    return {
      height: inner + marginTop + marginBottom,
      marginTop,
      marginRight: shared.right,
      marginBottom,
      marginLeft: shared.left,
      x: { domain: x },
      y: { domain: stripScale(inner) },
      marks,
    };
  };

  const rows = judgement.points.filter((point) => measures.some(({ kelvinOf }) => kelvinOf(point) !== null));
  return {
    id: `thermostat-swing-${judgement.hold}`,
    title: "Do swing and rise hold?",
    summary: measures.map((measure) => measureSaid(measure, judgement, said)).join(" "),
    table: latestFirst(
      rows,
      "load",
      [
        { label: "run", numeric: false },
        { label: "loaded", numeric: false },
        ...measures.map(({ name, after }) => ({ label: name, unit: `${unit}${after}`, numeric: true })),
      ],
      (point) => [
        loadCell(point.runs, point.load, settings),
        printDate(point.at, timeZone),
        ...measures.map(({ kelvinOf, decimals }) => {
          const kelvin = kelvinOf(point);
          return kelvin === null ? "" : degreeWords(settings, decimals).bareSize(kelvin);
        }),
      ],
    ),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}

/** The span of the latest stretch, and that of the loads before it, since one shows whether the other moved. */
function measureSaid(
  measure: Measure,
  { points, stretches }: HoldJudgement,
  said: (measure: Measure, kelvin: number) => string,
): string {
  const latest = stretches.length - 1;
  const spanOf = (held: readonly OffsetPoint[]): string | null => {
    const values = held.flatMap((point) => measure.kelvinOf(point) ?? []);
    if (values.length === 0) return null;
    const [low, high] = [Math.min(...values), Math.max(...values)];
    const [least, most] = [said(measure, low), said(measure, high)];
    return least === most
      ? `${least} (${countOf(values.length, "load")})`
      : `${least} to ${most} (${countOf(values.length, "load")})`;
  };
  const now = spanOf(points.filter((point) => point.stretch === latest));
  const before = spanOf(points.filter((point) => point.stretch < latest));
  const without = points.filter((point) => measure.kelvinOf(point) === null).length;
  const name = `${measure.name.charAt(0).toUpperCase()}${measure.name.slice(1)}`;
  const since = latest > 0 ? " since the last calibration or repair" : "";
  const lacking = without === 0 ? "" : `; ${countOf(without, "load")} without`;
  if (now === null) return `${name}: ${before} before the last calibration or repair, none since.`;
  return `${name}${since}: ${now}${before === null ? "" : `; before: ${before}`}${lacking}.`;
}

/** Where earlier loads are left out, from when the drawing runs. */
export function beganWords({ cut, x, size }: ThermostatFrame, { timeZone }: FigureSettings): readonly RenderFunction[] {
  if (!cut) return [];
  return [
    layer("began", ({ width, pen }) => [
      pen.element("text", { class: "label soft", x: width, y: size, "text-anchor": "end" }, [
        `from ${printDate(x[0], timeZone)}`,
      ]),
    ]),
  ];
}
