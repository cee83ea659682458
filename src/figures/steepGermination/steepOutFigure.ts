import type { Markish } from "@observablehq/plot";
import type { SteepRun } from "../../report/steepGerminationResult.ts";
import { printDate } from "../../units/instant.ts";
import { print } from "../../units/print.ts";
import { footAxis } from "../axes.ts";
import { runCell } from "../controlCharts/chartWords.ts";
import { type EndLabel, endLabels } from "../controlCharts/endLabels.ts";
import { nearLabels } from "../controlCharts/nearLabels.ts";
import { type FigureSettings, fullWidth, narrowWidth } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { type Label, labelLayer } from "../labelLayer.ts";
import { countOf, latestFirst } from "../listedRows.ts";
import { dotRadius, MOST_RINGS, ringRadius, rings, scatter } from "../scatter.ts";
import { ownStripAxes, ownStrips } from "../thermostat/ownStrips.ts";
import { floorFrame, nameLines, stripOptions } from "./floorFrame.ts";
import { targetBand, type Wanted } from "./targetBand.ts";

type Known = SteepRun & { readonly steepOutPercent: number };

/** Batches that are held against the same range. */
interface Group {
  readonly wanted: Wanted | null;
  readonly varieties: readonly string[];
  readonly steeps: readonly Known[];
}

const NONE: Wanted = { low: null, target: null, high: null };

/** In the order in which each range first comes up. */
function groupsOf(steeps: readonly Known[]): readonly Group[] {
  const groups = new Map<string, Known[]>();
  for (const steep of steeps) {
    const key = JSON.stringify(steep.target ?? NONE);
    groups.set(key, [...(groups.get(key) ?? []), steep]);
  }
  return [...groups.values()].map((own) => ({
    wanted: own[0]?.target ?? null,
    varieties: [...new Set(own.map(({ variety }) => variety ?? "variety not logged"))].sort(),
    steeps: own,
  }));
}

const isOutside = ({ steepOutPercent, target }: Known): boolean =>
  (target?.low != null && steepOutPercent < target.low) || (target?.high != null && steepOutPercent > target.high);

/** How far beyond its range a batch lies, points. */
const offBy = ({ steepOutPercent, target }: Known): number =>
  Math.max((target?.low ?? steepOutPercent) - steepOutPercent, steepOutPercent - (target?.high ?? steepOutPercent));

/**
 * Steep-out moisture of every batch in time, in steep blue, one strip for each range that is wanted: the range as a wash,
 * the aim as a line, batches outside ringed and the farthest of them named.
 *
 * @param said what to see, as the page's findings say it
 * @returns null where no batch has a steep-out moisture
 */
export function steepOutFigure(steeps: readonly SteepRun[], said: string, settings: FigureSettings): FigureSpec | null {
  const known = steeps.filter((steep): steep is Known => steep.steepOutPercent !== null);
  if (known.length === 0) return null;
  const { units, timeZone } = settings;
  const bare = (value: number | null): string => (value === null ? "" : print(value, "percent", units, { bare: true }));
  const groups = groupsOf(known);

  const options = (frame: Frame) => {
    const dated = { runs: known.map(({ startedAt }) => ({ at: startedAt })) };
    const names = groups.flatMap(({ wanted }) => endNames(wanted, (value) => value, bare).flatMap(({ rows }) => rows));
    const shared = floorFrame(dated, settings, frame, names);
    const { size, months } = shared;
    const { strips, inner } = ownStrips(
      groups.map(({ varieties, steeps: own, wanted }) => ({
        name: stripName(varieties, own.length, frame),
        values: [
          ...own.map(({ steepOutPercent }) => steepOutPercent),
          ...Object.values(wanted ?? NONE).flatMap((v) => v ?? []),
        ],
        least: 2,
      })),
      { height: frame.narrow ? 110 : 140, size, count: 4 },
    );
    const placed = groups.flatMap(({ steeps: own }, row) =>
      own.map((steep) => ({
        steep,
        x: steep.startedAt,
        y: strips[row]?.heightOf(steep.steepOutPercent) ?? 0,
        href: settings.runHref(steep.run),
        hint: () =>
          `${steep.run}, ${printDate(steep.startedAt, timeZone)}, ${steep.variety ?? "variety not logged"}: ${print(steep.steepOutPercent, "percent", units)}, ${steep.basis ?? "basis not logged"}`,
      })),
    );
    const outside = placed
      .filter(({ steep }) => isOutside(steep))
      .sort((a, b) => a.x - b.x)
      .slice(-MOST_RINGS);
    const farthest = [...outside].sort((a, b) => offBy(a.steep) - offBy(b.steep));
    const labels = farthest.slice(frame.narrow ? -3 : -6).map(
      ({ steep, x: at, y }, priority): Label => ({
        x: at,
        y,
        reach: ringRadius(frame),
        priority,
        farthest: 40,
        prefer: steep.target?.low != null && steep.steepOutPercent < steep.target.low ? 90 : 270,
        role: "signal-words",
        lines: [{ text: `${steep.run} ${bare(steep.steepOutPercent)}`, strong: true }],
      }),
    );
    const marks: Markish[] = [
      ...groups.flatMap(({ wanted }, row) => {
        const strip = strips[row];
        return wanted === null || strip === undefined ? [] : targetBand(wanted, strip.heightOf, endsOf(groups[row]));
      }),
      ownStripAxes(strips, size),
      footAxis(months, size),
      scatter(placed, frame, "mark-steep"),
      rings(outside, frame),
      endLabels(
        groups.flatMap(({ wanted }, row) => endNames(wanted, strips[row]?.heightOf, bare)),
        size,
      ),
      labelLayer({
        size,
        labels,
        lines: nameLines(strips, shared),
        marks: [
          ...nearLabels(placed, labels, shared).map((p) => ({ ...p, radius: dotRadius(frame) + 1 })),
          ...outside.map((p) => ({ ...p, radius: ringRadius(frame) + 1, hard: true })),
        ],
      }),
    ];
    return stripOptions(shared, inner, marks);
  };

  return {
    id: "steep-out-in-time",
    title: "Steep-out moisture, batch by batch",
    summary: said,
    table: latestFirst(
      known,
      "batch",
      [
        { label: "batch", numeric: false },
        { label: "into the steep", numeric: false },
        { label: "variety", numeric: false },
        { label: "steep-out moisture", unit: "%", numeric: true },
        { label: "how", numeric: false },
        { label: "target", unit: "%", numeric: true },
        { label: "range", unit: "%", numeric: false },
      ],
      (steep) => [
        runCell(steep.run, settings),
        printDate(steep.startedAt, timeZone),
        steep.variety ?? "",
        bare(steep.steepOutPercent),
        steep.basis ?? "",
        bare(steep.target?.target ?? null),
        steep.target === null ? "" : [steep.target.low, steep.target.high].map(bare).join(" to "),
      ],
    ),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}

const endsOf = (group: Group | undefined): readonly [number, number] => {
  const values = (group?.steeps ?? []).map(({ steepOutPercent }) => steepOutPercent);
  return [Math.min(...values), Math.max(...values)];
};

function stripName(varieties: readonly string[], count: number, { narrow }: Frame): string {
  const named = varieties.length > (narrow ? 2 : 5) ? `${varieties.length} varieties` : varieties.join(", ");
  return `${named}, ${countOf(count, "batch")}, % at steep-out`;
}

/** The aim and the edges of the range, named at the right end of their lines. */
function endNames(
  wanted: Wanted | null,
  heightOf: ((value: number) => number) | undefined,
  bare: (value: number | null) => string,
): readonly EndLabel[] {
  if (wanted === null || heightOf === undefined) return [];
  const { low, target, high } = wanted;
  return [
    ...(high === null ? [] : [{ y: heightOf(high), role: "soft" as const, rows: [`highest ${bare(high)}`] }]),
    ...(target === null ? [] : [{ y: heightOf(target), role: "ink" as const, rows: [`target ${bare(target)}`] }]),
    ...(low === null ? [] : [{ y: heightOf(low), role: "soft" as const, rows: [`lowest ${bare(low)}`] }]),
  ];
}
