import { describe, expect, test } from "vitest";
import { fanThermostat } from "../../../src/malting/thermostat/fanThermostat.ts";
import { MINUTE } from "./relayKiln.ts";

/** Air swings slowly between 42 and 48 °C in 30 minutes; the fan goes on above 46 and off below 44. */
function swinging(minutes: number, onAbove: number, offBelow: number) {
  const at = Float64Array.from({ length: minutes + 1 }, (_, m) => m * MINUTE);
  const airOnCelsius = at.map((t) => {
    const phase = (t / MINUTE / 30) % 1;
    return phase < 0.5 ? 42 + 12 * phase : 54 - 12 * phase;
  });
  let fan = 0;
  const fanOn = airOnCelsius.map((air) => {
    if (air >= onAbove) fan = 1;
    else if (air <= offBelow) fan = 0;
    return fan;
  });
  return { at, airOnCelsius, heaterOn: null, fanOn };
}
const hold = { from: 30 * MINUTE, to: 330 * MINUTE };

describe("fanThermostat", () => {
  test("reads switch points, offset and the fan's share of the hold", () => {
    const fan = fanThermostat(swinging(330, 46, 44), hold, 44.5, 5 * MINUTE);
    expect(fan?.switchesOn).toBe(10);
    expect(fan?.switchOnCelsius).toLieWithin(46, 0.25);
    expect(fan?.switchOffCelsius).toLieWithin(44, 0.25);
    expect(fan?.offsetKelvin).toLieWithin(0.5, 0.25);
    expect(fan?.standardErrorKelvin as number).toBeLessThan(0.2);
    // On from 46 °C rising (20 min into the swing of 30) to 44 °C falling: half of the time.
    expect(fan?.shareOfHold).toLieWithin(0.5, 0.04);
    expect(fan?.sentences).toEqual([]);
  });

  test("says that a fan which ran throughout cannot be judged, and gives its share as 1", () => {
    const fan = fanThermostat(swinging(330, 0, -1), hold, 45, 5 * MINUTE);
    expect(fan).toMatchObject({ shareOfHold: 1, offsetKelvin: null, switchOnCelsius: null });
    expect(fan?.sentences).toEqual(["The fan did not switch in the hold, so its own thermostat cannot be judged."]);
  });

  test("notices a fan that works the wrong way round", () => {
    const readings = swinging(330, 46, 44);
    const fan = fanThermostat({ ...readings, fanOn: readings.fanOn.map((on) => 1 - on) }, hold, 45, 5 * MINUTE);
    expect(fan?.sentences.join(" ")).toMatch(/wrong way round/);
  });

  test("is null where fan_on is not logged", () => {
    const readings = swinging(330, 46, 44);
    expect(fanThermostat({ ...readings, fanOn: null }, hold, 45, 5 * MINUTE)).toBeNull();
    const silent = readings.fanOn.map(() => Number.NaN);
    expect(fanThermostat({ ...readings, fanOn: silent }, hold, 45, 5 * MINUTE)).toBeNull();
  });
});
