import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { LoadableDatabase } from "../../src/engine/database.ts";
import { chooseRows, viewRows } from "../../src/report/chosenRows.ts";
import { type LoggedRows, lastLogged, readLoggedRows } from "../../src/report/loggedRows.ts";
import { readLoads } from "../../src/report/readLoads.ts";
import { readRuns } from "../../src/report/readRuns.ts";
import type { ReportRows } from "../../src/report/report.ts";
import type { RowFilter } from "../../src/report/rowFilter.ts";
import { everyRow } from "../../src/report/whereRows.ts";
import { madeUpReport } from "../support/madeUpReport.ts";
import { openRuns } from "../support/openRuns.ts";
import { tenRuns, tenRunsAt } from "../support/tenRuns.ts";

let database: LoadableDatabase;
let logged: LoggedRows;
let whole: ReportRows;
beforeAll(async () => {
  ({ database } = await openRuns(tenRuns));
  logged = await readLoggedRows(database);
  const { house, choices, logs, otherColumns } = madeUpReport(20);
  const { runs, loads, events } = logged;
  whole = { house, choices, logs, otherColumns, runs, loads, events, lastLoggedAt: lastLogged(loads, runs) };
});
afterAll(() => database.close());

const FILTERS: readonly Partial<RowFilter>[] = [
  {},
  { variety: "Sampler" },
  { kiln: "K2" },
  { loadedFrom: tenRunsAt("2026-01-25 06:00"), loadedBefore: tenRunsAt("2026-02-08 06:01") },
  { variety: "Sampler", kiln: "K2" },
  { kiln: "K2' OR '1'='1" },
];

describe("chooseRows(database, logged, filter)", () => {
  test.each(FILTERS)("names by their places the very rows that a query for %o gives", async (part) => {
    const filter = { ...everyRow, ...part };
    const { runs, loads } = viewRows(whole, await chooseRows(database, logged, filter));
    expect(runs).toEqual(await readRuns(database, filter));
    expect(loads).toEqual(await readLoads(database, filter));
  });
});

describe("viewRows(whole, chosen)", () => {
  test("says when the rows chosen end, and leaves alone what no view changes", async () => {
    const early = { ...everyRow, loadedBefore: tenRunsAt("2026-01-18 21:00") };
    const rows = viewRows(whole, await chooseRows(database, logged, early));
    expect(rows.runs.map(({ run }) => run)).toEqual(["R01"]);
    expect(rows.lastLoggedAt).toBe(tenRunsAt("2026-01-12 19:00"));
    expect(rows.choices).toBe(whole.choices);
    expect(rows.events).toBe(whole.events);
  });

  test("throws a RangeError where the places were counted in other logs", () => {
    const of = { runs: whole.runs.length + 1, loads: whole.loads.length };
    expect(() => viewRows(whole, { runs: [0], loads: [0], of })).toThrow(RangeError);
  });
});
