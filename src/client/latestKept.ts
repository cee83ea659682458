/** Values by key, of which only the latest kept stay. */
export interface LatestKept<T> {
  get(key: string): T | undefined;
  /** Gives the value back, as the latest. */
  keep(key: string, value: T): T;
}

export function latestKept<T>(most: number): LatestKept<T> {
  const kept = new Map<string, T>();
  return {
    get: (key) => kept.get(key),
    keep(key, value) {
      // A map tells its keys in the order in which they came.
      kept.delete(key);
      kept.set(key, value);
      for (const oldest of kept.keys()) {
        if (kept.size <= most) break;
        kept.delete(oldest);
      }
      return value;
    },
  };
}
