import type { Markish } from "@observablehq/plot";
import { monthsOn } from "../../units/calendarMonth.ts";
import { printDate, printShortMonth } from "../../units/instant.ts";
import { print, printNumber } from "../../units/print.ts";
import { shownAs, toShown } from "../../units/quantity.ts";
import { capitalised } from "../controlCharts/chartWords.ts";
import { type FigureSettings, fullWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { DataTable, FigureSpec, Frame } from "../figureSpec.ts";
import { layer, type Sheet } from "../layer.ts";
import { scatter } from "../scatter.ts";
import { textWidth } from "../textWidth.ts";
import { monthTicks } from "../timeTicks.ts";
import { onPaper, panelGrid } from "../varieties/panelGrid.ts";
import { dotsOf, limitSteps, type PanelDesign, type PanelScale, panelHeight, panelScale } from "./measurePanel.ts";
import { meanOf, monthMeans, partedByMonth } from "./monthMeans.ts";
import { type MeasuredBatch, type MonthMeasure, type MonthSpan, monthSpan } from "./monthMeasures.ts";

const unitOf = ({ quantity }: MonthMeasure, { units }: FigureSettings): string => shownAs(quantity, units).unit;

const nameWithUnit = (measure: MonthMeasure, settings: FigureSettings): string => {
  const unit = unitOf(measure, settings);
  return unit === "" ? measure.name : `${measure.name}, ${unit}`;
};

const inUnits = ({ quantity, batches }: MonthMeasure, { units }: FigureSettings): readonly MeasuredBatch[] => {
  const shown = (value: number): number => toShown(value, quantity, units);
  return batches.map((batch) => ({
    ...batch,
    value: shown(batch.value),
    low: batch.low === null ? null : shown(batch.low),
    high: batch.high === null ? null : shown(batch.high),
  }));
};

interface Drawn {
  readonly measure: MonthMeasure;
  readonly scale: PanelScale;
  readonly batches: readonly MeasuredBatch[];
}

function panelParts({ measure, scale, batches }: Drawn, span: MonthSpan, settings: FigureSettings, size: number) {
  const { x, y, from, to, top, bottom, ticks } = scale;
  const { timeZone, units } = settings;
  const means = monthMeans(batches, span, timeZone);
  const now = meanOf(partedByMonth(measure, span).now);
  const last = means.at(-1);
  const baseline = bottom + size * 1.35;
  const line = means.map(({ at, value }, i) => `${i ? "L" : "M"}${x(at).toFixed(1)},${y(value).toFixed(1)}`).join("");
  const steps = `${limitSteps(batches, scale, "low")}${limitSteps(batches, scale, "high")}`;
  return {
    under: ({ pen }: Sheet) => [
      pen.element("rect", {
        class: "band",
        x: x(span.monthFrom),
        y: top,
        width: to - x(span.monthFrom),
        height: bottom - top,
      }),
    ],
    axis: ({ pen }: Sheet) => [
      pen.element("path", { class: "grid", d: ticks.map(({ at }) => `M${from},${y(at)}H${to}`).join("") }),
      pen.element("path", { class: "foot", d: `M${from},${bottom}H${to}` }),
      pen.element("path", {
        class: "tick",
        d: monthTicks(span.from, span.to, 14, timeZone)
          .map(({ at }) => `M${x(at)},${bottom}v4`)
          .join(""),
      }),
      ...ticks.map(({ at, label }) =>
        pen.element("text", { x: from - 7, y: y(at) + size * 0.34, "text-anchor": "end" }, [label]),
      ),
      pen.element("text", { x: from, y: baseline, "text-anchor": "start" }, [
        printShortMonth(monthsOn(span.month, -12)),
      ]),
      pen.element("text", { class: "under", x: to, y: baseline, "text-anchor": "end" }, [printShortMonth(span.month)]),
      pen.element("text", { class: "name strong", x: from, y: top - size * 0.7, "text-anchor": "start" }, [
        nameWithUnit(measure, settings),
      ]),
    ],
    over: ({ pen }: Sheet) => [
      ...(steps === "" ? [] : [pen.element("path", { class: "limit", d: steps })]),
      pen.element("path", { class: "line thin", d: line }),
      ...(now === null || last === undefined
        ? []
        : [
            pen.element(
              "text",
              { class: "label ink strong", x: to + 6, y: y(last.value) + size * 0.34, "text-anchor": "start" },
              [print(now, measure.quantity, units, { bare: true, decimals: measure.decimals })],
            ),
          ]),
    ],
  };
}

/**
 * The main measures over thirteen months, a small drawing each on its own scale: every batch, the line of monthly means, the
 * limits of what is accepted where there are any, and the month itself marked with its mean.
 *
 * @returns null where no measure was logged
 */
export function monthFigure(
  measures: readonly MonthMeasure[],
  month: string,
  settings: FigureSettings,
): FigureSpec | null {
  if (measures.length === 0) return null;
  const span = monthSpan(month, settings.timeZone);

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const design: PanelDesign = {
      size,
      field: frame.narrow ? 84 : 100,
      left: Math.ceil(textWidth("00.0", size)) + 10,
      right: Math.ceil(textWidth("00.00", size, 600)) + 8,
    };
    const columns = frame.narrow ? 1 : 3;
    const { panels, height } = panelGrid(
      measures.map(() => panelHeight(design)),
      { width: frame.width, columns, gap: 22 },
    );
    const drawn = measures.flatMap((measure, i): Drawn[] => {
      const panel = panels[i];
      if (panel === undefined) return [];
      const batches = inUnits(measure, settings);
      return [{ measure, batches, scale: panelScale(batches, span, panel, design) }];
    });
    const parts = drawn.map((one) => panelParts(one, span, settings, size));
    const own = drawn.flatMap(({ batches, scale, measure }) =>
      partedByMonth({ ...measure, batches }, span).now.map(({ run, at, value }) => ({
        x: scale.x(at),
        y: scale.y(value),
        href: settings.runHref(run),
        hint: () =>
          `${run}, ${printDate(at, settings.timeZone)}: ${measure.name} ${printNumber(value, measure.decimals)} ${unitOf(measure, settings)}`.trim(),
      })),
    );
    const marks: Markish[] = [
      layer("months", (sheet) => parts.flatMap(({ under }) => under(sheet))),
      layer("axis", (sheet) => parts.flatMap(({ axis }) => axis(sheet))),
      layer("dense", ({ pen }) =>
        drawn.map(({ batches, scale, measure }) =>
          pen.element("path", {
            "stroke-width": 3.4,
            d: dotsOf(partedByMonth({ ...measure, batches }, span).before, scale),
          }),
        ),
      ),
      layer("months", (sheet) => parts.flatMap(({ over }) => over(sheet))),
      scatter(own, frame, "mark-ink", { dense: false }),
    ];
    return onPaper(frame.width, height, marks);
  };

  return {
    id: "month-measures",
    title: "The month beside the twelve before it",
    summary: `${capitalised(measures.map((measure) => said(measure, span, settings)).join("; "))}. Dots: batches; line: monthly means; dashed: what is accepted; shaded: the month.`,
    table: tableOf(measures, span, settings),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}

function said(measure: MonthMeasure, span: MonthSpan, { units }: FigureSettings): string {
  const { now, before } = partedByMonth(measure, span);
  const text = (value: number | null): string =>
    value === null ? "none" : print(value, measure.quantity, units, { decimals: measure.decimals });
  return `${measure.name} ${text(meanOf(now))} (before: ${text(meanOf(before))})`;
}

function tableOf(measures: readonly MonthMeasure[], span: MonthSpan, settings: FigureSettings): DataTable {
  const printed = ({ quantity, decimals }: MonthMeasure, value: number | null): string =>
    value === null ? "" : print(value, quantity, settings.units, { bare: true, decimals });
  return {
    columns: [
      { label: "measure", numeric: false },
      { label: `mean of ${printShortMonth(span.month)}`, numeric: true },
      { label: "batches", numeric: true },
      { label: "mean of the twelve months before", numeric: true },
      { label: "batches", numeric: true },
    ],
    rows: measures.map((measure) => {
      const { now, before } = partedByMonth(measure, span);
      return [
        nameWithUnit(measure, settings),
        printed(measure, meanOf(now)),
        printNumber(now.length, 0),
        printed(measure, meanOf(before)),
        printNumber(before.length, 0),
      ];
    }),
  };
}
