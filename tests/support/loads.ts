import { seededRandom } from "../../src/analysis/seededRandom.ts";
import type { LoadRow } from "../../src/report/loadRow.ts";

const DAY = 86_400_000;
const FIRST = Date.UTC(2025, 0, 6, 17);

/** One load as a house would log it in full; tests change what they are about. */
export function load(index: number, changes: Partial<LoadRow> = {}): LoadRow {
  const loadedAt = FIRST + index * 5 * DAY;
  const kilnHours = changes.kilnHours === undefined ? 13 : changes.kilnHours;
  const unloadedAt = kilnHours === null ? null : loadedAt + kilnHours * 3_600_000;
  return {
    load: `L${index}`,
    kiln: "K1",
    runs: [`R${index}`],
    variety: "Reed",
    grain: "barley",
    loadedAt,
    cureStartedAt: null,
    heatOffAt: null,
    unloadedAt,
    kilnHours,
    dryingHours: null,
    bedDepthMetres: 0.15,
    grainInKilograms: 400,
    grainMoisturePercent: 12,
    greenLoadKilograms: 600,
    greenMoisturePercent: 44,
    airAtLoading: { relativeHumidityPercent: 70, celsius: 10, source: "logged" },
    airOverLoad: null,
    dryingSetCelsius: 48,
    cureSetCelsius: 80,
    finalMoisturePercent: 4.5,
    maltOutKilograms: 340,
    waterRemovedKilograms: 250,
    energyKilowattHours: 300,
    powerLimitedShare: 0,
    fanShareOfHold: null,
    powerLimited: false,
    readingsFile: null,
    ...changes,
  };
}

/**
 * Loads whose hours follow a plane in humidity and depth, plus noise of the given size: a truth that a fit must find.
 */
export function loadsOnAPlane(
  count: number,
  plane: { readonly intercept: number; readonly perPoint: number; readonly perMetre: number; readonly noise: number },
): LoadRow[] {
  const { uniform: random } = seededRandom(7);
  const uniform = (low: number, high: number): number => low + (high - low) * random();
  return Array.from({ length: count }, (_, index) => {
    const relativeHumidityPercent = uniform(40, 95);
    const bedDepthMetres = uniform(0.12, 0.19);
    // The sum of twelve uniforms is near enough to normal for what these tests ask.
    const wobble = Array.from({ length: 12 }, () => random()).reduce((sum, value) => sum + value, -6);
    const kilnHours =
      plane.intercept +
      plane.perPoint * relativeHumidityPercent +
      plane.perMetre * bedDepthMetres +
      plane.noise * wobble;
    return load(index, {
      kilnHours,
      bedDepthMetres,
      greenLoadKilograms: 4000 * bedDepthMetres,
      airAtLoading: { relativeHumidityPercent, celsius: uniform(0, 22), source: "logged" },
    });
  });
}
