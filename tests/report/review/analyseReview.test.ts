import { describe, expect, it } from "vitest";
import type { LogsResult } from "../../../src/report/logsResult.ts";
import { analyseReview, type ReviewOptions } from "../../../src/report/review/analyseReview.ts";
import type { RunRow } from "../../../src/report/runRow.ts";
import { madeUpReport } from "../../support/madeUpReport.ts";
import { madeUpCosts } from "../../support/madeUpReview.ts";

const report = madeUpReport(60);
const at = (text: string): number => Date.parse(text);

/** Two batches in March, none in April, two in May; a row of one of March’s was set aside, which is something to look at. */
const runs: readonly RunRow[] = report.runs.slice(0, 4).map((run, place) => ({
  ...run,
  unloadedAt: at(["2026-03-05", "2026-03-20", "2026-05-05", "2026-05-20"][place] ?? ""),
}));
const logs: LogsResult = {
  ...report.logs,
  problems: [
    {
      file: "moisture-samples.csv",
      line: 2,
      column: null,
      value: null,
      run: runs[0]?.run ?? "",
      rule: "not-a-number",
      effect: "row-set-aside",
      message: "That is no number.",
      hint: "Look it up.",
    },
  ],
};
const rows = { ...report, runs, logs };
const options = (months: ReviewOptions["months"]): ReviewOptions => ({
  costs: madeUpCosts,
  months,
  reportBefore: async (before) => ({ ...rows, runs: runs.filter(({ unloadedAt }) => (unloadedAt ?? 0) < before) }),
  trade: async () => ({ orders: [], deliveries: [] }),
  targets: [],
  comparing: { samples: new Map(), without: new Set(), targetMoisturePercent: 4.5, pressurePascals: 101_325 },
});

describe("analyseReview(rows, options) of a house that stood still for a month", () => {
  it("finds nothing in the still month, and cannot tell there what became of what was open", async () => {
    const { months } = await analyseReview(rows, options("all"));
    const [may, april, march] = months;
    expect(march?.findings.map(({ cause }) => cause)).toContain("logs");
    expect(april?.totals.batches).toBe(0);
    expect(april?.findings).toEqual([]);
    expect(new Set(april?.open.map(({ now }) => now))).toEqual(new Set(["cannot be told"]));
    // What was open before the house stood still is asked for again once it works.
    expect(may?.open.map(({ id }) => id)).toEqual(april?.open.map(({ id }) => id));
    expect(may?.open.find(({ lastMonth }) => lastMonth.cause === "logs")?.now).toBe("gone");
  });

  it("says the same of a month that is worked out alone", async () => {
    const { months: all } = await analyseReview(rows, options("all"));
    const { months } = await analyseReview(rows, options("2026-05"));
    expect(months).toHaveLength(1);
    expect(months[0]?.open).toEqual(all[0]?.open);
  });
});
