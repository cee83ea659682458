import { describe, expect, test } from "vitest";
import { valueTicks } from "../../src/figures/ticks.ts";
import { dayTicks, localMidnight, monthTicks } from "../../src/figures/timeTicks.ts";

describe("localMidnight(year, month, day, timeZone)", () => {
  test("follows the zone's offset, before and after a clock change, either side of UTC", () => {
    expect(localMidnight(2026, 10, 25, "Europe/Oslo")).toBe(Date.UTC(2026, 9, 24, 22));
    expect(localMidnight(2026, 10, 26, "Europe/Oslo")).toBe(Date.UTC(2026, 9, 25, 23));
    expect(localMidnight(2026, 3, 8, "America/Chicago")).toBe(Date.UTC(2026, 2, 8, 6));
    expect(localMidnight(2026, 3, 9, "America/Chicago")).toBe(Date.UTC(2026, 2, 9, 5));
    expect(localMidnight(2026, 1, 1, "Pacific/Auckland")).toBe(Date.UTC(2025, 11, 31, 11));
  });
});

describe("monthTicks(from, to, count, timeZone)", () => {
  test("thins months to the count and says each year once", () => {
    const ticks = monthTicks(Date.UTC(2024, 4, 3), Date.UTC(2026, 9, 30), 11, "Europe/Oslo");
    expect(ticks.map((t) => t.label).slice(0, 4)).toEqual(["Jul", "Oct", "Jan", "Apr"]);
    expect(ticks.flatMap((t) => t.under ?? [])).toEqual(["2024", "2025", "2026"]);
    expect(ticks.length).toBeLessThanOrEqual(11);
  });

  test("names years alone over decades", () => {
    const ticks = monthTicks(Date.UTC(2010, 0, 3), Date.UTC(2026, 9, 30), 5, "UTC");
    expect(ticks.map((t) => t.label)).toEqual(["2015", "2020", "2025"]);
  });
});

describe("dayTicks(from, to, count, timeZone)", () => {
  test("stands on local midnights though a day of 25 hours lies between", () => {
    const ticks = dayTicks(Date.UTC(2026, 9, 24, 8), Date.UTC(2026, 9, 27, 8), 8, "Europe/Oslo");
    expect(ticks.map((t) => t.label)).toEqual(["Sun 25 Oct", "Mon 26 Oct", "Tue 27 Oct"]);
    expect((ticks[1]?.at ?? 0) - (ticks[0]?.at ?? 0)).toBe(25 * 3_600_000);
  });
});

describe("valueTicks(low, high, count)", () => {
  test("stands on round values inside the span, with the decimals their step needs", () => {
    expect(valueTicks(10.3, 16.8, 6).map((t) => t.label)).toEqual(["11", "12", "13", "14", "15", "16"]);
    expect(valueTicks(0, 1.5, 4).map((t) => t.label)).toEqual(["0.0", "0.5", "1.0", "1.5"]);
    expect(valueTicks(-0.1, 0.1, 4).map((t) => t.label)).toEqual(["−0.10", "−0.05", "0.00", "0.05", "0.10"]);
  });

  test("refuses an empty span", () => {
    expect(() => valueTicks(3, 3, 4)).toThrow(RangeError);
  });
});
