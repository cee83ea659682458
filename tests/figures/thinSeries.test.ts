import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { pathThrough, splitAtGaps, thinSeries, UNSEEN } from "../../src/figures/thinSeries.ts";

const series = fc
  .array(fc.tuple(fc.double({ min: 0.05, max: 3, noNaN: true }), fc.double({ min: 0, max: 300, noNaN: true })), {
    minLength: 1,
    maxLength: 300,
  })
  .map((steps) => {
    let x = 0;
    return steps.map(([dx, y]) => {
      x += dx;
      return { x, y };
    });
  });

/** How far a point lies above or below the drawn line where it passes that x: 0 when a vertical stroke covers it. */
function distanceFromLine(line: readonly { x: number; y: number }[], point: { x: number; y: number }): number {
  let nearest = Number.POSITIVE_INFINITY;
  if (line.length === 1) return Math.abs((line[0]?.y ?? 0) - point.y);
  for (let i = 1; i < line.length; i++) {
    const a = line[i - 1];
    const b = line[i];
    if (!a || !b || point.x < a.x - 1e-9 || point.x > b.x + 1e-9) continue;
    const share = b.x === a.x ? 0 : (point.x - a.x) / (b.x - a.x);
    nearest = Math.min(nearest, Math.abs(a.y + share * (b.y - a.y) - point.y));
  }
  return nearest;
}

describe("thinSeries(points)", () => {
  test("keeps the first, the last, the lowest and the highest reading exactly", () => {
    fc.assert(
      fc.property(series, (points) => {
        const kept = thinSeries(points);
        const ys = points.map((p) => p.y);
        expect(Math.min(...kept.map((p) => p.y))).toBe(Math.min(...ys));
        expect(Math.max(...kept.map((p) => p.y))).toBe(Math.max(...ys));
        expect(kept[0]).toEqual(points[0]);
        expect(kept.at(-1)).toEqual(points.at(-1));
        for (const point of kept) expect(points).toContain(point);
      }),
    );
  });

  test("leaves the lowest and the highest of every pixel column under the line", () => {
    fc.assert(
      fc.property(series, (points) => {
        const kept = thinSeries(points);
        const columns = new Map<number, { x: number; y: number }[]>();
        for (const point of points) {
          const column = Math.floor(point.x);
          columns.set(column, [...(columns.get(column) ?? []), point]);
        }
        for (const held of columns.values()) {
          const sorted = [...held].sort((a, b) => a.y - b.y);
          for (const extreme of [sorted[0], sorted.at(-1)]) {
            if (extreme) expect(distanceFromLine(kept, extreme)).toBeLessThanOrEqual(UNSEEN + 1e-9);
          }
        }
      }),
    );
  });

  test("keeps a spike of one reading among a thousand even ones", () => {
    const points = Array.from({ length: 1000 }, (_, i) => ({ x: i / 10, y: i === 617 ? 40 : 100 }));
    const kept = thinSeries(points);
    expect(kept).toContain(points[617]);
    expect(kept.length).toBeLessThan(8);
  });

  test("needs two points for a straight line", () => {
    expect(thinSeries(Array.from({ length: 500 }, (_, i) => ({ x: i / 3, y: 10 + i / 7 })))).toHaveLength(2);
  });
});

describe("splitAtGaps(at, values)", () => {
  test("cuts at a missing reading and at a pause, and nowhere else", () => {
    const at = [0, 1, 2, 3, 4, 5, 16, 17, 18];
    const values = [1, 2, 3, Number.NaN, 5, 6, 7, 8, 9];
    expect(splitAtGaps(at, values).map((part) => part.map((p) => p.y))).toEqual([
      [1, 2, 3],
      [5, 6],
      [7, 8, 9],
    ]);
  });

  test("gives nothing for a silent probe", () => {
    expect(splitAtGaps([0, 1, 2], [Number.NaN, Number.NaN, Number.NaN])).toEqual([]);
  });
});

describe("pathThrough(points)", () => {
  test("ends where the last point is, whatever the rounding on the way", () => {
    fc.assert(
      fc.property(series, (points) => {
        const path = pathThrough(points);
        const numbers = (path.match(/-?(?:\d+\.?\d*|\.\d+)/g) ?? []).map(Number);
        let [x, y] = [numbers[0] ?? 0, numbers[1] ?? 0];
        if (!path.endsWith("h0")) {
          for (let i = 2; i < numbers.length; i += 2) [x, y] = [x + (numbers[i] ?? 0), y + (numbers[i + 1] ?? 0)];
        }
        const last = points.at(-1);
        expect(x).toLieWithin(last?.x ?? 0, 0.0501);
        expect(y).toLieWithin(last?.y ?? 0, 0.0501);
      }),
    );
  });
});
