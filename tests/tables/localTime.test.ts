import fc from "fast-check";
import { DateTime } from "luxon";
import { describe, expect, test } from "vitest";
import { isTimeZone, localTimeOf } from "../../src/tables/localTime.ts";

const HOUR = 3_600_000;

/** Every instant at which the zone's clock shows this time, by trying all offsets that luxon knows of nearby. */
function instantsByLuxon(local: number, zone: string): readonly number[] {
  const near = [-48, -24, -1, 0, 1, 24, 48].map((hours) => DateTime.fromMillis(local + hours * HOUR, { zone }).offset);
  return [...new Set(near)]
    .map((offset) => local - offset * 60_000)
    .filter((instant) => instant + DateTime.fromMillis(instant, { zone }).offset * 60_000 === local)
    .sort((a, b) => a - b);
}

/** North and south, half-hour zones, a half-hour change, one without changes. */
const zones = [
  "Europe/Berlin",
  "America/Chicago",
  "Australia/Sydney",
  "Pacific/Auckland",
  "America/Santiago",
  "Australia/Lord_Howe",
  "Asia/Kolkata",
  "UTC",
];

describe("localTimeOf", () => {
  test.each(zones)("agrees with luxon all through the years in %s", (zone) => {
    const { instantsOf, offsetInHour } = localTimeOf(zone);
    const minute = fc.integer({ min: Date.UTC(1995, 0) / 60_000, max: Date.UTC(2035, 0) / 60_000 });
    fc.assert(
      fc.property(minute, (minutes) => {
        const local = minutes * 60_000;
        const expected = instantsByLuxon(local, zone);
        expect(instantsOf(local)).toEqual(expected);
        const offset = offsetInHour(Math.floor(local / HOUR));
        if (!Number.isNaN(offset)) expect([local - offset]).toEqual(expected);
      }),
      { numRuns: 100 },
    );
  });

  test.each(zones)("agrees with luxon in every half hour of the days about a clock change in %s", (zone) => {
    const { instantsOf, offsetInHour } = localTimeOf(zone);
    let changes = 0;
    for (let day = Date.UTC(2026, 0, 1); day < Date.UTC(2027, 0, 1); day += 24 * HOUR) {
      const before = DateTime.fromMillis(day, { zone }).offset;
      if (before === DateTime.fromMillis(day + 24 * HOUR, { zone }).offset) continue;
      changes++;
      for (let local = day - 24 * HOUR; local < day + 48 * HOUR; local += HOUR / 2) {
        const expected = instantsByLuxon(local, zone);
        expect(instantsOf(local)).toEqual(expected);
        const offset = offsetInHour(Math.floor(local / HOUR));
        if (expected.length !== 1) expect(offset).toBeNaN();
        else if (!Number.isNaN(offset)) expect(local - offset).toBe(expected[0]);
      }
    }
    expect(changes).toBe(zone === "UTC" || zone === "Asia/Kolkata" ? 0 : 2);
  });

  test("refuses a zone that is not there", () => {
    expect(() => localTimeOf("Europe/Nowhere")).toThrow(RangeError);
    expect(isTimeZone("+02:00")).toBe(false);
  });
});
