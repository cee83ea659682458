import type { Markish } from "@observablehq/plot";
import type { Capability, ControlChart } from "../../report/controlChartResult.ts";
import { printNumber } from "../../units/print.ts";
import { footAxis, footHeight } from "../axes.ts";
import { type FigureSettings, halfWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { lineHeight } from "../labelLayer.ts";
import { layer, type Sheet } from "../layer.ts";
import { countOf } from "../listedRows.ts";
import { dotRadius } from "../scatter.ts";
import { textWidth } from "../textWidth.ts";
import { paddedSpan, roundStep, valueTicks } from "../ticks.ts";
import { type ChartWords, chartWords } from "./chartWords.ts";
import { columnMarks, columnsOf } from "./stackedDots.ts";

/** Height of the dots of one variety, px. */
const STRIP = 74;
const COLUMNS = 40;

/** One variety's batches counted on both sides of its specification. */
interface Row extends Capability {
  readonly values: readonly number[];
  readonly below: number;
  readonly above: number;
}

/**
 * The batches of each variety against its specification: a dot a batch on one scale, the lowest and highest accepted and
 * the target as upright lines, and how many lie beyond in words.
 *
 * @returns null where no variety has a specification
 */
export function capabilityFigure(chart: ControlChart, settings: FigureSettings): FigureSpec | null {
  const words = chartWords(chart, settings);
  const rows = chart.capability.flatMap((own): Row[] => {
    const values = chart.runs.filter((run) => run.variety === own.variety).map((run) => run.value);
    if (values.length === 0) return [];
    const below = values.filter((value) => own.low !== null && value < own.low).length;
    const above = values.filter((value) => own.high !== null && value > own.high).length;
    return [{ ...own, values, below, above }];
  });
  if (rows.length === 0) return null;
  const spec = rows.flatMap(({ low, target, high }) => [low ?? [], target ?? [], high ?? []].flat());
  const all = rows.flatMap(({ values }) => values);

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const x = paddedSpan([...all, ...spec], 0.06, 10 ** -words.decimals * 4);
    const across = valueTicks(x[0], x[1], frame.narrow ? 5 : 7);
    const step = Math.max(roundStep(x[0], x[1], COLUMNS), chart.assumptions?.coarseStep ?? readToTenths(all));
    const line = lineHeight(size);
    const pitch = 2 * line + STRIP + 18;
    const marks: Markish[] = [
      footAxis(across, size, { title: `${words.measure}, %` }),
      layer("strips", (sheet) =>
        rows.flatMap((row, i) => stripOf(row, sheet, { top: i * pitch, step, size, frame, words })),
      ),
    ];
    const marginBottom = footHeight(across, size, true);
    return {
      height: rows.length * pitch + marginBottom,
      marginTop: 4,
      marginRight: 4,
      marginBottom,
      marginLeft: 4,
      x: { domain: x },
      marks,
    };
  };

  return {
    id: `${words.id}-specification`,
    title: `Does the ${words.measure} meet its specification?`,
    summary: rows.map((row) => rowSaid(row, words)).join(" "),
    table: {
      columns: [
        { label: "variety", numeric: false },
        { label: "batches", numeric: true },
        { label: "lowest", unit: "%", numeric: true },
        { label: "target", unit: "%", numeric: true },
        { label: "highest", unit: "%", numeric: true },
        { label: "below", numeric: true },
        { label: "above", numeric: true },
        { label: "expected outside", unit: "%", numeric: true },
        { label: "Cpk, 95 % interval", numeric: true },
      ],
      rows: rows.map((row) => [
        row.variety,
        String(row.values.length),
        ...[row.low, row.target, row.high].map((value) => (value === null ? "" : words.bareValue(value))),
        String(row.below),
        String(row.above),
        `${printNumber(row.expectedOutsidePercent.estimate, 1)} (${printNumber(row.expectedOutsidePercent.low, 1)} to ${printNumber(row.expectedOutsidePercent.high, 1)})`,
        row.cpk === null
          ? ""
          : `${printNumber(row.cpk.estimate, 2)} (${printNumber(row.cpk.low, 2)} to ${printNumber(row.cpk.high, 2)})`,
      ]),
    },
    wideWidth: halfWidth,
    narrowWidth,
    printAs: "narrow",
    options,
  };
}

/** Values that were all written to a tenth are not to be parted finer. */
const readToTenths = (values: readonly number[]): number =>
  values.every((value) => Math.abs(value * 10 - Math.round(value * 10)) < 1e-6) ? 0.1 : 0;

interface StripOptions {
  readonly top: number;
  readonly step: number;
  readonly size: number;
  readonly frame: Frame;
  readonly words: ChartWords;
}

/** Name, lines of the specification with what lies beyond them in words, and the dots. */
function stripOf(row: Row, { x, inside, pen }: Sheet, { top, step, size, frame, words }: StripOptions): SVGElement[] {
  const line = lineHeight(size);
  const wordsAt = top + 2 * line;
  const foot = top + 2 * line + 8 + STRIP;
  const radius = dotRadius(frame);
  const edges = [row.low, row.high].flatMap((value) => value ?? []);
  const text = (at: number, y: number, said: string, className: string): SVGElement =>
    pen.element("text", { class: className, x: at, y, "text-anchor": "start" }, [said]);
  // Left of the lowest accepted, right of the highest, over the target; pushed in at the edges of the drawing.
  const within = (left: number, wide: number): number => Math.min(Math.max(left, inside.left), inside.right - wide);
  const beyond = [
    row.low === null ? null : { at: x(row.low), said: `${row.below} below ${words.bareValue(row.low)}`, left: true },
    row.high === null
      ? null
      : { at: x(row.high), said: `${row.above} above ${words.bareValue(row.high)}`, left: false },
  ].flatMap((label) => {
    if (label === null) return [];
    const wide = textWidth(label.said, size);
    return [{ ...label, from: within(label.left ? label.at - wide + 2 : label.at - 2, wide), wide }];
  });
  const drawn = [
    text(inside.left, top + size, `${row.variety}, ${countOf(row.values.length, "batch")}`, "name strong"),
    pen.element("path", { class: "foot", d: `M${inside.left},${foot}H${inside.right}` }),
    pen.element("path", { class: "limit", d: edges.map((edge) => `M${x(edge)},${wordsAt + 5}V${foot}`).join("") }),
    columnMarks(columnsOf(row.values, step, edges, x, radius + 1.5), { foot: foot - 1, height: STRIP, radius, pen }),
    ...beyond.map(({ from, said }) => text(from, wordsAt, said, "label soft")),
  ];
  if (row.target !== null) {
    const said = `target ${words.bareValue(row.target)}`;
    const wide = textWidth(said, size);
    const from = within(x(row.target) - wide / 2, wide);
    drawn.push(pen.element("path", { class: "rule centre", d: `M${x(row.target)},${wordsAt + 5}V${foot}` }));
    const taken = beyond.some((label) => from < label.from + label.wide + 8 && label.from < from + wide + 8);
    // Where the words of the limits leave no room the target is named beside the variety's name.
    const name = textWidth(`${row.variety}, ${countOf(row.values.length, "batch")}`, size, 600);
    drawn.push(
      taken
        ? text(within(Math.max(from, inside.left + name + 12), wide), top + size, said, "label ink")
        : text(from, wordsAt, said, "label ink"),
    );
  }
  return drawn;
}

/** `Alva: 5 of 90 batches outside 4.0 to 5.0 %, 3.1 in 100 expected.`: intervals and Cpk stand in the table. */
function rowSaid(row: Row, words: ChartWords): string {
  const { low, high, expectedOutsidePercent: expected } = row;
  const range =
    low !== null && high !== null
      ? `outside ${words.bareValue(low)} to ${words.value(high)}`
      : low !== null
        ? `below ${words.value(low)}`
        : `above ${words.value(high ?? Number.NaN)}`;
  const share = `${printNumber(expected.estimate, 1)} in 100 expected`;
  return `${row.variety}: ${row.below + row.above} of ${countOf(row.values.length, "batch")} ${range}, ${share}.`;
}
