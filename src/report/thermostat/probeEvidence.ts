import { serialInterval } from "../../analysis/drift/companionChange.ts";
import { fitDriftModels } from "../../analysis/drift/driftModels.ts";
import { driftShape } from "../../analysis/drift/driftShape.ts";
import { explainDrift } from "../../analysis/drift/explainDrift.ts";
import { fewestLoads } from "../../analysis/drift/fewestLoads.ts";
import { findFitFault } from "../../analysis/findFitFault.ts";
import { isFitFault } from "../../analysis/fitFault.ts";
import { fitLeastSquares } from "../../analysis/fitLeastSquares.ts";
import type { Interval } from "../../analysis/regressionFit.ts";
import { median } from "../../analysis/summary.ts";
import { heatedWetBulb, wetBulbGain } from "../../malting/heatedWetBulb.ts";
import type { ThermostatLoad } from "../../malting/thermostat/thermostatLoad.ts";
import type { LoadRow } from "../loadRow.ts";
import type { HoldName, OffsetPoint, ProbeEvidence } from "../thermostatResult.ts";

const DAY = 86_400_000;
const PROBES = ["bed", "air_off"] as const;

interface Sample {
  readonly course: number;
  /** Of the probe less what it is held against: the wet bulb at the set point in a drying hold, the set point in a cure. */
  readonly kelvin: number;
  readonly outsideCelsius: number;
  readonly leastGain: number;
}

/**
 * Whether the probes in and over the bed moved along with the offset of the latest stretch: regressions of what they read on the
 * course of the change and the temperature outside. Air that leaves a wet bed stands near the wet bulb of the air that entered, so
 * that in a drying hold the wet bulb at the set point, of that load's outside air, is taken off first; in a cure the set point is.
 *
 * One *speaks for the thermostat* where its interval lies wholly on the side to which air on moved; *for the logger* where
 * it excludes the least that a true change makes of any bed (`wetBulbGain`). Else it cannot be told. All hang on one logger: a fault of
 * the whole logger would move them alike.
 *
 * @param points offsets of the stretch, in time order
 * @returns nothing where the models see no change
 */
export function probeEvidence(
  hold: HoldName,
  points: readonly OffsetPoint[],
  read: ReadonlyMap<string, ThermostatLoad>,
  rows: ReadonlyMap<string, LoadRow>,
  pressurePascals: number,
): readonly ProbeEvidence[] {
  const first = points[0]?.at ?? 0;
  const series = {
    days: points.map(({ at }) => (at - first) / DAY),
    values: points.map(({ offsetKelvin }) => offsetKelvin),
  };
  const models = fitDriftModels(series);
  if (isFitFault(models) || models.winner === "constant") return [];
  const moved = explainDrift(series, models, {}).offsetChange?.estimate;
  if (moved === undefined) return [];
  const course = driftShape(models).values;
  return PROBES.map((probe) => {
    const samples = points.flatMap((point, at): Sample[] => {
      const row = rows.get(point.load);
      const air = (hold === "drying" ? (row?.airAtLoading ?? row?.airOverLoad) : row?.airOverLoad) ?? row?.airAtLoading;
      const value = readOf(hold, probe, read.get(point.load));
      if (value === null || !air || air.celsius === null || air.celsius >= point.setCelsius) return [];
      const outside = { celsius: air.celsius, relativeHumidityPercent: air.relativeHumidityPercent };
      const entering = { ...outside, heatedToCelsius: point.setCelsius, pressurePascals };
      return [
        {
          course: course[at] as number,
          kelvin: value - (hold === "drying" ? heatedWetBulb(entering) : point.setCelsius),
          outsideCelsius: air.celsius,
          leastGain: wetBulbGain(entering),
        },
      ];
    });
    const change = changeOf(samples);
    const least = samples.length === 0 ? 0 : moved * median(samples.map(({ leastGain }) => leastGain));
    return {
      probe,
      change,
      airOnKelvin: moved,
      leastKelvin: least,
      loads: samples.length,
      speaks: change === null ? "open" : speaksFor(change, Math.sign(moved), Math.abs(least)),
    };
  });
}

function readOf(hold: HoldName, probe: ProbeEvidence["probe"], load: ThermostatLoad | undefined): number | null {
  if (load === undefined) return null;
  if (hold === "drying") return probe === "bed" ? load.dryingBedCelsius : load.dryingAirOffCelsius;
  return probe === "bed" ? load.cureBedCelsius : load.cureAirOffCelsius;
}

function changeOf(samples: readonly Sample[]): Interval | null {
  const columns = [
    { name: "course", values: samples.map(({ course }) => course) },
    { name: "outside", values: samples.map(({ outsideCelsius }) => outsideCelsius) },
  ];
  const values = samples.map(({ kelvin }) => kelvin);
  if (findFitFault(columns, values, fewestLoads + 1) !== null) return null;
  const fit = fitLeastSquares(columns, values);
  const term = fit.terms[1];
  return term === undefined ? null : serialInterval(term, fit);
}

function speaksFor({ low, high }: Interval, side: number, leastKelvin: number): ProbeEvidence["speaks"] {
  const [nearest, farthest] = side > 0 ? [low, high] : [-high, -low];
  if (nearest > 0) return "thermostat";
  return farthest < leastKelvin ? "logger" : "open";
}
