import { describe, expect, it } from "vitest";
import { partsAt, viewAsked } from "../../src/client/pageBody.tsx";
import { choosesRows, wholeView } from "../../src/report/view.ts";

const chosen = { ...wholeView, variety: "Amber", from: "2026-01-01", units: "us" } as const;

describe("viewAsked(path, view)", () => {
  it.each(["", "review/2026-09/"])("leaves a choice of rows to the other pages at /%s, and keeps the units", (path) => {
    const asked = viewAsked(path, chosen);
    expect(choosesRows(asked)).toBe(false);
    expect(asked.units).toBe("us");
  });

  it("asks for the month that a path names", () => {
    expect(viewAsked("review/2026-09/", wholeView).month).toBe("2026-09");
    expect(viewAsked("", wholeView).month).toBeNull();
  });

  it("changes nothing for a page of the rows shown", () => {
    expect(viewAsked("kiln-hours/", chosen)).toBe(chosen);
  });
});

describe("partsAt(path)", () => {
  it("asks for the review alone where one month is shown", () => {
    expect(partsAt("review/2026-09/")).toEqual(["review"]);
  });
});
