import { describe, expect, test } from "vitest";
import { humidityOf, PRESSURE_PASCALS, ratioAt, saturationPascals } from "../../scripts/demo/airTable.ts";
import { bedMoisturePercent, freshBed, LAYERS, passAir } from "../../scripts/demo/dryingBed.ts";
import { fanFlow, KILN } from "../../scripts/demo/fan.ts";
import { dryingPower } from "../../src/malting/dryingPower.ts";
import { humidityRatio, saturationPressure, wetBulb } from "../../src/malting/moistAir.ts";

const water = (moisture: Float64Array, dryMatter: number): number =>
  moisture.reduce((sum, m) => sum + (m * dryMatter) / LAYERS, 0);

test("the table of saturation pressures agrees with the equation between its points", () => {
  for (let t = -40; t < 120; t += 0.337) expect(saturationPascals(t)).toAgreeWithin(saturationPressure(t), 2e-6);
  const ratio = humidityRatio(21, 55, PRESSURE_PASCALS);
  expect(humidityOf(21, ratio)).toAgreeWithin(0.55, 1e-5);
  expect(ratioAt(0.55 * saturationPressure(21))).toAgreeWithin(ratio, 1e-9);
});

describe("passAir", () => {
  const ratio = humidityRatio(10, 80, PRESSURE_PASCALS);

  test("dries a wet bed at the rate of the trade's own rule: air times drying power, and no faster", () => {
    const bed = freshBed("barley", 250, 0.786, 22, 1);
    // An hour to come to rest, then an hour measured: 0.55 kg of dry air a second at 48 °C.
    for (let step = 0; step < 180; step++) passAir(bed, 48, ratio, 0.55 * 20, 20);
    const before = water(bed.moisture, 250);
    for (let step = 0; step < 180; step++) passAir(bed, 48, ratio, 0.55 * 20, 20);
    const lost = before - water(bed.moisture, 250);
    const power = dryingPower({
      celsius: 10,
      relativeHumidityPercent: 80,
      heatedToCelsius: 48,
      pressurePascals: PRESSURE_PASCALS,
    });
    const most = 0.55 * 3600 * power;
    expect(lost).toBeLessThan(most * 1.02);
    expect(lost).toBeGreaterThan(most * 0.93);
  });

  test("leaves the top of a wet bed at the wet bulb of the heated air", () => {
    const bed = freshBed("wheat", 250, 0.75, 15, 1);
    for (let step = 0; step < 360; step++) passAir(bed, 48, ratio, 0.55 * 20, 20);
    expect(bed.celsius[LAYERS - 1]).toLieWithin(wetBulb(48, ratio, PRESSURE_PASCALS), 0.6);
  });

  test("keeps the heat: what the air gave up warmed the grain or evaporated water", () => {
    const bed = freshBed("barley", 250, 0.786, 22, 1);
    const held = (): number =>
      bed.celsius.reduce((sum, t, i) => sum + (250 / LAYERS) * (1.3 + 4.19 * (bed.moisture[i] as number)) * t, 0);
    const waterBefore = water(bed.moisture, 250);
    const heatBefore = held();
    let given = 0;
    for (let step = 0; step < 90; step++) {
      passAir(bed, 48, ratio, 0.55 * 20, 20);
      given += 0.55 * 20 * (1.006 + 1.86 * ratio) * (48 - (bed.celsius[LAYERS - 1] as number));
    }
    const latent = 2450 * (waterBefore - water(bed.moisture, 250));
    expect(latent + held() - heatBefore).toAgreeWithin(given, 0.06);
  });

  test("dries from the floor up, and never below nothing", () => {
    const bed = freshBed("barley", 250, 0.786, 15, 1);
    for (let step = 0; step < 180 * 6; step++) passAir(bed, 48, ratio, 0.55 * 20, 20);
    for (let i = 1; i < LAYERS; i++) expect(bed.moisture[i]).toBeGreaterThan(bed.moisture[i - 1] as number);
    for (let step = 0; step < 180 * 20; step++) passAir(bed, 80, ratio, 0.4 * 20, 20);
    expect(Math.min(...bed.moisture)).toBeGreaterThanOrEqual(0);
    expect(bedMoisturePercent(bed)).toBeLessThan(2);
  });

  test("cold grain takes water from warm damp air instead of giving it", () => {
    const bed = freshBed("barley", 250, 0.786, 2, 1);
    const before = water(bed.moisture, 250);
    passAir(bed, 25, humidityRatio(25, 90, PRESSURE_PASCALS), 0.55 * 20, 20);
    expect(water(bed.moisture, 250)).toBeGreaterThan(before);
  });
});

describe("fanFlow", () => {
  test("falls with depth, with damp grain less than with dry, and never passes what the fan moves in the open", () => {
    const open = KILN.fanCubicMetresPerHour / 3600;
    for (const grain of ["barley", "wheat"] as const) {
      expect(fanFlow(grain, 0.15, 1, 1)).toBeLessThan(open);
      expect(fanFlow(grain, 0.17, 1, 1)).toBeLessThan(fanFlow(grain, 0.15, 1, 1));
      expect(fanFlow(grain, 0.15, 0, 1)).toBeLessThan(fanFlow(grain, 0.15, 1, 1));
    }
  });

  test("follows the fan law: all pressures with the square of speed, so a slipping belt scales the air", () => {
    // Ducts and fan scale exactly; Shedd's curve is a little flatter than a square.
    expect(fanFlow("barley", 0.15, 1, 0.8) / fanFlow("barley", 0.15, 1, 1)).toLieWithin(0.8, 0.03);
  });
});
