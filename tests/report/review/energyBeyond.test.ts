import { describe, expect, test } from "vitest";
import { seededRandom } from "../../../src/analysis/seededRandom.ts";
import type { LoadRow } from "../../../src/report/loadRow.ts";
import { energyBeyond } from "../../../src/report/review/energyBeyond.ts";
import { load } from "../../support/loads.ts";

const WATER = 250;
const EARLIER = 40;
const LATEST = 6;

/** Energy for a kilogram of water that bends up in deep cold and down in a deeper bed; `over` is what the latest take beyond it. */
function house(over: number, coldest = -6, earlier = EARLIER): readonly LoadRow[] {
  const { uniform } = seededRandom(11);
  return Array.from({ length: earlier + LATEST }, (_, at) => {
    const isLatest = at >= earlier;
    const celsius = isLatest ? coldest : -8 + 30 * uniform();
    const bedDepthMetres = 0.13 + 0.04 * uniform();
    const noise = 0.02 * (uniform() - 0.5);
    const perKilogram = 2.9 - 0.043 * celsius + 0.0006 * celsius ** 2 - 4.5 * bedDepthMetres + noise;
    return load(at, {
      airOverLoad: { celsius, relativeHumidityPercent: 70, source: "weather" },
      bedDepthMetres,
      waterRemovedKilograms: WATER,
      energyKilowattHours: WATER * (perKilogram + (isLatest ? over : 0)),
    });
  });
}

function ofLatest(loads: readonly LoadRow[]) {
  const [first, last] = [loads.at(-LATEST), loads.at(-1)];
  return energyBeyond(loads, { from: first?.unloadedAt ?? 0, before: (last?.unloadedAt ?? 0) + 1 });
}

describe("energyBeyond", () => {
  test("finds nothing over where cold and bed account for all", () => {
    const over = ofLatest(house(0));
    expect(over?.low).toBeLessThan(0);
    expect(over?.high).toBeGreaterThan(0);
  });

  test("finds what the latest loads took beyond that", () => {
    const over = ofLatest(house(0.2));
    expect(over?.estimate).toLieWithin(0.2, 0.02);
    expect(over?.low).toBeGreaterThan(0);
  });

  test("is the less sure the further the weather lies beyond what was seen", () => {
    const width = (coldest: number): number => {
      const over = ofLatest(house(0, coldest));
      return (over?.high ?? Number.NaN) - (over?.low ?? Number.NaN);
    };
    expect(width(-20)).toBeGreaterThan(2 * width(5));
  });

  test("says nothing with fewer loads before than a season brings", () => {
    expect(ofLatest(house(0.2, -6, 19))).toBeNull();
  });
});
