import { describe, expect, test } from "vitest";
import { fileNames, insideName } from "../../src/tables/insideName.ts";
import { declarationOf, tableDeclarations } from "../../src/tables/tableDeclarations.ts";

/** Needed columns of the log format, from its text. */
const needed: Readonly<Record<string, string>> = {
  "grain-lots": "lot grain variety",
  steeping: "run lot started_at",
  germination: "run started_at",
  "acrospire-counts": "run counted_at",
  kilning: "run kiln loaded_at",
  "moisture-samples": "run moisture_pct",
  readings: "kiln at air_on_c",
  weather: "at ambient_rh_pct",
  "logger-checks": "kiln at probe reference_c reading_c",
  lab: "run tested_on",
  orders: "order customer variety mass_kg due_on",
  deliveries: "delivery customer run shipped_on mass_kg",
  customers: "customer share",
  events: "on kind scope what",
  targets: "variety measure",
};

describe("tableDeclarations", () => {
  test("marks as needed what the format marks", () => {
    const marked = tableDeclarations.map(({ name, columns }) => [
      name,
      columns.flatMap((column) => (column.needed ? insideName(column) : [])).join(" "),
    ]);
    expect(Object.fromEntries(marked)).toEqual(needed);
  });

  test("gives no name to two columns of one table", () => {
    for (const { columns } of tableDeclarations) {
      const names = columns.flatMap((column) => fileNames(column).map(({ name }) => name));
      expect(new Set(names).size).toBe(names.length);
      const inside = columns.map(insideName);
      expect(new Set(inside).size).toBe(inside.length);
    }
  });

  test("says of each column what it means, and of each choice what may be chosen", () => {
    for (const column of tableDeclarations.flatMap(({ columns }) => columns)) {
      expect(column.meaning.length).toBeGreaterThan(2);
      expect(column.kind === "choice").toBe((column.choices?.length ?? 0) > 1);
      if (column.range) expect(column.range[0]).toBeLessThan(column.range[1]);
    }
  });

  test("is found by name, and refuses a name that it does not have", () => {
    expect(declarationOf("kilning").place).toBe("kilning.csv");
    expect(() => declarationOf("brewing" as "kilning")).toThrow(RangeError);
  });
});
