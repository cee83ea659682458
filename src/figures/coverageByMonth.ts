import type { Markish, PlotOptions } from "@observablehq/plot";
import type { LogsResult, MonthCoverage } from "../report/logsResult.ts";
import { printMonth } from "../units/instant.ts";
import { footHeight } from "./axes.ts";
import { fullWidth, narrowWidth, textSize } from "./figureSettings.ts";
import type { FigureSpec, Frame } from "./figureSpec.ts";
import { layer } from "./layer.ts";
import { countOf, latestFirst } from "./listedRows.ts";
import { textWidth } from "./textWidth.ts";

/** What is counted of each month, in the order of the road from air to malt. */
const LOGGED: readonly { readonly name: string; readonly count: (month: MonthCoverage) => number }[] = [
  { name: "air", count: (m) => m.loadsWithAir },
  { name: "bed depth", count: (m) => m.loadsWithDepth },
  { name: "readings", count: (m) => m.loadsWithReadings },
  { name: "final moisture", count: (m) => m.runsWithFinalMoisture },
  { name: "yield", count: (m) => m.runsWithYield },
];

const WIDEST_COLUMN = 30;

/**
 * Month by month, how many of its loads have what each analysis needs: a bar as tall as the share, an empty place where
 * nothing was logged.
 *
 * @returns null where no month has a load.
 */
export function coverageByMonth(logs: LogsResult): FigureSpec | null {
  const months = logs.months;
  const loads = months.reduce((sum, month) => sum + month.loads, 0);
  if (loads === 0) return null;

  const options = (frame: Frame): PlotOptions => {
    const size = textSize(frame);
    const tall = frame.narrow ? 14 : 16;
    const pitch = tall + 11;
    const left =
      Math.ceil(Math.max(...[...LOGGED.map((l) => l.name), "loads"].map((name) => textWidth(name, size)))) + 12;
    const head = lineHeightOf(size);
    const years = months.flatMap((month, i) => {
      const [year, number] = month.month.split("-");
      if (i === 0) return [{ at: i, label: printMonth(month.month) }];
      return number === "01" ? [{ at: i, label: String(year) }] : [];
    });
    const marks: Markish[] = [
      layer("axis", ({ x, inside, pen }) => {
        const wide = x(1) - x(0);
        const bar = Math.max(1, wide * (frame.narrow ? 0.7 : 0.62));
        const drawn: SVGElement[] = [];
        LOGGED.forEach(({ name, count }, row) => {
          const foot = head + (row + 1) * pitch;
          drawn.push(
            pen.element("text", { class: "name", x: 0, y: foot - 2, "text-anchor": "start" }, [name]),
            pen.element("path", { class: "grid", d: `M${inside.left},${foot}H${inside.right}` }),
          );
          const path = months.map((month, i) => {
            const share = month.loads === 0 ? 0 : Math.min(1, count(month) / month.loads);
            if (share === 0) return "";
            return `M${x(i) + bar / 2},${foot}v${-share * tall}`;
          });
          drawn.push(
            pen.element("path", { class: "shares", "stroke-width": Math.round(bar * 10) / 10, d: path.join("") }),
          );
        });
        const foot = head + LOGGED.length * pitch;
        years.forEach(({ at, label }, i) => {
          const next = years[i + 1];
          // The first year gives way where the second would touch it.
          if (next && x(next.at) - x(at) < textWidth(label, size) + 6) return;
          drawn.push(
            pen.element("path", { class: "tick", d: `M${x(at)},${foot}v6` }),
            pen.element("text", { x: x(at), y: foot + 7 + size * 0.95, "text-anchor": "start" }, [label]),
          );
        });
        return drawn;
      }),
    ];
    return {
      height: head + LOGGED.length * pitch + footHeight([], size),
      marginTop: head,
      marginRight: 1,
      marginBottom: footHeight([], size),
      marginLeft: left,
      // Few months keep to the left in columns of the usual width, rather than swell to slabs.
      x: { domain: [0, Math.max(months.length, (frame.width - left) / WIDEST_COLUMN)] },
      marks,
    };
  };

  const whole = LOGGED.map(({ name, count }) => ({ name, n: months.reduce((sum, month) => sum + count(month), 0) }));
  const said = whole.slice(0, 3).map(({ name, n }) => `${n} have ${name === "bed depth" ? "a bed depth" : name}`);
  return {
    id: "coverage-by-month",
    title: "What was logged, month by month",
    summary: `Of ${countOf(loads, "load")} in ${countOf(months.filter((month) => month.loads > 0).length, "month")}, ${said.slice(0, 2).join(", ")} and ${said[2]}.`,
    table: latestFirst(
      months,
      "month",
      [
        { label: "month", numeric: false },
        { label: "loads", numeric: true },
        ...LOGGED.map(({ name }) => ({ label: name, numeric: true })),
      ],
      (month) => [printMonth(month.month), String(month.loads), ...LOGGED.map(({ count }) => String(count(month)))],
    ),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}

const lineHeightOf = (size: number): number => Math.round(size * 0.5);
