import type { PlaceSpan } from "./kilnReadings.ts";
import type { Turn } from "./turningPoints.ts";

/** A turning point that the logged heater explains. */
export interface HeaterTurn extends Turn {
  /** When it switched: half-way between the reading before and the reading after, milliseconds UTC. */
  readonly switchedAt: number;
}

/**
 * Turning points from the heater's own record: after each switch the furthest air before the next one, since air follows the
 * switch after a delay. Use it where heater_on is logged, which sees cycles that noise or a slow probe hide.
 *
 * @returns alternating, in time order; null where the heater is not recorded throughout
 */
export function heaterTurns(
  at: Float64Array,
  air: Float64Array,
  heaterOn: Float64Array | null,
  span: PlaceSpan,
): readonly HeaterTurn[] | null {
  if (heaterOn === null) return null;
  const changes: number[] = [];
  for (let i = span.start; i < span.end; i++) {
    if (Number.isNaN(heaterOn[i])) return null;
    if (i > span.start && heaterOn[i] !== heaterOn[i - 1]) changes.push(i);
  }
  return changes.map((place, k) => {
    const kind = heaterOn[place] === 1 ? "low" : "high";
    // The furthest reading may be the last before the switch; on the other side it cannot lie past the next switch.
    const end = changes[k + 1] ?? span.end;
    let furthest = place - 1;
    for (let i = place; i < end; i++) {
      const further = (air[i] as number) - (air[furthest] as number);
      if (kind === "high" ? further > 0 : further < 0) furthest = i;
    }
    return { kind, place: furthest, switchedAt: ((at[place - 1] as number) + (at[place] as number)) / 2 };
  });
}
