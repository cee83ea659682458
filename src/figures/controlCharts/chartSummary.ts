import type { ControlChart } from "../../report/controlChartResult.ts";
import type { FigureSettings } from "../figureSettings.ts";
import { countOf } from "../listedRows.ts";
import { type ChartWords, capitalised } from "./chartWords.ts";
import { multiplierOf } from "./limitSteps.ts";
import { signalGroups } from "./signalGroups.ts";
import { signalSentence } from "./signalWords.ts";

/** A caption names this many signals; the rest are counted. */
const MOST_SAID = 3;

/** What to see in a control chart: how many signals and which are the latest, where the limits lie and what they rest on. */
export function chartSummary(chart: ControlChart, words: ChartWords, settings: FigureSettings): string {
  const drawn = chart.runs.filter(({ deviation }) => deviation !== null).length;
  const without = chart.runs.length - drawn;
  return [
    signalsSaid(chart, words, settings, drawn),
    limitsSaid(chart, words),
    chart.assumptions?.onResiduals
      ? "One batch leans on the one before, so each is judged by what the batch before it let expect."
      : "",
    without === 0
      ? ""
      : `${countOf(without, "batch")} of a variety without limits ${without === 1 ? "is" : "are"} not drawn.`,
  ]
    .filter((sentence) => sentence !== "")
    .join(" ");
}

function signalsSaid(chart: ControlChart, words: ChartWords, settings: FigureSettings, drawn: number): string {
  const groups = signalGroups(chart.runs, chart.signals);
  if (groups.length === 0) return `None of ${countOf(drawn, "batch")} signals.`;
  // Rules that speak of the same batches are one signal, as on the drawing; the one over most batches says it.
  const said = groups
    .slice(-MOST_SAID)
    .flatMap(({ signals }) => signals.slice(0, 1))
    .map((signal) => capitalised(signalSentence(signal, words, settings)));
  const earlier = groups.length - said.length;
  const count = `${countOf(groups.length, "signal")} in ${countOf(drawn, "batch")}`;
  return `${count}${earlier > 0 ? `, the latest ${said.length}` : ""}: ${said.join(". ")}.`;
}

function limitsSaid(chart: ControlChart, words: ChartWords): string {
  const index = chart.phases.findLastIndex((phase) => phase.centres.length > 0);
  const phase = chart.phases[index];
  const multiplier = multiplierOf(chart, index);
  if (!phase || multiplier === null) return "";
  const reaches = chart.runs
    .filter((run) => run.phase === index && run.sigma !== null)
    .map((run) => multiplier * (run.sigma ?? 0));
  const [low, high] = [words.size(Math.min(...reaches)), words.size(Math.max(...reaches))];
  const span = low === high ? `±${low}` : `±${low} to ±${high} by variety`;
  const since = chart.phases.length > 1 ? ` ${phase.name}` : "";
  const fewest = [...phase.centres].sort((a, b) => a.baselineRuns - b.baselineRuns)[0];
  const doubt =
    !phase.provisional || !fewest
      ? ""
      : phase.centres.length === 1
        ? ", so provisional"
        : `, provisional while ${fewest.variety} has ${fewest.baselineRuns}`;
  return `Limits${since} ${span}, set by ${countOf(phase.baselineRuns, "baseline batch")}${doubt}.`;
}
