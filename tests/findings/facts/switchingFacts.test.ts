import { describe, expect, test } from "vitest";
import type { FactFrame } from "../../../src/findings/facts/factFrame.ts";
import { switchingFacts } from "../../../src/findings/facts/switchingFacts.ts";
import type { KilnThermostat, OffsetPoint } from "../../../src/report/thermostatResult.ts";
import { load } from "../../support/loads.ts";
import { madeUpThermostat } from "../../support/madeUpThermostat.ts";

const loads = Array.from({ length: 30 }, (_, at) => load(at));
const sound = madeUpThermostat(loads).kilns[0] as KilnThermostat;

/** The made-up kiln with these swings in its drying hold, and none in its cure. */
function withSwings(swingOf: (at: number, of: number) => number | null): KilnThermostat {
  const { drying } = sound;
  if (drying === null) throw new Error("the made-up kiln has a drying hold");
  const points = drying.points.map(
    (point, at): OffsetPoint => ({ ...point, swingKelvin: swingOf(at, drying.points.length) }),
  );
  return { ...sound, drying: { ...drying, points }, cure: null };
}

const last = sound.drying?.points.at(-1)?.at ?? Number.NaN;
const frame = { from: last - 20 * 86_400_000, before: last + 1 } as FactFrame;
/** Swings scatter by a tenth of a kelvin. */
const usual = (at: number): number => 3.4 + (at % 2 === 0 ? 0.1 : -0.1);

describe("switchingFacts", () => {
  test("says nothing of a thermostat that switches as it did", () => {
    expect(switchingFacts(frame, withSwings(usual))).toEqual([]);
  });

  test("names a swing that grew in the latest loads, and by how much", () => {
    const found = switchingFacts(
      frame,
      withSwings((at, of) => usual(at) + (at >= of - 6 ? 2 : 0)),
    );
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ hold: "drying", shape: "worn contacts", movedKelvin: 0, runCount: 6 });
    expect(found[0]?.widerKelvin?.estimate).toLieWithin(2, 0.05);
    expect(found[0]?.chanceReal).toBeGreaterThan(0.99);
  });

  test("says nothing of a swing that narrowed, or of loads without one", () => {
    const narrower = withSwings((at, of) => usual(at) - (at >= of - 6 ? 2 : 0));
    expect(switchingFacts(frame, narrower)).toEqual([]);
    expect(
      switchingFacts(
        frame,
        withSwings(() => null),
      ),
    ).toEqual([]);
  });
});
