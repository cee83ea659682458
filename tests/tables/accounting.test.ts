import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { TableName } from "../../src/tables/declarations.ts";
import { type Logs, readLogs } from "../../src/tables/readLogs.ts";
import { tableDeclarations } from "../../src/tables/tableDeclarations.ts";
import { goodHouse } from "./goodHouse.ts";
import { folderOf, logsOf } from "./logsOf.ts";

/** Lines of `path` that stand behind a row of the table or in a problem that sets a row or the file aside. */
function linesAccountedFor(logs: Logs, path: string, table: TableName): ReadonlySet<number> {
  const lines = new Set<number>();
  const read = logs.tables.get(table);
  read?.lineOfRow.forEach((line, row) => {
    if (read.files[read.fileOfRow[row] as number] === path) lines.add(line);
  });
  for (const { file, line, effect } of logs.problems) {
    if (file === path && line !== null && effect === "row-set-aside") lines.add(line);
  }
  return lines;
}

/** Cells as they come out of bad logs; no quotation marks and no delimiters, so that rows can be counted from outside. */
const cell = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.constantFrom("R1", "K1", "K2", "2026-03-08 06:00", "2026-03-09T06:00Z", "15", "4.4", "1", "0"),
  },
  {
    weight: 2,
    arbitrary: fc.constantFrom("", " ", "x", "1e999", "-", "08/03/2026", "2026-02-30 01:00", "\u00a0", "#REF!", "yes"),
  },
  { weight: 1, arbitrary: fc.string({ maxLength: 6 }).map((text) => text.replaceAll(/["\r\n,;\t]/g, "_")) },
);

describe("readLogs", () => {
  test("has nothing to say of a house in which nothing is wrong", async () => {
    const logs = await readLogs(folderOf(goodHouse), { now: Date.UTC(2026, 3, 1) });
    expect(logs.problems).toEqual([]);
    for (const { path, rows, rowsSetAside } of logs.files) {
      if (path === "house.toml") continue;
      const lines = String(goodHouse[path]).trim().split("\n").length - 1;
      expect([path, rows, rowsSetAside]).toEqual([path, lines, 0]);
    }
  });

  test("reads the same whatever the size of the pieces a file comes in", async () => {
    const whole = await readLogs(folderOf(goodHouse));
    for (const bytes of [1, 3, 17]) {
      const pieces = await readLogs(folderOf(goodHouse, bytes));
      expect(pieces).toEqual(whole);
    }
  });

  const mangled = fc.constantFrom(...tableDeclarations).chain((declaration) =>
    fc
      .record({
        headings: fc.shuffledSubarray(
          declaration.columns.map(({ stem, family, needed }) => ({
            name: family ? `${stem}_${family.suffixes[0]?.suffix}` : stem,
            needed,
          })),
        ),
        extra: fc.boolean(),
      })
      .chain(({ headings, extra }) => {
        const missing = declaration.columns
          .filter(({ stem, needed }) => needed && !headings.some(({ name }) => name.startsWith(stem)))
          .map(({ stem, family }) => (family ? `${stem}_${family.suffixes[0]?.suffix}` : stem));
        const names = [...headings.map(({ name }) => name), ...missing, ...(extra ? ["mystery"] : [])];
        const row = fc.array(cell, { minLength: Math.max(1, names.length - 1), maxLength: names.length + 1 });
        return fc.record({
          declaration: fc.constant(declaration),
          names: fc.constant(names),
          rows: fc.array(row, { maxLength: 8 }),
        });
      }),
  );

  test("loses no row without a problem that names its line", async () => {
    await fc.assert(
      fc.asyncProperty(mangled, async ({ declaration, names, rows }) => {
        const path = declaration.place.endsWith("/") ? `${declaration.place}a.csv` : declaration.place;
        const logs = await logsOf({ [path]: `${[names, ...rows].map((row) => row.join(",")).join("\n")}\n` });
        const isBlank = (row: readonly string[]) => row.every((text) => text.trim() === "");
        const dataLines = rows.flatMap((row, i) => (isBlank(row) ? [] : [i + 2]));
        const file = logs.files.find((read) => read.path === path);
        expect((file?.rows ?? 0) + (file?.rowsSetAside ?? 0)).toBe(dataLines.length);
        const accounted = linesAccountedFor(logs, path, declaration.name);
        const repeated = logs.problems.find(({ rule }) => rule === "readings-repeated");
        const lost = dataLines.filter((line) => !accounted.has(line));
        const allowed = repeated ? Number(/^\d+/.exec(repeated.message)?.[0]) : 0;
        expect(lost).toHaveLength(allowed);
        expect(logs.tables.get(declaration.name)?.rowCount).toBe((file?.rows ?? 0) - allowed);
      }),
      { numRuns: 400 },
    );
  });

  test("never throws, whatever bytes a file holds", async () => {
    const paths = [...Object.keys(goodHouse), "weather/a.csv", "notes.txt"];
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...paths), fc.uint8Array({ maxLength: 200 }), async (path, bytes) => {
        const logs = await logsOf({ ...goodHouse, [path]: bytes });
        expect(logs.files.map((file) => file.path)).toContain(path);
      }),
      { numRuns: 100 },
    );
  });

  test("never throws on good logs with pieces cut out and rubbish put in, and stays deterministic", async () => {
    const rubbish = fc.constantFrom(
      '"',
      '""',
      ",",
      ";",
      "\n",
      "\r",
      "\t",
      "\u0000",
      "\ufeff",
      "1,5",
      "sep=;",
      "=1+1",
      "9".repeat(400),
    );
    const paths = Object.keys(goodHouse).filter((path) => !path.startsWith("readings"));
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...paths),
        fc.array(fc.record({ at: fc.nat(2000), cut: fc.nat(20), put: rubbish }), { minLength: 1, maxLength: 5 }),
        async (path, slips) => {
          let text = String(goodHouse[path]);
          for (const { at, cut, put } of slips) {
            const from = at % (text.length + 1);
            text = text.slice(0, from) + put + text.slice(from + cut);
          }
          const files = { ...goodHouse, [path]: text };
          const logs = await readLogs(folderOf(files));
          for (const { rows, rowsSetAside, valuesBlanked, notes } of logs.files) {
            expect(Math.min(rows, rowsSetAside, valuesBlanked, notes)).toBeGreaterThanOrEqual(0);
          }
          expect(await readLogs(folderOf(files, 13))).toEqual(logs);
        },
      ),
      { numRuns: 60 },
    );
  });
});
