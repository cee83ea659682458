import { describe, expect, test } from "vitest";
import { pressureDropPerMetre } from "../../src/malting/airflowResistance.ts";
import {
  boundWaterHeatRatio,
  equilibriumHumidityChungPfost,
  equilibriumMoistureChungPfost,
  equilibriumMoistureHenderson,
} from "../../src/malting/equilibriumMoisture.ts";
import { latentHeatKilojoulesPerKilogram } from "../../src/malting/latentHeat.ts";

/** Computed from the constants of ASABE D245, themselves from memory; % dry basis. */
describe("equilibrium moisture (ASABE D245, constants from memory)", () => {
  test.each([
    ["barley", 25, 0.6, 15.23],
    ["barley", 20, 0.7, 18.01],
    ["barley", 80, 0.2, 4.47],
    ["wheat-hard", 25, 0.6, 14.84],
    ["wheat-hard", 32.2, 0.5, 12.59],
    ["wheat-soft", 32.2, 0.5, 11.6],
  ] as const)("Chung–Pfost, %s at %d °C and %d: %d per cent", (grain, celsius, humidity, percent) => {
    expect(equilibriumMoistureChungPfost(grain, celsius, humidity)).toLieWithin(percent, 0.006);
    const moisture = equilibriumMoistureChungPfost(grain, celsius, humidity);
    expect(equilibriumHumidityChungPfost(grain, celsius, moisture)).toAgreeWithin(humidity, 1e-12);
  });

  test.each([
    [25, 0.6, 13.26],
    [80, 0.2, 5.88],
  ])("Henderson, barley at %d °C and %d: %d per cent", (celsius, humidity, percent) => {
    expect(equilibriumMoistureHenderson("barley", celsius, humidity)).toLieWithin(percent, 0.006);
  });

  /** An extension service's table for soft red winter wheat, read: 10.8 % wet basis at 90 °F and 50 % humidity. */
  test("Chung–Pfost for soft wheat at 90 °F and half humidity comes within half a point of an extension table", () => {
    const dry = equilibriumMoistureChungPfost("wheat-soft", (90 - 32) / 1.8, 0.5);
    expect((100 * dry) / (100 + dry)).toLieWithin(10.8, 0.5);
  });

  test("in the dry air of a cure Chung–Pfost is held at 0", () => {
    expect(equilibriumMoistureChungPfost("barley", 80, 0.03)).toBe(0);
  });

  /** Computed by Clausius and Clapeyron's relation from Chung–Pfost for barley. */
  test.each([
    [25, 15, 1.091],
    [55, 20, 1.032],
    [55, 10, 1.139],
    [55, 5, 1.293],
    [80, 5, 1.242],
  ])(
    "bound water in barley at %d °C and %d per cent dry basis takes %d times the heat of free water",
    (celsius, m, ratio) => {
      expect(boundWaterHeatRatio("barley", celsius, m)).toLieWithin(ratio, 0.0006);
    },
  );
});

/** Computed from the constants of ASAE D272, themselves from memory; Pa/m. */
describe("airflow resistance (Shedd's equation, ASAE D272, constants from memory)", () => {
  test.each([
    ["barley", 0.05, 105.6],
    ["barley", 0.1, 254.3],
    ["barley", 0.2, 662.5],
    ["wheat", 0.05, 185.6],
    ["wheat", 0.1, 428.8],
    ["wheat", 0.2, 1066],
  ] as const)("%s at %d m/s: %d Pa/m", (grain, speed, pascals) => {
    expect(pressureDropPerMetre(grain, speed)).toAgreeWithin(pascals, 5e-4);
  });
});

/** Latent heat of the steam tables (from memory): 2501 kJ/kg at 0 °C, 2257 at 100 °C. */
test.each([
  [0, 2501],
  [100, 2257],
])("latentHeatKilojoulesPerKilogram(%d) lies within half a per cent of the steam tables' %d", (celsius, kilojoules) => {
  expect(latentHeatKilojoulesPerKilogram(celsius)).toAgreeWithin(kilojoules, 0.005);
});
