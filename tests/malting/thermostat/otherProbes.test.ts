import { describe, expect, it } from "vitest";
import { MINUTE } from "../../../src/malting/thermostat/kilnReadings.ts";
import { loggerHistory } from "../../../src/malting/thermostat/loggerChecks.ts";
import { cureProbeSpan, dryingProbeSpan, otherProbes } from "../../../src/malting/thermostat/otherProbes.ts";

const at = Float64Array.from({ length: 400 }, (_, minute) => minute * MINUTE);
const curve = (airOff: (minute: number) => number) => ({
  at,
  airOnCelsius: at.map(() => 80),
  airOffCelsius: Float64Array.from(at, (_, minute) => airOff(minute)),
  bedCelsius: null,
  heaterOn: null,
  fanOn: null,
});
const span = { from: 300 * MINUTE, to: 360 * MINUTE };
const noChecks = { sessions: [], steps: [] };

describe("otherProbes(readings, span, checks)", () => {
  it("is the mean over the span and no further, a probe that is not there null", () => {
    const found = otherProbes(
      curve((minute) => (minute < 300 || minute > 360 ? 20 : 60 + (minute % 2))),
      span,
      null,
    );
    expect(found.airOffCelsius).toLieWithin(60.5, 0.01);
    expect(found.bedCelsius).toBeNull();
  });

  it("is null for a probe that stands still, is silent for a part of it, or without a hold", () => {
    expect(
      otherProbes(
        curve(() => 60),
        span,
        null,
      ).airOffCelsius,
    ).toBeNull();
    const silent = curve((minute) => (minute > 330 ? Number.NaN : 60 + (minute % 2)));
    expect(otherProbes(silent, span, null).airOffCelsius).toBeNull();
    expect(
      otherProbes(
        curve((minute) => minute),
        null,
        null,
      ).airOffCelsius,
    ).toBeNull();
  });

  it("takes off what the probe's own checks found", () => {
    const check = { kiln: "K1", at: 0, probe: "air_off" as const, referenceCelsius: 60, readingCelsius: 61.5 };
    const checks = { airOff: loggerHistory([check], "K1", "air_off", []), bed: noChecks };
    const found = otherProbes(
      curve((minute) => 60 + (minute % 2)),
      span,
      checks,
    );
    expect(found.airOffCelsius).toLieWithin(60.5 - 1.5, 0.01);
  });
});

describe("dryingProbeSpan(hold) and cureProbeSpan(hold)", () => {
  it("take the second and third hour of a drying hold, and the last of a cure", () => {
    const hold = { from: 0, to: 600 * MINUTE };
    expect(dryingProbeSpan(hold)).toEqual({ from: 60 * MINUTE, to: 180 * MINUTE });
    expect(cureProbeSpan(hold)).toEqual({ from: 540 * MINUTE, to: 600 * MINUTE });
  });

  it("stay within a short hold", () => {
    const hold = { from: 0, to: 40 * MINUTE };
    expect(dryingProbeSpan(hold)).toEqual({ from: hold.to, to: hold.to });
    expect(cureProbeSpan(hold)).toEqual(hold);
  });
});
