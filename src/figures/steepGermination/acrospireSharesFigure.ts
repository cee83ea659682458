import type { Markish } from "@observablehq/plot";
import type { AcrospireRun } from "../../report/steepGerminationResult.ts";
import { printDate } from "../../units/instant.ts";
import { printNumber } from "../../units/print.ts";
import { footAxis, footHeight, valueAxis, valueAxisWidth } from "../axes.ts";
import { runCell } from "../controlCharts/chartWords.ts";
import { type FigureSettings, fullWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { lineHeight } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { countOf, latestFirst } from "../listedRows.ts";
import { spreadLabels } from "../placeLabels.ts";
import { textWidth } from "../textWidth.ts";
import { type Tick, valueTicks } from "../ticks.ts";
import { monthTicks } from "../timeTicks.ts";
import { ACROSPIRE_CLASSES, cumulativeShares } from "./acrospireClasses.ts";

/** Batches that a drawing holds: a narrower column could not be told from its neighbours. */
const mostColumns = (frame: Frame): number => (frame.narrow ? 60 : 200);
/** The names of the classes stand at the heights they have in this share of the latest batches. */
const NAMED_BY = 0.15;

/**
 * The kernels counted at unloading as shares of their classes: one column a batch in order of time, the shortest at the
 * foot, what has grown further darker, each class named at the right; the house's limit of overgrown dashed.
 *
 * @param said what to see, as the page's findings say it
 * @returns null where nothing was counted
 */
export function acrospireSharesFigure(
  runs: readonly AcrospireRun[],
  said: string,
  settings: FigureSettings,
): FigureSpec | null {
  if (runs.length === 0) return null;
  const { timeZone } = settings;
  const limit = runs.at(-1)?.targets?.overgrownHigh ?? null;

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const shown = runs.slice(-mostColumns(frame));
    const columns = shown.map(({ counts, counted }) => cumulativeShares(counts, counted));
    const down = valueTicks(0, 100, 4);
    const right = Math.ceil(Math.max(...ACROSPIRE_CLASSES.map(({ name }) => textWidth(name, size)))) + 10;
    const left = valueAxisWidth(down, size);
    const inner = frame.width - left - right;
    const across = monthsOf(shown, inner, frame, timeZone, size);
    const marks: Markish[] = [
      valueAxis(down, "% of the kernels counted", size),
      layer("steps", ({ x, y, inside, pen }) =>
        ACROSPIRE_CLASSES.map(({ key }, step) => {
          // Every class is laid over those below it, from its own lower edge to the top.
          const lower = columns.map((shares) => (step === 0 ? 0 : (shares[step - 1] ?? 0)));
          const edge = lower
            .map((share, i) => `${i === 0 ? `M${inside.left},${y(100)}` : ""}V${y(100 * share)}H${x(i + 1)}`)
            .join("");
          return pen.element("path", { class: key === "over" ? "growth over" : "growth", d: `${edge}V${y(100)}Z` });
        }),
      ),
      footAxis(across, size),
      ...(limit === null
        ? []
        : [
            layer("limit", ({ y, inside, pen }) => [
              pen.element("path", { d: `M${inside.left},${y(100 - limit)}H${inside.right}` }),
              pen.element("text", { class: "label ink", x: inside.right, y: size, "text-anchor": "end" }, [
                frame.narrow
                  ? `dashed: ${printNumber(limit, 0)} % over`
                  : `overgrown may reach down to the dashes, ${printNumber(limit, 0)} %`,
              ]),
            ]),
          ]),
      layer("ends", ({ y, inside, pen }) => {
        const latest = columns.slice(-Math.max(1, Math.round(columns.length * NAMED_BY)));
        const middles = ACROSPIRE_CLASSES.map((_, step) => {
          const sum = latest.reduce(
            (total, shares) => total + ((step === 0 ? 0 : (shares[step - 1] ?? 0)) + (shares[step] ?? 0)) / 2,
            0,
          );
          return y((100 * sum) / latest.length) - lineHeight(size) / 2;
        });
        const tops = spreadLabels(
          middles,
          lineHeight(size),
          inside.top - size * 0.3,
          inside.bottom - lineHeight(size) + 3,
        );
        return ACROSPIRE_CLASSES.map(({ name }, step) =>
          pen.element(
            "text",
            {
              class: "label germination",
              x: inside.right + 6,
              y: (tops[step] ?? 0) + size * 0.97,
              "text-anchor": "start",
            },
            [name],
          ),
        );
      }),
    ];
    const marginBottom = footHeight(across, size);
    return {
      height: frame.narrow ? 270 : 320,
      marginTop: Math.round(size * 1.9),
      marginRight: right,
      marginBottom,
      marginLeft: left,
      x: { domain: [0, shown.length] },
      y: { domain: [0, 100] },
      marks,
    };
  };

  const most = mostColumns({ width: fullWidth, narrow: false });
  return {
    id: "acrospire-shares",
    title: "Acrospires at unloading, batch by batch",
    summary: `${said}${runs.length > most ? ` Drawn: the latest ${most} of ${countOf(runs.length, "batch")}.` : ""}`,
    table: latestFirst(
      runs,
      "batch",
      [
        { label: "batch", numeric: false },
        { label: "unloaded", numeric: false },
        { label: "counted", numeric: true },
        ...ACROSPIRE_CLASSES.map(({ name }) => ({ label: name, numeric: true })),
      ],
      (run) => [
        runCell(run.run, settings),
        printDate(run.at, timeZone),
        printNumber(run.counted, 0),
        ...ACROSPIRE_CLASSES.map(({ key }) => printNumber(run.counts[key], 0)),
      ],
    ),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}

/** Months under the columns of their first batches; where few batches lie between two, the later one is left out. */
function monthsOf(
  runs: readonly AcrospireRun[],
  inner: number,
  frame: Frame,
  timeZone: string,
  size: number,
): readonly Tick[] {
  const [first, last] = [runs[0]?.at ?? 0, runs.at(-1)?.at ?? 0];
  const clear = textWidth("2026", size) + 8;
  let taken = Number.NEGATIVE_INFINITY;
  return monthTicks(first, last, frame.narrow ? 4 : 11, timeZone).flatMap((tick) => {
    const column = runs.findIndex(({ at }) => at >= tick.at);
    const at = (inner * column) / runs.length;
    if (column < 0 || at - taken < clear) return [];
    taken = at;
    return [{ ...tick, at: column }];
  });
}
