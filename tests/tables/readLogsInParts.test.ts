import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readLogs } from "../../src/tables/readLogs.ts";
import { type PartsOptions, readLogsInParts } from "../../src/tables/readLogsInParts.ts";
import type { Table } from "../../src/tables/table.ts";
import { goodHouse } from "./goodHouse.ts";
import { type FileTexts, folderOf } from "./logsOf.ts";

const HOUSE = 'name = "Parts"\ntime_zone = "Etc/GMT"\nkilns = [{ id = "K1" }, { id = "K2" }]\n';
const clock = (hour: number): string =>
  new Date(Date.UTC(2026, 0, 1) + hour * 3_600_000).toISOString().slice(0, 16).replace("T", " ");

interface Row {
  readonly kiln: string;
  readonly at: number;
  readonly cells: string;
}

/** Every row as one line, by kiln and instant, with the file and line it came from. */
function rowsOf(table: Table | undefined): readonly Row[] {
  if (!table) return [];
  const names = [...table.columns.keys()].filter((name) => name !== "kiln" && name !== "at").sort();
  const at = table.columns.get("at") as Float64Array;
  return Array.from({ length: table.rowCount }, (_, row): Row => {
    const cells = names.map((name) => `${name} ${table.columns.get(name)?.[row]}`);
    const where = `${table.files[table.fileOfRow[row] as number]}:${table.lineOfRow[row]}`;
    return {
      kiln: String(table.columns.get("kiln")?.[row]),
      at: at[row] as number,
      cells: [...cells, where].join(" "),
    };
  }).sort((a, b) => (a.kiln === b.kiln ? a.at - b.at : a.kiln < b.kiln ? -1 : 1));
}

async function inParts(files: FileTexts, options: PartsOptions = {}) {
  const parts: Table[] = [];
  const { tables, readReadings } = await readLogsInParts(folderOf(files), options);
  const rest = await readReadings((part) => parts.push(part));
  return { tables, parts, ...rest };
}

/** Loads of 6 to 60 hours, and files of a day each that overlap or do not, some values blank or at odds. */
const folder = fc
  .record({
    loads: fc.array(
      fc.record({
        kiln: fc.constantFrom("K1", "K2"),
        from: fc.integer({ min: 0, max: 300 }),
        hours: fc.option(fc.integer({ min: 6, max: 60 })),
        name: fc.option(fc.constantFrom("A", "B", "C")),
      }),
      { maxLength: 8 },
    ),
    files: fc.array(
      fc.record({
        rows: fc.array(
          fc.record({
            kiln: fc.constantFrom("K1", "K2", "K3"),
            after: fc.integer({ min: 0, max: 24 }),
            airOn: fc.constantFrom("48", "49", "80", ""),
            heater: fc.constantFrom("0", "1", ""),
          }),
          { maxLength: 40 },
        ),
        from: fc.constantFrom(0, 5, 10, 24, 30, 60, 100, 110, 300),
        hasHeater: fc.boolean(),
      }),
      { maxLength: 6 },
    ),
  })
  .map(({ loads, files }): FileTexts => {
    const kilning = loads.map(({ kiln, from, hours, name }, i) =>
      [`R${i}`, kiln, name ?? "", clock(from), hours === null ? "" : clock(from + hours)].join(","),
    );
    const readings = files.map(({ rows, from, hasHeater }): string => {
      const lines = rows.map(({ kiln, after, airOn, heater }) =>
        [kiln, clock(from + after), airOn, ...(hasHeater ? [heater] : [])].join(","),
      );
      return [`kiln,at,air_on_c${hasHeater ? ",heater_on" : ""}`, ...lines, ""].join("\n");
    });
    return {
      "house.toml": HOUSE,
      "kilning.csv": ["run,kiln,load,loaded_at,unloaded_at", ...kilning, ""].join("\n"),
      ...Object.fromEntries(readings.map((text, i) => [`readings/f${(5 * i) % 7}.csv`, text])),
    };
  });

/** Rows that are put in order at a time: a few, more than any kiln of these folders has, or as always. */
const partLength = fc.constantFrom(1, 3, 10, 1000, 200_000);

describe("readLogsInParts(files)", () => {
  test("hands over the very rows and says the very problems of readLogs, whatever overlaps and in whatever order", async () => {
    await fc.assert(
      fc.asyncProperty(folder, partLength, async (files, rowsAPart) => {
        const now = Date.UTC(2026, 0, 10);
        const whole = await readLogs(folderOf(files), { now });
        const { parts, problems, files: read } = await inParts(files, { now, rowsAPart });
        expect(
          parts
            .flatMap((part) => rowsOf(part))
            .sort((a, b) => (a.kiln === b.kiln ? a.at - b.at : a.kiln < b.kiln ? -1 : 1)),
        ).toEqual(rowsOf(whole.tables.get("readings")));
        expect(problems).toEqual(whole.problems);
        expect(read).toEqual(whole.files);
      }),
      { numRuns: 150 },
    );
  });

  test("cuts no load in two, and each part is one kiln's in time order", async () => {
    await fc.assert(
      fc.asyncProperty(folder, partLength, async (files, rowsAPart) => {
        const { tables, parts } = await inParts(files, { rowsAPart });
        const kilning = tables.get("kilning");
        const [loaded, unloaded] = ["loaded_at", "unloaded_at"].map((name) => kilning?.columns.get(name) ?? []);
        for (const part of parts) {
          const [kiln, at] = [part.columns.get("kiln") ?? [], part.columns.get("at") as Float64Array];
          expect(new Set<string | number | null>(kiln).size).toBe(1);
          expect(at.every((moment, row) => row === 0 || moment > (at[row - 1] as number))).toBe(true);
        }
        Array.from<string | number | null>(kilning?.columns.get("kiln") ?? []).forEach((kiln, row) => {
          const holding = parts.filter((part) => {
            const at = part.columns.get("at") as Float64Array;
            return (
              part.columns.get("kiln")?.[0] === kiln &&
              at.some((moment) => moment >= (loaded?.[row] as number) && moment <= (unloaded?.[row] as number))
            );
          });
          expect(holding.length).toBeLessThanOrEqual(1);
        });
      }),
      { numRuns: 100 },
    );
  });

  test("holds no more than a file where files follow each other: ten of them make ten parts", async () => {
    const files = Object.fromEntries(
      Array.from({ length: 10 }, (_, file) => {
        const rows = Array.from({ length: 24 }, (_, hour) => `K1,${clock(24 * file + hour)},48`);
        return [`readings/${file}.csv`, ["kiln,at,air_on_c", ...rows, ""].join("\n")];
      }),
    );
    const { parts } = await inParts({ "house.toml": HOUSE, ...files });
    expect(parts.map(({ rowCount }) => rowCount)).toEqual(new Array(10).fill(24));
  });

  test("hands a long file over in parts between its loads, and counts the rows that are in order after each", async () => {
    const HOURS = 300;
    const loads = Array.from(
      { length: 10 },
      (_, load) => `R${load},K1,${clock(30 * load + 2)},${clock(30 * load + 20)}`,
    );
    const rows = Array.from({ length: HOURS }, (_, hour) => `K1,${clock(hour)},48`);
    const told: (readonly [number, number])[] = [];
    const { parts } = await inParts(
      {
        "house.toml": HOUSE,
        "kilning.csv": ["run,kiln,loaded_at,unloaded_at", ...loads, ""].join("\n"),
        "readings/a.csv": ["kiln,at,air_on_c", ...rows, ""].join("\n"),
      },
      { rowsAPart: 60, onOrdered: (ordered, of) => told.push([ordered, of]) },
    );
    expect(parts.length).toBeGreaterThanOrEqual(4);
    expect(Math.max(...parts.map(({ rowCount }) => rowCount))).toBeLessThanOrEqual(90);
    const sums = parts.map((_, last) => parts.slice(0, last + 1).reduce((sum, { rowCount }) => sum + rowCount, 0));
    expect(told).toEqual([[0, HOURS], [0, HOURS], ...sums.map((sum) => [sum, HOURS])]);
    expect(sums.at(-1)).toBe(HOURS);
  });

  test("reads every other table as readLogs does, and none of the readings", async () => {
    const whole = await readLogs(folderOf(goodHouse));
    const { tables } = await inParts(goodHouse);
    expect(tables.has("readings")).toBe(false);
    for (const [name, table] of whole.tables) if (name !== "readings") expect(tables.get(name)).toEqual(table);
  });
});
