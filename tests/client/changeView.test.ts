import { describe, expect, it } from "vitest";
import { changeView } from "../../src/client/changeView.ts";
import { formatView, wholeView } from "../../src/report/view.ts";

const use = (view: typeof wholeView, name: string, value: string, checked = true) =>
  changeView(view, { name, value, checked });

describe("changeView(view, control)", () => {
  it("keeps a typed what-if field as it is typed, blanks and emptiness too, and the address without them", () => {
    const typed = use(wholeView, "humidity", "82 ");
    expect(typed.whatIf).toEqual({ humidity: "82 " });
    expect(formatView(typed)).toBe("?humidity=82");
    expect(formatView(use(typed, "humidity", ""))).toBe("");
  });

  it("keeps a space at the end of a search, so that a second word can follow", () => {
    expect(use(wholeView, "search", "26 ").search).toBe("26 ");
  });

  it("leaves runs out and puts them back one by one", () => {
    const two = use(use(wholeView, "without", "b"), "without", "a");
    expect(two.without).toEqual(["a", "b"]);
    expect(use(two, "without", "b", false).without).toEqual(["a"]);
  });

  it("goes back to the default when a control is emptied", () => {
    expect(use(use(wholeView, "variety", "Two-row"), "variety", "")).toEqual(wholeView);
  });

  it("does not change the view it was given", () => {
    use(wholeView, "units", "us");
    expect(wholeView.units).toBeNull();
  });

  it("switches rules on and off, and takes the usual pair for the default", () => {
    const three = use(wholeView, "rules", "sixRisingOrFalling");
    expect(three.rules).toEqual(["beyondLimits", "weightedMean", "sixRisingOrFalling"]);
    expect(use(three, "rules", "sixRisingOrFalling", false).rules).toBeNull();
    expect(use(use(wholeView, "rules", "beyondLimits", false), "rules", "weightedMean", false).rules).toBeNull();
  });

  it("keeps the difference of a trial as it is typed, and drops it with its measure", () => {
    const typed = use(use(wholeView, "measure", "dry_yield_pct"), "difference", "0.5 ");
    expect(typed.trial).toEqual({ measure: "dry_yield_pct", difference: "0.5 " });
    expect(formatView(typed)).toBe("?measure=dry_yield_pct&difference=0.5");
    expect(use(typed, "measure", "kiln_hours").trial).toEqual({ measure: "kiln_hours", difference: null });
  });

  it("throws a RangeError for a control it does not know", () => {
    expect(() => use(wholeView, "colour", "red")).toThrow(new RangeError("no control is named colour"));
  });
});
