import type { Markish } from "@observablehq/plot";
import type { SteepBias, SteepRun } from "../../report/steepGerminationResult.ts";
import { printDate } from "../../units/instant.ts";
import { print, printSigned } from "../../units/print.ts";
import { footAxis, valueAxis } from "../axes.ts";
import { runCell } from "../controlCharts/chartWords.ts";
import { type EndLabel, endLabels } from "../controlCharts/endLabels.ts";
import { type FigureSettings, fullWidth, narrowWidth } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { layer } from "../layer.ts";
import { latestFirst } from "../listedRows.ts";
import { scatter } from "../scatter.ts";
import { paddedSpan, valueTicks } from "../ticks.ts";
import { chartOptions, floorFrame } from "./floorFrame.ts";

/**
 * Moisture as measured less moisture from mass gain, batch by batch in time: their mean with its 95 % band, and the span
 * that holds 95 of 100 single differences dashed.
 *
 * @param said what to see, as the page's findings say it
 * @returns null where no batch has both
 */
export function biasFigure(
  steeps: readonly SteepRun[],
  { meanPoints, limits, differences }: SteepBias,
  said: string,
  settings: FigureSettings,
): FigureSpec | null {
  const known = new Map(steeps.map((steep) => [steep.run, steep]));
  const both = differences.flatMap(({ run, points: off }) => {
    const steep = known.get(run);
    return steep === undefined ? [] : [{ steep, off }];
  });
  if (both.length === 0) return null;
  const { units, timeZone } = settings;
  const bare = (percent: number | null): string =>
    percent === null ? "" : print(percent, "percent", units, { bare: true });
  const points = both.map(({ steep, off }) => ({
    x: steep.startedAt,
    y: off,
    href: settings.runHref(steep.run),
    hint: () =>
      `${steep.run}, ${printDate(steep.startedAt, timeZone)}: measured ${bare(steep.measuredPercent)}, from mass gain ${bare(steep.fromMassGainPercent)}`,
  }));

  const ends: readonly EndLabel[] = [
    { y: limits[1], role: "soft", rows: ["95 in 100"] },
    { y: meanPoints.estimate, role: "ink", rows: [`mean ${printSigned(meanPoints.estimate, 2)}`] },
  ];

  const options = (frame: Frame) => {
    const shared = floorFrame(
      { runs: both.map(({ steep }) => ({ at: steep.startedAt })) },
      settings,
      frame,
      ends.flatMap(({ rows }) => rows),
    );
    const { size, months } = shared;
    const y = paddedSpan([0, ...limits, ...points.map((p) => p.y)], 0.06, 1);
    const ticks = valueTicks(y[0], y[1], 5, printSigned);
    const across = (...heights: readonly number[]) =>
      layer("limit", ({ y: toY, inside, pen }) => [
        pen.element("path", { d: heights.map((at) => `M${inside.left},${toY(at)}H${inside.right}`).join("") }),
      ]);
    const marks: Markish[] = [
      layer("band steep", ({ y: toY, inside, pen }) => [
        pen.element("rect", {
          x: inside.left,
          y: toY(meanPoints.high),
          width: inside.right - inside.left,
          height: Math.max(1, toY(meanPoints.low) - toY(meanPoints.high)),
        }),
      ]),
      valueAxis(ticks, "points, measured less mass gain", size),
      footAxis(months, size),
      across(...limits),
      layer("rule", ({ y: toY, inside, pen }) => [
        pen.element("path", { d: `M${inside.left},${toY(0)}H${inside.right}` }),
      ]),
      scatter(points, frame, "mark-steep"),
      endLabels(ends, size),
    ];
    return chartOptions(shared, { height: frame.narrow ? 230 : 250, y, marks });
  };

  return {
    id: "measured-against-mass-gain",
    title: "Moisture as measured, less moisture from mass gain",
    summary: said,
    table: latestFirst(
      both,
      "batch",
      [
        { label: "batch", numeric: false },
        { label: "into the steep", numeric: false },
        { label: "measured", unit: "%", numeric: true },
        { label: "from mass gain", unit: "%", numeric: true },
        { label: "difference", unit: "points", numeric: true },
      ],
      ({ steep, off }) => [
        runCell(steep.run, settings),
        printDate(steep.startedAt, timeZone),
        bare(steep.measuredPercent),
        bare(steep.fromMassGainPercent),
        printSigned(off, 1),
      ],
    ),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}
