import type { Database } from "../../engine/database.ts";
import { quoteName } from "../../engine/quote.ts";
import type { ThermostatLoad } from "../../malting/thermostat/thermostatLoad.ts";
import type { CsvTable, DuckType } from "../../tables/csvTable.ts";
import type { RowFilter } from "../rowFilter.ts";
import { whereRows } from "../whereRows.ts";

/**
 * How each field of a load's summary is kept in the engine. Moments stay milliseconds, as numbers: nothing joins on them, and
 * so they come back as they went in. The types ask for every field.
 */
const types: Readonly<Record<keyof ThermostatLoad, DuckType>> = {
  load: "VARCHAR",
  kiln: "VARCHAR",
  loadedAt: "DOUBLE",
  warmUpEndsAt: "DOUBLE",
  dryingFrom: "DOUBLE",
  dryingTo: "DOUBLE",
  rampFrom: "DOUBLE",
  rampIs: "VARCHAR",
  cureFrom: "DOUBLE",
  cureTo: "DOUBLE",
  dryingSetCelsius: "DOUBLE",
  dryingOffsetKelvin: "DOUBLE",
  dryingStandardErrorKelvin: "DOUBLE",
  dryingMeanCelsius: "DOUBLE",
  dryingCycles: "DOUBLE",
  dryingReadingsACycle: "DOUBLE",
  dryingDuty: "DOUBLE",
  dryingSwingKelvin: "DOUBLE",
  dryingPeriodMinutes: "DOUBLE",
  dryingSwitchOffCelsius: "DOUBLE",
  dryingSwitchOnCelsius: "DOUBLE",
  dryingPowerLimitedShare: "DOUBLE",
  dryingPowerLimited: "BOOLEAN",
  cureSetCelsius: "DOUBLE",
  cureOffsetKelvin: "DOUBLE",
  cureStandardErrorKelvin: "DOUBLE",
  cureMeanCelsius: "DOUBLE",
  cureCycles: "DOUBLE",
  cureReadingsACycle: "DOUBLE",
  cureDuty: "DOUBLE",
  cureSwingKelvin: "DOUBLE",
  curePeriodMinutes: "DOUBLE",
  cureSwitchOffCelsius: "DOUBLE",
  cureSwitchOnCelsius: "DOUBLE",
  curePowerLimitedShare: "DOUBLE",
  curePowerLimited: "BOOLEAN",
  cureOvershootKelvin: "DOUBLE",
  cureOvershootBeyondCyclesKelvin: "DOUBLE",
  dryingAirOffCelsius: "DOUBLE",
  dryingBedCelsius: "DOUBLE",
  cureAirOffCelsius: "DOUBLE",
  cureBedCelsius: "DOUBLE",
  minutesToDryingSet: "DOUBLE",
  minutesToCureSet: "DOUBLE",
  warmUpRiseKelvinPerMinute: "DOUBLE",
  warmUpRiseFromCelsius: "DOUBLE",
  warmUpRiseToCelsius: "DOUBLE",
  rampRiseKelvinPerMinute: "DOUBLE",
  rampRiseFromCelsius: "DOUBLE",
  rampRiseToCelsius: "DOUBLE",
  fanShareOfWarmUp: "DOUBLE",
  fanShareOfHold: "DOUBLE",
  fanSwitchOnCelsius: "DOUBLE",
  fanSwitchOffCelsius: "DOUBLE",
  fanOffsetKelvin: "DOUBLE",
  fanStandardErrorKelvin: "DOUBLE",
  readings: "DOUBLE",
  usualStepMinutes: "DOUBLE",
  irregular: "BOOLEAN",
  resolutionKelvin: "DOUBLE",
  gaps: "DOUBLE",
  gapMinutes: "DOUBLE",
  frozenMinutes: "DOUBLE",
  spikes: "DOUBLE",
  dryingLoggerErrorKelvin: "DOUBLE",
  cureLoggerErrorKelvin: "DOUBLE",
  dryingCheckUncertaintyKelvin: "DOUBLE",
  cureCheckUncertaintyKelvin: "DOUBLE",
  correctionAgeDays: "DOUBLE",
  daysSinceCheck: "DOUBLE",
  sentences: "VARCHAR",
};

const names = Object.keys(types) as (keyof ThermostatLoad)[];
/** `dryingOffsetKelvin` is `drying_offset_kelvin` in the engine, whose names are all lower case. */
const columnOf = (name: keyof ThermostatLoad): string => name.replace(/[A-Z]/g, (c) => `_${c.toLowerCase()}`);
const columns: CsvTable["columns"] = Object.fromEntries(names.map((name) => [columnOf(name), types[name]]));
const BETWEEN_SENTENCES = "\n";

function cell(value: ThermostatLoad[keyof ThermostatLoad]): string {
  if (value === null) return "";
  if (typeof value === "number" || typeof value === "boolean") return String(value);
  const text = typeof value === "string" ? value : value.join(BETWEEN_SENTENCES);
  return text === "" ? "" : `"${text.replaceAll('"', '""')}"`;
}

/** What the thermostats did, a row a load: worked out from the readings at build, so that no reader needs the readings. */
export function thermostatTable(loads: readonly ThermostatLoad[]): CsvTable {
  const lines = loads.map((load) => names.map((name) => cell(load[name])).join(","));
  const csv = new TextEncoder().encode(`${[Object.keys(columns).join(","), ...lines].join("\n")}\n`);
  return { name: "thermostat_loads", columns, csv };
}

type Stored = Omit<ThermostatLoad, "sentences"> & { readonly sentences: string | null };

/** The loads with readings that `filter` lets through, in time order. */
export async function readThermostatLoads(database: Database, filter: RowFilter): Promise<readonly ThermostatLoad[]> {
  const list = names.map((name) => `t.${quoteName(columnOf(name))} AS "${name}"`).join(", ");
  const rows = await database.query<Stored>(
    `SELECT ${list} FROM thermostat_loads t SEMI JOIN
    (SELECT load FROM load_rows ${whereRows(filter, "loaded_at")}) shown ON shown.load = t.load
    ORDER BY t.loaded_at, t.kiln, t.load`,
  );
  return rows.map((row) => ({ ...row, sentences: row.sentences?.split(BETWEEN_SENTENCES) ?? [] }));
}
