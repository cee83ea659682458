import { startOfLocalDay } from "../../units/instant.ts";
import type { EventRow } from "../eventRow.ts";

/** Where a stretch between calibrations begins. */
export interface StretchStart {
  readonly from: number;
  readonly event: EventRow | null;
  /** From when heater and fan are as they are: the kiln's last logged repair before the stretch ends; −∞ without one. */
  readonly kilnRepairedAt: number;
}

const DAY = 86_400_000;

/**
 * Stretches of time between one calibration or repair of the thermostat and the next. Work on it is done by day, so that a
 * load of the same evening already runs on it: a stretch begins at noon of the event's local day.
 */
export function stretchStarts(events: readonly EventRow[], timeZone: string): readonly StretchStart[] {
  const noonOf = ({ on }: EventRow): number =>
    startOfLocalDay(new Date(on).toISOString().slice(0, 10), timeZone) + DAY / 2;
  const began = events
    .filter(({ scope, kind }) => scope === "thermostat" && (kind === "calibration" || kind === "repair"))
    .map((event) => ({ from: noonOf(event), event }))
    .sort((a, b) => a.from - b.from);
  const repairs = events.filter(({ scope, kind }) => scope === "kiln" && kind === "repair").map(noonOf);
  return [{ from: Number.NEGATIVE_INFINITY, event: null }, ...began].map((start, index) => {
    const end = began[index]?.from ?? Number.POSITIVE_INFINITY;
    return { ...start, kilnRepairedAt: Math.max(Number.NEGATIVE_INFINITY, ...repairs.filter((at) => at < end)) };
  });
}

/** Index of the stretch that a moment falls in. */
export function stretchAt(starts: readonly StretchStart[], at: number): number {
  let found = 0;
  starts.forEach(({ from }, index) => {
    if (at >= from) found = index;
  });
  return found;
}
