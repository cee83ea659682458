/** Where a series most looks like two levels, by ranks. */
export interface Pettitt {
  /** Largest |U|. */
  readonly k: number;
  /** Loads of the first part: the change lies after this many. The first such where several tie. */
  readonly loadsBefore: number;
  readonly direction: "up" | "down" | "none";
  /** 2 exp(−6K²/(n³ + n²)), at most 1: an approximation, good where it is small. */
  readonly p: number;
}

/**
 * Pettitt's rank test of one change of level (Pettitt 1979, Applied Statistics 28, 126–135; formula read in a
 * secondary copy): U_t = 2 Σ ranks of the first t − t (n + 1), with midranks for ties. It explains, it never raises an
 * alarm: repeated on every load it would, and a creep makes it significant as well as a step does.
 *
 * @returns null for fewer than four values
 * @throws RangeError for a value that is not finite
 */
export function pettitt(values: ArrayLike<number>): Pettitt | null {
  const count = values.length;
  const broken = Array.from(values).findIndex((value) => !Number.isFinite(value));
  if (broken >= 0) throw new RangeError(`pettitt requires finite values; got ${values[broken]} at ${broken}`);
  if (count < 4) return null;
  const ranks = midranks(values);
  let k = 0;
  let u = 0;
  let loadsBefore = 0;
  let side = 0;
  for (let at = 0; at < count - 1; at += 1) {
    u += 2 * (ranks[at] as number) - (count + 1);
    if (Math.abs(u) > k) {
      k = Math.abs(u);
      loadsBefore = at + 1;
      side = u;
    }
  }
  return {
    k,
    loadsBefore,
    direction: side > 0 ? "down" : side < 0 ? "up" : "none",
    p: Math.min(1, 2 * Math.exp((-6 * k * k) / (count ** 3 + count ** 2))),
  };
}

/** Ranks from 1, the mean rank for equal values; halves at most, so that sums of them are exact. */
function midranks(values: ArrayLike<number>): Float64Array {
  const order = Array.from({ length: values.length }, (_, at) => at).sort(
    (a, b) => (values[a] as number) - (values[b] as number),
  );
  const ranks = new Float64Array(values.length);
  for (let from = 0; from < order.length; ) {
    let to = from;
    while (to + 1 < order.length && values[order[to + 1] as number] === values[order[from] as number]) to += 1;
    for (let at = from; at <= to; at += 1) ranks[order[at] as number] = (from + to) / 2 + 1;
    from = to + 1;
  }
  return ranks;
}
