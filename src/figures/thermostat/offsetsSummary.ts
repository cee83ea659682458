import type { HoldJudgement, KilnThermostat, StretchModels, ThermostatStretch } from "../../report/thermostatResult.ts";
import { printDateInFull } from "../../units/instant.ts";
import { capitalised, listed } from "../controlCharts/chartWords.ts";
import type { FigureSettings } from "../figureSettings.ts";
import { countOf } from "../listedRows.ts";
import { printDateSpan } from "./dateSpan.ts";
import { degreeWords } from "./degreeWords.ts";

const CHARTS = { weightedMean: "the running mean", cumulativeSum: "the cumulative sum" } as const;
const MODELS = { constant: "a steady level", step: "a step", creep: "a creep" } as const;

/** What is seen since the last calibration or repair: the level, what moved and when, the alarm, and when it will matter. */
export function offsetsSummary(judgement: HoldJudgement, kiln: KilnThermostat, settings: FigureSettings): string {
  const stretch = judgement.stretches.at(-1);
  const held = judgement.points.length;
  const without = judgement.without.reduce((sum, { count }) => sum + count, 0);
  const counted =
    without === 0
      ? ""
      : ` ${capitalised(countOf(without, "load"))} without an offset ${without === 1 ? "is" : "are"} not drawn.`;
  if (!stretch) return `${countOf(held, "load")}.${counted}`;
  const said = [
    `${sinceWords(stretch, settings)}, ${countOf(stretch.loads, "load")}${modelWords(stretch, kiln, settings)}`,
    alarmWords(stretch, settings),
    leavesWords(stretch, kiln, settings),
    kiln.probeAtBulb ? "" : "The probe does not sit at the bulb, so only changes are drawn.",
  ].filter((sentence) => sentence !== "");
  return `${said.join(" ")}${counted}`;
}

/** `Since 24 June 2025 (kiln thermostat set right against reference)`. */
function sinceWords({ event }: ThermostatStretch, { timeZone }: FigureSettings): string {
  return event === null ? "Since the first load" : `Since ${printDateInFull(event.on, timeZone)} (${event.what})`;
}

function modelWords(
  { models, tooLittle }: ThermostatStretch,
  { probeAtBulb }: KilnThermostat,
  settings: FigureSettings,
): string {
  if (models === null) return tooLittle === null ? "." : `. ${tooLittle}`;
  const { difference, range } = degreeWords(settings);
  const rate = degreeWords(settings, 2);
  // Where the probe is elsewhere the level says where, and nothing of the thermostat.
  const level = probeAtBulb ? `a level of ${difference(models.levelKelvin.estimate)}` : "a level";
  const when = onsetWords(models, settings);
  const unclear = models.isClear
    ? ""
    : `, though ${MODELS[models.scores[1]?.model ?? "constant"]} explains it nearly as well`;
  if (models.winner === "step" && models.stepKelvin) {
    const { estimate, low, high } = models.stepKelvin;
    return `: ${level}, then a step of ${difference(estimate)} (${range(low, high)})${when}${unclear}.`;
  }
  if (models.winner === "creep" && models.kelvinPerMonth) {
    const { estimate, low, high } = models.kelvinPerMonth;
    return `: ${level}, then moving by ${rate.difference(estimate)} a month (${rate.range(low, high)})${when}${unclear}.`;
  }
  const { low, high } = models.levelKelvin;
  const at = probeAtBulb ? `at ${difference(models.levelKelvin.estimate)} ` : "";
  return `: steady ${at}(${range(low, high)})${unclear}.`;
}

function onsetWords({ onset, winner }: StretchModels, { timeZone }: FigureSettings): string {
  if (onset === null) return "";
  const about = printDateInFull(onset.estimate, timeZone);
  return ` ${winner === "step" ? "" : "from "}about ${about} (${printDateSpan(onset.low, onset.high, timeZone, { inFull: true })})`;
}

function alarmWords({ alarm, models, tooLittle }: ThermostatStretch, { timeZone }: FigureSettings): string {
  // Without models the sentence before has said it.
  if (alarm === null) return models === null || tooLittle === null ? "" : tooLittle;
  const { alarms } = alarm;
  if (alarms.length === 0)
    return models?.winner === "constant" ? "No alarm." : "No alarm was raised, so this may be chance.";
  const times = alarms.map(
    ({ raisedAt, endedAt, direction, raisedBy }) =>
      `${printDateInFull(raisedAt, timeZone)} (${direction}, by ${listed(raisedBy.map((chart) => CHARTS[chart]))}${endedAt === null ? "" : `; it ended on ${printDateInFull(endedAt, timeZone)}`})`,
  );
  return `Alarm on ${listed(times.slice(-3))}${times.length > 3 ? `, and ${times.length - 3} before` : ""}.`;
}

function leavesWords({ models }: ThermostatStretch, kiln: KilnThermostat, settings: FigureSettings): string {
  if (models === null) return "";
  const { size } = degreeWords(settings);
  const date = (moment: number): string => printDateInFull(moment, settings.timeZone);
  const tolerance = `the tolerance of ±${size(kiln.toleranceKelvin)}${kiln.probeAtBulb ? "" : " around the level before"}`;
  const span = ({ low, high }: { readonly low: number; readonly high: number }): string =>
    printDateSpan(low, high, settings.timeZone, { inFull: true });
  const { leaves } = models;
  switch (leaves.kind) {
    case "already-outside":
      return leaves.since === null
        ? `It lies outside ${tolerance}.`
        : `It has been outside ${tolerance} since about ${date(leaves.since.estimate)} (${span(leaves.since)}).`;
    case "dated": {
      const { earliest, estimate, latest } = leaves;
      const verb = leaves.onlyIfCreep ? "If it is a creep, it" : "At this rate it";
      if (estimate !== null && latest !== null) {
        return `${verb} leaves ${tolerance} about ${date(estimate)} (${span({ low: earliest, high: latest })}).`;
      }
      const about = estimate === null ? "" : ` about ${date(estimate)},`;
      return `${verb} leaves ${tolerance}${about} not before ${date(earliest)}.`;
    }
    case "not-within-horizon":
      return `It stays within ${tolerance} for the next ${leaves.horizonDays} days.`;
    case "cannot-be-told":
      return `Whether it leaves ${tolerance} cannot be told from these loads.`;
  }
}
