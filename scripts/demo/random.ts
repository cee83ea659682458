/**
 * Random numbers for the invented house: from a seed, in integer arithmetic, and in one stream for each purpose and
 * index, so that a change in one place (a centimetre more bed, readings left out) shifts no draw anywhere else.
 */
export interface RandomStream {
  /** Evenly spread over 0 (included) to 1 (excluded). */
  readonly uniform: () => number;
  /** Normal with mean 0 and standard deviation 1. */
  readonly normal: () => number;
  /** Exponential with mean 1. */
  readonly exponential: () => number;
  /** Whole number from `low` to `high`, both included. */
  readonly integer: (low: number, high: number) => number;
  /** True with this probability. */
  readonly chance: (probability: number) => boolean;
  readonly pick: <T>(from: readonly T[]) => T;
  /** One of `from`, each with its weight. */
  readonly weighted: <T>(from: readonly (readonly [item: T, weight: number])[]) => T;
}

/** FNV-1a over the text, 32 bits, then a final mixing so that near texts start far apart. */
function hash(text: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

/** A stream of its own for this seed, purpose and index: a small-state generator of three words and a counter (sfc32). */
export function randomStream(seed: number, purpose: string, index = 0): RandomStream {
  let a = hash(`${seed}/a`);
  let b = hash(`${purpose}/b/${seed}`);
  let c = hash(`${index}/c/${purpose}`);
  let counter = 1;
  const next = (): number => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + sum) | 0;
    return sum >>> 0;
  };
  for (let i = 0; i < 12; i++) next();

  const uniform = (): number => next() / 4294967296;
  const normal = (): number => {
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    return radius * Math.cos(2 * Math.PI * uniform());
  };
  const pick = <T>(from: readonly T[]): T => {
    const item = from[Math.floor(uniform() * from.length)];
    if (item === undefined) throw new RangeError("pick needs at least one item");
    return item;
  };
  const weighted = <T>(from: readonly (readonly [T, number])[]): T => {
    let left = uniform() * from.reduce((sum, [, weight]) => sum + weight, 0);
    for (const [item, weight] of from) {
      left -= weight;
      if (left < 0) return item;
    }
    const last = from[from.length - 1];
    if (last === undefined) throw new RangeError("weighted needs at least one item");
    return last[0];
  };
  return {
    uniform,
    normal,
    exponential: () => -Math.log(1 - uniform()),
    integer: (low, high) => low + Math.floor(uniform() * (high - low + 1)),
    chance: (probability) => uniform() < probability,
    pick,
    weighted,
  };
}
