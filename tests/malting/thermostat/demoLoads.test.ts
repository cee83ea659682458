import { beforeAll, describe, expect, test } from "vitest";
import {
  loggerError,
  THERMOSTAT_DRIFT,
  THERMOSTAT_REPEATS_WITHIN,
  thermostatOffset,
} from "../../../scripts/demo/truths.ts";
import { logFolder } from "../../../src/engine/logFolder.ts";
import { type LoggerCheck, type LoggerHistory, loggerHistory } from "../../../src/malting/thermostat/loggerChecks.ts";
import { summariseLoad } from "../../../src/malting/thermostat/summariseLoad.ts";
import type { ThermostatLoad } from "../../../src/malting/thermostat/thermostatLoad.ts";
import { reportFromFolder } from "../../../src/report/atBuild.ts";
import type { LoadCurve } from "../../../src/report/loadCurve.ts";
import type { LoadRow } from "../../../src/report/loadRow.ts";
import { readingsByLoad } from "../../../src/report/readingsByLoad.ts";
import { readLogs } from "../../../src/tables/readLogs.ts";
import type { Table } from "../../../src/tables/table.ts";
import { printIsoDate, startOfLocalDay } from "../../../src/units/instant.ts";

/** The invented house of data/demo, read as a build reads it; its truths are known from scripts/demo/truths.ts. */
let loads: readonly LoadRow[] = [];
let curves: ReadonlyMap<string, LoadCurve> = new Map();
let history: LoggerHistory = { sessions: [], steps: [] };
let rows: readonly ThermostatLoad[] = [];
let zone = "UTC";

const unchecked: LoggerHistory = { sessions: [], steps: [] };
const date = (row: { readonly loadedAt: number }): string => printIsoDate(row.loadedAt, zone);
const read = (load: LoadRow, by: LoggerHistory, change: Partial<LoadRow> = {}, curve = curves.get(load.load)) =>
  summariseLoad(curve as LoadCurve, { ...load, ...change, fanSetCelsius: null }, by);

beforeAll(async () => {
  const { report } = await reportFromFolder("data/demo", null);
  zone = report.house.timeZone;
  const { tables } = await readLogs(logFolder("data/demo"));
  curves = readingsByLoad(tables.get("readings") as Table, report.loads);
  loads = report.loads.filter(({ load }) => curves.has(load));
  const { columns, rowCount } = tables.get("logger-checks") ?? { columns: new Map(), rowCount: 0 };
  const cell = (name: string, i: number) => columns.get(name)?.[i];
  const checks = Array.from({ length: rowCount }, (_, i) => ({
    kiln: cell("kiln", i),
    at: cell("at", i),
    probe: cell("probe", i),
    referenceCelsius: cell("reference_c", i),
    readingCelsius: cell("reading_c", i),
  })) as LoggerCheck[];
  const days = report.events
    .filter(({ scope }) => scope === "logger")
    .map(({ on }) => startOfLocalDay(new Date(on).toISOString().slice(0, 10), zone));
  history = loggerHistory(checks, "K1", "air_on", days);
  rows = loads.map((load) => read(load, history));
}, 60_000);

/** Loads whose offset is claimed and whose fan ran throughout, so that one line over duty holds for all of them. */
const claimed = (): readonly ThermostatLoad[] =>
  rows.filter((row) => row.dryingOffsetKelvin !== null && (row.fanShareOfHold ?? 1) > 0.995);

/** What duty alone does to the offset, from the stretch between the calibration and the second drift. */
function baseline(): (duty: number) => number {
  const quiet = claimed().filter(
    (row) => date(row) > THERMOSTAT_DRIFT.calibratedOn && date(row) < THERMOSTAT_DRIFT.second.from,
  );
  const mean = (of: (row: ThermostatLoad) => number): number =>
    quiet.reduce((sum, row) => sum + of(row), 0) / quiet.length;
  const duty = mean((row) => row.dryingDuty as number);
  const offset = mean((row) => row.dryingOffsetKelvin as number);
  const products = mean((row) => ((row.dryingDuty as number) - duty) * (row.dryingOffsetKelvin as number));
  const slope = products / mean((row) => ((row.dryingDuty as number) - duty) ** 2);
  return (at) => offset + slope * (at - duty);
}

describe("the demo's drying offsets", () => {
  test("nine loads in ten have one", () => {
    expect(claimed().length).toBeGreaterThan(0.85 * loads.length);
  });

  test("follow the true thermostat within their stated error, the check's and its own scatter, over loads of all three years", () => {
    const usual = baseline();
    const truth = (row: ThermostatLoad): number => thermostatOffset(date(row)) - THERMOSTAT_DRIFT.afterCalibration;
    const all = claimed();
    const sample = all.filter((_, i) => i % Math.floor(all.length / 14) === 0);
    expect(sample.length).toBeGreaterThanOrEqual(12);
    expect(sample.some((row) => truth(row) < -1)).toBe(true);
    for (const row of sample) {
      const moved = (row.dryingOffsetKelvin as number) - usual(row.dryingDuty as number);
      // Three standard errors: two would be passed by chance in one load of twenty, and there are fourteen.
      const error = Math.hypot(
        row.dryingStandardErrorKelvin as number,
        row.dryingCheckUncertaintyKelvin as number,
        THERMOSTAT_REPEATS_WITHIN,
      );
      expect(moved, `${row.load} of ${date(row)}`).toLieWithin(truth(row), 3 * error);
    }
  });

  test("before the logger was set right, lie off by what the logger was off by, and not once it is corrected", () => {
    const early = loads.filter((load) => date(load) < "2024-10-14" && load.dryingSetCelsius !== null);
    for (const load of early.filter((_, i) => i % 4 === 0)) {
      const asLogged = read(load, unchecked).dryingOffsetKelvin;
      const corrected = read(load, history).dryingOffsetKelvin;
      if (asLogged === null || corrected === null) continue;
      const known = loggerError(date(load), (load.dryingSetCelsius as number) + corrected);
      expect(asLogged - corrected).toLieWithin(known, 0.1);
    }
  });

  test("hardly change where the start of the cure and the end of heating are not logged but found", () => {
    const some = loads.filter((load, i) => i % 9 === 0 && load.cureStartedAt !== null);
    let compared = 0;
    for (const load of some) {
      const [known, found] = [read(load, history), read(load, history, { cureStartedAt: null, heatOffAt: null })];
      if (known.dryingOffsetKelvin === null) continue;
      expect(found.rampIs, load.load).toBe("found");
      // Up to the top of a cycle a ramp is a rise like any other, so that it is known to a cycle or so.
      const cycle = Math.max(20, known.dryingPeriodMinutes ?? 0) * 60_000;
      expect(found.rampFrom, load.load).toLieWithin(known.rampFrom as number, cycle);
      expect(found.dryingOffsetKelvin, load.load).toLieWithin(known.dryingOffsetKelvin, 0.05);
      compared++;
    }
    expect(compared).toBeGreaterThan(12);
  });

  test("stay within three standard errors and 0.1 K where every fifth reading is all there is", () => {
    for (const load of loads.filter((_, i) => i % 15 === 4)) {
      const whole = read(load, history);
      const curve = curves.get(load.load) as LoadCurve;
      const fifth = (column: Float64Array): Float64Array => column.filter((_, i) => i % 5 === 2);
      const coarse = read(
        load,
        history,
        {},
        {
          at: fifth(curve.at),
          airOnCelsius: fifth(curve.airOnCelsius),
          airOffCelsius: fifth(curve.airOffCelsius),
          bedCelsius: fifth(curve.bedCelsius),
          airOffHumidityPercent: null,
          heaterOn: null,
          fanOn: null,
        },
      );
      if (whole.dryingOffsetKelvin === null || coarse.dryingOffsetKelvin === null) continue;
      const error = coarse.dryingStandardErrorKelvin as number;
      expect(coarse.dryingOffsetKelvin, load.load).toLieWithin(whole.dryingOffsetKelvin, 0.1 + 3 * error);
    }
  });

  test("are not claimed for loads that the heater could not satisfy", () => {
    const short = rows.filter((row) => loads.find(({ load }) => load === row.load)?.powerLimited);
    expect(short.length).toBeGreaterThan(0);
    for (const row of short) expect(row).toMatchObject({ dryingOffsetKelvin: null, dryingPowerLimited: true });
  });

  test("carry the logger's slips as marks: a gap, a frozen stretch, a leap", () => {
    expect(rows.filter((row) => row.gaps > 0)).toHaveLength(1);
    expect(rows.filter((row) => row.frozenMinutes > 0)).toHaveLength(1);
    expect(rows.filter((row) => row.spikes > 0)).toHaveLength(1);
  });
});
