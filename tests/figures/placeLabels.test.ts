import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { boxAround, contains, crosses, overlaps } from "../../src/figures/box.ts";
import { type LabelToPlace, type Obstacle, placeLabels, spreadLabels } from "../../src/figures/placeLabels.ts";

const bounds = { left: 0, top: 0, right: 500, bottom: 300 };
const at = fc.record({
  x: fc.double({ min: 0, max: 500, noNaN: true }),
  y: fc.double({ min: 0, max: 300, noNaN: true }),
});
const label: fc.Arbitrary<LabelToPlace> = fc.record({
  width: fc.integer({ min: 10, max: 180 }),
  height: fc.integer({ min: 12, max: 40 }),
  anchor: at,
  reach: fc.constantFrom(0, 3, 6),
  priority: fc.integer({ min: 0, max: 3 }),
  prefer: fc.constantFrom(0, 90, 180, 270),
});
const obstacle: fc.Arbitrary<Obstacle> = fc
  .tuple(at, fc.integer({ min: 2, max: 30 }), fc.boolean())
  .map(([centre, radius, hard]) => ({ box: boxAround(centre, radius), hard }));

describe("placeLabels(labels, obstacles, bounds)", () => {
  test("lets no label overlap another, a mark, a hard obstacle, or leave the bounds", () => {
    fc.assert(
      fc.property(fc.array(label, { maxLength: 8 }), fc.array(obstacle, { maxLength: 40 }), (labels, obstacles) => {
        const placed = placeLabels(labels, obstacles, bounds);
        expect(placed).toHaveLength(labels.length);
        const boxes = placed.flatMap((p) => (p ? [p.box] : []));
        for (const [i, box] of boxes.entries()) {
          expect(contains(bounds, box)).toBe(true);
          expect(boxes.some((other, j) => j !== i && overlaps(box, other))).toBe(false);
          expect(obstacles.some((o) => o.hard && overlaps(box, o.box))).toBe(false);
          expect(labels.some((l) => l.reach && overlaps(box, boxAround(l.anchor, l.reach)))).toBe(false);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("draws no leader through a label", () => {
    fc.assert(
      fc.property(fc.array(label, { maxLength: 8 }), fc.array(obstacle, { maxLength: 20 }), (labels, obstacles) => {
        const placed = placeLabels(labels, obstacles, bounds).flatMap((p) => (p ? [p] : []));
        for (const { leader } of placed) {
          if (leader) expect(placed.some((p) => crosses(leader.from, leader.to, p.box))).toBe(false);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("puts a lone label right above its anchor, without a leader", () => {
    const [placed] = placeLabels([{ width: 80, height: 16, anchor: { x: 200, y: 150 } }], [], bounds);
    expect(placed?.leader).toBeNull();
    expect(placed?.box.left).toLieWithin(160, 0.1);
    expect(placed?.box.bottom).toBeLessThan(150);
    expect(placed?.box.bottom).toBeGreaterThan(140);
  });

  test("stands off with a leader where everything near is taken", () => {
    const anchor = { x: 250, y: 150 };
    const wall: Obstacle = { box: boxAround(anchor, 40), hard: true };
    const [placed] = placeLabels([{ width: 60, height: 16, anchor }], [wall], bounds);
    expect(placed?.leader).not.toBeNull();
  });

  test("drops the label of lower priority where there is room for one", () => {
    const only = { left: 0, top: 0, right: 110, bottom: 22 };
    const one = { width: 100, height: 16, anchor: { x: 55, y: 22 } };
    const placed = placeLabels(
      [
        { ...one, priority: 1 },
        { ...one, priority: 2 },
      ],
      [],
      only,
    );
    expect(placed[0]).toBeNull();
    expect(placed[1]).not.toBeNull();
  });

  test("covers a soft obstacle only where nothing else is left", () => {
    const anchor = { x: 250, y: 150 };
    const above: Obstacle = { box: { left: 150, right: 350, top: 80, bottom: 145 }, hard: false };
    const [placed] = placeLabels([{ width: 80, height: 16, anchor }], [above], bounds);
    expect(placed && overlaps(placed.box, above.box)).toBe(false);
  });
});

describe("spreadLabels(heights, pitch, low, high)", () => {
  const heights = fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { minLength: 1, maxLength: 8 });

  test("keeps labels a pitch apart, in order, and inside where they fit together", () => {
    fc.assert(
      fc.property(heights, (wanted) => {
        const spread = spreadLabels(wanted, 18, 0, 300);
        const order = wanted.map((_, i) => i).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0) || a - b);
        order.forEach((index, n) => {
          const y = spread[index] ?? Number.NaN;
          expect(y).toBeGreaterThanOrEqual(-1e-9);
          expect(y).toBeLessThanOrEqual(300 + 1e-9);
          const before = order[n - 1];
          if (before !== undefined) expect(y - (spread[before] ?? Number.NaN)).toBeGreaterThanOrEqual(18 - 1e-9);
        });
      }),
    );
  });

  test("moves nothing that has room", () => {
    expect(spreadLabels([50, 200, 100], 18, 0, 300)).toEqual([50, 200, 100]);
  });
});
