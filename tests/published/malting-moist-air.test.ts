import psychrolib from "psychrolib";
import { describe, expect, test } from "vitest";
import { dryingPower } from "../../src/malting/dryingPower.ts";
import {
  boilingPoint,
  dewPoint,
  enthalpy,
  humidityRatio,
  humidityRatioAtVapourPressure,
  humidityRatioAtWetBulb,
  pressureAtAltitude,
  relativeHumidity,
  STANDARD_PRESSURE_PASCALS,
  saturationHumidityRatio,
  saturationPressure,
  specificVolume,
  vapourPressure,
  wetBulb,
} from "../../src/malting/moistAir.ts";

/**
 * Values of ASHRAE Handbook, Fundamentals 2017 (SI), chapter 1, with the tolerances that psychrolib's own tests give
 * them (tests/test_psychrolib_si.py of its upstream repository), read there.
 */
describe("moist air against ASHRAE Fundamentals 2017, chapter 1", () => {
  test.each([
    [-20, 103.24],
    [-5, 401.74],
    [5, 872.6],
    [25, 3169.7],
    [50, 12351.3],
    [100, 101418.0],
    [150, 476101.4],
  ])("saturationPressure(%d) agrees with table 3: %d Pa", (celsius, pascals) => {
    expect(saturationPressure(celsius)).toAgreeWithin(pascals, 3e-4);
  });

  test.each([
    [-5, 0.0024863, 0.005],
    [5, 0.005425, 0.005],
    [25, 0.020173, 0.005],
    [50, 0.086863, 0.01],
    [85, 0.838105, 0.02],
  ])("saturationHumidityRatio(%d) agrees with table 2: %d", (celsius, expected, tolerance) => {
    expect(saturationHumidityRatio(celsius, STANDARD_PRESSURE_PASCALS)).toAgreeWithin(expected, tolerance);
  });

  test.each([
    [5, 18639],
    [25, 76504],
    [50, 275353],
  ])("enthalpy of saturated air at %d °C agrees with table 2: %d J/kg", (celsius, joules) => {
    const saturated = saturationHumidityRatio(celsius, STANDARD_PRESSURE_PASCALS);
    expect(1000 * enthalpy(celsius, saturated)).toAgreeWithin(joules, 0.01);
  });

  test.each([
    [-500, 107478],
    [0, 101325],
    [500, 95461],
    [1000, 89875],
    [4000, 61640],
  ])("pressureAtAltitude(%d) agrees with table 1: %d Pa", (metres, pascals) => {
    expect(pressureAtAltitude(metres)).toLieWithin(pascals, 1);
  });

  test.each([
    [30, 25, 0.0192281274],
    [-1, -5, 0.0012039982],
  ])("humidityRatioAtWetBulb(%d, %d, 95461) agrees with %d, and wetBulb inverts it", (celsius, wet, expected) => {
    const ratio = humidityRatioAtWetBulb(celsius, wet, 95461);
    expect(ratio).toAgreeWithin(expected, 3e-4);
    expect(wetBulb(celsius, ratio, 95461)).toLieWithin(wet, 1e-8);
  });

  test("enthalpy(30, 0.02) and specificVolume(30, 0.02, 95461) agree with the computed table", () => {
    expect(1000 * enthalpy(30, 0.02)).toAgreeWithin(81316, 3e-4);
    expect(specificVolume(30, 0.02, 95461)).toAgreeWithin(0.940855, 3e-4);
  });

  test("Example 1 of the chapter, 40 °C with a wet bulb of 20 °C, comes out as read from its chart", () => {
    const ratio = humidityRatioAtWetBulb(40, 20, STANDARD_PRESSURE_PASCALS);
    expect(ratio).toLieWithin(0.0065, 1e-4);
    expect(dewPoint(vapourPressure(ratio, STANDARD_PRESSURE_PASCALS))).toLieWithin(7, 0.5);
    expect(relativeHumidity(40, ratio, STANDARD_PRESSURE_PASCALS)).toLieWithin(14, 1);
    expect(1000 * enthalpy(40, ratio)).toAgreeWithin(56700, 0.01);
    expect(specificVolume(40, ratio, STANDARD_PRESSURE_PASCALS)).toAgreeWithin(0.896, 0.01);
  });

  /** A second source: tests of the R package humidr, read. */
  test("a second source gives the same saturation pressures, humidity ratio and enthalpy", () => {
    expect(saturationPressure(20)).toAgreeWithin(2338.8, 3e-4);
    expect(saturationPressure(-10)).toAgreeWithin(259.9, 3e-4);
    const saturated = saturationHumidityRatio(20, STANDARD_PRESSURE_PASCALS);
    expect(saturated).toAgreeWithin(0.014758, 0.005);
    expect(enthalpy(20, saturated)).toAgreeWithin(57.555, 0.01);
  });
});

/** Magnus form of WMO-No. 8, from memory: an equation of another family, good to about 0.3 % over water. */
test.each([0.5, 10, 20, 30, 45])("saturationPressure(%d) lies within half a per cent of the Magnus form", (celsius) => {
  expect(saturationPressure(celsius)).toAgreeWithin(611.2 * Math.exp((17.62 * celsius) / (243.12 + celsius)), 0.005);
});

/** Computed with psychrolib 1.1.1 from the chapter's pressure and vapour-pressure equations. */
test.each([
  [0, 99.97],
  [300, 98.98],
  [500, 98.31],
  [1000, 96.65],
  [1500, 94.98],
  [2000, 93.32],
  [3000, 89.97],
])("water boils %d m above the sea at %d °C", (metres, celsius) => {
  expect(boilingPoint(pressureAtAltitude(metres))).toLieWithin(celsius, 0.006);
});

/**
 * The kiln-air table: ambient air, heated; humidity ratio drawn in, humidity after heating, wet bulb, drying power. Computed
 * with psychrolib 1.1.1 at 101 325 Pa.
 */
describe("kiln air", () => {
  test.each([
    [0, 80, 55, 0.003016, 3.1, 21.98, 0.01363],
    [10, 80, 55, 0.006089, 6.23, 24.07, 0.01287],
    [20, 50, 55, 0.007262, 7.42, 24.82, 0.01259],
    [20, 80, 55, 0.011701, 11.9, 27.45, 0.01162],
    [25, 90, 55, 0.018015, 18.1, 30.72, 0.01039],
    [30, 80, 55, 0.021573, 21.6, 32.37, 0.009758],
    [10, 80, 60, 0.006089, 4.93, 25.35, 0.01443],
    [20, 60, 60, 0.008735, 7.04, 26.93, 0.01386],
    [20, 60, 65, 0.008735, 5.6, 28.08, 0.0155],
    [30, 80, 60, 0.021573, 17.0, 33.3, 0.01152],
  ])("%d °C at %d per cent heated to %d °C", (celsius, percent, heated, ratio, heatedPercent, wet, power) => {
    const p = STANDARD_PRESSURE_PASCALS;
    const w = humidityRatio(celsius, percent, p);
    expect(w).toLieWithin(ratio, 6e-7);
    expect(relativeHumidity(heated, w, p)).toLieWithin(heatedPercent, 0.06);
    expect(wetBulb(heated, w, p)).toLieWithin(wet, 0.006);
    const found = dryingPower({
      celsius,
      relativeHumidityPercent: percent,
      heatedToCelsius: heated,
      pressurePascals: p,
    });
    expect(found).toLieWithin(power, 6e-6);
  });

  test.each([
    [0, 80, 0.01158],
    [10, 80, 0.01074],
    [25, 90, 0.00801],
    [30, 80, 0.00732],
  ])("%d °C at %d per cent heated to 48 °C carries off %d kg/kg", (celsius, percent, power) => {
    const found = dryingPower({
      celsius,
      relativeHumidityPercent: percent,
      heatedToCelsius: 48,
      pressurePascals: STANDARD_PRESSURE_PASCALS,
    });
    expect(found).toLieWithin(power, 6e-6);
  });
});

/** psychrolib is the reference implementation of the same chapter; its iterations stop at 0.001 K. */
test("every property agrees with psychrolib over a grid of temperature, humidity and height", () => {
  psychrolib.SetUnitSystem(psychrolib.SI);
  let compared = 0;
  for (const altitude of [0, 640, 2000]) {
    const p = pressureAtAltitude(altitude);
    expect(p).toAgreeWithin(psychrolib.GetStandardAtmPressure(altitude), 1e-12);
    for (let celsius = -25; celsius <= 95; celsius += 5) {
      expect(saturationPressure(celsius)).toAgreeWithin(psychrolib.GetSatVapPres(celsius), 1e-12);
      for (const percent of [5, 30, 60, 85, 99]) {
        if ((percent / 100) * saturationPressure(celsius) > 0.5 * p) continue;
        const w = humidityRatio(celsius, percent, p);
        expect(w).toAgreeWithin(psychrolib.GetHumRatioFromRelHum(celsius, percent / 100, p), 1e-12);
        expect(relativeHumidity(celsius, w, p)).toAgreeWithin(percent, 1e-12);
        expect(1000 * enthalpy(celsius, w)).toLieWithin(psychrolib.GetMoistAirEnthalpy(celsius, w), 1e-6);
        expect(specificVolume(celsius, w, p)).toAgreeWithin(psychrolib.GetMoistAirVolume(celsius, w, p), 1e-12);
        const pv = vapourPressure(w, p);
        expect(humidityRatioAtVapourPressure(pv, p)).toAgreeWithin(w, 1e-12);
        expect(dewPoint(pv)).toLieWithin(psychrolib.GetTDewPointFromVapPres(celsius, pv), 0.002);
        const wet = wetBulb(celsius, w, p);
        expect(wet).toLieWithin(psychrolib.GetTWetBulbFromHumRatio(celsius, w, p), 0.002);
        compared++;
      }
    }
  }
  expect(compared).toBeGreaterThan(300);
});
