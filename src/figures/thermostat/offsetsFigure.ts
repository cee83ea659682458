import type { Markish } from "@observablehq/plot";
import type { HoldJudgement, KilnThermostat } from "../../report/thermostatResult.ts";
import { printDate } from "../../units/instant.ts";
import { print, printSigned } from "../../units/print.ts";
import { footAxis, footHeight, valueAxis } from "../axes.ts";
import { endLabels } from "../controlCharts/endLabels.ts";
import { nearLabels } from "../controlCharts/nearLabels.ts";
import { spanWithRoom, wordsOver, wordsUnder } from "../controlCharts/spanWithRoom.ts";
import { eventMarks, eventRows } from "../eventMarks.ts";
import { type FigureSettings, fullWidth, narrowWidth } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { labelLayer, lineHeight } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { loadHref } from "../loadPoints.ts";
import { dotRadius, ringRadius, rings, scatter } from "../scatter.ts";
import { pathThrough } from "../thinSeries.ts";
import { valueTicks } from "../ticks.ts";
import { alarmLabels, drawnAlarms, meanLabel } from "./alarmMarks.ts";
import { beganWords } from "./beganWords.ts";
import { checkDays, checkMarks, RAIL } from "./checkRail.ts";
import { degreeWords } from "./degreeWords.ts";
import { forecastLabel, forecastMarks, forecastOf, forecastWash } from "./forecast.ts";
import { nameInId } from "./nameInId.ts";
import { offsetsSummary } from "./offsetsSummary.ts";
import { offsetsTable } from "./offsetsTable.ts";
import { onsetBrackets, onsetMarks, onsetStrip } from "./onsetBrackets.ts";
import { shownOffsets } from "./shownOffsets.ts";
import { stretchSpans } from "./stretchSpans.ts";
import { thermostatFrame } from "./thermostatFrame.ts";
import { toleranceBands, toleranceMarks, toleranceWashes } from "./toleranceBands.ts";
import { axisTitle, endNames } from "./toleranceNames.ts";
import { onDrawing, winnerLabels, winnerLines } from "./winnerLines.ts";

const HOLDS = { drying: "drying hold", cure: "cure" } as const;

/**
 * The thermostat's offset in one hold, or where the probe is not at its bulb how that changed, load by load in time: its tolerance, what explains each stretch between
 * calibrations best, when a change began, alarms in words, what was logged about kiln, thermostat and logger, and what
 * is to come if it goes on so. The time drawn ends with that forecast and begins no earlier than it can be read: the
 * drawing says from when, the table has the loads before.
 *
 * @returns null where no load of the hold has an offset
 */
export function offsetsFigure(
  judged: HoldJudgement,
  kiln: KilnThermostat,
  settings: FigureSettings,
): FigureSpec | null {
  if (judged.points.length === 0) return null;
  const judgement = shownOffsets(judged, kiln);
  const words = degreeWords(settings);
  const tolerance = words.shown(kiln.toleranceKelvin);
  const alarms = drawnAlarms(judgement, words);
  const lines = winnerLines(judgement, words);
  const points = judgement.points.map((point) => ({
    x: point.at,
    y: words.shown(point.offsetKelvin),
    href: loadHref(point.runs, point.load, settings),
    hint: () =>
      `${point.runs.join(", ")}, ${printDate(point.at, settings.timeZone)}: ${words.difference(point.offsetKelvin)} ${
        kiln.probeAtBulb
          ? `from its set point of ${print(point.setCelsius, "temperature", settings.units)}`
          : "from the level before any change"
      }`,
  }));

  const options = (frame: Frame) => {
    const shared = thermostatFrame(judgement, settings, frame);
    const { size, x, months } = shared;
    const seenAt = (at: number): boolean => at >= x[0] && at <= x[1];
    const drawn = points.filter((point) => seenAt(point.x));
    const spans = stretchSpans(judgement, x);
    const bands = toleranceBands(kiln, spans, words);
    const brackets = onsetBrackets(judgement, words, x, settings);
    const checks = checkDays(kiln.logger, x);
    const forecast = forecastOf(judgement, kiln, words, x, settings);
    const held = alarms
      .filter(({ ring }) => seenAt(ring.x))
      .map((alarm) => ({ ...alarm, mean: onDrawing(alarm.mean, x) }));
    const walked = lines.map((line) => ({ ...line, points: onDrawing(line.points, x) }));
    const events = kiln.events.filter(({ on, kind }) => kind !== "new-baseline" && seenAt(on));
    const head = eventRows(events, frame) * size * 1.3;

    const labels = [
      ...alarmLabels(held, settings, frame),
      ...(forecast === null ? [] : [forecastLabel(forecast, size, frame)]),
      ...winnerLabels(walked, settings, frame),
      ...meanLabel(held, frame),
    ];
    const strip = brackets.length === 0 ? 0 : onsetStrip(size);
    const rail = checks.length === 0 ? 0 : RAIL;
    const inner = (frame.narrow ? 240 : 300) + strip + rail;
    const heights = [
      ...drawn.map((p) => p.y),
      ...walked.flatMap((line) => line.points.map((p) => p.y)),
      ...bands.flatMap(({ middle, reach }) => [middle - reach, middle + reach]),
      // While no level is known to count a tolerance from, its size alone gives the scale.
      ...(bands.length > 0 ? [] : drawn.flatMap((p) => [p.y - tolerance, p.y + tolerance])),
    ];
    const over = Math.max(wordsOver(labels, size), events.length > 0 ? lineHeight(size) : 0);
    const room = { over, under: wordsUnder(labels, size) + strip + rail };
    const y = spanWithRoom(heights, inner, room);
    const ticks = valueTicks(Math.min(...heights), Math.max(...heights), frame.narrow ? 4 : 6, printSigned);
    const ringed = held.map(({ ring }) => ring);
    const marks: Markish[] = [
      ...toleranceMarks(bands),
      valueAxis(ticks, axisTitle(kiln, settings, frame), size),
      footAxis(months, size),
      checkMarks(checks, frame),
      eventMarks(events, frame, strip === 0 ? 0 : strip + rail),
      onsetMarks(brackets, size, rail),
      ...(forecast === null ? [] : forecastMarks(forecast)),
      scatter(drawn, frame),
      layer("line", ({ x: toX, y: toY, pen }) =>
        walked.flatMap((line) =>
          line.points.length < 2
            ? []
            : [pen.element("path", { d: pathThrough(line.points.map((p) => ({ x: toX(p.x), y: toY(p.y) }))) })],
        ),
      ),
      layer("signal level", ({ x: toX, y: toY, pen }) =>
        held.flatMap(({ mean }) =>
          mean.length < 2
            ? []
            : [pen.element("path", { d: pathThrough(mean.map((p) => ({ x: toX(p.x), y: toY(p.y) }))) })],
        ),
      ),
      rings(ringed, frame),
      endLabels(
        endNames(
          bands,
          kiln,
          settings,
          frame,
          checks.length === 0 ? null : y[0] + ((y[1] - y[0]) * RAIL * 0.4) / inner,
        ),
        size,
      ),
      ...beganWords(shared, settings),
      labelLayer({
        size,
        labels,
        lines: [
          ...walked.map((line) => line.points),
          ...held.map(({ mean }) => mean),
          ...(forecast?.centre ? [forecast.centre] : []),
        ],
        uprights: [...events.map(({ on }) => on), ...checks, ...brackets.map(({ estimate }) => estimate)],
        washes: [...toleranceWashes(bands), ...(forecast === null ? [] : [forecastWash(forecast)])],
        bounds: (inside) => ({ ...inside, bottom: inside.bottom - strip - rail + 8 }),
        marks: [
          ...nearLabels(drawn, labels, shared).map((p) => ({ ...p, radius: dotRadius(frame) + 1 })),
          ...ringed.map((p) => ({ ...p, radius: ringRadius(frame) + 1, hard: true })),
        ],
      }),
    ];
    const marginTop = Math.round(size * 1.9 + head);
    const marginBottom = footHeight(months, size);
    return {
      height: inner + marginTop + marginBottom,
      marginTop,
      marginRight: shared.right,
      marginBottom,
      marginLeft: shared.left,
      x: { domain: x },
      y: { domain: y },
      marks,
    };
  };

  return {
    id: `thermostat-offsets-${judgement.hold}-${nameInId(kiln.kiln)}`,
    title: `Is the thermostat drifting in the ${HOLDS[judgement.hold]}?`,
    summary: offsetsSummary(judgement, kiln, settings),
    table: offsetsTable(judgement, kiln, settings),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}
