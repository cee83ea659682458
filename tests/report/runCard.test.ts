import { describe, expect, test } from "vitest";
import { runCard } from "../../src/report/runCard.ts";
import { fileNames } from "../../src/tables/insideName.ts";
import { declarationOf } from "../../src/tables/tableDeclarations.ts";

describe("runCard", () => {
  test.each(["metric", "us"] as const)(
    "has a box for every column of the run logs, named as the reader reads it, in %s units",
    (units) => {
      const { stages } = runCard(units);
      expect(stages.map(({ file }) => file)).toEqual(["steeping.csv", "germination.csv", "kilning.csv"]);
      for (const [i, table] of (["steeping", "germination", "kilning"] as const).entries()) {
        const columns = declarationOf(table).columns.filter(({ stem }) => !["run", "lot", "note"].includes(stem));
        const boxes = stages[i]?.boxes ?? [];
        expect(boxes).toHaveLength(columns.length);
        columns.forEach((column, at) => {
          expect(fileNames(column).map(({ name }) => name)).toContain(boxes[at]?.column);
          expect(boxes[at]?.unit ?? "").not.toContain("undefined");
        });
      }
    },
  );

  test("says the unit that the heading says", () => {
    const unitsOf = (units: "metric" | "us") =>
      runCard(units).stages.flatMap(({ boxes }) =>
        boxes.filter(({ column }) => /^(bed_depth|malt_out|cure_set)_/.test(column)),
      );
    expect(unitsOf("us").map(({ column, unit }) => [column, unit])).toEqual([
      ["bed_depth_in", "in"],
      ["cure_set_f", "°F"],
      ["malt_out_lb", "lb"],
    ]);
    expect(unitsOf("metric").map(({ unit }) => unit)).toEqual(["cm", "°C", "kg"]);
  });
});
