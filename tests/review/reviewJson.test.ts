import { describe, expect, it } from "vitest";
import { reviewJson } from "../../scripts/review/reviewJson.ts";
import { madeUpReport } from "../support/madeUpReport.ts";
import { madeUpMonth, madeUpPromised, madeUpReader } from "../support/madeUpReview.ts";

interface Written {
  readonly worthAnEye: string;
  readonly measures: readonly {
    readonly name: string;
    readonly month: { readonly mean: number | null; readonly batches: number };
    readonly twelveMonthsBefore: { readonly batches: number };
  }[];
  readonly answers: Readonly<Record<string, string>>;
  readonly pages: Readonly<Record<string, unknown>> & {
    readonly readyReckoner: { readonly rows: readonly { readonly hours: readonly (number | null)[] }[] } | null;
  };
}

const report = madeUpReport(40);
const written = (month = madeUpMonth()): Written => JSON.parse(reviewJson(report, month, madeUpReader)) as Written;

/** What a page's numbers do not come from: the house and its lists stand by themselves, the review is the rest of the JSON. */
const BESIDE: ReadonlySet<string> = new Set(["house", "choices", "lastLoggedAt", "review"]);

describe("reviewJson(report, review, reader)", () => {
  it("holds every part of a report and the rows it stands on, so that no page has a number that it lacks", () => {
    const { pages } = written();
    const parts = Object.keys(report).filter((part) => !BESIDE.has(part));
    expect(parts.length).toBeGreaterThan(BESIDE.size);
    for (const part of parts) expect(pages, part).toHaveProperty(part);
  });

  it("gives what the pages work out on their way: the ready reckoner and the first sentence of each", () => {
    const { pages, answers } = written();
    const hours = pages.readyReckoner?.rows.flatMap((row) => row.hours) ?? [];
    expect(hours.some((value) => value !== null && value > 0)).toBe(true);
    for (const part of [
      "kilnHours",
      "yieldMoisture",
      "thermostat",
      "varieties",
      "steepGermination",
      "changes",
      "logs",
    ]) {
      expect(answers[part], part).toMatch(/^[A-Z0-9].*\.$/s);
    }
  });

  it("gives the month's measures beside the twelve months before it", () => {
    const last = report.runs.find(({ kilnHours }) => kilnHours !== null);
    if (last?.unloadedAt == null) throw new Error("the made-up report has no batch with kiln hours");
    const month = new Date(last.unloadedAt).toISOString().slice(0, 7);
    const { totals } = madeUpMonth();
    const hours = written(madeUpMonth({ totals: { ...totals, month } })).measures.find(
      ({ name }) => name === "kiln hours",
    );
    expect(hours?.month.batches).toBeGreaterThan(0);
    expect(hours?.month.mean).toBeTypeOf("number");
    expect(hours?.twelveMonthsBefore.batches).toBeGreaterThan(hours?.month.batches ?? 0);
  });

  it("says what wants an eye among the orders, and nothing where nothing does", () => {
    expect(written().worthAnEye).toBe("");
    expect(written(madeUpMonth({ promised: { ...madeUpPromised, chanceLate: 0.63 } })).worthAnEye).toContain(
      "63 in 100",
    );
  });
});
