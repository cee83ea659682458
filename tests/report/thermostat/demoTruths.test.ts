import { beforeAll, describe, expect, it } from "vitest";
import { LOGGER_ERROR, THERMOSTAT_DRIFT } from "../../../scripts/demo/truths.ts";
import { reportFromFolder } from "../../../src/report/atBuild.ts";
import type { HoldJudgement, KilnThermostat, StretchModels } from "../../../src/report/thermostatResult.ts";
import { printIsoDate } from "../../../src/units/instant.ts";

let kiln: KilnThermostat;
beforeAll(async () => {
  const { report } = await reportFromFolder("data/demo", null);
  const [first] = report.thermostat.kilns;
  if (first === undefined) throw new Error("the demo has lost its kiln");
  kiln = first;
});

const holds = (): readonly HoldJudgement[] => [kiln.drying, kiln.cure].filter((hold) => hold !== null);
const isoDate = (at: number): string => printIsoDate(at, "UTC");

function covers(models: StretchModels | null | undefined, from: string, kelvinPerMonth: number): void {
  const { onset, kelvinPerMonth: slope } = models ?? {};
  expect(onset && isoDate(onset.low) <= from && isoDate(onset.high) >= from).toBe(true);
  expect(slope?.low).toBeLessThanOrEqual(kelvinPerMonth);
  expect(slope?.high).toBeGreaterThanOrEqual(kelvinPerMonth);
}

describe("the thermostats of the invented house, whose truth is known", () => {
  it("are read in both holds in most loads", () => {
    for (const { points } of holds()) expect(points.length).toBeGreaterThan(0.85 * kiln.loads.length);
  });

  it("alarm for the first drift before its calibration, downwards, and not before it began", () => {
    const { first, calibratedOn } = THERMOSTAT_DRIFT;
    for (const { stretches } of holds()) {
      const alarms = stretches[0]?.alarm?.alarms ?? [];
      expect(alarms).toHaveLength(1);
      expect(alarms[0]?.direction).toBe("down");
      expect(isoDate(alarms[0]?.raisedAt ?? 0) > first.from).toBe(true);
      expect(isoDate(alarms[0]?.raisedAt ?? 0) < calibratedOn).toBe(true);
    }
  });

  it("are quiet after the calibration until the second drift, and alarm for that once, within its two months", () => {
    for (const { stretches } of holds()) {
      const alarms = stretches[1]?.alarm?.alarms ?? [];
      expect(alarms).toHaveLength(1);
      expect(alarms[0]?.direction).toBe("down");
      expect(isoDate(alarms[0]?.raisedAt ?? 0) > THERMOSTAT_DRIFT.second.from).toBe(true);
    }
  });

  it("call both drifts a creep, not a step", () => {
    for (const { stretches } of holds())
      expect(stretches.map(({ models }) => models?.winner)).toEqual(["creep", "creep"]);
  });

  it("hold both drifts' onsets and rates inside their intervals, in both holds", () => {
    const { first, second } = THERMOSTAT_DRIFT;
    for (const { stretches } of holds()) {
      covers(stretches[0]?.models, first.from, first.kelvinPerMonth);
      covers(stretches[1]?.models, second.from, second.kelvinPerMonth);
    }
  });

  it("find the first drift's rate to a fifth of it, winter duty and a fan thermostat in its way", () => {
    const { kelvinPerMonth } = THERMOSTAT_DRIFT.first;
    for (const { stretches } of holds()) {
      expect(stretches[0]?.models?.kelvinPerMonth?.estimate).toAgreeWithin(kelvinPerMonth, 0.2);
    }
  });

  it("are borne out by the air that leaves the bed, which moved along with the second drift", () => {
    const speaks = kiln.drying?.probes.find(({ probe }) => probe === "air_off")?.speaks;
    expect(speaks).toBe("thermostat");
    for (const { probes } of holds()) expect(probes.map(({ speaks }) => speaks)).not.toContain("logger");
  });

  it("name the logger's fault as the logger's, by its size at the temperature of the check", () => {
    expect(kiln.logger.faults).toHaveLength(1);
    const { errorKelvin = Number.NaN, aboutCelsius = Number.NaN } = kiln.logger.faults[0] ?? {};
    const truth = LOGGER_ERROR.atZeroCelsius + LOGGER_ERROR.perKelvin * aboutCelsius;
    // Three times the uncertainty of a check of several readings.
    expect(errorKelvin).toLieWithin(truth, 3 * 0.1);
  });
});
