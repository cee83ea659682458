export interface Apart {
  /**
   * The largest difference of any two numbers in the same place, relative to the larger of them or, below one, to one of
   * their unit: a residual or an influence is itself a difference and has no relative digits to agree in. What stands beside
   * the level `before` it is a difference of such levels, and is measured by their size.
   */
  readonly relative: number;
  readonly place: string;
  /** Places where anything but a number differs, the first twenty. */
  readonly differing: readonly string[];
}

/** The size of the levels that the numbers of an object are differences of; one unit where it names none. */
function levelOf(x: object, inherited: number): number {
  const before = (x as { readonly before?: { readonly estimate?: unknown } | null }).before;
  return typeof before?.estimate === "number" ? Math.max(1, Math.abs(before.estimate)) : inherited;
}

/** Compares two trees of plain data, numbers by their relative difference and all else exactly. */
export function farthestApart(a: unknown, b: unknown): Apart {
  let relative = 0;
  let worst = "";
  const differing: string[] = [];
  const walk = (x: unknown, y: unknown, place: string, level: number): void => {
    if (typeof x === "number" && typeof y === "number") {
      const apart = x === y ? 0 : Math.abs(x - y) / Math.max(Math.abs(x), Math.abs(y), level);
      if (apart > relative) {
        relative = apart;
        worst = `${place}: ${x} and ${y}`;
      }
    } else if (typeof x === "object" && x !== null && typeof y === "object" && y !== null) {
      const own = levelOf(x, level);
      const keys = new Set([...Object.keys(x), ...Object.keys(y)]);
      for (const key of keys)
        walk((x as Record<string, unknown>)[key], (y as Record<string, unknown>)[key], `${place}.${key}`, own);
    } else if (x !== y && differing.length < 20) differing.push(`${place}: ${String(x)} and ${String(y)}`);
  };
  walk(a, b, "report", 1);
  return { relative, place: worst, differing };
}
