import fc from "fast-check";
import { DateTime } from "luxon";
import { describe, expect, it } from "vitest";
import { localParts } from "../../src/units/instant.ts";

const ZONES = [
  "UTC",
  "Europe/Oslo",
  "America/St_Johns",
  "Australia/Lord_Howe",
  "Pacific/Apia",
  "Africa/Monrovia",
  "Asia/Kathmandu",
  // Clocks set back for a month of fasting.
  "Africa/Casablanca",
  "Africa/Cairo",
  "Asia/Gaza",
];
const years = (from: number, to: number) => fc.integer({ min: Date.UTC(from, 0, 1), max: Date.UTC(to, 0, 1) });

describe("localParts(instant, timeZone)", () => {
  it("gives the calendar and clock that luxon gives, in any zone, asked in any order", () => {
    fc.assert(
      fc.property(fc.constantFrom(...ZONES), fc.oneof(years(1973, 2060), years(1900, 1973)), (zone, instant) => {
        const { year, month, day, hour, minute } = DateTime.fromMillis(instant, { zone });
        expect(localParts(instant, zone)).toEqual({ year, month, day, hour, minute });
        // Asked again, from what was kept.
        expect(localParts(instant, zone)).toEqual({ year, month, day, hour, minute });
      }),
      { numRuns: 1000 },
    );
  });

  it.each([
    ["Europe/Oslo", "2026-03-29T00:59:59Z", { hour: 1, minute: 59 }],
    ["Europe/Oslo", "2026-03-29T01:00:00Z", { hour: 3, minute: 0 }],
    ["America/St_Johns", "2006-04-02T03:30:59Z", { hour: 0, minute: 0 }],
    ["America/St_Johns", "2006-04-02T03:31:00Z", { hour: 1, minute: 1 }],
    ["Australia/Lord_Howe", "2026-04-04T14:59:59Z", { hour: 1, minute: 59 }],
    ["Australia/Lord_Howe", "2026-04-04T15:00:00Z", { hour: 1, minute: 30 }],
  ])("changes the clock of %s with the minute it is changed: %s", (zone, at, clock) => {
    expect(localParts(Date.parse(at), zone)).toMatchObject(clock);
  });
});
