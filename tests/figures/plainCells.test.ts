import { describe, expect, test } from "vitest";
import { latestFirst } from "../../src/figures/listedRows.ts";
import { plainCells } from "../../src/figures/plainCells.ts";
import { printNumber, printSigned } from "../../src/units/print.ts";

describe("plainCells(table)", () => {
  test("writes printed numbers as a program does, and leaves words as they are", () => {
    const rows = [
      [{ text: "24-117", href: "/runs/24-117/" }, printNumber(-12_345.6, 1), printSigned(0.5, 1), "12\u00a0kg"],
      ["−x", "", "not logged", "+1"],
    ];
    expect(
      plainCells({
        columns: [
          { label: "run", numeric: false },
          { label: "mass", unit: "kg", numeric: true },
          { label: "change", numeric: true },
          { label: "said", numeric: false },
        ],
        rows,
      }),
    ).toEqual([
      ["run", "mass, kg", "change", "said"],
      ["24-117", "-12345.6", "0.5", "12 kg"],
      ["−x", "", "not logged", "+1"],
    ]);
  });

  test("holds every row where the page lists only the latest 200", () => {
    const table = latestFirst(
      Array.from({ length: 450 }, (_, row) => row),
      "load",
      [{ label: "n", numeric: true }],
      (row) => [String(row)],
    );
    expect(table.rows).toHaveLength(200);
    const cells = plainCells(table);
    expect(cells).toHaveLength(451);
    expect(cells.slice(1).map(([n]) => Number(n))).toEqual(Array.from({ length: 450 }, (_, row) => 449 - row));
  });
});
