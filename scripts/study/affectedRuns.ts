import { bedOf } from "../demo/batch.ts";
import { localDate } from "../demo/clock.ts";
import { logLab } from "../demo/logLab.ts";
import { LAGGING_BED, type Plant } from "../demo/plant.ts";
import { LOGS_END } from "../demo/rows.ts";
import type { SimulatedHouse, SimulatedLoad } from "../demo/simulateHouse.ts";

/** What creeps counts from where it could be noticed: a third of the usual tolerance, a twentieth of the air. */
const CREPT_KELVIN = 0.5;
const CLOGGED_SHARE = 0.05;

function isAffected({ kind, from, size }: Plant, load: SimulatedLoad, seed: number): boolean {
  const { planted, batches } = load;
  const [lead] = batches;
  if (lead === undefined) return false;
  switch (kind) {
    case "thermostat creep":
      return Math.abs(planted.thermostatKelvin) >= CREPT_KELVIN;
    case "clogging filter":
      return planted.airShare <= 1 - CLOGGED_SHARE;
    case "moisture meter":
      return planted.meterPoints !== 0 && logLab(seed, load).length > 0;
    case "uneven lot":
      return lead.planned.lot.unevenness > 1;
    case "lagging bed": {
      const beds = lead.beds.map((_, part) => bedOf(lead.planned, part));
      return localDate(lead.germinationStartedAt) >= from && beds.length > 1 && beds.includes(LAGGING_BED);
    }
    case "short steep":
      return localDate(lead.steepStartedAt) >= from;
    case "failing cooler":
      return localDate(lead.germinationStartedAt) >= from;
    default:
      return size !== 0 && load.planned.date >= from;
  }
}

/** Runs that a plant touched so that it could show, with the moment at which each was off the kiln, or its certificate in. */
export function affectedRuns(house: SimulatedHouse, plant: Plant): readonly { run: string; at: number }[] {
  const { seed } = house.options;
  return house.loads
    .filter((load) => load.fired.unloadedAt <= LOGS_END && isAffected(plant, load, seed))
    .map((load) => {
      const tested = plant.kind === "moisture meter" ? logLab(seed, load)[0]?.tested_on : undefined;
      const at = tested === undefined ? load.fired.unloadedAt : Date.parse(`${tested}T12:00:00Z`);
      return { run: load.batches[0]?.planned.run ?? "", at };
    })
    .toSorted((a, b) => a.at - b.at);
}
