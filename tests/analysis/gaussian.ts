import type { SeededRandom } from "../../src/analysis/seededRandom.ts";

/** Roughly normal numbers, mean 0 and spread 1, as twelve uniforms less 6: enough to feed tests that count. */
export function gaussian(random: SeededRandom, count: number): Float64Array {
  return Float64Array.from({ length: count }, () => {
    let sum = -6;
    for (let draw = 0; draw < 12; draw += 1) sum += random.uniform();
    return sum;
  });
}
