import type { PeriodComparison } from "../../report/varietiesResult.ts";
import {
  type MaltMeasure,
  maltMeasure,
  measureWithUnit,
  printMeasureDifference,
  printMeasureMean,
} from "../../units/maltMeasure.ts";
import { printNumber } from "../../units/print.ts";
import { toShown } from "../../units/quantity.ts";
import { type FigureSettings, fullWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { lineHeight } from "../labelLayer.ts";
import { layer, type Pen } from "../layer.ts";
import { countOf } from "../listedRows.ts";
import { fitText, textWidth } from "../textWidth.ts";
import { paddedSpan, valueTicks } from "../ticks.ts";
import { intervalMark, wordsAt } from "./intervalMark.ts";
import { onPaper, type Panel, panelGrid } from "./panelGrid.ts";

/** All varieties of one measure, on the measure's own scale about no change. */
interface Group {
  readonly measure: MaltMeasure;
  readonly rows: readonly PeriodComparison[];
}

const excludesZero = ({ difference: { low, high } }: PeriodComparison): boolean => low > 0 || high < 0;

/** Measures in the order in which they first come. */
function groupsOf(periods: readonly PeriodComparison[]): readonly Group[] {
  const names = [...new Set(periods.map(({ measure }) => measure))];
  return names.map((name) => ({
    measure: maltMeasure(name),
    rows: periods.filter(({ measure }) => measure === name),
  }));
}

/**
 * This quarter's means less the last quarter's, with 95 % intervals about no change: one small drawing a measure, each on
 * its own scale, a line a variety. Where the interval leaves out no change the point is ringed.
 *
 * @returns null where there is nothing to compare
 */
export function periodsFigure(periods: readonly PeriodComparison[], settings: FigureSettings): FigureSpec | null {
  const groups = groupsOf(periods);
  if (groups.length === 0) return null;

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const line = lineHeight(size) + 2;
    const columns = frame.narrow ? 1 : Math.min(2, groups.length);
    const heights = groups.map(({ rows }) => line * (rows.length + 2) + 18);
    const { panels, height } = panelGrid(heights, { width: frame.width, columns, gap: 44 });
    const names = Math.ceil(Math.max(...periods.map(({ variety }) => textWidth(variety, size)))) + 14;
    const left = Math.min(names, frame.narrow ? 110 : 150);
    return onPaper(frame.width, height, [
      layer("periods", ({ pen }) =>
        groups.flatMap((group, i) => {
          const panel = panels[i];
          return panel === undefined ? [] : panelOf(group, panel, { left, size, line, pen, settings });
        }),
      ),
    ]);
  };

  const moved = periods.filter(excludesZero);
  const { units } = settings;
  const value = (one: PeriodComparison, of: number): string =>
    printMeasureDifference(maltMeasure(one.measure), of, units, { bare: true, signed: true });
  const mean = (one: PeriodComparison, of: number): string =>
    printMeasureMean(maltMeasure(one.measure), of, units, { bare: true });
  return {
    id: "quarters-compared",
    title: "This quarter against the last",
    summary: `${moved.length === 0 ? "None" : printNumber(moved.length, 0)} of ${countOf(periods.length, "mean")} moved by more than its 95\u00a0% interval (ringed)${moved.length === 0 ? "" : `: ${moved.map((one) => `${one.variety}, ${maltMeasure(one.measure).words}`).join("; ")}`}. Right of the upright line: higher than in the quarter before.`,
    table: {
      columns: [
        { label: "variety", numeric: false },
        { label: "measure", numeric: false },
        { label: "quarter", numeric: false },
        { label: "batches", numeric: true },
        { label: "mean", numeric: true },
        { label: "spread", numeric: true },
        { label: "quarter before", numeric: false },
        { label: "batches", numeric: true },
        { label: "mean", numeric: true },
        { label: "spread", numeric: true },
        { label: "difference, 95\u00a0% interval", numeric: true },
        { label: "ratio of spreads, 95\u00a0% interval", numeric: true },
      ],
      rows: periods.map((one) => [
        one.variety,
        measureWithUnit(maltMeasure(one.measure), units),
        ...[one.now, one.before].flatMap(({ name, batches, mean: level, spread }) => [
          name,
          printNumber(batches, 0),
          mean(one, level),
          printMeasureDifference(maltMeasure(one.measure), spread, units, { bare: true }),
        ]),
        `${value(one, one.difference.estimate)} (${value(one, one.difference.low)} to ${value(one, one.difference.high)})`,
        `${printNumber(one.spreadRatio.estimate, 2)} (${printNumber(one.spreadRatio.low, 2)} to ${printNumber(one.spreadRatio.high, 2)})`,
      ]),
    },
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}

interface Drawing {
  readonly left: number;
  readonly size: number;
  readonly line: number;
  readonly pen: Pen;
  readonly settings: FigureSettings;
}

function panelOf(
  { measure, rows }: Group,
  panel: Panel,
  { left, size, line, pen, settings }: Drawing,
): readonly SVGElement[] {
  const { units } = settings;
  const shown = (value: number): number => toShown(value, measure.difference, units);
  const values = rows.flatMap(({ difference: { low, high } }) => [shown(low), shown(high)]);
  const [low, high] = paddedSpan([0, ...values], 0.05, 1e-6);
  const [from, to] = [panel.left + left, panel.left + panel.width - 12];
  const x = (value: number): number => from + ((value - low) / (high - low)) * (to - from);
  const top = panel.top + line + 2;
  const bottom = top + rows.length * line;
  const ticks = valueTicks(low, high, 4);
  return [
    wordsAt(pen, fitText(measureWithUnit(measure, units), panel.width, size, 600), {
      x: panel.left,
      y: panel.top + size,
      role: "name strong",
    }),
    pen.element("path", { class: "grid", d: ticks.map(({ at }) => `M${x(at)},${top}V${bottom}`).join("") }),
    pen.element("path", { class: "rule", d: `M${x(0)},${top}V${bottom}` }),
    ...rows.flatMap((row, i) => {
      const y = top + (i + 0.5) * line;
      const { difference } = row;
      const at = x(shown(difference.estimate));
      return [
        wordsAt(pen, fitText(row.variety, left - 8, size), { x: panel.left, y: y + size * 0.34, role: "label ink" }),
        ...intervalMark({ at, y, low: x(shown(difference.low)), high: x(shown(difference.high)), form: "dot" }, pen),
        ...(excludesZero(row) ? [pen.element("circle", { class: "signal", cx: at, cy: y, r: 7 })] : []),
      ];
    }),
    ...ticks.map(({ at, label }) =>
      wordsAt(pen, label, { x: x(at), y: bottom + size + 3, role: "label soft", anchor: "middle" }),
    ),
  ];
}
