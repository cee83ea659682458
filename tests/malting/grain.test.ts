import fc from "fast-check";
import { expect, test } from "vitest";
import { pressureDropPerMetre } from "../../src/malting/airflowResistance.ts";
import {
  boundWaterHeatRatio,
  equilibriumHumidityChungPfost,
  equilibriumMoistureChungPfost,
  equilibriumMoistureHenderson,
} from "../../src/malting/equilibriumMoisture.ts";
import { latentHeatKilojoulesPerKilogram, latentHeatKilowattHoursPerKilogram } from "../../src/malting/latentHeat.ts";

const grain = fc.constantFrom("barley" as const, "wheat-hard" as const, "wheat-soft" as const);

test("equilibrium moisture rises with humidity and falls with temperature, by either equation", () => {
  fc.assert(
    fc.property(
      grain,
      fc.double({ min: 5, max: 50, noNaN: true }),
      fc.double({ min: 0.3, max: 0.85, noNaN: true }),
      (g, t, rh) => {
        for (const moisture of [equilibriumMoistureChungPfost, equilibriumMoistureHenderson]) {
          expect(moisture(g, t, rh + 0.1)).toBeGreaterThan(moisture(g, t, rh));
          expect(moisture(g, t + 10, rh)).toBeLessThan(moisture(g, t, rh));
        }
      },
    ),
  );
});

test("boundWaterHeatRatio goes to 1 in wet grain and never below", () => {
  expect(boundWaterHeatRatio("barley", 48, 75)).toLieWithin(1, 1e-3);
  expect(boundWaterHeatRatio("barley", 48, 5)).toBeGreaterThan(1.2);
});

test("pressureDropPerMetre rises faster than the air speed", () => {
  expect(pressureDropPerMetre("wheat", 0.2)).toBeGreaterThan(2 * pressureDropPerMetre("wheat", 0.1));
});

test("latent heat is the same in kWh and falls with temperature", () => {
  expect(latentHeatKilowattHoursPerKilogram(25) * 3600).toLieWithin(latentHeatKilojoulesPerKilogram(25), 1e-9);
  expect(latentHeatKilojoulesPerKilogram(60)).toBeLessThan(latentHeatKilojoulesPerKilogram(20));
});

test("callers' mistakes are refused with what was got", () => {
  expect(() => equilibriumMoistureChungPfost("barley", 20, 60)).toThrow(/got 60/);
  expect(() => equilibriumHumidityChungPfost("barley", 20, -1)).toThrow(/got -1/);
  expect(() => pressureDropPerMetre("barley", 0)).toThrow(/got 0/);
  expect(() => latentHeatKilojoulesPerKilogram(120)).toThrow(/got 120/);
});
