import type { HoldJudgement, OffsetPoint, StretchAlarm } from "../../report/thermostatResult.ts";
import { printDate } from "../../units/instant.ts";
import type { FigureSettings } from "../figureSettings.ts";
import type { Frame } from "../figureSpec.ts";
import type { Label } from "../labelLayer.ts";
import { ringRadius } from "../scatter.ts";
import type { DegreeWords } from "./degreeWords.ts";

interface At {
  readonly x: number;
  readonly y: number;
}

/** An alarm as it is drawn, in the reader's degrees. */
export interface DrawnAlarm {
  /** The load it was raised at. */
  readonly ring: At;
  readonly up: boolean;
  readonly raisedAt: number;
  readonly endedAt: number | null;
  /** The running weighted mean over the loads that the alarm holds. */
  readonly mean: readonly At[];
}

/** Words at more alarms than this hide the loads; the latest are named, all are ringed. */
const mostNamed = (frame: Frame): number => (frame.narrow ? 2 : 5);

export function drawnAlarms(judgement: HoldJudgement, { shown }: DegreeWords): readonly DrawnAlarm[] {
  return judgement.stretches.flatMap(({ alarm }, index) => {
    if (alarm === null) return [];
    const loads = judgement.points.filter((point) => point.stretch === index);
    return alarm.alarms.flatMap((raised, order): DrawnAlarm[] => {
      const place = loads.findIndex(({ load }) => load === raised.raisedAtLoad);
      const point = loads[place];
      if (!point) return [];
      const placeOf = (name: string | undefined): number => loads.findIndex(({ load }) => load === name);
      const next = placeOf(alarm.alarms[order + 1]?.fromLoad);
      const span = { first: placeOf(raised.fromLoad), raised: place, end: next < 0 ? loads.length : next };
      return [
        {
          ring: { x: point.at, y: shown(point.offsetKelvin) },
          up: raised.direction === "up",
          raisedAt: raised.raisedAt,
          endedAt: raised.endedAt,
          mean: runningMean(alarm, loads, span).map(({ at, kelvin }) => ({ x: at, y: shown(kelvin) })),
        },
      ];
    });
  });
}

/**
 * The running mean where it alarms: from where it last came out of its limits before the alarm was raised, no earlier than
 * the alarm's first load, to the last load before the next alarm at which it is outside.
 */
function runningMean(
  alarm: StretchAlarm,
  loads: readonly OffsetPoint[],
  { first, raised, end }: { readonly first: number; readonly raised: number; readonly end: number },
) {
  const { means, reach } = alarm.weightedMean;
  // One mean a load after the baseline: the last belongs to the stretch's last load.
  const shift = loads.length - means.length;
  const outside = (place: number): boolean => Math.abs(means[place - shift] ?? 0) > (reach[place - shift] ?? 0);
  let [start, last] = [raised, raised];
  while (start > Math.max(first, shift) && outside(start)) start -= 1;
  for (let place = raised; place < Math.max(end, raised + 1); place += 1) if (outside(place)) last = place;
  return loads.slice(0, last + 1).flatMap((load, place) => {
    const mean = means[place - shift];
    if (place < start || mean === undefined || !Number.isFinite(mean)) return [];
    return [{ at: load.at, kelvin: alarm.baselineLevelKelvin + mean }];
  });
}

/** `alarm 18 Oct 2026, down`, the latest few. */
export function alarmLabels(alarms: readonly DrawnAlarm[], { timeZone }: FigureSettings, frame: Frame): Label[] {
  return alarms.slice(-mostNamed(frame)).map(
    ({ ring, up, raisedAt, endedAt }, place): Label => ({
      ...ring,
      reach: ringRadius(frame),
      prefer: up ? 270 : 90,
      priority: 100 + place,
      farthest: 140,
      role: "signal-words",
      lines: [
        { text: `alarm ${printDate(raisedAt, timeZone)}, ${up ? "up" : "down"}`, strong: true },
        ...(endedAt === null ? [] : [{ text: `ended ${printDate(endedAt, timeZone)}` }]),
      ],
    }),
  );
}

/** The line of the latest running mean is named once. */
export function meanLabel(alarms: readonly DrawnAlarm[], frame: Frame): Label[] {
  const mean = alarms.findLast((alarm) => alarm.mean.length > 1);
  const points = mean?.mean ?? [];
  const at = points[Math.floor(points.length / 2)];
  if (!mean || !at) return [];
  return [
    {
      ...at,
      or: points.filter((_, i) => i % 3 === 0),
      reach: 3,
      prefer: mean.up ? 45 : 315,
      priority: 10,
      farthest: frame.narrow ? 24 : 60,
      role: "signal-words",
      lines: [{ text: "running mean" }],
    },
  ];
}
