import type { ChartPhase, ControlChart } from "../report/controlChartResult.ts";
import { roughly } from "./chartWords.ts";
import { counted } from "./counted.ts";
import { type Sentence, strong } from "./sentence.ts";

/** What one expects to count; below one half it is rather none than one. */
function expected(count: number): string {
  if (count < 0.1) return "hardly any";
  return count < 0.95 ? "fewer than one" : `about ${roughly(count)}`;
}

/** `24 batches`, or `14 to 24 batches a variety`. */
function restOn(phase: ChartPhase | undefined): string {
  const counts = (phase?.centres ?? []).map(({ baselineRuns }) => baselineRuns);
  const [fewest, most] = [Math.min(...counts), Math.max(...counts)];
  if (counts.length === 0) return "few batches";
  if (counts.length === 1) return counted(most, "batch", "batches");
  return `${fewest === most ? "" : `${fewest} to `}${counted(most, "batch", "batches")} a variety`;
}

/**
 * What the chosen rules cost on a quiet house: how far apart false signals lie, over what the baseline leaves uncertain,
 * and so how many to expect in the batches shown. Empty where there are no limits; says so while it is still worked out.
 */
export function falseSignalSentence(chart: ControlChart): Sentence {
  const { falseSignals, phases, runs } = chart;
  if (falseSignals === null) return [];
  if (falseSignals === "to come") return ["How often this set cries wolf on a quiet house is being worked out."];
  const judged = runs.filter(({ deviation }) => deviation !== null).length;
  const baseline = [...phases].reverse().find(({ centres }) => centres.length > 0);
  const { knownLimits, low, high, expected: count } = falseSignals;
  const between = Number.isFinite(high) ? `from ${roughly(low)} to ${roughly(high)}` : `from ${roughly(low)} up`;
  const range = Number.isFinite(count.high) ? ` (${roughly(count.low)} to ${roughly(Math.ceil(count.high))})` : "";
  return [
    "On a quiet house this set cries wolf about once in ",
    strong(`${roughly(knownLimits)}\u00a0batches`),
    ` (anything ${between}, since the limits rest on ${restOn(baseline)}): expect `,
    strong(expected(count.estimate)),
    `${range} in the ${counted(judged, "batch", "batches")} judged.`,
  ];
}
