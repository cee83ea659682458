import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CsvTable } from "../../src/tables/csvTable.ts";
import type { TableName } from "../../src/tables/declarations.ts";
import { insideName } from "../../src/tables/insideName.ts";
import type { Logs } from "../../src/tables/readLogs.ts";
import { declarationOf, tableDeclarations } from "../../src/tables/tableDeclarations.ts";
import { tableToCsv } from "../../src/tables/writeCsv.ts";
import { logsOf } from "./logsOf.ts";

const rowsOf = (csv: Uint8Array): Record<string, string>[] => parse(new TextDecoder().decode(csv), { columns: true });

function written(tables: Logs["tables"], name: TableName): CsvTable {
  const table = tables.get(name);
  if (!table) throw new RangeError(`no table ${name}`);
  return tableToCsv(table);
}

describe("tableToCsv", () => {
  test("writes every declared column of every table, in order, if no file had it", async () => {
    const files = Object.fromEntries(
      tableDeclarations.map(({ place, columns }) => [
        place.endsWith("/") ? `${place}a.csv` : place,
        columns
          .flatMap(({ stem, family, needed }) =>
            needed ? [family ? `${stem}_${family.suffixes[0]?.suffix}` : stem] : [],
          )
          .join(","),
      ]),
    );
    const { tables, problems } = await logsOf(files);
    expect(problems).toEqual([]);
    for (const table of tables.values()) {
      const { name, columns, csv } = tableToCsv(table);
      const source = table.name === "readings" || table.name === "weather" ? [] : ["source_file", "source_line"];
      const expected = [...declarationOf(table.name).columns.map(insideName), ...source];
      expect(name).toBe(table.name.replaceAll("-", "_"));
      expect(Object.keys(columns)).toEqual(expected);
      expect(new TextDecoder().decode(csv)).toBe(`${expected.join(",")}\n`);
    }
    expect(tables.size).toBe(tableDeclarations.length);
  });

  test("writes moments in UTC, dates, flags, blanks and where the row came from", async () => {
    const { tables } = await logsOf({
      "house.toml": 'time_zone = "America/Chicago"',
      "lab.csv": "run,tested_on,ph\n007,2026-03-08,5.7\n",
      "readings/a.csv":
        "kiln,at,air_on_f,fan_on\nK1,2026-03-08 06:00:00.25,212,0\nK1,2026-03-08 06:01,,1\nK1,2026-03-08 06:02,32,1\n",
    });
    const [lab, readings] = [written(tables, "lab"), written(tables, "readings")];
    expect(rowsOf(lab.csv)[0]).toMatchObject({
      run: "007",
      tested_on: "2026-03-08",
      ph: "5.7",
      moisture_pct: "",
      source_file: "lab.csv",
      source_line: "2",
    });
    expect(rowsOf(readings.csv)).toMatchObject([
      { at: "2026-03-08 11:00:00.250", fan_on: "false", heater_on: "" },
      { at: "2026-03-08 11:02:00", fan_on: "true" },
    ]);
    expect(readings.columns).toEqual({
      kiln: "VARCHAR",
      at: "TIMESTAMP",
      air_on_c: "DOUBLE",
      air_off_c: "DOUBLE",
      bed_c: "DOUBLE",
      air_off_rh_pct: "DOUBLE",
      heater_on: "BOOLEAN",
      fan_on: "BOOLEAN",
    });
  });

  test("loses nothing of a number or a text on the way out", async () => {
    const text = fc
      .string({ minLength: 1, maxLength: 12, unit: "grapheme" })
      .filter((note) => note.trim() === note && !/[\u00a0\u202f\u2007]/.test(note));
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(fc.double({ min: 0, max: 40, noNaN: true }), text), { minLength: 1, maxLength: 5 }),
        async (pairs) => {
          const file = pairs.map(([number, place]) => `R,"${place.replaceAll('"', '""')}",${number}\n`).join("");
          const { tables } = await logsOf({ "moisture-samples.csv": `run,place,moisture_pct\n${file}` });
          const rows = rowsOf(written(tables, "moisture-samples").csv);
          expect(rows.map((row) => row.place)).toEqual(pairs.map(([, place]) => place));
          expect(rows.map((row) => Number(row.moisture_pct))).toEqual(pairs.map(([number]) => number));
        },
      ),
      { numRuns: 60 },
    );
  });

  test("writes every moment as the language's own calendar does", async () => {
    const moment = fc.integer({ min: Date.UTC(1990, 0, 1), max: Date.UTC(2099, 11, 31) });
    await fc.assert(
      fc.asyncProperty(fc.array(moment, { minLength: 1, maxLength: 20 }), async (moments) => {
        const rows = [...moments.entries()].map(([i, ms]) => `R${i},K1,${new Date(ms).toISOString()}\n`);
        const { tables } = await logsOf({ "kilning.csv": `run,kiln,loaded_at\n${rows.join("")}` });
        const expected = moments.map((ms) =>
          new Date(ms).toISOString().slice(0, -1).replace("T", " ").replace(".000", ""),
        );
        expect(rowsOf(written(tables, "kilning").csv).map((row) => row.loaded_at)).toEqual(expected);
      }),
      { numRuns: 50 },
    );
  });
});
