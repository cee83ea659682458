import { describe, expect, test } from "vitest";
import { tableLines } from "../../scripts/bench/printTable.ts";
import { spreadCells, spreadOf } from "../../scripts/bench/spread.ts";

describe("tableLines", () => {
  test("sets names and units to the left, numbers to the right, every column one below the other", () => {
    expect(
      tableLines(
        ["", "unit", "median"],
        [
          ["wall time", "s", "7.1"],
          ["peak", "MB", "1791.0"],
        ],
      ),
    ).toEqual(["             unit  median", "  wall time  s        7.1", "  peak       MB    1791.0"]);
  });

  test("refuses a row that does not fit its headings", () => {
    expect(() => tableLines(["", "unit"], [["one", "s", "2"]])).toThrow(RangeError);
  });
});

describe("spreadOf", () => {
  test("gives the middle, the least and the most, however the values come", () => {
    expect(spreadOf([5, 1, 4, 2])).toEqual({ median: 3, min: 1, max: 5, times: 4 });
    expect(spreadCells("x", "ms", [5, 1, 4], 0)).toEqual(["x", "ms", "4", "1", "5", "3"]);
  });

  test("refuses what was not measured", () => {
    expect(() => spreadOf([1, Number.NaN])).toThrow(RangeError);
    expect(() => spreadOf([])).toThrow(RangeError);
  });
});
