import type { ScoreNumber, VarietyScore } from "../../report/varietiesResult.ts";
import { printNumber } from "../../units/print.ts";
import { footAxis, footHeight } from "../axes.ts";
import { fullWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { DataTable, FigureSpec, Frame } from "../figureSpec.ts";
import { lineHeight } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { countOf } from "../listedRows.ts";
import { fitText, textWidth } from "../textWidth.ts";
import type { Tick } from "../ticks.ts";
import { intervalMark, type MarkForm, wordsAt } from "./intervalMark.ts";

/** One line of a variety: a number of the score, or the share of batches seen. All in 100. */
interface Line {
  readonly name: string;
  readonly number: ScoreNumber;
  readonly form: MarkForm;
  readonly open: boolean;
  readonly after: string;
}

const TICKS: readonly Tick[] = [0, 20, 40, 60, 80, 100].map((at) => ({ at, label: printNumber(at, 0) }));

const range = ({ low, high }: ScoreNumber): string =>
  low === null || high === null ? "" : ` (${printNumber(low, 0)} to ${printNumber(high, 0)})`;

function linesOf({ onTarget, even, met, batches, metShare, standing }: VarietyScore): readonly Line[] {
  if (onTarget === null || even === null) return [];
  const open = standing === "early";
  const after = open ? ", early" : "";
  const seen =
    metShare === null
      ? []
      : [
          {
            name: `met so far ${printNumber(met, 0)} of ${printNumber(batches, 0)}`,
            number: { estimate: 100 * metShare.estimate, low: 100 * metShare.low, high: 100 * metShare.high },
            form: "tick" as const,
            open: false,
            after: "",
          },
        ];
  return [
    {
      name: `on target ${printNumber(onTarget.estimate, 0)}${range(onTarget)}`,
      number: onTarget,
      form: "dot",
      open,
      after,
    },
    { name: `even ${printNumber(even.estimate, 0)}${range(even)}`, number: even, form: "diamond", open, after },
    ...seen,
  ];
}

/**
 * The two numbers of each variety on one scale of 0 to 100, lowest on target first: on target a dot, even a diamond, under
 * them the batches seen as an upright tick with Wilson's interval. Early ones are open and have no interval.
 *
 * @returns null where no variety has a score
 */
export function scoresFigure(scores: readonly VarietyScore[]): FigureSpec | null {
  const rows = scores.map((score) => ({ score, lines: linesOf(score) })).filter(({ lines }) => lines.length > 0);
  if (rows.length === 0) return null;

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const line = lineHeight(size) + 3;
    // On a phone a variety's name stands above its lines.
    const head = frame.narrow ? line : 0;
    const gap = 14;
    const words = rows.flatMap(({ lines }) => lines.map(({ name, after }) => name + after));
    const right = Math.ceil(Math.max(...words.map((text) => textWidth(text, size)))) + 14;
    const left = frame.narrow
      ? 8
      : Math.min(240, Math.ceil(Math.max(...rows.map(({ score }) => textWidth(nameOf(score), size, 600)))) + 18);
    const tops: number[] = [];
    let inner = 0;
    for (const { lines } of rows) {
      tops.push(inner);
      inner += head + lines.length * line + gap;
    }
    const marginBottom = footHeight(TICKS, size, true);
    const marks = [
      layer("grid", ({ x, inside, pen }) => [
        pen.element("path", {
          class: "grid",
          d: TICKS.map(({ at }) => `M${x(at)},${inside.top}V${inside.bottom}`).join(""),
        }),
      ]),
      footAxis(TICKS, size, {
        title: frame.narrow ? "chance in 100" : "chance in 100 that the next batch meets every tolerance",
      }),
      layer("scores", ({ x, inside, pen }) =>
        rows.flatMap(({ score, lines }, row) => {
          const top = tops[row] ?? 0;
          const name = fitText(nameOf(score), frame.narrow ? frame.width : left - 8, size, 600);
          return [
            ...(row === 0 ? [] : [pen.element("path", { class: "grid", d: `M0,${top - gap / 2}H${frame.width}` })]),
            wordsAt(pen, name, { x: 0, y: top + size, role: "name strong" }),
            ...lines.flatMap((one, i) => {
              const y = top + head + (i + 0.5) * line;
              const { estimate, low, high } = one.number;
              return [
                ...intervalMark(
                  {
                    at: x(estimate),
                    y,
                    low: low === null ? null : x(low),
                    high: high === null ? null : x(high),
                    form: one.form,
                    open: one.open,
                  },
                  pen,
                ),
                wordsAt(pen, one.name + one.after, {
                  x: inside.right + 12,
                  y: y + size * 0.34,
                  role: one.form === "tick" ? "label soft" : "label ink",
                }),
              ];
            }),
          ];
        }),
      ),
    ];
    return {
      height: inner + marginBottom,
      marginTop: 0,
      marginRight: right,
      marginBottom,
      marginLeft: left,
      x: { domain: [0, 100] },
      marks,
    };
  };

  return {
    id: "variety-scores",
    title: "On target and even, variety by variety",
    summary: `${rows.map(({ score }) => said(score)).join(" ")} Dot: on target; diamond: even; upright tick: batches so far that met every tolerance. Lines: 95\u00a0% intervals.`,
    table: scoresTable(scores),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}

const nameOf = ({ variety, batches }: VarietyScore): string => `${variety}, ${countOf(batches, "batch")}`;

/** `Alva: on target 62 (48 to 74), even 81 (70 to 89), 14 of 22 met all.` */
function said({ variety, onTarget, even, met, batches, standing }: VarietyScore): string {
  if (onTarget === null || even === null) return "";
  const early = standing === "early" ? ", early" : "";
  return `${variety}: on target ${printNumber(onTarget.estimate, 0)}, even ${printNumber(even.estimate, 0)}, ${printNumber(met, 0)} of ${printNumber(batches, 0)} met all${early}.`;
}

const bare = (value: number | null | undefined): string => (value == null ? "" : printNumber(value, 0));

function scoresTable(scores: readonly VarietyScore[]): DataTable {
  return {
    columns: [
      { label: "variety", numeric: false },
      { label: "batches", numeric: true },
      { label: "on target", unit: "in 100", numeric: true },
      { label: "low", numeric: true },
      { label: "high", numeric: true },
      { label: "even", unit: "in 100", numeric: true },
      { label: "low", numeric: true },
      { label: "high", numeric: true },
      { label: "met all", numeric: true },
      { label: "standing", numeric: false },
    ],
    rows: scores.map(({ variety, batches, onTarget, even, met, standing }) => [
      variety,
      printNumber(batches, 0),
      bare(onTarget?.estimate),
      bare(onTarget?.low),
      bare(onTarget?.high),
      bare(even?.estimate),
      bare(even?.low),
      bare(even?.high),
      printNumber(met, 0),
      standing === "none" ? "no score" : standing === "early" ? "early" : "",
    ]),
  };
}
