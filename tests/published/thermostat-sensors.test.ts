import { describe, expect, test } from "vitest";
import { boilingPoint } from "../../src/malting/moistAir.ts";
import {
  boilingPointAtAltitude,
  type SensorKind,
  sensorTolerance,
} from "../../src/malting/thermostat/sensorTolerance.ts";

describe("sensorTolerance against the standards' tables", () => {
  // IEC 60751:1995 and 2022 as tabulated in secondary copies: limits in °C at 0, 100, 200 and 400 °C.
  test.each<[SensorKind, number, number]>([
    ["Pt100 class AA", 0, 0.1],
    ["Pt100 class AA", 100, 0.27],
    ["Pt100 class A", 0, 0.15],
    ["Pt100 class A", 100, 0.35],
    ["Pt100 class A", 200, 0.55],
    ["Pt100 class B", 0, 0.3],
    ["Pt100 class B", 100, 0.8],
    ["Pt100 class B", 200, 1.3],
    ["Pt100 class B", 400, 2.3],
    ["Pt100 class C", 100, 1.6],
    ["Pt100 class C", 400, 4.6],
  ])("%s at %d °C is ±%d K (IEC 60751)", (kind, celsius, kelvin) => {
    expect(sensorTolerance(kind, celsius).plusMinusKelvin).toLieWithin(kelvin, 0.005);
  });

  // IEC 60584-2:1993 tables give the temperature at which the fixed limit ends: 375 and 333 °C (K), 125 and 133 °C (T).
  test.each<[SensorKind, number, number]>([
    ["type K class 1", 375, 1.5],
    ["type K class 2", 333, 2.5],
    ["type T class 1", 125, 0.5],
    ["type T class 2", 133, 1.0],
  ])("%s is flat up to %d °C at ±%d K and rises beyond (IEC 60584)", (kind, celsius, kelvin) => {
    expect(sensorTolerance(kind, 80).plusMinusKelvin).toBe(kelvin);
    expect(sensorTolerance(kind, celsius).plusMinusKelvin).toLieWithin(kelvin, 0.005);
    expect(sensorTolerance(kind, celsius + 20).plusMinusKelvin).toBeGreaterThan(kelvin + 0.05);
  });

  // ASTM E230: standard and special limits of error, the larger of the two columns.
  test.each<[SensorKind, number, number]>([
    ["type K standard", 80, 2.2],
    ["type K special", 80, 1.1],
    ["type K standard", 400, 3.0],
    ["type T standard", 80, 1.0],
    ["type T special", 80, 0.5],
    ["type T special", 200, 0.8],
  ])("%s at %d °C is ±%d K (ASTM E230)", (kind, celsius, kelvin) => {
    expect(sensorTolerance(kind, celsius).plusMinusKelvin).toLieWithin(kelvin, 0.005);
  });

  test("refuses temperatures outside the table's row", () => {
    expect(() => sensorTolerance("Pt100 class AA", 151)).toThrow(RangeError);
    expect(() => sensorTolerance("type T class 1", -1)).toThrow(RangeError);
  });
});

describe("boiling points", () => {
  /** IAPWS-IF97, table 36 (verification values of the saturation temperature): 0.1 MPa, 372.755919 K; from memory. */
  test("boilingPoint(0.1 MPa) agrees with IAPWS-IF97", () => {
    expect(boilingPoint(100_000)).toLieWithin(372.755919 - 273.15, 0.01);
  });

  /**
   * Pressures of the U.S. Standard Atmosphere 1976 (from memory: 95.461, 89.876, 84.556, 79.501 and 70.121 kPa) and the
   * boiling points that psychrometric formulas give at them, computed with psychrolib 1.1.1.
   */
  test.each([
    [0, 99.97],
    [300, 98.98],
    [500, 98.31],
    [1000, 96.65],
    [1500, 94.98],
    [2000, 93.32],
    [3000, 89.97],
  ])("boilingPointAtAltitude(%d m) is %d °C", (metres, celsius) => {
    expect(boilingPointAtAltitude(metres).celsius).toLieWithin(celsius, 0.006);
  });

  test.each([
    [500, 95_461],
    [1000, 89_876],
    [1500, 84_556],
    [2000, 79_501],
    [3000, 70_121],
  ])("at %d m the pressure behind it is that of the standard atmosphere, %d Pa", (metres, pascals) => {
    expect(boilingPointAtAltitude(metres).pressurePascals).toAgreeWithin(pascals, 4e-4);
  });
});
