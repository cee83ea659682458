import { describe, expect, it } from "vitest";
import type { EventRow } from "../../../src/report/eventRow.ts";
import { stretchAt, stretchStarts } from "../../../src/report/thermostat/stretches.ts";

const event = (day: string, kind: string, scope: string): EventRow => ({
  on: Date.parse(`${day}T00:00Z`),
  kind,
  scope,
  what: "",
  alters: null,
});
const events = [
  event("2025-03-01", "repair", "kiln"),
  event("2025-06-24", "calibration", "thermostat"),
  event("2025-07-01", "change", "kiln"),
  event("2025-09-01", "repair", "kiln"),
];

describe("stretchStarts(events, timeZone)", () => {
  it("begins a stretch at noon of each day of work on the thermostat, by the house's clock", () => {
    const starts = stretchStarts(events, "Europe/London");
    expect(starts.map(({ from }) => from)).toEqual([Number.NEGATIVE_INFINITY, Date.parse("2025-06-24T11:00Z")]);
    expect(stretchAt(starts, Date.parse("2025-06-24T10:59Z"))).toBe(0);
    expect(stretchAt(starts, Date.parse("2025-06-24T11:00Z"))).toBe(1);
  });

  it("tells each stretch the kiln's last repair before its end; a change is none", () => {
    const [first, second] = stretchStarts(events, "UTC");
    expect(first?.kilnRepairedAt).toBe(Date.parse("2025-03-01T12:00Z"));
    expect(second?.kilnRepairedAt).toBe(Date.parse("2025-09-01T12:00Z"));
    expect(stretchStarts([], "UTC")[0]?.kilnRepairedAt).toBe(Number.NEGATIVE_INFINITY);
  });
});
