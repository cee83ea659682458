import type { Markish } from "@observablehq/plot";
import type { VarietyBalance } from "../../report/controlChartResult.ts";
import { print } from "../../units/print.ts";
import { footAxis, footHeight } from "../axes.ts";
import { type FigureSettings, halfWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { lineHeight } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { countOf } from "../listedRows.ts";
import { fitText, textWidth } from "../textWidth.ts";
import { valueTicks } from "../ticks.ts";

/** One part of the loss of one variety. */
interface Part {
  readonly name: string;
  readonly percent: number | null;
}

function partsOf({ rootletsPercent, steepAndRespirationPercent }: VarietyBalance): readonly Part[] {
  if (rootletsPercent === null && steepAndRespirationPercent === null) {
    return [{ name: "its parts are", percent: null }];
  }
  return [
    { name: "rootlets", percent: rootletsPercent },
    { name: "steep and respiration", percent: steepAndRespirationPercent },
  ];
}

/** Thickness of a bar, px. */
const BAR = 13;

/**
 * Where the dry matter went, for each variety: the whole loss in words, its parts as bars from 0. Steep and respiration
 * are what is left when rootlets are taken off, so an error in any mass lands in them: below 0 they are drawn below 0.
 *
 * @returns null where no variety has a loss
 */
export function balanceFigure(balance: readonly VarietyBalance[], settings: FigureSettings): FigureSpec | null {
  const rows = balance.filter(({ lossPercent }) => lossPercent !== null);
  if (rows.length === 0) return null;
  const { units } = settings;
  const said = (percent: number): string => print(percent, "percent", units);
  const bare = (percent: number | null): string =>
    percent === null ? "" : print(percent, "percent", units, { bare: true });
  const losses = rows.flatMap((row) => [0, row.lossPercent ?? 0, ...partsOf(row).map(({ percent }) => percent ?? 0)]);
  const [low, high] = [Math.min(...losses), Math.max(...losses)];

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const line = lineHeight(size);
    const pitch = line * 3 + BAR + 4;
    const wordsWide = Math.max(...rows.flatMap(partsOf).map((part) => textWidth(wordsOf(part, said), size)));
    // Every bar has room for its words after it.
    const inner = frame.width - 8;
    const share = Math.min(0.7, (wordsWide + 12) / inner);
    const x = [low, Math.max(high, low + 1) + ((high - low || 1) * share) / (1 - share)] as const;
    const across = valueTicks(low, high, frame.narrow ? 3 : 4);
    const marks: Markish[] = [
      layer("strips", ({ x: toX, inside, pen }) =>
        rows.flatMap((row, i) => {
          const top = i * pitch;
          const name = `${row.variety}, ${countOf(row.batches, "batch")}: ${said(row.lossPercent ?? 0)} lost`;
          return [
            pen.element("text", { class: "name strong", x: inside.left, y: top + size, "text-anchor": "start" }, [
              fitText(name, inner, size, 600),
            ]),
            ...partsOf(row).flatMap((part, k) => {
              const middle = top + line * (1.75 + k * 1.15);
              const end = Math.max(toX(0), toX(part.percent ?? 0)) + 7;
              const bar = `M${toX(0)},${middle}H${toX(part.percent ?? 0)}`;
              return [
                pen.element("g", { class: "shares" }, [pen.element("path", { "stroke-width": BAR, d: bar })]),
                pen.element(
                  "text",
                  {
                    class: part.percent === null ? "label soft" : "label ink",
                    x: end,
                    y: middle + size * 0.34,
                    "text-anchor": "start",
                  },
                  [wordsOf(part, said)],
                ),
              ];
            }),
          ];
        }),
      ),
      layer("rule", ({ x: toX, inside, pen }) => [
        pen.element("path", {
          d: rows
            .map((_, i) => `M${toX(0)},${i * pitch + line * 1.2}V${Math.min(inside.bottom, i * pitch + line * 3.5)}`)
            .join(""),
        }),
      ]),
      footAxis(across, size, { title: "% of the grain’s dry matter" }),
    ];
    const marginBottom = footHeight(across, size, true);
    return {
      height: rows.length * pitch + marginBottom,
      marginTop: 0,
      marginRight: 4,
      marginBottom,
      marginLeft: 4,
      x: { domain: x },
      marks,
    };
  };

  const below = rows.reduce((sum, { negative }) => sum + negative, 0);
  return {
    id: "malting-loss",
    title: "Where does the dry matter go?",
    summary: `${rows.map((row) => lossSaid(row, said)).join(" ")} Medians, so parts need not add up.${negativeSaid(below)}`,
    table: {
      columns: [
        { label: "variety", numeric: false },
        { label: "batches", numeric: true },
        { label: "yield as is", unit: "%", numeric: true },
        { label: "dry-matter yield", unit: "%", numeric: true },
        { label: "malting loss", unit: "%", numeric: true },
        { label: "rootlets", unit: "%", numeric: true },
        { label: "steep and respiration", unit: "%", numeric: true },
        { label: "batches below 0", numeric: true },
        { label: "malt weighed", numeric: false },
      ],
      rows: balance.map((row) => [
        row.variety,
        String(row.batches),
        bare(row.asIsYieldPercent),
        bare(row.dryMatterYieldPercent),
        bare(row.lossPercent),
        bare(row.rootletsPercent),
        bare(row.steepAndRespirationPercent),
        String(row.negative),
        row.basis,
      ]),
    },
    wideWidth: halfWidth,
    narrowWidth,
    printAs: "narrow",
    options,
  };
}

/** `rootlets 3.9 %`; below 0 it says so. */
function wordsOf({ name, percent }: Part, said: (percent: number) => string): string {
  if (percent === null) return `${name} not known`;
  return `${name} ${said(percent)}${percent < 0 ? ", below 0" : ""}`;
}

function lossSaid(row: VarietyBalance, said: (percent: number) => string): string {
  const parts = partsOf(row).flatMap(({ name, percent }) => (percent === null ? [] : [`${name} ${said(percent)}`]));
  return `${row.variety} loses ${said(row.lossPercent ?? 0)} of its dry matter${parts.length === 0 ? "" : `: ${parts.join(", ")}`}.`;
}

function negativeSaid(count: number): string {
  if (count === 0) return "";
  return ` In ${countOf(count, "batch")} what is left for steep and respiration is below 0: a mass or a moisture in the log is off.`;
}
