import { describe, expect, test } from "vitest";
import { type LoadSpan, readingsByLoad } from "../../src/report/readingsByLoad.ts";
import type { Table } from "../../src/tables/table.ts";

const MINUTE = 60_000;

/** Readings as they come from several files: kiln, minute, air-on, in any order. */
function readings(rows: readonly (readonly [kiln: string, minute: number, airOn: number])[]): Table {
  return {
    name: "readings",
    rowCount: rows.length,
    columns: new Map<string, Float64Array | string[]>([
      ["kiln", rows.map(([kiln]) => kiln)],
      ["at", Float64Array.from(rows, ([, minute]) => minute * MINUTE)],
      ["air_on_c", Float64Array.from(rows, ([, , airOn]) => airOn)],
    ]),
    writtenUnits: new Map(),
    unknownColumns: new Map(),
    files: ["readings/a.csv"],
    fileOfRow: new Uint16Array(rows.length),
    lineOfRow: Int32Array.from(rows, (_, row) => row + 2),
  };
}

const span = (load: string, kiln: string, from: number, to: number | null): LoadSpan => ({
  load,
  kiln,
  loadedAt: from * MINUTE,
  unloadedAt: to === null ? null : to * MINUTE,
});

describe("readingsByLoad", () => {
  test("gives a load the readings of its kiln from loading to unloading, in time order", () => {
    const table = readings([
      ["K1", 30, 3],
      ["K2", 20, 99],
      ["K1", 10, 1],
      ["K1", 9, 0],
      ["K1", 31, 4],
      ["K1", 20, 2],
    ]);
    const curve = readingsByLoad(table, [span("P1", "K1", 10, 30)]).get("P1");
    expect(curve?.at).toEqual(Float64Array.of(10 * MINUTE, 20 * MINUTE, 30 * MINUTE));
    expect(curve?.airOnCelsius).toEqual(Float64Array.of(1, 2, 3));
    expect(curve?.airOffCelsius).toEqual(Float64Array.of(Number.NaN, Number.NaN, Number.NaN));
    expect(curve?.heaterOn).toBeNull();
  });

  test("counts a moment once that two files hold", () => {
    const table = readings([
      ["K1", 10, 1],
      ["K1", 11, 2],
      ["K1", 11, 2],
      ["K1", 10, 1],
    ]);
    expect(readingsByLoad(table, [span("P1", "K1", 0, 60)]).get("P1")?.at.length).toBe(2);
  });

  test("ends a load under way where the next load of that kiln begins", () => {
    const table = readings([
      ["K1", 10, 1],
      ["K1", 50, 2],
      ["K1", 90, 3],
    ]);
    const loads = [span("P1", "K1", 0, null), span("P2", "K1", 50, null), span("Q", "K2", 20, null)];
    const found = readingsByLoad(table, loads);
    expect(found.get("P1")?.airOnCelsius).toEqual(Float64Array.of(1));
    expect(found.get("P2")?.airOnCelsius).toEqual(Float64Array.of(2, 3));
  });

  test("has nothing for a load without readings", () => {
    const table = readings([["K1", 10, 1]]);
    const found = readingsByLoad(table, [
      span("before", "K1", 0, 9),
      span("after", "K1", 11, 20),
      span("x", "K9", 0, 60),
    ]);
    expect([...found.keys()]).toEqual([]);
    expect(readingsByLoad(readings([]), [span("P1", "K1", 0, 60)]).size).toBe(0);
  });
});
