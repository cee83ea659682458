import type { Turn } from "./turningPoints.ts";

/** A turning point as it was between readings. */
export interface SharpTurn {
  /** Milliseconds UTC. */
  readonly at: number;
  readonly celsius: number;
  /** Slopes of air before and after, K a millisecond. */
  readonly slopeBefore: number;
  readonly slopeAfter: number;
}

/** Readings of each branch that the straight lines are laid through, at most. */
const MOST_POINTS = 5;

interface Line {
  readonly slope: number;
  /** Value at the time that the fit was centred on. */
  readonly level: number;
}

/** Least squares through the readings of places `start` to `end` (exclusive), about `origin`. */
function lineThrough(at: Float64Array, air: Float64Array, start: number, end: number, origin: number): Line | null {
  const n = end - start;
  if (n < 2) return null;
  let [t, x, tt, tx] = [0, 0, 0, 0];
  for (let i = start; i < end; i++) {
    const time = (at[i] as number) - origin;
    t += time;
    x += air[i] as number;
    tt += time * time;
    tx += time * (air[i] as number);
  }
  const spread = tt - (t * t) / n;
  if (!(spread > 0)) return null;
  const slope = (tx - (t * x) / n) / spread;
  return { slope, level: (x - slope * t) / n };
}

/**
 * Where the straight lines of the two branches meet at a turning point: the switch itself in a kiln that answers at once.
 * The furthest reading alone lies short of it by up to a step's worth, which makes the swing of slow readings too small.
 * The meeting is kept between the neighbouring readings, and no further beyond the furthest reading than readings so
 * spaced can miss, so that a rounded turn is not sharpened into one that never was.
 *
 * @param before the turn before it, and `after` the next one
 * @returns null where a branch has fewer than two readings to itself
 */
export function sharpTurn(
  at: Float64Array,
  air: Float64Array,
  before: Turn,
  turn: Turn,
  after: Turn,
): SharpTurn | null {
  const { place } = turn;
  const origin = at[place] as number;
  const seen = air[place] as number;
  const leading = Math.min(MOST_POINTS, Math.ceil((place - before.place) / 2));
  const trailing = Math.min(MOST_POINTS, Math.ceil((after.place - place) / 2));
  const rise = lineThrough(at, air, place - leading, place, origin);
  const fall = lineThrough(at, air, place + 1, place + 1 + trailing, origin);
  if (rise === null || fall === null) return null;
  const outward = turn.kind === "high" ? 1 : -1;
  const [inSpeed, outSpeed] = [outward * rise.slope, -outward * fall.slope];
  if (!(inSpeed > 0 && outSpeed > 0)) return null;
  const meets = (fall.level - rise.level) / (rise.slope - fall.slope);
  const earliest = (at[place - 1] as number) - origin;
  const latest = (at[place + 1] as number) - origin;
  const time = Math.min(latest, Math.max(earliest, meets));
  const missed = ((inSpeed * outSpeed) / (inSpeed + outSpeed)) * Math.max(-earliest, latest);
  const beyond = outward * (rise.level + rise.slope * time - seen);
  return {
    at: origin + time,
    celsius: seen + outward * Math.min(missed, Math.max(-missed, beyond)),
    slopeBefore: rise.slope,
    slopeAfter: fall.slope,
  };
}
