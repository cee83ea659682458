import type { Markish } from "@observablehq/plot";
import type { HoldJudgement, KilnThermostat } from "../../report/thermostatResult.ts";
import { printDate } from "../../units/instant.ts";
import { shownAs } from "../../units/quantity.ts";
import { footAxis, footHeight } from "../axes.ts";
import { type DatedEvent, eventMarks, eventRows } from "../eventMarks.ts";
import { type FigureSettings, fullWidth, narrowWidth } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { latestFirst } from "../listedRows.ts";
import { loadCell, loadHref } from "../loadPoints.ts";
import { scatter } from "../scatter.ts";
import { beganWords } from "./beganWords.ts";
import { degreeWords } from "./degreeWords.ts";
import { nameInId } from "./nameInId.ts";
import { ownStripAxes, ownStrips, stripScale } from "./ownStrips.ts";
import { measureSentence, measureWords, RISE, SWING } from "./riseAndSwing.ts";
import { thermostatFrame } from "./thermostatFrame.ts";

/**
 * How far air on swings in each load's cycles and how fast it rises at full power, in two strips on the time axis of
 * `offsetsFigure`, which they stand beneath: worn contacts widen the swing, a weak heater or fan slows or hastens the
 * rise.
 *
 * @returns null where no load has either
 */
export function swingAndRiseFigure(
  judgement: HoldJudgement,
  { kiln }: KilnThermostat,
  settings: FigureSettings,
): FigureSpec | null {
  const { timeZone, units } = settings;
  const { unit } = shownAs("temperatureDifference", units);
  const measures = [SWING, RISE].filter(({ kelvinOf }) => judgement.points.some((point) => kelvinOf(point) !== null));
  if (measures.length === 0) return null;
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
        values,
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
            hint: () =>
              `${point.runs.join(", ")}, ${printDate(point.at, timeZone)}: ${measure.name} ${measureWords(measure, kelvin, settings)}`,
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
    id: `thermostat-swing-${judgement.hold}-${nameInId(kiln)}`,
    title: "Do swing and rise hold?",
    summary: measures.map((measure) => measureSentence(measure, judgement, settings)).join(" "),
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
