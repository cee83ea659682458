import { describe, expect, it } from "vitest";
import { monthBefore, monthOf, monthsOf, sameMonthYearBefore } from "../../../src/report/review/months.ts";
import { monthTotals } from "../../../src/report/review/monthTotals.ts";
import { madeUpReport } from "../../support/madeUpReport.ts";

const HOUR = 3_600_000;
const {
  runs: [row],
  loads: [someLoad],
} = madeUpReport(1);
if (row === undefined || someLoad === undefined) throw new Error("the made-up report has no run");
const at = (text: string): number => Date.parse(text);

describe("months of a house's calendar", () => {
  it("step back over the turn of the year", () => {
    expect(monthBefore("2026-01")).toBe("2025-12");
    expect(sameMonthYearBefore("2026-01")).toBe("2025-01");
  });

  it("begin and end with the house's own midnight, clock change and all", () => {
    const { from, before } = monthOf("2026-03", "Europe/Tallinn");
    expect(new Date(from).toISOString()).toBe("2026-02-28T22:00:00.000Z");
    expect(new Date(before).toISOString()).toBe("2026-03-31T21:00:00.000Z");
    expect((before - from) / HOUR).toBe(31 * 24 - 1);
  });

  it("run from the first batch unloaded to the last, empty ones too, latest first", () => {
    const runs = ["2025-11-30T23:30:00Z", "2026-02-01T00:00:00Z"].map((text) => ({ ...row, unloadedAt: at(text) }));
    expect(monthsOf(runs, "UTC").map(({ name }) => name)).toEqual(["2026-02", "2026-01", "2025-12", "2025-11"]);
    expect(monthsOf([{ ...row, unloadedAt: null }], "UTC")).toEqual([]);
  });

  it("go on to a month of which no kiln row could be read", () => {
    const lost = [{ ...row, unloadedAt: null, germinationEndedAt: at("2026-02-20T00:00:00Z") }];
    const runs = [{ ...row, unloadedAt: at("2026-01-10T00:00:00Z") }];
    expect(monthsOf(runs, "UTC", lost).map(({ name }) => name)).toEqual(["2026-02", "2026-01"]);
  });
});

describe("monthTotals(runs, loads, month)", () => {
  const unloadedAt = at("2026-05-10T06:00:00Z");
  const run = { ...row, unloadedAt, grainInKilograms: 300, maltKilograms: 250 };
  const fired = { ...someLoad, load: "L1", unloadedAt, kilnHours: 14, energyKilowattHours: 300 };
  const month = monthOf("2026-05", "UTC");

  it("counts hours and energy of a load once, however many batches shared it", () => {
    const shared = { ...run, load: "L1", kilnHours: 14, energyKilowattHours: null };
    const totals = monthTotals([shared, { ...shared, run: "b" }], [fired], month);
    expect(totals.batches).toBe(2);
    expect(totals.loads).toBe(1);
    expect(totals.kilnHours).toBe(14);
    expect(totals.energyKilowattHours).toBe(300);
    expect(totals.grainInKilograms).toBe(600);
  });

  it("counts every load that a batch was split over", () => {
    const split = { ...run, load: "L1", loads: 2, kilnHours: 14 };
    const totals = monthTotals([split], [fired, { ...fired, load: "L2", kilnHours: 15 }], month);
    expect(totals.batches).toBe(1);
    expect(totals.kilnHours).toBe(29);
    expect(totals.energyKilowattHours).toBe(600);
  });

  it("says of how many batches or loads a sum is, and nothing where nothing was logged", () => {
    const loads = [
      { ...fired, energyKilowattHours: null },
      { ...fired, load: "L2", kilnHours: null, energyKilowattHours: null },
    ];
    const totals = monthTotals([run, { ...run, run: "b", maltKilograms: null }], loads, month);
    expect(totals.logged).toEqual({ grainIn: 2, maltOut: 1, kilnHours: 1, energy: 0 });
    expect(totals.maltOutKilograms).toBe(250);
    expect(totals.energyKilowattHours).toBeNull();
  });
});
