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
  /** The running weighted mean over the loads that the alarm holds. */
  readonly mean: readonly At[];
}

/** Words at more alarms than this hide the loads; the latest are named, all are ringed. */
const mostNamed = (frame: Frame): number => (frame.narrow ? 2 : 5);

export function drawnAlarms(judgement: HoldJudgement, { shown }: DegreeWords): readonly DrawnAlarm[] {
  return judgement.stretches.flatMap(({ alarm }, index) => {
    if (alarm === null) return [];
    const loads = judgement.points.filter((point) => point.stretch === index);
    return alarm.alarms.flatMap((raised): DrawnAlarm[] => {
      const place = loads.findIndex(({ load }) => load === raised.raisedAtLoad);
      const point = loads[place];
      if (!point) return [];
      const first = loads.findIndex(({ load }) => load === raised.fromLoad);
      return [
        {
          ring: { x: point.at, y: shown(point.offsetKelvin) },
          up: raised.direction === "up",
          raisedAt: raised.raisedAt,
          mean: runningMean(alarm, loads, first, place).map(({ at, kelvin }) => ({ x: at, y: shown(kelvin) })),
        },
      ];
    });
  });
}

/** From the alarm's first load on for as long as the mean stays outside its limits, to where it was raised at least. */
function runningMean(alarm: StretchAlarm, loads: readonly OffsetPoint[], first: number, raised: number) {
  const { means, reach } = alarm.weightedMean;
  // One mean a load after the baseline: the last belongs to the stretch's last load.
  const shift = loads.length - means.length;
  const drawn: { at: number; kelvin: number }[] = [];
  for (let place = Math.max(first, shift); place < loads.length; place += 1) {
    const mean = means[place - shift] ?? Number.NaN;
    const inside = !(Math.abs(mean) > (reach[place - shift] ?? Number.POSITIVE_INFINITY));
    if (place > raised && inside) break;
    const load = loads[place];
    if (load && Number.isFinite(mean)) drawn.push({ at: load.at, kelvin: alarm.baselineLevelKelvin + mean });
  }
  return drawn;
}

/** `alarm 18 Oct 2026, down`, the latest few. */
export function alarmLabels(alarms: readonly DrawnAlarm[], { timeZone }: FigureSettings, frame: Frame): Label[] {
  return alarms.slice(-mostNamed(frame)).map(
    ({ ring, up, raisedAt }, place): Label => ({
      ...ring,
      reach: ringRadius(frame),
      prefer: up ? 270 : 90,
      priority: 100 + place,
      farthest: 140,
      role: "signal-words",
      lines: [{ text: `alarm ${printDate(raisedAt, timeZone)}, ${up ? "up" : "down"}`, strong: true }],
    }),
  );
}
