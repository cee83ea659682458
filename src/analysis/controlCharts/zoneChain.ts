import type { RuleName } from "./signal.ts";

/** The zone rules as a machine: what it remembers of the last values, and what the next value makes of that. */
export interface ZoneChain {
  /** Ascending lines in sigma that part the zones; zone z lies between edge z − 1 and edge z. */
  readonly edges: readonly number[];
  readonly zones: number;
  readonly states: number;
  /** next[state × zones + zone]: the state that follows, or −1 where a rule fires. State 0 remembers nothing. */
  readonly next: Int32Array;
}

interface Counted {
  readonly line: number;
  readonly least: number;
  readonly window: number;
}

const kept = new Map<string, ZoneChain>();

/**
 * The chain of Champ and Woodall (1987, Technometrics 29, 393–399; read in a secondary copy): for each rule and side
 * the machine remembers which of the last values were beyond the line, drops what can no longer matter, and merges
 * states that no future can tell apart. `weightedMean`, `cumulativeSum` and `sixRisingOrFalling` are not of zones and passed over.
 */
export function zoneChain(rules: readonly RuleName[], multiplier = 3): ZoneChain {
  const key = `${[...rules].sort().join()} ${multiplier}`;
  const known = kept.get(key);
  if (known) return known;
  const counted: Counted[] = [];
  if (rules.includes("beyondLimits")) counted.push({ line: multiplier, least: 1, window: 1 });
  if (rules.includes("twoOfThreeBeyondTwoThirds")) counted.push({ line: (2 / 3) * multiplier, least: 2, window: 3 });
  if (rules.includes("fourOfFiveBeyondOneThird")) counted.push({ line: multiplier / 3, least: 4, window: 5 });
  if (rules.includes("eightOnOneSide")) counted.push({ line: 0, least: 8, window: 8 });
  const edges = [...new Set(counted.flatMap(({ line }) => (line === 0 ? [0] : [-line, line])))].sort((a, b) => a - b);
  const chain = merged(explore(counted, edges), edges);
  kept.set(key, chain);
  return chain;
}

/** A value that stands for its zone: beyond the outermost lines, or half-way between two. */
function standIn(edges: readonly number[], zone: number): number {
  const below = edges[zone - 1];
  const above = edges[zone];
  if (below === undefined) return above === undefined ? 0 : above - 1;
  return above === undefined ? below + 1 : (below + above) / 2;
}

/** Follows every zone from every state; a state is the flags of each rule and side, newest in the lowest bit. */
function explore(counted: readonly Counted[], edges: readonly number[]): number[][] {
  const zones = edges.length + 1;
  const sides = counted.flatMap((rule) => [
    { ...rule, side: 1 },
    { ...rule, side: -1 },
  ]);
  const ids = new Map([[sides.map(() => 0).join(), 0]]);
  const queue: number[][] = [sides.map(() => 0)];
  const table: number[][] = [];
  for (let state = 0; state < queue.length; state += 1) {
    const flags = queue[state] as number[];
    const row: number[] = [];
    for (let zone = 0; zone < zones; zone += 1) {
      const value = standIn(edges, zone);
      let fires = false;
      const following = sides.map(({ line, least, window, side }, at) => {
        const bit = side * value > line ? 1 : 0;
        const full = ((flags[at] as number) << 1) | bit;
        if (bit === 1 && ones(full) >= least) fires = true;
        return useful(full & ((1 << (window - 1)) - 1), least, window);
      });
      if (fires) {
        row.push(-1);
        continue;
      }
      const key = following.join();
      let id = ids.get(key);
      if (id === undefined) {
        id = queue.length;
        ids.set(key, id);
        queue.push(following);
      }
      row.push(id);
    }
    table.push(row);
  }
  return table;
}

function ones(bits: number): number {
  let count = 0;
  for (let rest = bits; rest > 0; rest &= rest - 1) count += 1;
  return count;
}

/** Drops the oldest flag while, even if every value to come were beyond, the rule would not need it before it lapses. */
function useful(bits: number, least: number, window: number): number {
  let flags = bits;
  while (flags > 0) {
    const oldest = 31 - Math.clz32(flags);
    const valuesWhileSeen = window - 1 - oldest;
    if (ones(flags) + valuesWhileSeen >= least) break;
    flags &= ~(1 << oldest);
  }
  return flags;
}

/** Merges states with the same future, by splitting classes until they hold (Moore's algorithm). */
function merged(table: readonly number[][], edges: readonly number[]): ZoneChain {
  const zones = edges.length + 1;
  let classOf = table.map(() => 0);
  for (let count = 1; ; ) {
    const ids = new Map<string, number>();
    const split = table.map((row, state) => {
      const key = `${classOf[state]}:${row.map((to) => (to < 0 ? -1 : classOf[to])).join()}`;
      const id = ids.get(key) ?? ids.size;
      ids.set(key, id);
      return id;
    });
    classOf = split;
    if (ids.size === count) break;
    count = ids.size;
  }
  const states = Math.max(...classOf) + 1;
  const next = new Int32Array(states * zones);
  table.forEach((row, state) => {
    row.forEach((to, zone) => {
      next[(classOf[state] as number) * zones + zone] = to < 0 ? -1 : (classOf[to] as number);
    });
  });
  return { edges, zones, states, next };
}
