import { describe, expect, it } from "vitest";
import { ownPath, queryPath } from "../../src/client/queryPages.ts";
import { parseView } from "../../src/report/view.ts";
import { monthPath } from "../../src/units/calendarMonth.ts";
import { runPath } from "../../src/units/runPath.ts";
import { varietyPath } from "../../src/units/varietyPath.ts";

describe("queryPath(path) and ownPath(path, view)", () => {
  it.each([runPath("24-117"), runPath("24/117 é"), varietyPath("Amber & Co"), monthPath("2026-10")])(
    "name %s by a page that always stands, and find it again",
    (path) => {
      const [page = "", query = ""] = queryPath(path).split("?");
      expect(["runs/", "varieties/", ""]).toContain(page);
      expect(ownPath(page, parseView(new URLSearchParams(query)))).toBe(path);
    },
  );

  it.each(["", "runs/", "varieties/", "kiln-hours/"])("leave /%s as it is", (path) => {
    expect(queryPath(path)).toBe(path);
    expect(ownPath(path, parseView(new URLSearchParams("units=us")))).toBe(path);
  });
});
