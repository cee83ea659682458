import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { normalDraws } from "../../../src/analysis/normalDraws.ts";
import { seededRandom } from "../../../src/analysis/seededRandom.ts";
import { uptakeModel } from "../../../src/report/steepGermination/uptake.ts";
import type { SteepBias, SteepRun, UptakeModel } from "../../../src/report/steepGerminationResult.ts";

interface Made {
  readonly batches?: number;
  readonly noise?: number;
  readonly perHour?: number;
  readonly hours?: (draw: () => number) => number;
  readonly water?: boolean;
  readonly target?: number;
}

/** Steeps of two varieties, three points apart, 0.4 point an hour and 0.1 a kelvin. */
function steeps(seed: number, made: Made = {}): SteepRun[] {
  const { batches = 40, noise = 0.3, perHour = 0.4, water = true, target = 44 } = made;
  const normal = normalDraws(seededRandom(seed));
  const hours = made.hours ?? ((draw) => 12 + draw());
  return Array.from({ length: batches }, (_, at) => {
    const variety = at % 2 === 0 ? "one" : "other";
    const wetHours = hours(normal);
    const waterCelsius = 12 + 1.5 * normal();
    const percent =
      (variety === "one" ? 44 : 41) + perHour * (wetHours - 12) + 0.1 * (waterCelsius - 12) + noise * normal();
    return {
      run: `R${at}`,
      variety,
      lot: null,
      startedAt: at,
      waterCelsius: water ? waterCelsius : null,
      wetHours,
      airRestHours: null,
      hours: 24,
      grainMoisturePercent: 12,
      measuredPercent: null,
      fromMassGainPercent: percent,
      steepOutPercent: percent,
      basis: "from mass gain",
      chittedPercent: null,
      target: { low: null, target, high: null },
    };
  });
}

const modelOf = (own: readonly SteepRun[], bias: SteepBias | null = null): UptakeModel => {
  const found = uptakeModel(own, bias);
  if (typeof found === "string") throw new Error(found);
  return found;
};
const bias = (points: number): SteepBias => ({
  batches: 10,
  meanPoints: { estimate: points, low: points - 0.1, high: points + 0.1 },
  limits: [points - 1, points + 1],
  clear: Math.abs(points) > 0.1,
  differences: [],
});

describe("uptakeModel(steeps)", () => {
  test("recovers what an hour and a kelvin do where nothing else moves the moisture", () => {
    const model = modelOf(steeps(1, { noise: 0 }));
    expect(model.pointsPerWetHour.estimate).toAgreeWithin(0.4, 1e-9);
    expect(model.pointsPerKelvin?.estimate).toAgreeWithin(0.1, 1e-9);
    expect(model.rSquared).toAgreeWithin(1, 1e-12);
  });

  test("names the hours at which its own line meets the target", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), (seed) => {
        const model = modelOf(steeps(seed));
        const own = model.hoursToTarget.find(({ variety }) => variety === "one");
        const line = model.lines.find(({ variety }) => variety === "one")?.line ?? [];
        fc.pre(own?.wetHours !== null && own !== undefined && line.length > 1);
        const [first, last] = [line[0], line.at(-1)];
        if (!first || !last) throw new Error("no line");
        const slope = (last.percent - first.percent) / (last.wetHours - first.wetHours);
        const met = first.percent + slope * ((own?.wetHours?.estimate ?? Number.NaN) - first.wetHours);
        expect(met).toLieWithin(44, 1e-8);
      }),
      { numRuns: 20 },
    );
  });

  test("holds the hours that would truly meet the target about as often as it says", () => {
    let named = 0;
    let held = 0;
    for (let seed = 1; seed <= 300; seed += 1) {
      const model = modelOf(steeps(seed));
      const own = model.hoursToTarget.find(({ variety }) => variety === "one");
      if (!own?.wetHours || own.usualWaterCelsius === null) continue;
      named += 1;
      const truly = 12 - (0.1 * (own.usualWaterCelsius - 12)) / 0.4;
      if (own.wetHours.low <= truly && truly <= own.wetHours.high) held += 1;
    }
    expect(named).toBe(300);
    // Three standard errors of a share of 0.95 in 300 are 0.038.
    expect(held / named).toLieWithin(0.95, 0.038);
  });

  test("refuses hours outside those logged for the variety, and says which they are", () => {
    const own = modelOf(steeps(3, { target: 46 })).hoursToTarget;
    for (const { wetHours, refusal } of own) {
      expect(wetHours).toBeNull();
      expect(refusal).toMatch(/lie outside those logged \(\d+\.\d to \d+\.\d\u00a0h\), so none are named\.$/);
    }
  });

  test("names none where more hours do not clearly give more moisture", () => {
    for (const perHour of [0, -0.4]) {
      const [own] = modelOf(steeps(4, { perHour, noise: 0.5 })).hoursToTarget;
      expect(own?.wetHours).toBeNull();
      expect(own?.refusal).toMatch(/do not show that more wet hours give more moisture/);
    }
  });

  test("allows for a clear bias of the gain in mass, and for none that is not", () => {
    const plain = modelOf(steeps(5));
    const allowed = modelOf(steeps(5), bias(0.3));
    const hours = (model: UptakeModel): number => model.hoursToTarget[0]?.wetHours?.estimate ?? Number.NaN;
    expect(allowed.allowedForBiasPoints).toBe(0.3);
    expect(hours(plain) - hours(allowed)).toAgreeWithin(0.3 / plain.pointsPerWetHour.estimate, 1e-9);
    expect(modelOf(steeps(5), bias(0.05)).allowedForBiasPoints).toBeNull();
  });

  test("fits hours alone where the water was not measured", () => {
    const model = modelOf(steeps(6, { water: false }));
    expect(model.pointsPerKelvin).toBeNull();
    expect(model.lines[0]?.atCelsius).toBeNull();
  });

  test("never mixes what was measured with what was reckoned", () => {
    const own = steeps(7).map((steep, at) => (at < 15 ? { ...steep, measuredPercent: 99 } : steep));
    const model = modelOf(own);
    expect(model.basis).toBe("from mass gain");
    expect(model.batches).toBe(40);
    expect(Math.max(...model.points.map(({ percent }) => percent))).toBeLessThan(60);
  });

  test("says why there is no model where hours never differed or batches are few", () => {
    expect(uptakeModel(steeps(8, { hours: () => 12 }), null)).toMatch(/the same wetting time/);
    expect(uptakeModel(steeps(9, { batches: 8 }), null)).toMatch(/needs 12 batches/);
    expect(uptakeModel([], null)).toMatch(/so far there are none/);
  });
});
