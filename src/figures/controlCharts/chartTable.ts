import type { ChartedRun, ControlChart } from "../../report/controlChartResult.ts";
import { printDate } from "../../units/instant.ts";
import type { FigureSettings } from "../figureSettings.ts";
import type { DataTable } from "../figureSpec.ts";
import { latestFirst } from "../listedRows.ts";
import { type ChartWords, runCell } from "./chartWords.ts";
import { multiplierOf } from "./limitSteps.ts";
import { signalName } from "./signalWords.ts";

/** What is said of each run that a signal was raised at or that lies beyond its limits. */
export function notesByRun({ signals }: Pick<ControlChart, "signals">): ReadonlyMap<string, readonly string[]> {
  const notes = new Map<string, string[]>();
  for (const signal of signals) {
    const runs = signal.rule === "beyondLimits" ? signal.runs : [signal.raisedAt];
    for (const run of runs) notes.set(run, [...(notes.get(run) ?? []), signalName(signal)]);
  }
  return notes;
}

const standing = (run: ChartedRun): string =>
  run.leftOut !== null ? `left out of the baseline: ${run.leftOut}` : run.inBaseline ? "baseline" : "";

/** The batches of a chart, latest first: value, its variety's centre, the difference and the limits, and what is said of it. */
export function chartTable(chart: ControlChart, words: ChartWords, settings: FigureSettings): DataTable {
  const notes = notesByRun(chart);
  const reaches = chart.phases.map((_, index) => multiplierOf(chart, index));
  return latestFirst(
    chart.runs,
    "batch",
    [
      { label: "run", numeric: false },
      { label: "unloaded", numeric: false },
      { label: "variety", numeric: false },
      { label: words.measure, unit: "%", numeric: true },
      { label: "its centre", unit: "%", numeric: true },
      { label: chart.assumptions?.onResiduals ? "judged on" : "from centre", unit: "points", numeric: true },
      { label: "limits, either side", unit: "points", numeric: true },
      { label: "signal", numeric: false },
      { label: "limits rest on", numeric: false },
    ],
    (run) => {
      const multiplier = reaches[run.phase] ?? null;
      return [
        runCell(run.run, settings),
        printDate(run.at, settings.timeZone),
        run.variety,
        words.bareValue(run.value),
        run.centre === null ? "" : words.bareValue(run.centre),
        run.deviation === null ? "" : words.bareDifference(run.deviation),
        run.sigma === null || multiplier === null ? "" : words.bareSize(multiplier * run.sigma),
        (notes.get(run.run) ?? []).join(", "),
        standing(run),
      ];
    },
  );
}
