import type { Markish } from "@observablehq/plot";
import { printMeasure } from "../../units/maltMeasure.ts";
import { fromShown } from "../../units/quantity.ts";
import type { EndLabel } from "../controlCharts/endLabels.ts";
import type { FigureSettings } from "../figureSettings.ts";
import type { Frame } from "../figureSpec.ts";
import { layer } from "../layer.ts";
import type { OwnStrip } from "../thermostat/ownStrips.ts";
import type { BatchStrip } from "./batchStrips.ts";

/** Everything of a strip that must be seen, in the reader's unit. */
export const spanOf = ({ low, target, high, batches }: BatchStrip): readonly number[] => [
  ...batches.map(({ shown }) => shown),
  ...[low, target, high].filter((value) => value !== null),
];

/** The accepted band of each strip, to the strip's own edge where one side has no limit; its limits and the target. */
export function bandMarks(strips: readonly BatchStrip[], drawn: readonly OwnStrip[]): readonly Markish[] {
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
export function limitNames(
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
