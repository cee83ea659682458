import { median } from "../../analysis/summary.ts";
import { localParts } from "../../units/instant.ts";
import type { AirBasis } from "../airBasis.ts";
import type { Filling, KilnHoursResult, UnderWay, WhatIfInputs } from "../kilnHoursResult.ts";
import type { LoadRow } from "../loadRow.ts";
import { energySummary } from "./energy.ts";
import { expectHours } from "./expectHours.ts";
import { usualFilling } from "./filling.ts";
import { hoursAnalysis } from "./hoursAnalysis.ts";
import { airOn, modelRows } from "./modelRow.ts";

export interface KilnHoursOptions {
  /** As the reader chose; null: whichever more loads have, air at loading where equal, since only that plans a night. */
  readonly air: AirBasis | null;
  /** Runs left out by hand. */
  readonly without: ReadonlySet<string>;
  /** The final moisture that this house dries to, per cent. */
  readonly targetMoisturePercent: number;
  readonly pressurePascals: number;
  readonly timeZone: string;
}

const MINUTES_PER_HOUR = 60;

/** The analysis of kiln hours and drying hours over the loads handed over, in time order. */
export function analyseKilnHours(loads: readonly LoadRow[], options: KilnHoursOptions): KilnHoursResult {
  const { without, targetMoisturePercent, pressurePascals, timeZone } = options;
  const loadsByAir = {
    at_loading: loads.filter((load) => load.airAtLoading !== null).length,
    mean: loads.filter((load) => load.airOverLoad !== null).length,
  };
  const airBasis = options.air ?? (loadsByAir.mean > loadsByAir.at_loading ? "mean" : "at_loading");
  const filling = usualFilling(loads, targetMoisturePercent, pressurePascals);
  const kilnPart = modelRows(loads, "kiln-hours", airBasis, filling, without);
  const dryingPart = modelRows(loads, "drying-hours", airBasis, filling, without);
  const logged = (hours: (load: LoadRow) => number | null): number[] =>
    loads.map(hours).filter((value) => value !== null);
  const kilnHours = hoursAnalysis(
    "kiln-hours",
    kilnPart.rows,
    logged((load) => load.kilnHours),
    filling,
  );
  const dryingHours = hoursAnalysis(
    "drying-hours",
    dryingPart.rows,
    logged((load) => load.dryingHours),
    filling,
  );
  return {
    airBasis,
    loadsByAir,
    kilnHours,
    dryingHours,
    unfitted: kilnPart.unfitted,
    energy: energySummary(loads, filling.dryingSetCelsius),
    underWay: loads.filter((load) => load.unloadedAt === null).map((load) => underWay(load, airBasis, kilnHours)),
    usual: usualInputs(loads, airBasis, filling, timeZone),
  };
}

function underWay(load: LoadRow, basis: AirBasis, analysis: KilnHoursResult["kilnHours"]): UnderWay {
  const { runs, kiln, loadedAt, bedDepthMetres } = load;
  const about = { load: load.load, runs, kiln, loadedAt };
  const air = airOn(load, basis) ?? load.airAtLoading;
  if (air === null || bedDepthMetres === null) {
    return { ...about, hours: null, whyNot: "its air at loading or bed depth is not logged" };
  }
  const expected = expectHours(analysis, { ...load, ...air, bedDepthMetres });
  if (expected === null) return { ...about, hours: null, whyNot: "the logs hold too few loads for an estimate" };
  if (expected.outsideExperience) return { ...about, hours: null, whyNot: "no earlier load was much like it" };
  const { estimate, low, high } = expected.prediction;
  return { ...about, hours: { estimate, low, high }, whyNot: null };
}

/** What this house usually loads, as the what-if's starting values; null without a single load that says it. */
function usualInputs(
  loads: readonly LoadRow[],
  basis: AirBasis,
  filling: Filling,
  timeZone: string,
): WhatIfInputs | null {
  const middle = (value: (load: LoadRow) => number | null): number | null => {
    const known = loads.map(value).filter((found) => found !== null);
    return known.length === 0 ? null : median(known);
  };
  const relativeHumidityPercent = middle((load) => airOn(load, basis)?.relativeHumidityPercent ?? null);
  const celsius = middle((load) => airOn(load, basis)?.celsius ?? null);
  const bedDepthMetres = middle((load) => load.bedDepthMetres);
  const start = middle((load) => {
    const { hour, minute } = localParts(load.loadedAt, timeZone);
    return hour * MINUTES_PER_HOUR + minute;
  });
  if (relativeHumidityPercent === null || bedDepthMetres === null || start === null) return null;
  return {
    relativeHumidityPercent: Math.round(relativeHumidityPercent),
    celsius: celsius === null ? null : Math.round(celsius),
    bedDepthMetres,
    greenLoadKilograms: null,
    dryingSetCelsius: filling.dryingSetCelsius,
    startedAtMinutes: Math.round(start / MINUTES_PER_HOUR) * MINUTES_PER_HOUR,
    wantedFinishMinutes: null,
  };
}
