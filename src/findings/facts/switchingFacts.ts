import type { ThermostatFact } from "../../report/fact.ts";
import type { HoldName, KilnThermostat } from "../../report/thermostatResult.ts";
import { chanceReal } from "./chanceReal.ts";
import { shiftOf } from "./effectMean.ts";
import { type FactFrame, LATEST_RUNS, namedRuns, noLoss } from "./factFrame.ts";

const HOLDS: readonly HoldName[] = ["drying", "cure"];

/** One kiln month in thirty its contacts are found to have worn, and then by some two kelvins of swing (common practice). */
const BEFORE = { share: 0.03, size: 2 };
/** A swing that is wider by less needs no new switch (common practice). */
const LEAST_KELVIN = 0.7;

/**
 * A thermostat that switches on and off further apart than it did, as with worn contacts, though its middle may stand where it
 * stood: the latest loads' swing against that of all the loads before.
 */
export function switchingFacts(frame: FactFrame, kiln: KilnThermostat): readonly ThermostatFact[] {
  return HOLDS.flatMap((hold): ThermostatFact[] => {
    const known = (kiln[hold]?.points ?? []).filter(({ swingKelvin, at }) => swingKelvin !== null && at < frame.before);
    const latest = known.slice(-Math.max(LATEST_RUNS, known.filter(({ at }) => at >= frame.from).length));
    const swings = (of: typeof known): number[] => of.flatMap(({ swingKelvin }) => swingKelvin ?? []);
    const widerKelvin = shiftOf(swings(known.slice(0, known.length - latest.length)), swings(latest));
    const [first, last] = [latest[0], latest.at(-1)];
    if (widerKelvin === null || first === undefined || last === undefined || last.at < frame.from) return [];
    if (widerKelvin.estimate < LEAST_KELVIN) return [];
    const runs = latest.flatMap((point) => point.runs);
    return [
      {
        kind: "thermostat",
        kiln: kiln.kiln,
        hold,
        shape: "worn contacts",
        movedKelvin: 0,
        widerKelvin,
        kelvinPerMonth: null,
        leavesFrom: null,
        leavesTo: null,
        loggerDoubt: false,
        from: first.at,
        to: last.at,
        runs: namedRuns(runs),
        runCount: runs.length,
        chanceReal: chanceReal(widerKelvin, BEFORE),
        loss: noLoss,
        beside: [],
      },
    ];
  });
}
