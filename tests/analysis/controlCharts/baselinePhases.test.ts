import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { baselinePhases } from "../../../src/analysis/controlCharts/baselinePhases.ts";
import { individualsLimits } from "../../../src/analysis/controlCharts/individualsLimits.ts";
import { movingRangeSpread, spreadInterval } from "../../../src/analysis/controlCharts/movingRangeSpread.ts";

const value = fc.integer({ min: -500, max: 500 }).map((tenths) => tenths / 10);
const points = (values: readonly number[], group = "only") => values.map((v) => ({ value: v, group }));
const steps = (count: number) => Array.from({ length: count }, (_, at) => [4, 5, 3, 4.5, 3.5][at % 5] as number);

describe("individualsLimits", () => {
  test("shifting and scaling the values shifts and scales centre, sigma, limits and their intervals", () => {
    const values = fc.array(value, { minLength: 5, maxLength: 40 });
    fc.assert(
      fc.property(values, value, fc.integer({ min: 1, max: 50 }), (x, shift, factor) => {
        const before = individualsLimits(x);
        const after = individualsLimits(x.map((v) => factor * v + shift));
        expect(after === null).toBe(before === null);
        if (before === null || after === null) return;
        for (const part of ["low", "centre", "high"] as const) {
          for (const end of ["estimate", "low", "high"] as const) {
            expect(after[part][end]).toLieWithin(factor * before[part][end] + shift, 1e-8);
          }
        }
        expect(after.sigma.high).toAgreeWithin(factor * before.sigma.high, 1e-9);
      }),
    );
  });

  test("reading the baseline backwards changes nothing; another order may", () => {
    const x = [1, 5, 2, 6, 3, 9];
    const there = individualsLimits(x);
    const back = individualsLimits([...x].reverse());
    expect(back?.high.estimate).toAgreeWithin(there?.high.estimate ?? Number.NaN, 1e-14);
    expect(individualsLimits([...x].sort((a, b) => a - b))?.sigma.estimate).toBeLessThan(there?.sigma.estimate ?? 0);
  });

  test("more of the same baseline narrows every interval", () => {
    const short = individualsLimits(steps(10));
    const long = individualsLimits(steps(40));
    const width = (limits: typeof short, part: "low" | "centre" | "high") =>
      limits === null ? Number.NaN : (limits[part].high - limits[part].low) / limits.sigma.estimate;
    for (const part of ["low", "centre", "high"] as const) expect(width(long, part)).toBeLessThan(width(short, part));
  });

  test("values that do not vary, or one value alone, give no limits", () => {
    expect(individualsLimits([3, 3, 3, 3])).toBeNull();
    expect(individualsLimits([3])).toBeNull();
    expect(() => individualsLimits([])).toThrow(RangeError);
  });
});

describe("movingRangeSpread", () => {
  test("takes no range across two series, so that a series' own level is of no matter", () => {
    const series = fc.array(fc.array(value, { minLength: 1, maxLength: 12 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(series, fc.array(value, { minLength: 4, maxLength: 4 }), (groups, levels) => {
        const before = movingRangeSpread(groups);
        const after = movingRangeSpread(groups.map((x, at) => x.map((v) => v + 10 * (levels[at] as number))));
        expect(after?.ranges).toBe(before?.ranges);
        if (before && after) expect(after.averageMovingRange).toLieWithin(before.averageMovingRange, 1e-9);
      }),
    );
  });

  test("two values are a chi with one degree of freedom: relative variance π/2 − 1", () => {
    // |x₁ − x₂|/√2 is half-normal: variance over squared mean is (1 − 2/π)/(2/π); exact.
    expect(movingRangeSpread([[0, 1]])?.relativeVariance).toAgreeWithin(Math.PI / 2 - 1, 1e-14);
  });

  test("is worth 0.605 of a sample standard deviation in the large", () => {
    // Cryer and Ryan (1990), from memory: 0.826 σ²/n against 0.5 σ²/n.
    const spread = movingRangeSpread([steps(20001)]);
    expect(0.5 / 20000 / (spread?.relativeVariance ?? 0)).toLieWithin(0.605, 5e-4);
  });

  test("spreadInterval holds the truth as often as it says for simulated baselines of 12", () => {
    // R 4.2.2, 200,000 baselines of 12: 2.5 % point 0.5316 and 97.5 % point 1.5893 of estimate/σ.
    const spread = movingRangeSpread([steps(12)]);
    if (spread === null) throw new Error("twelve values have a spread");
    const { low, high } = spreadInterval(spread);
    expect(spread.sigma / high).toLieWithin(0.5316, 0.012);
    expect(spread.sigma / low).toLieWithin(1.5893, 0.012);
  });
});

describe("baselinePhases", () => {
  test("freezes limits at the first baselineCount usable points: what comes later moves nothing", () => {
    const later = fc.array(value, { maxLength: 30 });
    fc.assert(
      fc.property(later, (tail) => {
        const [phase] = baselinePhases(points([...steps(12), ...tail]), { baselineCount: 12 });
        expect(phase?.groups[0]?.limits).toEqual(individualsLimits(steps(12)));
        expect(phase?.groups[0]?.frozen).toBe(true);
      }),
    );
  });

  test("keeps a value far off in the baseline unless it is left out by name", () => {
    const values = [...steps(6), 400, ...steps(6)];
    const [kept] = baselinePhases(points(values), { baselineCount: 13 });
    const [without] = baselinePhases(points(values), { baselineCount: 12, leftOut: new Set([6]) });
    expect(kept?.groups[0]?.indices).toContain(6);
    expect(without?.groups[0]?.indices).toEqual([0, 1, 2, 3, 4, 5, 7, 8, 9, 10, 11, 12]);
    expect(without?.groups[0]?.limits).toEqual(individualsLimits([...steps(6), ...steps(6)]));
  });

  test("starts anew at each event and covers every point once", () => {
    const starts = fc.array(fc.integer({ min: 0, max: 59 }), { maxLength: 5 });
    fc.assert(
      fc.property(starts, (newBaselineAt) => {
        const phases = baselinePhases(points(steps(60)), { newBaselineAt });
        expect(phases.map(({ from }) => from)).toEqual([...new Set([0, ...newBaselineAt])].sort((a, b) => a - b));
        expect(phases.reduce((sum, { from, to }) => sum + to - from + 1, 0)).toBe(60);
        for (const phase of phases) {
          for (const at of phase.groups.flatMap(({ indices }) => indices)) {
            expect(at >= phase.from && at <= phase.to).toBe(true);
          }
        }
      }),
    );
  });

  test("a baseline named for one group leaves the others their first usable points", () => {
    const two = [...points(steps(20), "named"), ...points(steps(20), "other")];
    const [phase] = baselinePhases(two, { named: new Set([10, 11, 12, 13, 14]), baselineCount: 6 });
    expect(phase?.groups.map(({ group, indices }) => [group, indices])).toEqual([
      ["named", [10, 11, 12, 13, 14]],
      ["other", [20, 21, 22, 23, 24, 25]],
    ]);
  });

  test("uses the named points, and the first ones in a phase that names none", () => {
    const named = new Set([5, 6, 7, 8, 9, 10]);
    const [first, second] = baselinePhases(points(steps(40)), { named, newBaselineAt: [20], baselineCount: 12 });
    expect(first?.groups[0]?.indices).toEqual([...named]);
    expect(first?.groups[0]?.provisional).toBe(true);
    expect(second?.groups[0]?.indices[0]).toBe(20);
    expect(second?.groups[0]?.indices).toHaveLength(12);
  });

  test("counts baselines variety by variety and pools their spread until each has twenty", () => {
    const mixed = steps(60).flatMap((v, at) => [
      { value: v, group: "early" },
      ...(at % 2 === 0 ? [{ value: 10 * v, group: "late" }] : []),
    ]);
    const [pooled] = baselinePhases(mixed.slice(0, 45), { baselineCount: 24 });
    const [own] = baselinePhases(mixed, { baselineCount: 24 });
    expect(pooled?.groups.map(({ spreadPooled }) => spreadPooled)).toEqual([true, true]);
    expect(pooled?.groups[0]?.limits?.sigma.estimate).toBe(pooled?.groups[1]?.limits?.sigma.estimate);
    expect(pooled?.groups[0]?.limits?.centre.estimate).not.toBe(pooled?.groups[1]?.limits?.centre.estimate);
    expect(own?.groups.map(({ indices }) => indices.length)).toEqual([24, 24]);
    expect(own?.groups.map(({ spreadPooled }) => spreadPooled)).toEqual([false, false]);
    const [early, late] = own?.groups ?? [];
    expect(late?.limits?.sigma.estimate).not.toBe(early?.limits?.sigma.estimate);
  });

  test("says that there are too few, or no spread, rather than draw limits", () => {
    expect(baselinePhases(points([1, 2, 3, 4]))[0]?.groups[0]).toMatchObject({ limits: null, withoutLimits: "tooFew" });
    expect(baselinePhases(points([4, 4, 4, 4, 4, 4]))[0]?.groups[0]?.withoutLimits).toBe("noSpread");
    expect(baselinePhases(points(steps(11)))[0]?.groups[0]).toMatchObject({ provisional: true, frozen: false });
    expect(baselinePhases(points(steps(12)))[0]?.groups[0]).toMatchObject({ provisional: false, frozen: false });
    expect(baselinePhases([])).toEqual([]);
  });

  test("refuses indices that are not of its points", () => {
    expect(() => baselinePhases(points(steps(5)), { newBaselineAt: [5] })).toThrow(RangeError);
    expect(() => baselinePhases(points([1, Number.NaN]))).toThrow(RangeError);
  });
});
