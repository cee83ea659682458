import { describe, expect, it } from "vitest";
import { seededRandom } from "../../../src/analysis/seededRandom.ts";
import { driftEvidence } from "../../../src/report/thermostat/driftEvidence.ts";
import type { DriftEvidence, OffsetPoint } from "../../../src/report/thermostatResult.ts";
import { gaussian } from "../../analysis/gaussian.ts";
import { load } from "../../support/loads.ts";

const COUNT = 60;

interface Truth {
  /** K, over the last thirty loads. */
  readonly swingGrows?: number;
  readonly riseFalls?: number;
  readonly riseScatter?: number;
  /** K a minute faster before the tenth load. */
  readonly fasterAtFirst?: number;
  readonly isRepairLogged?: boolean;
}

/** Offsets that creep down by 3 K over the last thirty loads; the rise at full power goes with the air outside. */
function evidence(truth: Truth, kind: DriftEvidence["kind"], hasAir = true): DriftEvidence | undefined {
  const { swingGrows = 0, riseFalls = 0, riseScatter = 0.05, fasterAtFirst = 0, isRepairLogged = false } = truth;
  const noise = gaussian(seededRandom(6), 4 * COUNT);
  const draw = (place: number): number => noise[place] as number;
  const share = (at: number): number => Math.max(0, at - 29) / 30;
  const celsiusOf = (at: number): number => 10 + 8 * Math.sin(at / 6) + draw(at);
  const rows = Array.from({ length: COUNT }, (_, at) => {
    const air = { celsius: celsiusOf(at), relativeHumidityPercent: 70, source: "logged" } as const;
    return load(at, { airAtLoading: hasAir ? air : null, airOverLoad: null });
  });
  const points = rows.map(
    (row, at): OffsetPoint => ({
      load: row.load,
      runs: row.runs,
      at: row.loadedAt,
      offsetKelvin: -3 * share(at) + 0.12 * draw(COUNT + at),
      standardErrorKelvin: 0.03,
      duty: 0.5,
      swingKelvin: 5 + swingGrows * share(at) + 0.1 * draw(2 * COUNT + at),
      riseKelvinPerMinute:
        1 +
        (at < 10 ? fasterAtFirst : 0) +
        0.03 * (celsiusOf(at) - 10) -
        riseFalls * share(at) +
        riseScatter * draw(3 * COUNT + at),
      setCelsius: 48,
      stretch: 0,
    }),
  );
  const byLoad = new Map(rows.map((row) => [row.load, row]));
  const repairedAt = isRepairLogged ? points[10]?.at : undefined;
  return driftEvidence(points, byLoad, repairedAt).find((one) => one.kind === kind);
}

describe("driftEvidence(points, rows)", () => {
  it("speaks for a set point whose cycles moved", () => {
    expect(evidence({}, "set point")?.speaks).toBe("for");
  });

  it("speaks for worn contacts where the swing grew, and against them where it did not", () => {
    expect(evidence({ swingGrows: 2 }, "worn contacts")?.speaks).toBe("for");
    expect(evidence({}, "worn contacts")?.speaks).toBe("against");
  });

  it("speaks for a weak heater or fan where the rise fell at equal air outside, and against it where it held", () => {
    expect(evidence({ riseFalls: 0.4 }, "weak heater or fan")?.speaks).toBe("for");
    const held = evidence({}, "weak heater or fan");
    expect([held?.speaks, held?.isAtEqualAir]).toEqual(["against", true]);
  });

  it("cannot tell of heater and fan where the rise scatters too far: an interval that holds 0 clears nothing", () => {
    const open = evidence({ riseScatter: 1 }, "weak heater or fan");
    expect(open?.speaks).toBe("open");
    expect(open?.change?.low).toBeLessThan(-0.2);
  });

  it("leaves the rise before a repair of heater or fan out of the comparison", () => {
    const unlogged = evidence({ fasterAtFirst: 1 }, "weak heater or fan");
    expect(unlogged?.speaks).not.toBe("against");
    const logged = evidence({ fasterAtFirst: 1, isRepairLogged: true }, "weak heater or fan");
    expect(logged?.speaks).toBe("against");
    expect(logged?.before).toLieWithin(1, 0.1);
  });

  it("takes the rise as it is where the air outside is not known", () => {
    expect(evidence({ riseFalls: 0.4 }, "weak heater or fan", false)?.isAtEqualAir).toBe(false);
  });
});
