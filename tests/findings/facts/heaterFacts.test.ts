import { describe, expect, it } from "vitest";
import type { FactFrame } from "../../../src/findings/facts/factFrame.ts";
import { heaterFacts } from "../../../src/findings/facts/heaterFacts.ts";
import type { HeaterFact } from "../../../src/report/fact.ts";
import type { KilnThermostat } from "../../../src/report/thermostatResult.ts";
import { bareThermostatLoad } from "../../support/bareThermostatLoad.ts";
import { load } from "../../support/loads.ts";

const COUNT = 40;
const LATEST = 6;
const SET_CELSIUS = 50;
/** Colder by a degree with each load: a heater must work more without anything being amiss. */
const outside = (at: number): number => 20 - 0.5 * at;

/** A heater of which `lost` of the heat is gone in the latest six loads. */
function factsOf(lost: number): readonly HeaterFact[] {
  const rows = Array.from({ length: COUNT }, (_, at) =>
    load(at, { airOverLoad: { celsius: outside(at), relativeHumidityPercent: 70, source: "weather" } }),
  );
  const loads = rows.map((row, at) => {
    const heat = at >= COUNT - LATEST ? 1 - lost : 1;
    const filling = at % 2 === 0 ? 1.03 : 0.97;
    return {
      ...bareThermostatLoad,
      load: row.load,
      loadedAt: row.loadedAt,
      dryingSetCelsius: SET_CELSIUS,
      dryingDuty: (0.01 * filling * (SET_CELSIUS - outside(at))) / heat,
    };
  });
  const last = rows.at(-1)?.loadedAt ?? Number.NaN;
  const thermostat = { kilns: [{ kiln: "K1", loads } as unknown as KilnThermostat] };
  const report = { loads: rows, thermostat } as unknown as FactFrame["report"];
  const day = 86_400_000;
  return heaterFacts({ report, from: last - 20 * day, before: last + 5 * day } as FactFrame);
}

describe("heaterFacts(frame)", () => {
  it("says how much longer a heater is on that lost two of nine elements", () => {
    const [fact, ...others] = factsOf(2 / 9);
    expect(others).toEqual([]);
    expect(fact).toMatchObject({ kiln: "K1", runCount: LATEST });
    expect(fact?.longerOn.estimate).toLieWithin(9 / 7 - 1, 0.02);
    expect(fact?.chanceReal).toBeGreaterThan(0.99);
  });

  it("says nothing of a heater that is on for longer because it is colder", () => {
    expect(factsOf(0)).toEqual([]);
  });
});
