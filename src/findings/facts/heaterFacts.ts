import type { HeaterFact } from "../../report/fact.ts";
import type { KilnThermostat } from "../../report/thermostatResult.ts";
import { chanceReal } from "./chanceReal.ts";
import { shiftOf } from "./effectMean.ts";
import { type FactFrame, LATEST_RUNS, namedRuns, noLoss } from "./factFrame.ts";

/** One kiln month in thirty an element or burner is found out, and then a fifth of the heat is gone (common practice). */
const BEFORE = { share: 0.03, size: 0.2 };
/** Filling, leaks and the density of the season's air change it by less (common practice). */
const LEAST_SHARE = 0.1;
/** Air that needs hardly any heating says nothing of the heater. */
const LEAST_LIFT = 10;

interface HeatedLoad {
  readonly at: number;
  readonly runs: readonly string[];
  /** Share of the time with the heater on for each kelvin between outside air and set point, as a logarithm. */
  readonly onPerKelvin: number;
}

/** The heat that the air takes grows with how far it is lifted, and an electric or gas heater gives it in time switched on. */
function heatedLoads(frame: FactFrame, kiln: KilnThermostat): readonly HeatedLoad[] {
  const rowOf = new Map(frame.report.loads.map((row) => [row.load, row]));
  return kiln.loads.flatMap(({ load, loadedAt, dryingDuty, dryingSetCelsius }): HeatedLoad[] => {
    const row = rowOf.get(load);
    const outside = row?.airOverLoad?.celsius ?? row?.airAtLoading?.celsius ?? null;
    if (row === undefined || row.unloadedAt === null || row.unloadedAt >= frame.before) return [];
    if (dryingDuty === null || dryingSetCelsius === null || outside === null) return [];
    const lift = dryingSetCelsius - outside;
    if (lift < LEAST_LIFT || !(dryingDuty > 0)) return [];
    return [{ at: loadedAt, runs: row.runs, onPerKelvin: Math.log(dryingDuty / lift) }];
  });
}

/**
 * A heater that is on for longer than it was to lift the air as far: an element or burner that is out, long before the kiln grows
 * slower by it in mild weather.
 */
export function heaterFacts(frame: FactFrame): readonly HeaterFact[] {
  return frame.report.thermostat.kilns.flatMap((kiln): HeaterFact[] => {
    const known = heatedLoads(frame, kiln);
    const latest = known.slice(-Math.max(LATEST_RUNS, known.filter(({ at }) => at >= frame.from).length));
    const values = (of: readonly HeatedLoad[]): readonly number[] => of.map(({ onPerKelvin }) => onPerKelvin);
    const longer = shiftOf(values(known.slice(0, known.length - latest.length)), values(latest));
    const [first, last] = [latest[0], latest.at(-1)];
    if (longer === null || first === undefined || last === undefined || last.at < frame.from) return [];
    if (Math.expm1(longer.estimate) < LEAST_SHARE) return [];
    const runs = latest.flatMap((load) => load.runs);
    return [
      {
        kind: "heater",
        kiln: kiln.kiln,
        longerOn: {
          estimate: Math.expm1(longer.estimate),
          low: Math.expm1(longer.low),
          high: Math.expm1(longer.high),
        },
        from: first.at,
        to: last.at,
        runs: namedRuns(runs),
        runCount: runs.length,
        chanceReal: chanceReal(longer, BEFORE),
        loss: noLoss,
        beside: [],
      },
    ];
  });
}
