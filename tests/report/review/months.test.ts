import { describe, expect, it } from "vitest";
import { monthBefore, monthOf, monthsOf, sameMonthYearBefore } from "../../../src/report/review/months.ts";
import { monthTotals } from "../../../src/report/review/monthTotals.ts";
import { madeUpReport } from "../../support/madeUpReport.ts";

const HOUR = 3_600_000;
const [row] = madeUpReport(1).runs;
if (row === undefined) throw new Error("the made-up report has no run");
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
});

describe("monthTotals(runs, month)", () => {
  const in2026 = { unloadedAt: at("2026-05-10T06:00:00Z"), grainInKilograms: 300, maltKilograms: 250 };
  const month = monthOf("2026-05", "UTC");

  it("counts the hours of a load once, however many batches shared it", () => {
    const shared = { ...row, ...in2026, load: "L1", kilnHours: 14 };
    const totals = monthTotals([shared, { ...shared, run: "b" }], month);
    expect(totals.batches).toBe(2);
    expect(totals.kilnHours).toBe(14);
    expect(totals.grainInKilograms).toBe(600);
  });

  it("says of how many batches a sum is, and nothing where nothing was logged", () => {
    const runs = [
      { ...row, ...in2026, energyKilowattHours: null },
      { ...row, ...in2026, run: "b", maltKilograms: null, energyKilowattHours: null },
    ];
    const totals = monthTotals(runs, month);
    expect(totals.logged.maltOut).toBe(1);
    expect(totals.maltOutKilograms).toBe(250);
    expect(totals.energyKilowattHours).toBeNull();
  });
});
