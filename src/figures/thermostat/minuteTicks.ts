import { localParts, printClock } from "../../units/instant.ts";
import type { Tick } from "../ticks.ts";
import { printDay } from "../timeTicks.ts";

const MINUTE = 60_000;
const STEPS = [1, 2, 5, 10, 15, 30, 60, 120, 180, 360, 720, 1440] as const;

/** Local clock times at even minutes, about `count` of them; the day stands under the first and under each midnight. */
export function minuteTicks(from: number, to: number, count: number, timeZone: string): Tick[] {
  const step = STEPS.find((every) => (to - from) / MINUTE / every <= count) ?? 1440;
  const ticks: Tick[] = [];
  for (let at = Math.ceil(from / MINUTE) * MINUTE; at <= to; at += MINUTE) {
    const { hour, minute } = localParts(at, timeZone);
    if ((hour * 60 + minute) % step !== 0) continue;
    const dated = ticks.length === 0 || hour * 60 + minute === 0;
    ticks.push({ at, label: printClock(at, timeZone), ...(dated ? { under: printDay(at, timeZone) } : {}) });
  }
  return ticks;
}
