import { describe, expect, it } from "vitest";
import type { FactFrame } from "../../../src/findings/facts/factFrame.ts";
import { hoursFacts } from "../../../src/findings/facts/hoursFacts.ts";
import type { DryingAirModel, FittedLoad } from "../../../src/report/kilnHoursResult.ts";

const COUNT = 24;
const DAY = 86_400_000;
const RESIDUAL_HOURS = 0.45;

/** A stretch of slow loads, each so many hours over what its weather and bed explain. */
function factsOf(overOf: (at: number) => number) {
  const loads = Array.from({ length: COUNT }, (_, at) => ({
    load: `L${at}`,
    runs: [`R${at}`],
    loadedAt: at * 5 * DAY,
    residualHours: overOf(at),
  })) as unknown as FittedLoad[];
  const model = { loads, fit: { residualStandardDeviation: RESIDUAL_HOURS } } as unknown as DryingAirModel;
  const stretches = [{ from: 0, to: (COUNT - 1) * 5 * DAY, loads: loads.map(({ load }) => load) }];
  const kilnHours = { best: "drying-air", dryingAir: model, stretches };
  const report = { kilnHours: { kilnHours }, runs: [] } as unknown as FactFrame["report"];
  const before = COUNT * 5 * DAY;
  return hoursFacts({ report, latestRuns: [], from: before - 30 * DAY, before } as unknown as FactFrame);
}

describe("hoursFacts(frame)", () => {
  it("speaks of a whole stretch that is slow throughout", () => {
    const [fact] = factsOf(() => 0.5);
    expect(fact).toMatchObject({ from: 0, runCount: COUNT });
    expect(fact?.hoursOver.estimate).toAgreeWithin(0.5, 1e-9);
  });

  it("speaks of the latest loads alone where the kiln has grown slower yet", () => {
    const [fact] = factsOf((at) => (at < COUNT - 6 ? 0.1 : 0.9));
    expect(fact).toMatchObject({ from: (COUNT - 6) * 5 * DAY, runCount: 6 });
    expect(fact?.hoursOver.estimate).toAgreeWithin(0.9, 1e-9);
  });
});
