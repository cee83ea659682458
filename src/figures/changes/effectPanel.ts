import type { ChangedMeasure, ChangeEffect, ChangeResult } from "../../report/changesResult.ts";
import { maltMeasure } from "../../units/maltMeasure.ts";
import { changeUnit } from "../../units/measureChange.ts";
import { printSigned } from "../../units/print.ts";
import { toShown } from "../../units/quantity.ts";
import type { FigureSettings } from "../figureSettings.ts";
import type { Pen } from "../layer.ts";
import { fitText, textWidth } from "../textWidth.ts";
import { type Tick, valueTicks } from "../ticks.ts";

export interface PanelRow {
  readonly change: ChangeResult;
  readonly effect: ChangeEffect;
}

/** One measure: every change that was compared in it, on one scale about nothing. */
export interface Panel {
  readonly measure: ChangedMeasure;
  readonly rows: readonly PanelRow[];
  /** How far the scale reaches either side of nothing, as shown. */
  readonly reach: number;
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** A panel a measure, what most changes can have touched first. */
export function panelsOf(changes: readonly ChangeResult[], settings: FigureSettings): readonly Panel[] {
  const measures = [...new Set(changes.flatMap(({ effects }) => effects.map(({ measure }) => measure)))];
  const panels = measures.map((measure): Panel => {
    const rows = changes.flatMap((change): PanelRow[] => {
      const effect = change.effects.find((one) => one.measure === measure);
      return effect === undefined ? [] : [{ change, effect }];
    });
    const shown = (value: number): number => Math.abs(toShown(value, maltMeasure(measure).difference, settings.units));
    const ends = rows.flatMap(({ effect: { total, beyond } }) =>
      [total, ...(beyond === null ? [] : [beyond])].flatMap(({ low, high }) => [shown(low), shown(high)]),
    );
    return { measure, rows, reach: 1.08 * Math.max(...ends) };
  });
  // What most changes can have touched stands first.
  return panels.sort((a, b) => b.rows.length - a.rows.length);
}

interface PanelDesign {
  readonly left: number;
  readonly width: number;
  readonly top: number;
  readonly head: number;
  readonly rowHeight: number;
  readonly size: number;
  readonly settings: FigureSettings;
  readonly pen: Pen;
}

/** One panel: its name, its scale about nothing, and what each change came to on it. */
export function panelMarks(panel: Panel, rows: readonly ChangeResult[], design: PanelDesign): readonly SVGElement[] {
  const { left, width, top, head, rowHeight, size, settings, pen } = design;
  const { measure, reach } = panel;
  const { units } = settings;
  const words = maltMeasure(measure);
  const x = (shown: number): number => left + width / 2 + (shown / reach) * (width / 2);
  const inside = (value: number): number =>
    x(Math.max(-reach, Math.min(reach, toShown(value, words.difference, units))));
  const [above, below] = [top + head, top + head + rows.length * rowHeight];
  const unit = changeUnit(measure, units);
  const name = capital(unit === "" ? words.words : `${words.words}, ${unit}`);
  const ticks = ticksWithRoom(reach, width, size);
  return [
    pen.element("text", { class: "name strong", x: left, y: top + size }, [fitText(name, width, size, 600)]),
    pen.element("path", { class: "grid", d: ticks.map(({ at }) => `M${x(at)},${above}V${below}`).join("") }),
    pen.element("path", { class: "rule", d: `M${x(0)},${above}V${below + 5}` }),
    pen.element(
      "g",
      { class: "axis" },
      ticks.map(({ at, label }) =>
        pen.element("text", { x: x(at), y: below + 6 + size * 0.95, "text-anchor": "middle" }, [label]),
      ),
    ),
    ...panel.rows.flatMap(({ change, effect }) => {
      const middle = above + (rows.indexOf(change) + 0.5) * rowHeight;
      const { total, beyond, placebo } = effect;
      const tried = placebo === null ? [] : placebo.sizes;
      return [
        pen.element("path", {
          class: "placebos",
          d: tried.map((one) => `M${inside(one)},${middle - 8}v16`).join(""),
        }),
        ...(placebo === null
          ? []
          : [pen.element("path", { class: "tick", d: `M${inside(placebo.own)},${middle - 10}v20` })]),
        pen.element("path", { class: "line", d: `M${inside(total.low)},${middle}H${inside(total.high)}` }),
        pen.element("circle", { class: "mark-ink", cx: inside(total.estimate), cy: middle, r: 4.2 }),
        ...(beyond === null
          ? []
          : [
              pen.element("path", {
                class: "thread",
                d: `M${inside(beyond.low)},${middle + 10}H${inside(beyond.high)}`,
              }),
              pen.element("circle", { class: "hollow", cx: inside(beyond.estimate), cy: middle + 10, r: 3 }),
            ]),
      ];
    }),
  ];
}

/** As many round values as stand clear of each other. */
function ticksWithRoom(reach: number, width: number, size: number): readonly Tick[] {
  for (const count of [5, 4, 3, 2]) {
    const ticks = valueTicks(-reach, reach, count, printSigned);
    const wide = Math.max(...ticks.map(({ label }) => textWidth(label, size))) + 10;
    if (ticks.length * wide <= width) return ticks;
  }
  return valueTicks(-reach, reach, 2, printSigned);
}
