import type { RenderFunction } from "@observablehq/plot";
import type { ChangeEffect, ChangeResult } from "../../report/changesResult.ts";
import { printDate } from "../../units/instant.ts";
import { maltMeasure } from "../../units/maltMeasure.ts";
import { printChange, printSpan } from "../../units/measureChange.ts";
import { type FigureSettings, fullWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { layer, type Pen } from "../layer.ts";
import { countOf } from "../listedRows.ts";
import { fitText } from "../textWidth.ts";
import { type Panel, panelMarks, panelsOf } from "./effectPanel.ts";

/** Changes up to here are drawn; the table has all. */
const MOST_CHANGES = 8;
/** Panels abreast on a wide drawing. */
const MOST_ABREAST = 3;
const GAP = 28;

/**
 * What every change came to, measure by measure, each with its 95 % interval about nothing; faint strokes: what a few runs
 * either side show at dates without a change, and a long one at its own; below it, hollow, what is left beyond the altered column.
 *
 * @returns null where nothing was compared
 */
export function changeEffects(changes: readonly ChangeResult[], settings: FigureSettings): FigureSpec | null {
  const compared = changes.filter(({ effects }) => effects.length > 0);
  if (compared.length === 0) return null;
  const drawn = compared.slice(0, MOST_CHANGES);
  const panels = panelsOf(drawn, settings);
  const { units, timeZone } = settings;

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const abreast = frame.narrow ? 1 : Math.min(MOST_ABREAST, panels.length);
    const rowHeight = Math.round(size * (frame.narrow ? 2.3 : 2.9));
    const head = Math.round(size * 1.7);
    const foot = Math.round(size * 2.1);
    const lines: Panel[][] = [];
    panels.forEach((panel, at) => {
      if (at % abreast === 0) lines.push([]);
      lines.at(-1)?.push(panel);
    });
    // Panels abreast share their rows, so that a change is named once.
    const blocks = lines.map((line) =>
      drawn.filter((change) => line.some(({ rows }) => rows.some((r) => r.change === change))),
    );
    const heights = blocks.map((rows) => head + rows.length * rowHeight + foot);
    const height = heights.reduce((sum, one) => sum + one, 0);
    const names = frame.narrow ? 92 : 250;
    const layers: RenderFunction[] = lines.map((line, at) => {
      const top = heights.slice(0, at).reduce((sum, one) => sum + one, 0);
      const rows = blocks[at] ?? [];
      return layer("effects", ({ pen, width }) => {
        const room = (width - names - (abreast - 1) * GAP) / abreast;
        return [
          ...rowNames(rows, {
            top: top + head,
            rowHeight,
            size,
            room: names - 14,
            timeZone,
            narrow: frame.narrow,
            pen,
          }),
          ...line.flatMap((panel, column) =>
            panelMarks(panel, rows, {
              left: names + column * (room + GAP),
              width: room,
              top,
              head,
              rowHeight,
              size,
              settings,
              pen,
            }),
          ),
        ];
      });
    });
    return {
      height,
      marginTop: 0,
      marginRight: 0,
      marginBottom: 0,
      marginLeft: 0,
      x: { axis: null, domain: [0, 1] as const },
      y: { axis: null, domain: [0, 1] as const },
      marks: layers,
    };
  };

  return {
    id: "change-effects",
    title: "What each change came to",
    summary: `After less before with 95 % intervals, adjusted for weather and variety, never for what the change altered; faint strokes show how far the next few runs differ from the last few at dates without a change, the long stroke at the change’s own; hollow marks what is left beyond the altered column.${compared.length > drawn.length ? ` The latest ${countOf(drawn.length, "change")} are drawn.` : ""}`,
    table: {
      columns: [
        { label: "change of", numeric: false },
        { label: "measure", numeric: false },
        { label: "difference", numeric: true },
        { label: "95 % interval", numeric: true },
        { label: "other dates", numeric: true },
      ],
      rows: compared.flatMap((change) =>
        change.effects.map((effect) => [
          { text: printDate(change.at, timeZone), href: `#${change.id}` },
          maltMeasure(effect.measure).words,
          printChange(effect.measure, effect.total.estimate, units),
          signedSpan(effect, units),
          effect.placebo === null ? "none tried" : `${effect.placebo.asLarge} of ${effect.placebo.dates}`,
        ]),
      ),
      note: "Other dates: how many of those without a change show as large a difference between a few runs either side.",
    },
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}

const signedSpan = ({ measure, total }: ChangeEffect, units: FigureSettings["units"]): string =>
  total.low * total.high <= 0
    ? printSpan(measure, total, units)
    : `${printChange(measure, total.low, units, true)} to ${printChange(measure, total.high, units)}`;

interface NamesDesign {
  readonly top: number;
  readonly rowHeight: number;
  readonly size: number;
  readonly room: number;
  readonly timeZone: string;
  readonly narrow: boolean;
  readonly pen: Pen;
}

function rowNames(rows: readonly ChangeResult[], design: NamesDesign): readonly SVGElement[] {
  const { top, rowHeight, size, room, timeZone, narrow, pen } = design;
  return rows.flatMap(({ event, at, id }, row) => {
    const middle = top + (row + 0.5) * rowHeight;
    const date = printDate(at, timeZone);
    const texts = narrow
      ? [pen.element("text", { class: "label soft", x: 0, y: middle + size * 0.34 }, [date])]
      : [
          pen.element("text", { class: "label", x: 0, y: middle - size * 0.15 }, [fitText(event.what, room, size)]),
          pen.element("text", { class: "label soft", x: 0, y: middle + size * 0.95 }, [date]),
        ];
    return [pen.element("a", { href: `#${id}` }, texts)];
  });
}
