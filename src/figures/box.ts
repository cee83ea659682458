/** A rectangle on the drawing, px; y grows downwards. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** True where the two share any area; edges that only touch do not count. */
export function overlaps(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

export function contains(outer: Box, inner: Box): boolean {
  return (
    inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.bottom <= outer.bottom
  );
}

/** The square that a round mark fills. */
export function boxAround(centre: Point, radius: number): Box {
  return { left: centre.x - radius, top: centre.y - radius, right: centre.x + radius, bottom: centre.y + radius };
}

/** The point of `box` nearest to `point`. */
export function nearestIn(box: Box, point: Point): Point {
  return {
    x: Math.min(Math.max(point.x, box.left), box.right),
    y: Math.min(Math.max(point.y, box.top), box.bottom),
  };
}

/** True where the straight line from `from` to `to` runs through `box` (Liang and Barsky's clipping test). */
export function crosses(from: Point, to: Point, box: Box): boolean {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  let enter = 0;
  let leave = 1;
  for (const [p, q] of [
    [-dx, from.x - box.left],
    [dx, box.right - from.x],
    [-dy, from.y - box.top],
    [dy, box.bottom - from.y],
  ] as const) {
    if (p === 0) {
      if (q <= 0) return false;
    } else if (p < 0) enter = Math.max(enter, q / p);
    else leave = Math.min(leave, q / p);
  }
  return enter < leave;
}
