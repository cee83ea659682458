import { describe, expect, test } from "vitest";
import { HOUR, MINUTE } from "../../scripts/demo/clock.ts";
import { soundLoadRows } from "../../scripts/demo/loadRows.ts";
import { bedDepthTruthHoursPerCentimetre, simulateHouse } from "../../scripts/demo/simulateHouse.ts";
import {
  ALTITUDE_METRES,
  SLIPPING_BELT,
  THERMOSTAT_REPEATS_WITHIN,
  thermostatOffset,
} from "../../scripts/demo/truths.ts";
import { pressureAtAltitude } from "../../src/malting/moistAir.ts";
import { analyseKilnHours } from "../../src/report/kilnHours/analyseKilnHours.ts";

const RUNS = 180;
const house = simulateHouse({ seed: 41, runs: RUNS, readings: true });

describe("simulateHouse", () => {
  test("gives the same house for the same seed, with or without readings, and another for another", () => {
    const hours = (seed: number, readings: boolean): number[] =>
      simulateHouse({ seed, runs: 30, readings }).loads.map((load) => load.kilnHours);
    expect(hours(5, false)).toEqual(hours(5, true));
    expect(hours(6, false)).not.toEqual(hours(5, false));
  });

  test("one more centimetre changes bed, grain and hours, and neither weather nor people nor any other draw", () => {
    const deeper = simulateHouse({ seed: 41, runs: RUNS, extraBedDepthMetres: 0.01 });
    expect(deeper.weather).toEqual(house.weather);
    let longer = 0;
    for (const [i, load] of house.loads.entries()) {
      const other = deeper.loads[i];
      if (!other) throw new Error("a load is missing");
      expect(other.planned).toEqual(load.planned);
      expect(other.batches).toEqual(load.batches);
      expect(other.logged.celsius).toBe(load.logged.celsius);
      expect(other.logged.relativeHumidityPercent).toBe(load.logged.relativeHumidityPercent);
      expect(other.bedDepthMetres - load.bedDepthMetres).toLieWithin(0.01, 1e-12);
      expect(other.greenKilograms / other.bedDepthMetres).toAgreeWithin(
        load.greenKilograms / load.bedDepthMetres,
        1e-12,
      );
      if (other.kilnHours > load.kilnHours) longer++;
    }
    expect(longer).toBeGreaterThan(0.9 * house.loads.length);
  });

  test("without faults there is none but the weather's own", () => {
    const sound = simulateHouse({ seed: 41, runs: RUNS, faults: false });
    const faults = new Set(sound.loads.flatMap((load) => load.faults));
    faults.delete("power-limited");
    expect(faults).toEqual(new Set());
  });

  test("a slipping belt costs hours against the same night with a sound one", () => {
    const sound = simulateHouse({ seed: 41, runs: RUNS, faults: false });
    const slipped = house.loads.filter((load) => load.faults.includes("slipping belt"));
    expect(slipped.length).toBeGreaterThan(3);
    for (const load of slipped) {
      expect(load.planned.date >= SLIPPING_BELT.from && load.planned.date < SLIPPING_BELT.repairedOn).toBe(true);
      expect(load.kilnHours - (sound.loads[load.planned.index]?.kilnHours ?? Number.NaN)).toBeGreaterThan(0.75);
    }
  });

  test("the thermostat cycles in 10 minutes or more, about its set point and its offset", () => {
    let judged = 0;
    for (const load of house.loads) {
      const { trace, holdDuty, cureStartedAt } = load.fired;
      if (!trace || holdDuty > 0.75) continue;
      const minutes = Math.round((cureStartedAt - load.planned.loadedAt) / MINUTE);
      const heater = trace.heaterOn.slice(60, minutes);
      const starts = heater.flatMap((on, i) => (i > 0 && on > (heater[i - 1] as number) ? [i] : []));
      const first = starts[0];
      const last = starts.at(-1);
      if (first === undefined || last === undefined || starts.length < 6) continue;
      expect((last - first) / (starts.length - 1)).toBeGreaterThan(10);
      const air = trace.airOn.slice(60 + first, 60 + last);
      const mean = air.reduce((sum, t) => sum + t, 0) / air.length;
      // The heater's share of the time moves the middle by a few tenths: dead time acts on a steep rise or a slow one. And
      // the thermostat does not switch at one point: three standard deviations between loads.
      const offset = thermostatOffset(load.planned.date);
      expect(mean - load.logged.dryingSetCelsius).toLieWithin(offset, 0.55 + 3 * THERMOSTAT_REPEATS_WITHIN);
      judged++;
    }
    expect(judged).toBeGreaterThan(100);
  });

  test("spreads many runs over the years asked for", () => {
    const years = simulateHouse({ seed: 3, runs: 300, years: 4 });
    expect(years.plan.runs.length).toBeGreaterThanOrEqual(300);
    const first = years.loads[0]?.planned.loadedAt ?? Number.NaN;
    const last = years.loads.at(-1)?.planned.loadedAt ?? Number.NaN;
    expect((last - first) / (365.25 * 24 * HOUR)).toLieWithin(4, 0.4);
    const dates = years.loads.map((load) => load.planned.loadedAt);
    expect(dates).toEqual([...dates].sort((a, b) => a - b));
  });
});

/**
 * Not evidence about malting: the invented house is asked whether the analysis finds in its logs what was put into it. At
 * 95 % one house in twenty is missed by right; the bench runs a hundred.
 */
test("the drying-air model's interval for one more centimetre holds the simulated truth in at least 4 of 5 houses", () => {
  let held = 0;
  for (let seed = 1; seed <= 5; seed++) {
    const { kilnHours } = analyseKilnHours(soundLoadRows(simulateHouse({ seed })), {
      air: "at_loading",
      without: new Set(),
      targetMoisturePercent: 4.4,
      pressurePascals: pressureAtAltitude(ALTITUDE_METRES),
      timeZone: "UTC",
    });
    const interval = kilnHours.dryingAir?.hoursPerCentimetre;
    if (!interval) throw new Error("no drying-air model");
    const truth = bedDepthTruthHoursPerCentimetre(seed);
    if (interval.low <= truth && truth <= interval.high) held++;
    // An interval wide enough to hold anything would prove nothing.
    expect(interval.high - interval.low).toBeLessThan(0.25);
  }
  expect(held).toBeGreaterThanOrEqual(4);
}, 60_000);
