import { describe, expect, test } from "vitest";
import { randomStream } from "../../scripts/demo/random.ts";

const draws = (stream: { uniform: () => number }, n: number): number[] =>
  Array.from({ length: n }, () => stream.uniform());

describe("randomStream", () => {
  test("gives the same draws for the same seed, purpose and index, and others for any other", () => {
    const one = draws(randomStream(7, "weather", 3), 50);
    expect(draws(randomStream(7, "weather", 3), 50)).toEqual(one);
    for (const other of [randomStream(8, "weather", 3), randomStream(7, "people", 3), randomStream(7, "weather", 4)]) {
      const theirs = draws(other, 50);
      expect(theirs.filter((v, i) => v === one[i])).toHaveLength(0);
    }
  });

  test("uniform has the mean and spread of 0 to 1, in each of many neighbouring streams", () => {
    // First draws of 4000 streams: were neighbours alike, these would clump.
    const first = Array.from({ length: 4000 }, (_, i) => randomStream(1, "load", i).uniform());
    for (const values of [first, draws(randomStream(1, "load"), 4000)]) {
      const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
      const variance = values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / values.length;
      // Five standard errors: 5 × 0.2887/√4000, and about 5 × 0.0745/√4000 for the variance of 1/12.
      expect(mean).toLieWithin(0.5, 0.023);
      expect(variance).toLieWithin(1 / 12, 0.006);
    }
  });

  test("normal has mean 0, standard deviation 1 and the tails of the normal distribution", () => {
    const r = randomStream(2, "normal");
    const values = Array.from({ length: 20_000 }, r.normal);
    const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
    const sd = Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / values.length);
    expect(mean).toLieWithin(0, 0.035);
    expect(sd).toLieWithin(1, 0.025);
    const beyond = values.filter((v) => Math.abs(v) > 1.959964).length / values.length;
    expect(beyond).toLieWithin(0.05, 0.008);
  });

  test("weighted follows its weights and integer its ends", () => {
    const r = randomStream(3, "choice");
    let heavy = 0;
    const seen = new Set<number>();
    for (let i = 0; i < 6000; i++) {
      if (
        r.weighted([
          ["light", 1],
          ["heavy", 2],
        ] as const) === "heavy"
      )
        heavy++;
      seen.add(r.integer(2, 5));
    }
    expect(heavy / 6000).toLieWithin(2 / 3, 0.031);
    expect([...seen].sort()).toEqual([2, 3, 4, 5]);
  });
});
