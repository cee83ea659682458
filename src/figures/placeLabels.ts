import { type Box, boxAround, contains, crosses, nearestIn, overlaps, type Point } from "./box.ts";

/** A label that wants a place near its anchor. */
export interface LabelToPlace {
  readonly width: number;
  readonly height: number;
  readonly anchor: Point;
  /** Other points it may stand at as well, the better first: any one of a group that it speaks for. */
  readonly orAnchors?: readonly Point[];
  /** Radius of what is labelled: the label keeps off it. 0 for a point on a line. */
  readonly reach?: number;
  /** Higher is placed first. Equal priorities keep the order given. */
  readonly priority?: number;
  /** Where it would rather stand, in degrees clockwise from right: 270 is above. Without it, above is tried first. */
  readonly prefer?: number;
  /** How far from its anchor it may go, px. */
  readonly farthest?: number;
}

/** What labels keep off: `hard` is never touched, anything else only where there is no better place. */
export interface Obstacle {
  readonly box: Box;
  readonly hard: boolean;
}

export interface PlacedLabel {
  readonly box: Box;
  /** The one of its anchors that it stands at. */
  readonly anchor: Point;
  /** A line from the anchor to the label, where it stands too far off to be read as belonging. */
  readonly leader: { readonly from: Point; readonly to: Point } | null;
}

const DIRECTIONS = 24;
/** Clear space around a label and between it and its anchor, px. */
const GAP = 4;
const STEP = 6;
const NEAR = 14;
const COST_OF_COVERING = 40;
const COST_OF_LEADER = 18;
const COST_OF_TURNING = 10;
const COST_OF_OTHER_ANCHOR = 4;

const anchorsOf = (label: LabelToPlace): readonly Point[] => [label.anchor, ...(label.orAnchors ?? [])];

/** The label's box when it stands in `direction` from the anchor, its nearest edge `distance` off. */
function boxAt(label: LabelToPlace, { x, y }: Point, direction: number, distance: number): Box {
  // Four decimals, so that engines whose cosines differ in the last place still choose alike.
  const cos = Math.round(Math.cos(direction) * 1e4) / 1e4;
  const sin = Math.round(Math.sin(direction) * 1e4) / 1e4;
  // The centre slides on a rounded rectangle around the anchor, so that a side-on label is centred on the anchor's
  // height and one above is centred on its x.
  const centreX = x + cos * distance + Math.max(-1, Math.min(1, cos * 1.5)) * (label.width / 2);
  const centreY = y + sin * distance + Math.max(-1, Math.min(1, sin * 1.5)) * (label.height / 2);
  return {
    left: centreX - label.width / 2,
    right: centreX + label.width / 2,
    top: centreY - label.height / 2,
    bottom: centreY + label.height / 2,
  };
}

/**
 * Places labels so that none overlaps another, a hard obstacle or its own mark, or leaves `bounds`; among the places
 * left it takes the one that covers least, stands nearest and turns least from the preferred side. A label that must
 * stand off gets a leader line; one that finds no place is dropped (null), those of low priority first. The answer has
 * the order of `labels`. Same input, same output.
 */
export function placeLabels(
  labels: readonly LabelToPlace[],
  obstacles: readonly Obstacle[],
  bounds: Box,
): readonly (PlacedLabel | null)[] {
  const order = labels
    .map((_, i) => i)
    .sort((a, b) => (labels[b]?.priority ?? 0) - (labels[a]?.priority ?? 0) || a - b);
  const hard = obstacles.filter((o) => o.hard).map((o) => o.box);
  const soft = obstacles.filter((o) => !o.hard).map((o) => o.box);
  const marks = labels.flatMap((l) => anchorsOf(l).flatMap((a) => (l.reach ? [boxAround(a, l.reach)] : [])));
  const taken: Box[] = [];
  const leaders: { from: Point; to: Point }[] = [];
  const placed: (PlacedLabel | null)[] = labels.map(() => null);

  for (const index of order) {
    const label = labels[index];
    if (!label) continue;
    const reach = label.reach ?? 0;
    const prefer = ((label.prefer ?? 270) * Math.PI) / 180;
    let best: PlacedLabel | null = null;
    let bestCost = Number.POSITIVE_INFINITY;
    for (const [other, anchor] of anchorsOf(label).entries()) {
      for (let distance = GAP; distance <= (label.farthest ?? 90); distance += STEP) {
        for (let turn = 0; turn < DIRECTIONS; turn++) {
          // 0, +1, −1, +2, −2 … steps from the preferred direction.
          const steps = turn % 2 === 1 ? (turn + 1) / 2 : -turn / 2;
          const far = distance > NEAR;
          const cost =
            distance +
            (far ? COST_OF_LEADER : 0) +
            (COST_OF_TURNING * Math.abs(steps)) / (DIRECTIONS / 4) +
            other * COST_OF_OTHER_ANCHOR;
          if (cost >= bestCost) continue;
          const box = boxAt(label, anchor, prefer + (steps * 2 * Math.PI) / DIRECTIONS, reach + distance);
          if (!contains(bounds, box)) continue;
          if ([taken, hard, marks].some((boxes) => boxes.some((b) => overlaps(box, b)))) continue;
          if (leaders.some(({ from, to }) => crosses(from, to, box))) continue;
          const leader = far ? leaderFor(label, anchor, box) : null;
          if (leader && taken.some((b) => crosses(leader.from, leader.to, b))) continue;
          const covered = soft.reduce((count, b) => count + (overlaps(box, b) ? 1 : 0), 0);
          const total = cost + covered * COST_OF_COVERING;
          if (total < bestCost) {
            best = { box, leader, anchor };
            bestCost = total;
          }
        }
      }
    }
    if (!best) continue;
    placed[index] = best;
    taken.push(best.box);
    if (best.leader) leaders.push(best.leader);
  }
  return placed;
}

/** From the rim of the mark to just short of the label. */
function leaderFor(label: LabelToPlace, anchor: Point, box: Box): { from: Point; to: Point } {
  const end = nearestIn(box, anchor);
  const dx = end.x - anchor.x;
  const dy = end.y - anchor.y;
  const length = Math.hypot(dx, dy) || 1;
  const along = (distance: number): Point => ({
    x: anchor.x + (dx / length) * distance,
    y: anchor.y + (dy / length) * distance,
  });
  return { from: along((label.reach ?? 0) + 1), to: along(length - 2) };
}

/**
 * Heights for labels of one column, such as names at the ends of lines: each as near to its own as the others let it,
 * in the order of their heights, `pitch` apart at least. Inside `low` to `high` as long as they fit there together.
 */
export function spreadLabels(heights: readonly number[], pitch: number, low: number, high: number): number[] {
  // Groups of labels that touch share their mean; a group that meets the next takes it in.
  const order = heights.map((_, i) => i).sort((a, b) => (heights[a] ?? 0) - (heights[b] ?? 0) || a - b);
  const groups: { members: number[]; top: number }[] = [];
  const topOf = (members: readonly number[]): number => {
    const wanted = members.reduce((sum, i, n) => sum + (heights[i] ?? 0) - n * pitch, 0) / members.length;
    return Math.max(low, Math.min(wanted, high - (members.length - 1) * pitch));
  };
  for (const i of order) {
    let group = { members: [i], top: topOf([i]) };
    for (let last = groups.at(-1); last; last = groups.at(-1)) {
      if (last.top + last.members.length * pitch <= group.top) break;
      groups.pop();
      const members = [...last.members, ...group.members];
      group = { members, top: topOf(members) };
    }
    groups.push(group);
  }
  const spread = [...heights];
  for (const { members, top } of groups) {
    members.forEach((i, n) => {
      spread[i] = top + n * pitch;
    });
  }
  return spread;
}
