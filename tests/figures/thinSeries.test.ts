import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { LINE, pathThrough, splitAtGaps, THIN_LINE, thinSeries } from "../../src/figures/thinSeries.ts";

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

interface At {
  readonly x: number;
  readonly y: number;
}

/** The lowest and highest y of the drawn line within a pixel column; null where it does not come there. */
function inkInColumn(line: readonly At[], column: number): readonly [number, number] | null {
  const ys = line.filter(({ x }) => x >= column && x <= column + 1).map(({ y }) => y);
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1], line[i]];
    if (!a || !b) continue;
    for (const edge of [column, column + 1]) {
      if (a.x < edge && b.x > edge) ys.push(a.y + ((edge - a.x) / (b.x - a.x)) * (b.y - a.y));
    }
  }
  return ys.length === 0 ? null : [Math.min(...ys), Math.max(...ys)];
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

  test("lets the ink reach every reading within its pixel column, by half the line's own width", () => {
    fc.assert(
      fc.property(series, fc.constantFrom(THIN_LINE, LINE), (points, lineWidth) => {
        const kept = thinSeries(points, lineWidth);
        const ink = new Map<number, readonly [number, number] | null>();
        for (const { x, y } of points) {
          const column = Math.floor(x);
          if (!ink.has(column)) ink.set(column, inkInColumn(kept, column));
          const [lowest, highest] = ink.get(column) ?? [Number.NaN, Number.NaN];
          expect(y).toBeGreaterThanOrEqual(lowest - lineWidth / 2 - 1e-9);
          expect(y).toBeLessThanOrEqual(highest + lineWidth / 2 + 1e-9);
        }
      }),
    );
  });

  test("of equal readings in one pixel column keeps the first, which the ink of the column reaches for both", () => {
    const points = [
      { x: 0.05, y: 300 },
      { x: 0.1, y: 300 },
      { x: 0.15, y: 0 },
    ];
    expect(thinSeries(points)).toEqual([points[0], points[2]]);
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

describe("the widths of drawn lines", () => {
  test.each([
    [".plate .line", LINE],
    [".plate .line.thin", THIN_LINE],
  ])("%s is as wide in figures.css as the thinning takes it to be", (selector, width) => {
    const css = readFileSync("src/styles/figures.css", "utf8");
    const block = css.split("}").find((part) => part.trimEnd().split("{")[0]?.trim().endsWith(`${selector}`)) ?? "";
    expect(Number(/stroke-width:\s*([\d.]+)/.exec(block)?.[1])).toBe(width);
  });
});

describe("pathThrough(points)", () => {
  test("parts two numbers by a sign or a second point where it can, and by a blank where it must", () => {
    const points = [0, 1.5, 1.7, 4.7].map((x, i) => ({ x, y: [0, -0.2, 0.3, 0.3][i] ?? 0 }));
    expect(pathThrough(points)).toBe("M0,0l1.5-.2.2.5 3 0");
  });

  test("ends where the last point is, whatever the rounding on the way", () => {
    fc.assert(
      fc.property(series, (points) => {
        const path = pathThrough(points);
        const numbers = (path.match(/-?(?:\d+(?:\.\d+)?|\.\d+)/g) ?? []).map(Number);
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
