import { describe, expect, test } from "vitest";
import { lab } from "../../src/tables/declareLab.ts";
import { insideName } from "../../src/tables/insideName.ts";
import {
  laboratoryMeasures,
  maltMeasure,
  measureWithUnit,
  printMeasure,
  printMeasureDifference,
  printMeasureMean,
} from "../../src/units/maltMeasure.ts";
import { fromShown, toShown } from "../../src/units/quantity.ts";
import { colourFamily, diastaticPowerFamily } from "../../src/units/suffix.ts";

const NBSP = "\u00a0";

test("every number of lab.csv has a name and a unit of its own", () => {
  const numbers = lab.columns.filter(({ kind }) => kind === "number").map(insideName);
  expect([...laboratoryMeasures].sort()).toEqual([...numbers].sort());
});

test("colour is said in EBC units, and first in SRM to a reader of US customary units", () => {
  const colour = maltMeasure("colour_ebc");
  expect(printMeasure(colour, 3.94, "metric")).toBe(`3.9${NBSP}EBC`);
  expect(printMeasure(colour, 3.94, "us")).toBe(`2.0${NBSP}SRM`);
  expect(measureWithUnit(colour, "us")).toBe("colour, SRM");
});

test("a difference in diastatic power is converted without the offset of its scale", () => {
  const power = maltMeasure("diastatic_power_wk");
  expect(printMeasure(power, 334, "us")).toBe(`100${NBSP}°L`);
  expect(printMeasureDifference(power, 35, "us")).toBe(`10.0${NBSP}°L`);
  expect(printMeasureDifference(power, 35, "metric")).toBe(`35.0${NBSP}°WK`);
});

test("means and spreads have one decimal more than single values", () => {
  const moisture = maltMeasure("final_moisture_pct");
  expect(printMeasure(moisture, 4.444, "metric")).toBe(`4.4${NBSP}%`);
  expect(printMeasureMean(moisture, 4.444, "metric")).toBe(`4.44${NBSP}%`);
  expect(printMeasureDifference(moisture, 0.444, "metric")).toBe(`0.44${NBSP}points`);
});

test("maltMeasure(name) of a measure that nobody declared keeps its name and has no unit", () => {
  expect(measureWithUnit(maltMeasure("sweetness_of_smell"), "us")).toBe("sweetness of smell");
  expect(maltMeasure("constructor").words).toBe("constructor");
});

describe.each([
  ["colour", "srm", colourFamily],
  ["diastaticPower", "lintner", diastaticPowerFamily],
] as const)("%s as shown to a US reader", (quantity, suffix, family) => {
  test(`is the inverse of what a column in ${suffix} is read by`, () => {
    const written = family.suffixes.find((one) => one.suffix === suffix);
    for (const value of [1.5, 30, 140]) {
      const inside = value * (written?.factor ?? Number.NaN) + (written?.offset ?? Number.NaN);
      expect(toShown(inside, quantity, "us")).toAgreeWithin(value, 1e-12);
      expect(fromShown(value, quantity, "us")).toAgreeWithin(inside, 1e-12);
    }
  });
});
