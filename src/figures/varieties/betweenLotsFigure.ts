import type { Interval } from "../../analysis/regressionFit.ts";
import type { SpreadSplit } from "../../report/varietiesResult.ts";
import { maltMeasure, measureWithUnit, printMeasureDifference } from "../../units/maltMeasure.ts";
import { printNumber } from "../../units/print.ts";
import { footAxis, footHeight } from "../axes.ts";
import { listed } from "../controlCharts/chartWords.ts";
import { type FigureSettings, fullWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { lineHeight } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { fitText, textWidth } from "../textWidth.ts";
import { valueTicks } from "../ticks.ts";
import { intervalMark, wordsAt } from "./intervalMark.ts";

/**
 * How much of each measure's variance lies from lot to lot rather than from batch to batch of one lot, with 95 % intervals.
 *
 * @returns null where no measure has enough lots
 */
export function betweenLotsFigure(splits: readonly SpreadSplit[], settings: FigureSettings): FigureSpec | null {
  const rows = splits.flatMap(({ measure, shareBetween, betweenLots, withinLots, lots }) =>
    shareBetween === null || betweenLots === null || withinLots === null
      ? []
      : [{ measure: maltMeasure(measure), share: shareBetween, betweenLots, withinLots, lots: lots.length }],
  );
  if (rows.length === 0) return null;
  const percent = (share: number): string => printNumber(100 * share, 0);
  // An interval that closes at 0 is no certainty: the lots lie closer together than it allows for.
  const withRange = (share: Interval, unit = ""): string =>
    percent(share.high) === "0"
      ? "none seen"
      : `${percent(share.estimate)}${unit} (${percent(share.low)} to ${percent(share.high)})`;

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const line = lineHeight(size) + 4;
    // On a phone a measure's name stands above its line.
    const head = frame.narrow ? line - 4 : 0;
    const ticks = valueTicks(0, 100, 5);
    const names = Math.ceil(Math.max(...rows.map(({ measure }) => textWidth(measure.words, size)))) + 16;
    const marginBottom = footHeight(ticks, size, true);
    const marginLeft = frame.narrow ? 8 : Math.min(names, 230);
    return {
      height: rows.length * (line + head) + 6 + marginBottom,
      marginTop: 4,
      marginRight: Math.ceil(textWidth("100 (100 to 100)", size)) + 16,
      marginBottom,
      marginLeft,
      x: { domain: [0, 100] },
      marks: [
        layer("grid", ({ x, inside, pen }) => [
          pen.element("path", {
            class: "grid",
            d: ticks.map(({ at }) => `M${x(at)},${inside.top}V${inside.bottom}`).join(""),
          }),
        ]),
        footAxis(ticks, size, { title: "% of the variance between lots" }),
        layer("shares-between", ({ x, inside, pen }) =>
          rows.flatMap(({ measure, share }, i) => {
            const { estimate, low, high } = share;
            const top = 4 + i * (line + head);
            const y = top + head + line / 2;
            return [
              wordsAt(pen, fitText(measure.words, frame.narrow ? frame.width : marginLeft - 10, size), {
                x: 0,
                y: frame.narrow ? top + size : y + size * 0.34,
                role: "label ink",
              }),
              ...intervalMark({ at: x(100 * estimate), y, low: x(100 * low), high: x(100 * high), form: "dot" }, pen),
              wordsAt(pen, withRange(share), {
                x: inside.right + 12,
                y: y + size * 0.34,
                role: "label ink",
              }),
            ];
          }),
        ),
      ],
    };
  };

  const { units } = settings;
  const most = rows
    .filter(({ share }) => share.estimate > 0.5)
    .map(({ measure, share }) => `${measure.words}, ${withRange(share, "\u00a0%")}`);
  return {
    id: "between-lots",
    title: "From lot to lot, or from batch to batch?",
    summary:
      most.length === 0
        ? "In no measure does most of the variance lie between lots: it lies from batch to batch of one lot."
        : `Most of the variance lies between lots in ${listed(most)}; of the others it lies from batch to batch of one lot.`,
    table: {
      columns: [
        { label: "measure", numeric: false },
        { label: "lots", numeric: true },
        { label: "between lots, 95\u00a0% interval", numeric: true },
        { label: "within lots, 95\u00a0% interval", numeric: true },
        { label: "share between, 95\u00a0% interval", unit: "%", numeric: true },
      ],
      rows: rows.map(({ measure, share, betweenLots, withinLots, lots }) => {
        const spread = (value: number): string => printMeasureDifference(measure, value, units, { bare: true });
        return [
          measureWithUnit(measure, units),
          printNumber(lots, 0),
          ...[betweenLots, withinLots].map(
            ({ estimate, low, high }) => `${spread(estimate)} (${spread(low)} to ${spread(high)})`,
          ),
          withRange(share),
        ];
      }),
    },
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}
