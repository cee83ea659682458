import { describe, expect, it } from "vitest";
import { seededRandom } from "../../../src/analysis/seededRandom.ts";
import { heatedWetBulb } from "../../../src/malting/heatedWetBulb.ts";
import { STANDARD_PRESSURE_PASCALS } from "../../../src/malting/moistAir.ts";
import type { ThermostatLoad } from "../../../src/malting/thermostat/thermostatLoad.ts";
import { probeEvidence } from "../../../src/report/thermostat/probeEvidence.ts";
import type { OffsetPoint, ProbeEvidence } from "../../../src/report/thermostatResult.ts";
import { gaussian } from "../../analysis/gaussian.ts";
import { bareThermostatLoad } from "../../support/bareThermostatLoad.ts";
import { load } from "../../support/loads.ts";

const SET = 48;
const COUNT = 60;

/**
 * Loads whose readings at air on creep down by 3 K over the last thirty, from a truth that does so by `trueShare` of it; the air
 * that leaves the bed stands at the wet bulb of the true air, read with some scatter.
 */
function evidence(trueShare: number, scatter: number, hasProbe = true): readonly ProbeEvidence[] {
  const noise = gaussian(seededRandom(3), 4 * COUNT);
  const draw = (place: number): number => noise[place] as number;
  const rows = Array.from({ length: COUNT }, (_, at) =>
    load(at, {
      airAtLoading: {
        celsius: 10 + 8 * Math.sin(at / 5) + draw(at),
        relativeHumidityPercent: 70 + 8 * draw(COUNT + at),
        source: "logged",
      },
    }),
  );
  const drift = (at: number): number => -0.1 * Math.max(0, at - 29);
  const points = rows.map(
    (row, at): OffsetPoint => ({
      load: row.load,
      runs: row.runs,
      at: row.loadedAt,
      offsetKelvin: drift(at) + 0.12 * draw(2 * COUNT + at),
      standardErrorKelvin: 0.03,
      duty: 0.5,
      swingKelvin: null,
      riseKelvinPerMinute: null,
      setCelsius: SET,
      stretch: 0,
    }),
  );
  const read = rows.map((row, at): [string, ThermostatLoad] => {
    const entering = {
      celsius: row.airAtLoading?.celsius ?? Number.NaN,
      relativeHumidityPercent: row.airAtLoading?.relativeHumidityPercent ?? Number.NaN,
      heatedToCelsius: SET + trueShare * drift(at),
      pressurePascals: STANDARD_PRESSURE_PASCALS,
    };
    const airOff = heatedWetBulb(entering) + 0.5 + scatter * draw(3 * COUNT + at);
    return [row.load, { ...bareThermostatLoad, load: row.load, dryingAirOffCelsius: hasProbe ? airOff : null }];
  });
  const byLoad = new Map(rows.map((row) => [row.load, row]));
  return probeEvidence("drying", points, new Map(read), byLoad, STANDARD_PRESSURE_PASCALS);
}

const airOff = (found: readonly ProbeEvidence[]): ProbeEvidence | undefined =>
  found.find(({ probe }) => probe === "air_off");

describe("probeEvidence(hold, points, read, rows, pressurePascals)", () => {
  it("speaks for the thermostat where the air off the bed followed, by as much as its wet bulb does", () => {
    const { speaks, change, airOnKelvin, leastKelvin } = airOff(evidence(1, 0.2)) ?? {};
    expect(speaks).toBe("thermostat");
    expect(airOnKelvin).toLieWithin(-3, 0.3);
    expect(change?.low).toBeLessThan(leastKelvin ?? 0);
    expect(change?.high).toBeGreaterThan(leastKelvin ?? 0);
  });

  it("speaks for the logger where only air on was read otherwise", () => {
    const { speaks, change } = airOff(evidence(0, 0.2)) ?? {};
    expect(speaks).toBe("logger");
    expect(change?.low).toBeLessThan(0);
    expect(change?.high).toBeGreaterThan(0);
  });

  it("is open where the probe scatters too far to tell", () => {
    for (const trueShare of [0, 1]) expect(airOff(evidence(trueShare, 4))?.speaks).toBe("open");
  });

  it("says of a probe that is not logged that no load has it", () => {
    for (const { loads, change, speaks } of evidence(1, 0.2, false)) {
      expect([loads, change, speaks]).toEqual([0, null, "open"]);
    }
  });
});
