import psychrolib from "psychrolib";
import { describe, expect, it } from "vitest";
import { heatedWetBulb, wetBulbGain } from "../../src/malting/heatedWetBulb.ts";

/** psychrolib 1.1.1, an independent implementation of ASHRAE Fundamentals 2017, chapter 1. */
psychrolib.SetUnitSystem(psychrolib.SI);

const cases = [
  { celsius: 10, relativeHumidityPercent: 80, heatedToCelsius: 48, pressurePascals: 101_325 },
  { celsius: -8, relativeHumidityPercent: 85, heatedToCelsius: 50, pressurePascals: 100_000 },
  { celsius: 25, relativeHumidityPercent: 60, heatedToCelsius: 55, pressurePascals: 95_000 },
  { celsius: 15, relativeHumidityPercent: 70, heatedToCelsius: 80, pressurePascals: 101_325 },
];

function reference({ celsius, relativeHumidityPercent, heatedToCelsius, pressurePascals }: (typeof cases)[number]) {
  const ratio = psychrolib.GetHumRatioFromRelHum(celsius, relativeHumidityPercent / 100, pressurePascals);
  return psychrolib.GetTWetBulbFromHumRatio(heatedToCelsius, ratio, pressurePascals);
}

describe("heatedWetBulb(air) and wetBulbGain(air) against psychrolib", () => {
  it.each(cases)("agree at $heatedToCelsius °C from $celsius °C outside", (air) => {
    expect(heatedWetBulb(air)).toLieWithin(reference(air), 0.01);
    const heated = (by: number) => reference({ ...air, heatedToCelsius: air.heatedToCelsius + by });
    // Its wet bulb is found to 0.001 °C.
    expect(wetBulbGain(air)).toLieWithin(heated(0.5) - heated(-0.5), 0.003);
  });
});
