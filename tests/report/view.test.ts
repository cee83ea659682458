import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { allRules } from "../../src/analysis/controlCharts/ruleChoice.ts";
import {
  choosesRows,
  formatView,
  parseView,
  usualRules,
  type View,
  whatIfFields,
  wholeView,
} from "../../src/report/view.ts";

const read = (query: string): View => parseView(new URLSearchParams(query));

const text = fc
  .string({ minLength: 1, maxLength: 12, unit: "grapheme" })
  .map((s) => s.trim())
  .filter((s) => s !== "");
const optional = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(value, { nil: null });
const date = fc
  .date({ min: new Date("2000-01-01"), max: new Date("2099-12-31"), noInvalidDate: true })
  .map((d) => d.toISOString().slice(0, 10));
const views: fc.Arbitrary<View> = fc.record({
  from: optional(date),
  to: optional(date),
  variety: optional(text),
  kiln: optional(text),
  without: fc.uniqueArray(text, { maxLength: 4 }).map((runs) => [...runs].sort()),
  units: optional(fc.constantFrom("metric" as const, "us" as const)),
  air: optional(fc.constantFrom("at_loading" as const, "mean" as const)),
  rules: optional(fc.subarray([...allRules], { minLength: 1 }).filter((rules) => String(rules) !== String(usualRules))),
  apart: fc.boolean(),
  whatIf: fc.dictionary(fc.constantFrom(...whatIfFields), text, { noNullPrototype: true }),
  trial: fc.record({ measure: optional(text), difference: optional(text) }),
  sort: optional(text),
  search: optional(text),
  firing: optional(text),
  run: optional(text),
  of: optional(text),
  month: optional(date.map((day) => day.slice(0, 7))),
});

describe("the view in the address", () => {
  it("parseView(formatView(view)) gives the view back, whatever the ids hold", () => {
    fc.assert(
      fc.property(views, (view) => {
        expect(read(formatView(view))).toEqual(view);
      }),
    );
  });

  it("formatView(wholeView) is empty, so that built pages keep plain addresses", () => {
    expect(formatView(wholeView)).toBe("");
  });

  it("parseView leaves at its default what it does not understand", () => {
    expect(read("from=2026-13-01&to=yesterday&units=stone&air=later&nonsense=1")).toEqual(wholeView);
  });

  it("parseView takes each left-out run once and in order, so that one view has one address", () => {
    expect(read("without=b&without=a&without=b").without).toEqual(["a", "b"]);
  });
});

describe("choosesRows(view)", () => {
  it("is false for units, sorting, search and what-if, which the built report already answers", () => {
    expect(choosesRows(read("units=us&sort=hours&search=x&humidity=80"))).toBe(false);
  });

  it.each([
    "from=2026-01-01",
    "to=2026-01-01",
    "variety=x",
    "kiln=k",
    "without=r",
    "air=mean",
    "rules=sixRisingOrFalling",
  ])("is true for %s", (query) => {
    expect(choosesRows(read(query))).toBe(true);
  });
});
