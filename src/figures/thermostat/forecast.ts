import type { RenderFunction } from "@observablehq/plot";
import type { HoldJudgement, KilnThermostat } from "../../report/thermostatResult.ts";
import { printDate } from "../../units/instant.ts";
import type { FigureSettings } from "../figureSettings.ts";
import type { Frame } from "../figureSpec.ts";
import type { Label } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { textWidth } from "../textWidth.ts";
import { printDateSpan } from "./dateSpan.ts";
import type { DegreeWords } from "./degreeWords.ts";
import { hatch } from "./hatch.ts";
import { toleranceMiddle } from "./toleranceBands.ts";

interface At {
  readonly x: number;
  readonly y: number;
}

/** When the latest stretch leaves its tolerance, as it is drawn: the reader's degrees, moments cut to the drawing. */
export interface Forecast {
  /** The edge of the tolerance that is or will be crossed. */
  readonly edge: number;
  readonly side: 1 | -1;
  /** Where the edge is crossed, from the first to the last date that the interval names; open where it goes on beyond. */
  readonly bar: { readonly from: number; readonly to: number; readonly open: boolean } | null;
  /** From the level at the last load to where it meets the edge. */
  readonly centre: readonly [At, At] | null;
  /** The area that the interval sweeps from the last load to the edge, its corners in order. */
  readonly swept: readonly At[];
  readonly anchor: At;
  /** What is said at it, longest wording first; each a list of lines. */
  readonly wordings: readonly (readonly string[])[];
}

export function forecastOf(
  judgement: HoldJudgement,
  kiln: KilnThermostat,
  { shown }: DegreeWords,
  x: readonly [number, number],
  { timeZone }: FigureSettings,
): Forecast | null {
  const stretch = judgement.stretches.at(-1);
  const leaves = stretch?.models?.leaves;
  const now = judgement.points.at(-1)?.at;
  const middle = stretch ? toleranceMiddle(kiln, stretch) : null;
  if (!leaves || now === undefined || middle === null) return null;
  if (leaves.kind !== "dated" && leaves.kind !== "already-outside") return null;
  const { side } = leaves;
  const edge = shown(middle + side * kiln.toleranceKelvin);
  const date = (moment: number): string => printDate(moment, timeZone);
  const within = (moment: number): number => Math.min(Math.max(moment, x[0]), x[1]);
  if (leaves.kind === "already-outside") {
    const { since } = leaves;
    const level = shown(middle + leaves.levelNow.estimate);
    const words = since === null ? "outside the tolerance" : `outside since ${date(since.estimate)}`;
    return {
      edge,
      side,
      bar:
        since === null || since.high < x[0] ? null : { from: within(since.low), to: within(since.high), open: false },
      centre: null,
      swept: [],
      anchor: since === null || since.estimate < x[0] ? { x: now, y: level } : { x: within(since.estimate), y: edge },
      wordings: [
        ...(since === null ? [] : [[words, `(${printDateSpan(since.low, since.high, timeZone)})`]]),
        since === null ? [words] : ["outside since", date(since.estimate)],
      ],
    };
  }

  const { earliest, estimate, latest, levelNow } = leaves;
  const shownLevel = (kelvin: number): number => shown(middle + kelvin);
  // The interval's far side reaches the edge first, its near side last.
  const ends = [shownLevel(levelNow.low), shownLevel(levelNow.high)].map((y) => (side > 0 ? y : -y));
  const near = side * Math.min(...ends, side * edge);
  const far = side * Math.min(Math.max(...ends), side * edge);
  const [from, to] = [Math.max(earliest, now), latest ?? x[1]];
  const swept = cutAt(
    [
      { x: now, y: near },
      { x: now, y: far },
      { x: from, y: edge },
      { x: Math.max(to, from), y: edge },
      ...(latest === null ? [{ x: Math.max(to, from), y: near }] : []),
    ],
    x[1],
  );
  const line: readonly [At, At] | null =
    estimate === null || estimate <= now
      ? null
      : [
          { x: now, y: shownLevel(levelNow.estimate) },
          { x: estimate, y: edge },
        ];
  const about = estimate ?? earliest;
  const lead = leaves.onlyIfCreep ? "may leave the tolerance" : "leaves the tolerance";
  const range = latest === null ? `not before ${date(earliest)}` : printDateSpan(earliest, latest, timeZone);
  return {
    edge,
    side,
    bar: earliest > x[1] ? null : { from: within(earliest), to: within(to), open: latest === null || latest > x[1] },
    centre: line && cutLine(line, x[1]),
    swept,
    anchor: about <= x[1] ? { x: about, y: edge } : { x: x[1], y: (near + edge) / 2 },
    wordings: [
      estimate === null ? [lead, range] : [`${lead} about ${date(estimate)}`, latest === null ? range : `(${range})`],
      [lead, range],
    ],
  };
}

/** The line up to the right end of the drawing. */
function cutLine([from, to]: readonly [At, At], end: number): readonly [At, At] {
  if (to.x <= end) return [from, to];
  return [from, { x: end, y: from.y + ((to.y - from.y) * (end - from.x)) / (to.x - from.x) }];
}

/** The convex area up to the right end of the drawing. */
function cutAt(corners: readonly At[], end: number): readonly At[] {
  return corners.flatMap((corner, i) => {
    const next = corners[(i + 1) % corners.length] ?? corner;
    const own = corner.x <= end ? [corner] : [];
    if (corner.x <= end === next.x <= end) return own;
    return [...own, { x: end, y: corner.y + ((next.y - corner.y) * (end - corner.x)) / (next.x - corner.x) }];
  });
}

/** What is to come, hatched and dashed, and the dates between which the tolerance is left as a bar on its edge. */
export function forecastMarks({ swept, centre, bar, edge }: Forecast): readonly RenderFunction[] {
  return [
    layer("hatch", ({ x, y, pen }) => {
      const d = hatch(swept.map((at) => ({ x: x(at.x), y: y(at.y) })));
      return d === "" ? [] : [pen.element("path", { d })];
    }),
    layer("line thin dashed", ({ x, y, pen }) =>
      centre === null
        ? []
        : [pen.element("path", { d: `M${x(centre[0].x)},${y(centre[0].y)}L${x(centre[1].x)},${y(centre[1].y)}` })],
    ),
    layer("line", ({ x, y, pen }) => {
      if (bar === null) return [];
      const at = y(edge);
      const end = bar.open ? "m-7,-4l7,4l-7,4" : "m0,-4v8";
      return [pen.element("path", { d: `M${x(bar.from)},${at - 4}v8m0,-4H${x(bar.to)}${end}` })];
    }),
  ];
}

/** The forecast's words outside the tolerance, the fullest wording that fits the drawing. */
export function forecastLabel(forecast: Forecast, size: number, frame: Frame): Label {
  const most = frame.narrow ? 190 : 330;
  const { wordings, anchor, side } = forecast;
  const lines =
    wordings.find((rows) => rows.every((text) => textWidth(text, size, 600) <= most)) ?? wordings.at(-1) ?? [];
  return {
    ...anchor,
    reach: 5,
    prefer: side > 0 ? 270 : 90,
    priority: 90,
    farthest: 120,
    role: "ink",
    lines: lines.map((text, row) => ({ text, strong: row === 0 })),
  };
}

/** The hatched area as places that words rather stand outside of. */
export function forecastWash({ swept }: Forecast): readonly { x: number; low: number; high: number }[] {
  const [across, down] = [swept.map(({ x }) => x), swept.map(({ y }) => y)];
  const [from, to] = [Math.min(...across), Math.max(...across)];
  if (swept.length === 0) return [];
  const places = 16;
  return Array.from({ length: places + 1 }, (_, i) => ({
    x: from + ((to - from) * i) / places,
    low: Math.min(...down),
    high: Math.max(...down),
  }));
}
