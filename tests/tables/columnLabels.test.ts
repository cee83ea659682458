import { describe, expect, test } from "vitest";
import { columnLabel, tableLabel } from "../../src/tables/columnLabels.ts";
import { tableDeclarations } from "../../src/tables/tableDeclarations.ts";

describe("columnLabel", () => {
  test.each(tableDeclarations.map((declaration) => [declaration.name, declaration] as const))(
    "names every column of %s in words of its own",
    (name, { columns }) => {
      const labels = columns.map((column) => columnLabel(name, column));
      expect(new Set(labels).size).toBe(labels.length);
      for (const label of labels) expect(label).not.toContain("_");
      expect(tableLabel(name)).toMatch(/^[A-Z]/);
    },
  );
});
