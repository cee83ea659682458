import type { Markish } from "@observablehq/plot";
import { printDate } from "../../units/instant.ts";
import { printMeasure } from "../../units/maltMeasure.ts";
import { printNumber } from "../../units/print.ts";
import { fromShown, shownAs } from "../../units/quantity.ts";
import { footAxis, footHeight } from "../axes.ts";
import { capitalised, runCell } from "../controlCharts/chartWords.ts";
import { type EndLabel, endLabels } from "../controlCharts/endLabels.ts";
import { type FigureSettings, fullWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { DataTable, FigureSpec, Frame } from "../figureSpec.ts";
import { type Label, labelLayer } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { countOf, latestFirst } from "../listedRows.ts";
import { dotRadius, MOST_LINKED_MARKS, MOST_RINGS, ringRadius, rings, scatter } from "../scatter.ts";
import { textWidth } from "../textWidth.ts";
import { type OwnStrip, ownStripAxes, ownStrips, stripScale } from "../thermostat/ownStrips.ts";
import { paddedSpan } from "../ticks.ts";
import { dayTicks, monthTicks } from "../timeTicks.ts";
import { type BatchStrip, batchStrips, type MeasuredBatches } from "./batchStrips.ts";

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
    summary: `${capitalised(strips.map(said).join("; "))}. Washed: what is accepted.`,
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

const spanOf = ({ low, target, high, batches }: BatchStrip): readonly number[] => [
  ...batches.map(({ shown }) => shown),
  ...[low, target, high].filter((value) => value !== null),
];

/** A strip spans at least this much of its unit, so that rounding alone does not fill it. */
const leastOf = ({ measure: { quantity } }: BatchStrip): number => 4 * 10 ** -shownAs(quantity, "metric").decimals;

/** The accepted band of each strip, to the strip's own edge where one side has no limit; its limits and the target. */
function bandMarks(strips: readonly BatchStrip[], drawn: readonly OwnStrip[]): readonly Markish[] {
  const edges = strips.map((strip, i) => {
    const place = drawn[i];
    const values = spanOf(strip);
    const heights = values.map((value) => place?.heightOf(value) ?? 0);
    return {
      strip,
      heightOf: (value: number): number => place?.heightOf(value) ?? 0,
      top: Math.min(...heights) - 4,
      bottom: Math.max(...heights) + 4,
    };
  });
  return [
    layer("band", ({ inside, pen }) =>
      edges
        .filter(({ strip: { low, high } }) => low !== null || high !== null)
        .map(({ strip: { low, high }, heightOf, top, bottom }) => {
          const from = high === null ? top : heightOf(high);
          const to = low === null ? bottom : heightOf(low);
          return pen.element("rect", {
            x: inside.left,
            y: from,
            width: inside.right - inside.left,
            height: Math.max(to - from, 0),
          });
        }),
    ),
    layer("limit", ({ inside, pen }) => [
      pen.element("path", {
        d: edges
          .flatMap(({ strip: { low, high }, heightOf }) =>
            [low, high].flatMap((value) =>
              value === null ? [] : [`M${inside.left},${heightOf(value)}H${inside.right}`],
            ),
          )
          .join(""),
      }),
    ]),
    layer("rule centre", ({ inside, pen }) => [
      pen.element("path", {
        d: edges
          .flatMap(({ strip: { target }, heightOf }) =>
            target === null ? [] : [`M${inside.left},${heightOf(target)}H${inside.right}`],
          )
          .join(""),
      }),
    ]),
  ];
}

/** `highest 5.0`, `target 4.4` and `lowest 3.6` at the right end of each strip; without numbers on a phone. */
function limitNames(
  strips: readonly BatchStrip[],
  drawn: readonly OwnStrip[],
  { units }: FigureSettings,
  { narrow }: Frame,
): EndLabel[] {
  return strips.flatMap(({ measure, low, target, high }, i) => {
    const place = drawn[i];
    if (place === undefined) return [];
    const name = (words: string, value: number | null, role: EndLabel["role"]): EndLabel[] => {
      if (value === null) return [];
      const inside = fromShown(value, measure.quantity, units);
      return [
        {
          y: place.heightOf(value),
          role,
          rows: [narrow ? words : `${words} ${printMeasure(measure, inside, units, { bare: true })}`],
        },
      ];
    };
    return [
      ...name(narrow ? "high" : "highest", high, "soft"),
      ...name("target", target, "ink"),
      ...name(narrow ? "low" : "lowest", low, "soft"),
    ];
  });
}

/** All measures of a batch in one row. */
function inOrderTable(strips: readonly BatchStrip[], settings: FigureSettings, dated: string): DataTable {
  const { units, timeZone } = settings;
  const rows = new Map<string, { readonly run: string; readonly at: number; readonly shown: (number | null)[] }>();
  strips.forEach(({ batches }, i) => {
    for (const { run, at, shown } of batches) {
      const key = `${run} ${at}`;
      const row = rows.get(key) ?? { run, at, shown: strips.map(() => null) };
      row.shown[i] = shown;
      rows.set(key, row);
    }
  });
  const sorted = [...rows.values()].sort((a, b) => a.at - b.at || (a.run < b.run ? -1 : 1));
  return latestFirst(
    sorted,
    "batch",
    [
      { label: "batch", numeric: false },
      { label: dated, numeric: false },
      ...strips.map(({ name }) => ({ label: name, numeric: true })),
    ],
    ({ run, at, shown }) => [
      runCell(run, settings),
      printDate(at, timeZone),
      ...strips.map(({ measure: { quantity } }, i) => {
        const value = shown[i] ?? null;
        return value === null ? "" : printNumber(value, shownAs(quantity, units).decimals);
      }),
    ],
  );
}
