import { describe, expect, test } from "vitest";
import { normalDraws } from "../../../src/analysis/normalDraws.ts";
import { seededRandom } from "../../../src/analysis/seededRandom.ts";
import type { AcrospireCounts } from "../../../src/malting/acrospire.ts";
import { countSizeOf } from "../../../src/report/steepGermination/countSize.ts";
import type { CountedGrowth, GrowthCounts } from "../../../src/report/steepGermination/growthCounts.ts";
import { growthModel } from "../../../src/report/steepGermination/growthModel.ts";
import { lengthOnTemperature } from "../../../src/report/steepGermination/lengthOnTemperature.ts";
import type { AcrospireRun, GrowthModel } from "../../../src/report/steepGerminationResult.ts";

const usual: AcrospireCounts = { none: 2, toQuarter: 0, toHalf: 8, toThreeQuarters: 40, toFull: 46, over: 4 };
const interval = (estimate: number): AcrospireRun["meanLength"] => ({ estimate, low: estimate, high: estimate });

/** Batches at unloading, after 96 hours at the temperatures given, 0.06 of a kernel longer a kelvin. */
function unloaded(celsius: readonly number[], targetOf: (at: number) => AcrospireRun["targets"]): AcrospireRun[] {
  return celsius.map((warm, at) => ({
    run: `R${at}`,
    variety: "one",
    at,
    hours: 96,
    bedMeanCelsius: warm,
    counts: usual,
    counted: 100,
    meanLength: interval(0.75 + 0.06 * (warm - 15)),
    undergrownPercent: interval(10),
    evenPercent: interval(86),
    overgrownPercent: interval(4),
    beds: [{ bed: "B1", counts: usual, counted: 100, meanLength: 0.7, bedMeanCelsius: warm }],
    targets: targetOf(at),
  }));
}

/** Counts at 40, 64 and 96 hours: 0.0007 for each degree-hour above 3 °C, less 0.06. */
function counted(celsius: readonly number[], runsCountedTwice = celsius.length, perDegreeHour = 0.0007): GrowthCounts {
  const normal = normalDraws(seededRandom(11));
  const counts = celsius.flatMap((warm, run) =>
    [40, 64, 96].map((hours): CountedGrowth => {
      const rate = perDegreeHour === 0 ? 0.0084 : perDegreeHour * (warm - 3);
      const length = rate * hours - 0.06 + 0.01 * normal();
      return { run: `R${run}`, variety: "one", hours, celsius: warm, length, standardError: 0.01, counted: 100 };
    }),
  );
  return { counts, runsCountedTwice };
}

const warmth = [12.2, 13, 13.6, 14.1, 14.7, 15, 15.4, 16, 16.6, 17.3, 17.9, 18.2];
const aim = { meanLow: 0.65, meanTarget: 0.75, meanHigh: 0.9, overgrownHigh: null };
const modelOf = (found: GrowthModel | string): GrowthModel => {
  if (typeof found === "string") throw new Error(found);
  return found;
};

describe("growthModel(counts, acrospires)", () => {
  test("speaks from ten batches counted twice on the way, and says how many there are before", () => {
    const at = unloaded(warmth, () => aim);
    expect(growthModel(counted(warmth, 9), at)).toMatch(
      /needs two counts on the way in 10 batches .* so far 9 have them/,
    );
    expect(modelOf(growthModel(counted(warmth, 10), at)).runsCountedTwice).toBe(10);
  });

  test("says so where warmer beds do not grow faster", () => {
    expect(growthModel(counted(warmth, 12, 0), [])).toMatch(/do not show that warmer beds grow faster/);
  });

  test("draws its line through the counts, on degree-hours above its base", () => {
    const { points, line, baseCelsius, coversCelsius, residualLength } = modelOf(growthModel(counted(warmth), []));
    expect(baseCelsius.estimate).toLieWithin(3, 0.6);
    expect(coversCelsius).toEqual([12.2, 18.2]);
    expect(residualLength).toLieWithin(0.01, 0.004);
    const [first, last] = [line[0], line.at(-1)];
    if (!first || !last) throw new Error("no line");
    const slope = (last.length - first.length) / (last.degreeHours - first.degreeHours);
    for (const { degreeHours, celsius, hours, length } of points) {
      expect(degreeHours).toAgreeWithin((celsius - baseCelsius.estimate) * hours, 1e-12);
      expect(first.length + slope * (degreeHours - first.degreeHours)).toLieWithin(length, 0.05);
    }
  });

  test("has no timetable without an aim, and takes the aim that most batches have", () => {
    expect(
      modelOf(
        growthModel(
          counted(warmth),
          unloaded(warmth, () => null),
        ),
      ).timetable,
    ).toBeNull();
    const mostly = unloaded(warmth, (at) => (at < 4 ? { ...aim, meanTarget: 0.6 } : aim));
    expect(modelOf(growthModel(counted(warmth), mostly)).timetable).toMatchObject({ aimLength: 0.75, usualHours: 96 });
    const middle = unloaded(warmth, () => ({ ...aim, meanTarget: null }));
    expect(modelOf(growthModel(counted(warmth), middle)).timetable?.aimLength).toAgreeWithin(0.775, 1e-12);
  });

  test("refuses an aim beyond the degree-hours that were counted, at every temperature", () => {
    const far = unloaded(warmth, () => ({ ...aim, meanTarget: 1.1 }));
    const timetable = modelOf(growthModel(counted(warmth), far)).timetable;
    expect(timetable?.rows).toEqual([]);
    expect(timetable?.refused.map(({ celsius }) => celsius)).toEqual([13, 14, 15, 16, 17, 18]);
    expect(timetable?.refused[0]?.reason).toMatch(/beyond the degree-hours that were counted/);
  });

  test("says what the usual hours give, and how much sooner or later the aim is met", () => {
    const { rows } = modelOf(
      growthModel(
        counted(warmth),
        unloaded(warmth, () => aim),
      ),
    ).timetable ?? { rows: [] };
    for (const { celsius, hours, lengthAtUsualHours } of rows) {
      expect(hours.estimate).toAgreeWithin(0.81 / (0.0007 * (celsius - 3)), 0.04);
      expect(lengthAtUsualHours.estimate).toLieWithin(0.0007 * (celsius - 3) * 96 - 0.06, 0.02);
      expect(hours.estimate > 96).toBe(lengthAtUsualHours.estimate < 0.75);
    }
    expect(rows.length).toBeGreaterThan(3);
  });
});

test("lengthOnTemperature(acrospires) recovers the slope at unloading, and needs twelve batches", () => {
  const found = lengthOnTemperature(unloaded(warmth, () => null));
  expect(found?.batches).toBe(12);
  expect(found?.perKelvin.estimate).toAgreeWithin(0.06, 1e-9);
  expect(found?.line[0]?.celsius).toBe(12.2);
  expect(lengthOnTemperature(unloaded(warmth.slice(1), () => null))).toBeNull();
  expect(lengthOnTemperature(unloaded(new Array<number>(14).fill(15), () => null))).toBeNull();
});

test("countSizeOf(acrospires) asks for four times the kernels to see half the difference", () => {
  const found = countSizeOf(unloaded(warmth, () => null));
  expect(found?.usual).toBe(100);
  const [tenth, twentieth] = found?.forLength ?? [];
  // But for the one kernel or so that Student's t asks for, and rounding up.
  expect((twentieth?.kernels ?? Number.NaN) / (tenth?.kernels ?? Number.NaN)).toLieWithin(4, 0.15);
  expect(found?.forOvergrown[0]).toMatchObject({ fromPercent: 4, toPercent: 14 });
  expect(countSizeOf([])).toBeNull();
});
