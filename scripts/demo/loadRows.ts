import type { LoadRow } from "../../src/report/loadRow.ts";
import { airAt } from "./climate.ts";
import { HOUR } from "./clock.ts";
import type { SimulatedHouse, SimulatedLoad } from "./simulateHouse.ts";

/**
 * The loads of a simulated house as the analysis gets them, from what was written down and not from the truth: a short
 * cut past the files for tests and benchmarks that run many houses. Loads with a fault are left out.
 */
export function soundLoadRows(house: SimulatedHouse): readonly LoadRow[] {
  return house.loads.filter((load) => load.faults.length === 0).map((load) => rowOf(house, load));
}

function rowOf(house: SimulatedHouse, load: SimulatedLoad): LoadRow {
  const { logged } = load;
  const variety = load.batches[0]?.planned.variety ?? null;
  return {
    load: logged.load,
    kiln: "K1",
    runs: load.batches.map((b) => b.planned.run),
    variety: variety?.name ?? null,
    grain: variety?.grain ?? null,
    loadedAt: logged.loadedAt,
    cureStartedAt: logged.cureStartedAt,
    heatOffAt: logged.heatOffAt,
    unloadedAt: logged.unloadedAt,
    kilnHours: logged.kilnHours,
    dryingHours: logged.dryingHours,
    bedDepthMetres: logged.bedDepthMetres,
    grainInKilograms: logged.grainInKilograms,
    grainMoisturePercent: load.batches[0]?.planned.lot.moisturePercent ?? null,
    greenLoadKilograms: logged.greenLoadKilograms,
    greenMoisturePercent: logged.greenMoisturePercent,
    airAtLoading: {
      celsius: logged.celsius,
      relativeHumidityPercent: logged.relativeHumidityPercent,
      source: "logged",
    },
    airOverLoad: meanAir(house, load),
    dryingSetCelsius: logged.dryingSetCelsius,
    cureSetCelsius: logged.cureSetCelsius,
    finalMoisturePercent: logged.finalMoisturePercent,
    maltOutKilograms: null,
    waterRemovedKilograms: null,
    energyKilowattHours: logged.energyKilowattHours,
    powerLimitedShare: null,
    fanShareOfHold: null,
    powerLimited: false,
    readingsFile: null,
  };
}

function meanAir(house: SimulatedHouse, load: SimulatedLoad): LoadRow["airOverLoad"] {
  let celsius = 0;
  let humidity = 0;
  let n = 0;
  for (let at = load.logged.loadedAt; at < load.logged.unloadedAt; at += HOUR, n++) {
    const air = airAt(house.weather, at);
    celsius += air.celsius;
    humidity += air.relativeHumidityPercent;
  }
  return { celsius: celsius / n, relativeHumidityPercent: humidity / n, source: "weather" };
}
