import type { HoldJudgement } from "../../report/thermostatResult.ts";
import { type FigureSettings, textSize } from "../figureSettings.ts";
import type { Frame } from "../figureSpec.ts";
import { textWidth } from "../textWidth.ts";
import { paddedSpan, type Tick } from "../ticks.ts";
import { dayTicks, monthTicks } from "../timeTicks.ts";

const DAY = 86_400_000;
const YEAR = 365.25 * DAY;
/** A shorter time than this is told in days. */
const FEW_DAYS = 70;
/** No more than this is drawn, so that a forecast of weeks can be read; the latest stretch is always drawn whole. */
const longestDrawn = (frame: Frame): number => (frame.narrow ? 1.5 : 6) * YEAR;
/** A forecast takes no more than this share of the time that was seen, but may always take two months. */
const FORECAST_SHARE = 0.5;
const FORECAST_LEAST = 60 * DAY;

/** What the drawings of one hold share, so that they stand under each other on one time axis. */
export interface ThermostatFrame {
  readonly size: number;
  readonly x: readonly [number, number];
  readonly months: readonly Tick[];
  readonly left: number;
  readonly right: number;
  /** Where a date stands on the drawing, px. */
  readonly acrossAt: (at: number) => number;
  /** True where loads before the drawing's beginning are left out. */
  readonly cut: boolean;
}

/** @throws {RangeError} when the hold has no point */
export function thermostatFrame(judgement: HoldJudgement, { timeZone }: FigureSettings, frame: Frame): ThermostatFrame {
  const size = textSize(frame);
  const times = judgement.points.map((point) => point.at);
  const [first, last] = [times[0], times.at(-1)];
  if (first === undefined || last === undefined) throw new RangeError("thermostatFrame requires a load; got none");
  const latest = judgement.points.find((point) => point.stretch === judgement.stretches.length - 1)?.at ?? first;
  const from = Math.max(first, Math.min(latest - 45 * DAY, last - longestDrawn(frame)));
  const seen = paddedSpan([from, last], 0.015, 14 * DAY);
  const wanted = forecastEnd(judgement, last);
  const most = Math.max(FORECAST_SHARE * (last - from), FORECAST_LEAST);
  const to = wanted === null ? seen[1] : last + Math.min(wanted - last, most) + (seen[1] - seen[0]) * 0.03;
  const x = [seen[0], Math.max(seen[1], to)] as const;
  const left = Math.ceil(textWidth("+0.00", size)) + 10;
  const names = frame.narrow ? ["tolerance"] : ["tolerance +0.0", "logger checked"];
  const right = Math.ceil(Math.max(...names.map((name) => textWidth(name, size)))) + 8;
  const few = (x[1] - x[0]) / DAY < FEW_DAYS;
  return {
    size,
    x,
    months: few
      ? dayTicks(x[0], x[1], frame.narrow ? 3 : 8, timeZone)
      : monthTicks(x[0], x[1], frame.narrow ? 4 : 11, timeZone),
    left,
    right,
    acrossAt: (at) => left + ((at - x[0]) / (x[1] - x[0])) * (frame.width - left - right),
    cut: from > first,
  };
}

/** The last date that the forecast of the latest stretch names; null without one. */
function forecastEnd({ stretches }: HoldJudgement, last: number): number | null {
  const leaves = stretches.at(-1)?.models?.leaves;
  if (leaves?.kind !== "dated") return null;
  const { earliest, estimate, latest } = leaves;
  const end = latest ?? last + 1.7 * ((estimate ?? earliest) - last);
  return end > last ? end : null;
}
