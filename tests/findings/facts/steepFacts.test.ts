import { describe, expect, it } from "vitest";
import type { FactFrame } from "../../../src/findings/facts/factFrame.ts";
import { steepFacts } from "../../../src/findings/facts/steepFacts.ts";
import type { SteepFact } from "../../../src/report/fact.ts";
import type { SteepGerminationResult } from "../../../src/report/steepGerminationResult.ts";
import { around, steep } from "../handMadeFloor.ts";

const COUNT = 40;
const LATEST = 6;
const USUAL_BIAS = 0.3;

/** Every other steep has its moisture measured; the gain in mass says `gained` more of the latest six, the meter `measured` more. */
function factsOf(gained: number, measured: number): readonly SteepFact[] {
  const steeps = Array.from({ length: COUNT }, (_, at) => {
    const isLatest = at >= COUNT - LATEST;
    const scatter = at % 4 < 2 ? 0.1 : -0.1;
    const byMass = 44 + scatter / 2 + (isLatest ? gained : 0);
    const byMeter = at % 2 === 0 ? 44 + USUAL_BIAS - scatter / 2 + (isLatest ? measured : 0) : null;
    return steep(at, byMeter ?? byMass, {
      fromMassGainPercent: byMass,
      measuredPercent: byMeter,
      basis: byMeter === null ? "from mass gain" : "measured",
    });
  });
  const differences = steeps.flatMap(({ run, measuredPercent, fromMassGainPercent }) =>
    measuredPercent === null ? [] : [{ run, points: measuredPercent - (fromMassGainPercent ?? Number.NaN) }],
  );
  const mean = differences.reduce((sum, { points }) => sum + points, 0) / differences.length;
  const bias = { batches: differences.length, meanPoints: around(mean, 0.1), limits: [0, 0], clear: true, differences };
  const latestRuns = steeps.slice(-LATEST);
  const before = (steeps.at(-1)?.startedAt ?? Number.NaN) + 1;
  const report = { steepGermination: { steeps, bias } as unknown as SteepGerminationResult } as FactFrame["report"];
  return steepFacts({ report, latestRuns, monthRuns: latestRuns, before } as unknown as FactFrame);
}

const sure = (facts: readonly SteepFact[]) => facts.filter(({ chanceReal }) => chanceReal > 0.8);

describe("steepFacts(frame)", () => {
  it("names meter and scale that have come apart, and says nothing of the steep itself", () => {
    const facts = factsOf(-1.1, 0);
    expect(facts.map(({ shape }) => shape)).toEqual(["bias moved"]);
    expect(facts[0]?.points.estimate).toLieWithin(1.1, 0.15);
    expect(facts[0]?.runCount).toBe(LATEST / 2);
    expect(sure(facts)).toHaveLength(1);
  });

  it("names a steep that both say came out damper or drier", () => {
    const facts = sure(factsOf(-1, -1));
    expect(facts.map(({ shape }) => shape)).toEqual(["shift"]);
    expect(facts[0]?.points.estimate).toLieWithin(-1, 0.1);
  });

  it("holds what the gain in mass says against what the meter says by what the two usually differ by", () => {
    expect(sure(factsOf(0, 0))).toEqual([]);
  });
});
