import { describe, expect, test } from "vitest";
import { publishedColumns, publishedTables } from "../../src/report/publishTables.ts";
import type { TableName } from "../../src/tables/declarations.ts";
import { insideName } from "../../src/tables/insideName.ts";
import { readLogs } from "../../src/tables/readLogs.ts";
import { tableDeclarations } from "../../src/tables/tableDeclarations.ts";
import { tenRuns } from "../support/tenRuns.ts";
import { textFiles } from "../support/textFiles.ts";

/**
 * What stays in the house. Named apart from the list of what is published, so that a column that is new to the format is in
 * neither, and this test asks which it is to be.
 */
const keptColumns: Readonly<Partial<Record<TableName, readonly string[]>>> = {
  "grain-lots": ["note"],
  orders: ["note"],
  deliveries: ["note"],
  customers: ["name", "link_key", "note"],
  readings: ["kiln", "at", "air_on_c", "air_off_c", "bed_c", "air_off_rh_pct", "heater_on", "fan_on"],
};

describe("publishedColumns", () => {
  test.for(tableDeclarations.map((declaration) => [declaration.name, declaration] as const))(
    "with what is kept in the house makes up all of %s",
    ([name, { columns }]) => {
      const decided = [...(publishedColumns[name] ?? []), ...(keptColumns[name] ?? [])];
      expect(decided.toSorted()).toEqual(columns.map(insideName).toSorted());
    },
  );
});

describe("publishedTables", () => {
  test("lets no byte out of any column that is kept", async () => {
    const marked = Object.fromEntries(
      tableDeclarations
        .filter(({ name }) => name !== "readings")
        .map(({ name, place, columns }) => {
          const kept = keptColumns[name] ?? [];
          const cells = columns.map((column) => {
            if (kept.includes(insideName(column))) return `marker-${name}-${column.stem}`;
            if (column.kind === "instant") return "2026-01-01 10:00";
            if (column.kind === "date") return "2026-01-01";
            if (column.kind === "choice") return column.choices?.[0] ?? "";
            return column.kind === "number" || column.kind === "count" ? String(column.range?.[1] ?? 1) : "x";
          });
          const header = columns.map(({ stem, family }) => (family ? `${stem}_${family.suffixes[0]?.suffix}` : stem));
          const path = place.endsWith("/") ? `${place}all.csv` : place;
          return [path, `${header.join(",")}\n${cells.join(",")}\n`];
        }),
    );
    const logs = await readLogs(textFiles(marked));
    // The markers were read; else their absence below would say nothing.
    for (const [name, kept] of Object.entries(keptColumns) as [TableName, readonly string[]][]) {
      if (name === "readings") continue;
      for (const column of kept)
        expect(logs.tables.get(name)?.columns.get(column)).toEqual([`marker-${name}-${column}`]);
    }
    const text = publishedTables(logs.tables).map(({ csv }) => new TextDecoder().decode(csv));
    expect(text.join("\n")).not.toContain("marker");
  });

  test("gives every table with all its columns where the logs hold nothing at all", () => {
    const tables = publishedTables(new Map());
    expect(tables.map(({ name }) => name)).toContain("moisture_samples");
    for (const { name, columns, csv } of tables) {
      expect(new TextDecoder().decode(csv), name).toBe(`${Object.keys(columns).join(",")}\n`);
    }
  });

  test("gives the same bytes for the same logs, whatever order the files came in", async () => {
    const files = textFiles(tenRuns);
    const there = publishedTables((await readLogs(files)).tables);
    const back = publishedTables((await readLogs(files.toReversed())).tables);
    expect(back).toEqual(there);
  });
});
