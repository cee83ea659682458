import type { Markish } from "@observablehq/plot";
import { printNumber } from "../../units/print.ts";
import { shownAs } from "../../units/quantity.ts";
import { footAxis, footHeight } from "../axes.ts";
import { capitalised } from "../controlCharts/chartWords.ts";
import { endLabels } from "../controlCharts/endLabels.ts";
import { type FigureSettings, fullWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { type Label, labelLayer } from "../labelLayer.ts";
import { countOf } from "../listedRows.ts";
import { dotRadius, MOST_LINKED_MARKS, MOST_RINGS, ringRadius, rings, scatter } from "../scatter.ts";
import { textWidth } from "../textWidth.ts";
import { ownStripAxes, ownStrips, stripScale } from "../thermostat/ownStrips.ts";
import { paddedSpan } from "../ticks.ts";
import { dayTicks, monthTicks } from "../timeTicks.ts";
import { bandMarks, limitNames, spanOf } from "./acceptedBands.ts";
import { type BatchStrip, batchStrips, type MeasuredBatches } from "./batchStrips.ts";
import { inOrderTable } from "./inOrderTable.ts";

const DAY = 86_400_000;
/** A shorter time than this is told in days. */
const FEW_DAYS = 70;
/** The latest so many batches outside their band are named on each strip. */
const MOST_NAMED = 2;

interface InOrder {
  readonly id: string;
  readonly title: string;
  /** What the dates are of: `unloaded`, `tested`. */
  readonly dated: string;
}

/**
 * One variety's batches in order, a strip a measure on one time axis, each on its own scale with the band that is accepted;
 * batches outside their band are ringed, the latest named.
 *
 * @returns null where no measure has a value
 */
export function batchesInOrderFigure(
  measured: readonly MeasuredBatches[],
  settings: FigureSettings,
  { id, title, dated }: InOrder,
): FigureSpec | null {
  const strips = batchStrips(measured, settings);
  if (strips.length === 0) return null;
  const count = strips.reduce((sum, { batches }) => sum + batches.length, 0);

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const drawn = ownStrips(
      strips.map((strip) => ({ name: strip.name, values: spanOf(strip), least: leastOf(strip) })),
      { height: frame.narrow ? 66 : 72, size, count: 3 },
    );
    const x = paddedSpan(
      strips.flatMap(({ batches }) => batches.map(({ at }) => at)),
      0.015,
      14 * DAY,
    );
    const few = (x[1] - x[0]) / DAY < FEW_DAYS;
    const months = few
      ? dayTicks(x[0], x[1], frame.narrow ? 3 : 8, settings.timeZone)
      : monthTicks(x[0], x[1], frame.narrow ? 4 : 11, settings.timeZone);
    const marginBottom = footHeight(months, size);
    const values = drawn.strips.flatMap(({ ticks }) => ticks.map(({ label }) => textWidth(label, size)));
    const marginLeft = Math.ceil(Math.max(...values, 0)) + 12;
    const marginRight = frame.narrow
      ? Math.ceil(textWidth("target", size)) + 8
      : Math.ceil(textWidth("highest 00.00", size)) + 10;
    const points = strips.flatMap(({ batches }, i) =>
      batches.map((batch) => ({
        x: batch.at,
        y: drawn.strips[i]?.heightOf(batch.shown) ?? 0,
        href: settings.runHref(batch.run),
        hint: batch.hint,
        run: batch.run,
        outside: batch.outside,
        strip: i,
      })),
    );
    const outside = points.filter((point) => point.outside);
    const ringed = strips.flatMap((_, i) => outside.filter(({ strip }) => strip === i).slice(-MOST_RINGS));
    const labels = strips.flatMap((_, i) =>
      outside
        .filter(({ strip }) => strip === i)
        .slice(-MOST_NAMED)
        .map(
          (point): Label => ({
            x: point.x,
            y: point.y,
            reach: ringRadius(frame),
            role: "signal-words",
            farthest: 26,
            lines: [{ text: point.run }],
          }),
        ),
    );
    const marks: Markish[] = [
      ...bandMarks(strips, drawn.strips),
      ownStripAxes(drawn.strips, size),
      footAxis(months, size),
      scatter(points, frame, "mark-ink", { dense: count > MOST_LINKED_MARKS }),
      rings(ringed, frame),
      endLabels(limitNames(strips, drawn.strips, settings, frame), size),
      labelLayer({
        size,
        labels,
        marks: [
          ...points.map((p) => ({ ...p, radius: dotRadius(frame) })),
          ...ringed.map((p) => ({ ...p, radius: ringRadius(frame) + 1, hard: true })),
        ],
      }),
    ];
    return {
      height: drawn.inner + marginBottom,
      marginTop: 0,
      marginRight,
      marginBottom,
      marginLeft,
      x: { domain: x },
      y: { domain: stripScale(drawn.inner) },
      marks,
    };
  };

  return {
    id,
    title,
    summary: `${capitalised(strips.map(said).join("; "))}. Shaded: what is accepted.`,
    table: inOrderTable(strips, settings, dated),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}

/** `final moisture: 3 of 22 batches outside` */
function said({ measure, batches, low, high }: BatchStrip): string {
  const of = countOf(batches.length, "batch");
  if (low === null && high === null) return `${measure.words}: ${of}, no limit`;
  const outside = batches.filter((batch) => batch.outside).length;
  return `${measure.words}: ${outside === 0 ? "none" : printNumber(outside, 0)} of ${of} outside`;
}

/** A strip spans at least this much of its unit, so that rounding alone does not fill it. */
const leastOf = ({ measure: { quantity } }: BatchStrip): number => 4 * 10 ** -shownAs(quantity, "metric").decimals;
