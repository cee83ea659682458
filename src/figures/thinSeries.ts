import type { Point } from "./box.ts";

/** Widths of the lines that figures draw, px; `styles/figures.css` has them too, and a test holds them together. */
export const LINE = 1.8;
export const THIN_LINE = 1.3;

/**
 * The points that a line through `points` needs on a drawing: first, lowest, highest and last of each pixel column (as
 * Jugel et al., VLDB 2014, show is enough for a drawn line), of these only what the straight line between its
 * neighbours would miss by more than half of the line's own width. So within every pixel column the ink reaches each
 * reading; the lowest and the highest of all are kept exactly.
 *
 * @param points in order of x, px
 * @param lineWidth px, as the line is drawn
 */
export function thinSeries(points: readonly Point[], lineWidth: number = THIN_LINE): Point[] {
  return dropUnseen(extremesByColumn(points), lineWidth / 2);
}

function extremesByColumn(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (let from = 0; from < points.length; ) {
    const column = Math.floor(points[from]?.x ?? 0);
    let to = from;
    let lowest = from;
    let highest = from;
    const yAt = (i: number): number => points[i]?.y ?? 0;
    for (; to < points.length && Math.floor(points[to]?.x ?? 0) === column; to++) {
      if (yAt(to) < yAt(lowest)) lowest = to;
      if (yAt(to) > yAt(highest)) highest = to;
    }
    for (const i of [...new Set([from, lowest, highest, to - 1])].sort((a, b) => a - b)) {
      const point = points[i];
      if (point) kept.push(point);
    }
    from = to;
  }
  return kept;
}

/** First, last, lowest and highest: drawn where they are, whatever the thinning. */
function fixedPoints(points: readonly Point[]): readonly number[] {
  let lowest = 0;
  let highest = 0;
  points.forEach((p, i) => {
    if (p.y < (points[lowest]?.y ?? 0)) lowest = i;
    if (p.y > (points[highest]?.y ?? 0)) highest = i;
  });
  return [...new Set([0, lowest, highest, points.length - 1])].sort((a, b) => a - b);
}

function dropUnseen(points: readonly Point[], unseen: number): Point[] {
  if (points.length < 3) return [...points];
  const fixed = fixedPoints(points);
  const kept = fixed.slice(1).flatMap((to, i) => fewestBetween(points, fixed[i] ?? 0, to, unseen));
  return [0, ...kept].flatMap((i) => points[i] ?? []);
}

/**
 * The fewest of the points from `from` to `to` through which a line passes all others within `unseen` (the shortest path
 * of Imai and Iri, 1988, from memory): after each point, those it can be joined to lie in a wedge that every point passed
 * over narrows. `from` itself is not among them.
 */
function fewestBetween(points: readonly Point[], from: number, to: number, unseen: number): readonly number[] {
  const steps = new Int32Array(to - from + 1).fill(to - from + 1);
  const before = new Int32Array(to - from + 1);
  steps[0] = 0;
  for (let i = from; i < to; i++) {
    const a = points[i] as Point;
    const reached = (steps[i - from] as number) + 1;
    let [least, most] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (let j = i + 1; j <= to && least <= most; j++) {
      const b = points[j] as Point;
      const across = b.x - a.x;
      const slope = (b.y - a.y) / across;
      const joins = j === i + 1 || (across > 0 && slope >= least && slope <= most);
      if (joins && reached < (steps[j - from] as number)) [steps[j - from], before[j - from]] = [reached, i];
      least = Math.max(least, slope - unseen / across);
      most = Math.min(most, slope + unseen / across);
    }
  }
  const path: number[] = [];
  for (let i = to; i > from; i = before[i - from] as number) path.push(i);
  return path.reverse();
}

/**
 * Readings cut where there is a gap: a reading that is missing (NaN), or a pause of more than three times the usual step
 * between readings.
 */
export function splitAtGaps(at: ArrayLike<number>, values: ArrayLike<number>): Point[][] {
  const steps: number[] = [];
  for (let i = 1; i < at.length; i++) steps.push((at[i] ?? 0) - (at[i - 1] ?? 0));
  const usual = steps.sort((a, b) => a - b)[Math.floor(steps.length / 2)] ?? 0;
  const parts: Point[][] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < at.length; i++) {
    const x = at[i] ?? Number.NaN;
    const y = values[i] ?? Number.NaN;
    if (!Number.isFinite(y)) {
      last = Number.NEGATIVE_INFINITY;
      continue;
    }
    if (x - last > 3 * usual) parts.push([]);
    parts.at(-1)?.push({ x, y });
    last = x;
  }
  return parts;
}

const tenths = (value: number): number => Math.round(value * 10);

/** A path through the points, moved by relative steps of a tenth of a pixel, whose rounding does not add up. */
export function pathThrough(points: readonly Point[]): string {
  let start = "";
  const steps: string[] = [];
  let [atX, atY] = [0, 0];
  for (const point of points) {
    const [x, y] = [tenths(point.x), tenths(point.y)];
    if (start === "") start = `M${x / 10},${y / 10}`;
    else {
      const [dx, dy] = [x - atX, y - atY];
      if (dx === 0 && dy === 0) continue;
      steps.push(short(dx), short(dy));
    }
    [atX, atY] = [x, y];
  }
  if (start === "") return "";
  // A lone reading between two gaps is a dot.
  return steps.length === 0 ? `${start}h0` : `${start}l${sideBySide(steps)}`;
}

/** A tenth as short as SVG reads it: `.5`, `-.5`, `12`. */
function short(asTenths: number): string {
  return String(asTenths / 10).replace(/^(-?)0\./, "$1.");
}

/** Numbers one after another. A sign parts two of them, and so does a point where the number before has one: `1.5-.2.5 3`. */
function sideBySide(numbers: readonly string[]): string {
  let text = "";
  let before = "";
  for (const number of numbers) {
    const parted = before === "" || number.startsWith("-") || (number.startsWith(".") && before.includes("."));
    text += parted ? number : ` ${number}`;
    before = number;
  }
  return text;
}
