import { analyseChanges } from "../../src/report/changes/analyseChanges.ts";
import { analyseKilnHours } from "../../src/report/kilnHours/analyseKilnHours.ts";
import type { LoadRow } from "../../src/report/loadRow.ts";
import type { LogsResult } from "../../src/report/logsResult.ts";
import type { Report } from "../../src/report/report.ts";
import type { RunRow } from "../../src/report/runRow.ts";
import { analyseVarieties } from "../../src/report/varieties/analyseVarieties.ts";
import type { Problem } from "../../src/tables/problem.ts";
import { loadsOnAPlane } from "./loads.ts";
import { madeUpSteepGermination } from "./madeUpSteepGermination.ts";
import { madeUpYieldMoisture } from "./madeUpYieldMoisture.ts";

const HOUR = 3_600_000;

/** A run that has nothing but its number. */
export const bareRun: RunRow = {
  run: "bare",
  lot: null,
  lots: null,
  grain: null,
  variety: null,
  grower: null,
  cropYear: null,
  grainInKilograms: null,
  grainMoisturePercent: null,
  grainProteinDryPercent: null,
  steepStartedAt: null,
  steepEndedAt: null,
  steepWaterCelsius: null,
  steepWetHours: null,
  steepAirRestHours: null,
  steepOutKilograms: null,
  steepOutMoisturePercent: null,
  steepOutMoistureBasis: null,
  chittedPercent: null,
  tanks: null,
  germinationStartedAt: null,
  germinationEndedAt: null,
  bedMeanCelsius: null,
  bedMaxCelsius: null,
  roomCelsius: null,
  turns: null,
  greenMoisturePercent: null,
  acrospireMean: null,
  acrospireOvergrownPercent: null,
  acrospireCounted: null,
  beds: null,
  load: null,
  loads: 0,
  kiln: null,
  loadedAt: null,
  cureStartedAt: null,
  heatOffAt: null,
  unloadedAt: null,
  kilnHours: null,
  dryingHours: null,
  bedDepthMetres: null,
  greenLoadKilograms: null,
  finalMoisturePercent: null,
  finalMoistureBasis: null,
  maltOutKilograms: null,
  maltKilograms: null,
  maltBasis: null,
  rootletsKilograms: null,
  dryMatterYieldPercent: null,
  asIsYieldPercent: null,
  waterRemovedKilograms: null,
  energyKilowattHours: null,
  bagCode: null,
  notes: null,
};

/** The whole of a run that went the way of `load`. */
export function runOf(load: LoadRow): RunRow {
  const { loadedAt } = load;
  return {
    ...bareRun,
    run: load.runs[0] ?? load.load,
    lot: "L4",
    grain: load.grain ?? "barley",
    variety: load.variety,
    grainInKilograms: load.grainInKilograms ?? 412,
    grainMoisturePercent: 12.4,
    steepStartedAt: loadedAt - 132 * HOUR,
    steepEndedAt: loadedAt - 106 * HOUR,
    steepWaterCelsius: 14.5,
    steepWetHours: 15,
    steepAirRestHours: 11,
    steepOutMoisturePercent: 43.6,
    steepOutMoistureBasis: "from mass gain",
    chittedPercent: 88,
    tanks: 1,
    germinationStartedAt: loadedAt - 105 * HOUR,
    germinationEndedAt: loadedAt - HOUR,
    bedMeanCelsius: 15.8,
    bedMaxCelsius: 18.2,
    turns: 9,
    acrospireMean: 0.78,
    acrospireOvergrownPercent: 4,
    acrospireCounted: 100,
    load: load.load,
    loads: 1,
    kiln: load.kiln,
    loadedAt,
    cureStartedAt: load.cureStartedAt,
    unloadedAt: load.unloadedAt,
    kilnHours: load.kilnHours,
    dryingHours: load.dryingHours,
    bedDepthMetres: load.bedDepthMetres,
    greenLoadKilograms: load.greenLoadKilograms,
    finalMoisturePercent: 4.6,
    finalMoistureBasis: "mean of 3 samples",
    maltOutKilograms: 349,
    maltKilograms: 338,
    maltBasis: "cleaned",
    rootletsKilograms: 11,
    dryMatterYieldPercent: 89.4,
    asIsYieldPercent: 82,
    waterRemovedKilograms: load.waterRemovedKilograms,
    energyKilowattHours: load.energyKilowattHours,
    bagCode: "B-17",
    notes: "Turned late on the second day.",
  };
}

export const madeUpProblem: Problem = {
  file: "kilning.csv",
  line: 14,
  column: "ambient_rh_pct",
  value: "108",
  rule: "out-of-range",
  message: "A relative humidity lies between 0 and 100.",
  hint: "Look up the reading and write it again, or leave the field empty.",
  effect: "value-blanked",
  run: "24-013",
};

const logs: LogsResult = {
  files: [
    { path: "kilning.csv", table: "kilning", rows: 120, rowsSetAside: 1, valuesBlanked: 1, notes: 0 },
    { path: "steeping.csv", table: "steeping", rows: 121, rowsSetAside: 0, valuesBlanked: 0, notes: 1 },
  ],
  problems: [
    madeUpProblem,
    {
      ...madeUpProblem,
      line: 31,
      column: null,
      value: null,
      rule: "end-before-start",
      message: "The load was unloaded before it was loaded.",
      hint: "Check both times; one is likely a day out.",
      effect: "row-set-aside",
    },
    {
      ...madeUpProblem,
      file: "steeping.csv",
      line: 1,
      column: "hardness",
      value: null,
      rule: "unknown-column",
      message: "This column is not part of the format.",
      hint: "It is kept and shown on the run’s page.",
      effect: "note",
      run: null,
    },
  ],
  months: [],
};

/** A report on `count` loads made from a known plane, one run a load; for tests of pages alone. */
export function madeUpReport(count: number, changes: Partial<Report> = {}): Report {
  const loads = loadsOnAPlane(count, { intercept: 1, perPoint: 0.074, perMetre: 45, noise: 0.4 });
  return {
    house: { name: "Example Malthouse", timeZone: "UTC", units: "metric", altitudeMetres: 120, invented: true },
    choices: { varieties: ["Amber", "Brindle"], kilns: ["1"], firstDate: "2024-01-01", lastDate: "2026-10-31" },
    lastLoggedAt: loads.at(-1)?.unloadedAt ?? null,
    runs: loads.map(runOf).reverse(),
    loads,
    kilnHours: analyseKilnHours(loads, {
      air: null,
      without: new Set(),
      targetMoisturePercent: 4.5,
      pressurePascals: 101_325,
      timeZone: "UTC",
    }),
    logs: count === 0 ? { files: [], problems: [], months: [] } : logs,
    events: [],
    yieldMoisture: madeUpYieldMoisture(loads),
    thermostat: { kilns: [] },
    varieties: analyseVarieties([], {
      targets: [],
      halfWidths: {},
      samples: new Map(),
      lab: [],
      lots: [],
      loads: [],
      events: [],
      offsets: new Map(),
      timeZone: "UTC",
      kilnHours: analyseKilnHours([], {
        air: null,
        without: new Set(),
        targetMoisturePercent: 4.5,
        pressurePascals: 101_325,
        timeZone: "UTC",
      }),
      without: new Set(),
    }),
    steepGermination: madeUpSteepGermination(loads.map(runOf).reverse()),
    changes: analyseChanges([], [], {
      events: [],
      samples: new Map(),
      targets: [],
      without: new Set(),
      kilnHours: analyseKilnHours([], {
        air: null,
        without: new Set(),
        targetMoisturePercent: 4.5,
        pressurePascals: 101_325,
        timeZone: "UTC",
      }),
      targetMoisturePercent: 4.5,
      pressurePascals: 101_325,
      timeZone: "UTC",
    }),
    review: {
      months: [],
      monthsThereAre: [],
      costs: {
        currency: null,
        perKilowattHour: null,
        perLabourHour: null,
        perKilogramMalt: null,
        perRefusedBatch: null,
      },
      accepted: [],
      tooLittle: "No batch has left the kiln yet.",
    },
    otherColumns: [],
    ...changes,
  };
}
