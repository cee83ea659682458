import { describe, expect, test } from "vitest";
import { findHolds, type LoggedTimes } from "../../../src/malting/thermostat/holds.ts";
import { fireRelayKiln, logRelayKiln, MINUTE, slowPlant } from "./relayKiln.ts";

const minutes = 13 * 60;
const CURE_AT = 9 * 60;
const OFF_AT = 12 * 60 + 20;
const kiln = fireRelayKiln({
  plant: slowPlant,
  startCelsius: 15,
  minutes,
  cure: { atMinute: CURE_AT, higherBy: 32 },
  heatOffMinute: OFF_AT,
});
const logged: LoggedTimes = {
  loadedAt: 0,
  cureStartedAt: CURE_AT * MINUTE,
  heatOffAt: OFF_AT * MINUTE,
  unloadedAt: minutes * MINUTE,
  dryingSetCelsius: 48,
  cureSetCelsius: 80,
};
const log = (stepSeconds: number, heater = false) =>
  logRelayKiln(kiln, { stepSeconds, minutes, heater, noiseKelvin: 0.08, resolutionKelvin: 0.1 });

describe("findHolds", () => {
  test("takes the logged start of the cure and end of heating, and finds where the holds begin", () => {
    const holds = findHolds(log(60), logged, 0.5);
    expect(holds.warmUpEndsAt as number).toBeGreaterThan(15 * MINUTE);
    expect(holds.warmUpEndsAt as number).toBeLessThan(35 * MINUTE);
    expect(holds.drying).toMatchObject({ from: holds.warmUpEndsAt, to: CURE_AT * MINUTE, endIs: "logged" });
    expect(holds).toMatchObject({ rampFrom: CURE_AT * MINUTE, rampIs: "logged", dryingReason: null, cureReason: null });
    expect(holds.cure).toMatchObject({ from: holds.rampTo, to: OFF_AT * MINUTE, endIs: "logged" });
    expect(kiln.air((holds.rampTo as number) / MINUTE)).toLieWithin(82.5, 1);
  });

  test.each([
    [60, false],
    [60, true],
    [300, false],
    [300, true],
  ])("finds the cure in readings %d s apart where it is not logged (heater logged: %s)", (stepSeconds, heater) => {
    const holds = findHolds(log(stepSeconds, heater), { ...logged, cureStartedAt: null, heatOffAt: null }, 0.5);
    expect(holds.rampIs).toBe("found");
    // Up to the top of a cycle the ramp is a rise like any other.
    expect(holds.rampFrom as number).toBeGreaterThan((CURE_AT - 15) * MINUTE);
    expect(holds.rampFrom as number).toBeLessThanOrEqual((CURE_AT + 5) * MINUTE);
    expect(holds.cure?.endIs).toBe("found");
    expect(holds.cure?.to as number).toLieWithin(OFF_AT * MINUTE, 25 * MINUTE);
  });

  test("does not take a ramp for drying where the start of the cure was written down an hour late", () => {
    const holds = findHolds(log(60), { ...logged, cureStartedAt: (CURE_AT + 60) * MINUTE }, 0.5);
    expect(holds.rampIs).toBe("found");
    expect(holds.drying?.to as number).toBeLessThanOrEqual((CURE_AT + 2) * MINUTE);
  });

  test("keeps a logged start that is only some minutes late", () => {
    const holds = findHolds(log(60), { ...logged, cureStartedAt: (CURE_AT + 8) * MINUTE }, 0.5);
    expect(holds.rampIs).toBe("logged");
  });

  test("finds holds without any set point where the cure is logged", () => {
    const holds = findHolds(log(60), { ...logged, dryingSetCelsius: null, cureSetCelsius: null }, 0.5);
    expect(holds.drying).not.toBeNull();
    expect(holds.cure).not.toBeNull();
  });

  test("says in words what it could not find", () => {
    const silent = { ...logged, dryingSetCelsius: null, cureSetCelsius: null, cureStartedAt: null };
    const holds = findHolds(log(60), silent, 0.5);
    expect(holds.drying).toBeNull();
    expect(holds.dryingReason).toMatch(/not logged/);
    const none = findHolds(
      { at: new Float64Array(), airOnCelsius: new Float64Array(), heaterOn: null, fanOn: null },
      logged,
      0.5,
    );
    expect(none.drying).toBeNull();
    expect(none.dryingReason).toMatch(/wrote nothing/);
  });

  test("reads a load under way as drying to its last reading", () => {
    const soFar = logRelayKiln(kiln, { stepSeconds: 60, minutes: 5 * 60 });
    const holds = findHolds(soFar, { ...logged, cureStartedAt: null, heatOffAt: null, unloadedAt: null }, 0.5);
    expect(holds.drying).toMatchObject({ to: 5 * 60 * MINUTE, endIs: "found" });
    expect(holds.cure).toBeNull();
  });

  test("says that the readings stop before the hold", () => {
    const early = logRelayKiln(kiln, { stepSeconds: 60, minutes: 20 });
    const holds = findHolds(early, logged, 0.5);
    expect(holds.drying).toBeNull();
    expect(holds.dryingReason).toMatch(/do not cover/);
  });
});
