export interface Apart {
  /** The largest relative difference of any two numbers in the same place. */
  readonly relative: number;
  /** Places where anything but a number differs, the first twenty. */
  readonly differing: readonly string[];
}

/** Compares two trees of plain data, numbers by their relative difference and all else exactly. */
export function farthestApart(a: unknown, b: unknown): Apart {
  let relative = 0;
  const differing: string[] = [];
  const walk = (x: unknown, y: unknown, place: string): void => {
    if (typeof x === "number" && typeof y === "number") {
      if (x !== y) relative = Math.max(relative, Math.abs(x - y) / Math.max(Math.abs(x), Math.abs(y), 1e-9));
    } else if (typeof x === "object" && x !== null && typeof y === "object" && y !== null) {
      const keys = new Set([...Object.keys(x), ...Object.keys(y)]);
      for (const key of keys)
        walk((x as Record<string, unknown>)[key], (y as Record<string, unknown>)[key], `${place}.${key}`);
    } else if (x !== y && differing.length < 20) differing.push(`${place}: ${String(x)} and ${String(y)}`);
  };
  walk(a, b, "report");
  return { relative, differing };
}
