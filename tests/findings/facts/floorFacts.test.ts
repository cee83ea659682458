import { describe, expect, it } from "vitest";
import type { FactFrame } from "../../../src/findings/facts/factFrame.ts";
import { floorFacts } from "../../../src/findings/facts/floorFacts.ts";
import type { BedFact } from "../../../src/report/fact.ts";
import type { AcrospireRun, SteepGerminationResult } from "../../../src/report/steepGerminationResult.ts";
import { acrospire, around } from "../handMadeFloor.ts";

const PER_KELVIN = 0.06;
const COUNT = 30;
const LATEST = 6;
/** The other bed is warmer by turns, by two kelvins and by none. */
const warmer = (at: number): number => (at % 2 === 0 ? 2 : 0);

/** Batches in two beds of which B2 lags by `behind` in the latest six, with each bed's warmth in its length. */
function twoBeds(behind: number, celsiusOf: (at: number) => number = warmer): readonly AcrospireRun[] {
  return Array.from({ length: COUNT }, (_, at) => {
    const lag = at >= COUNT - LATEST ? behind : 0;
    // A hundredth either way: what a count of kernels is good to.
    const counting = at % 3 === 0 ? 0.01 : -0.01;
    const bed = (name: string, celsius: number, less: number) => ({
      bed: name,
      counts: null,
      counted: 100,
      meanLength: 0.75 + PER_KELVIN * (celsius - 15) - less,
      bedMeanCelsius: celsius,
    });
    return acrospire(at, 0.75, {
      targets: null,
      beds: [bed("B1", 15 + celsiusOf(at), 0), bed("B2", 15, lag + counting)],
    });
  });
}

function bedFactsOf(acrospires: readonly AcrospireRun[], perKelvin: number | null): readonly BedFact[] {
  const last = acrospires.at(-1)?.at ?? Number.NaN;
  const lengthOnTemperature =
    perKelvin === null ? null : { batches: COUNT, perKelvin: around(perKelvin, 0.01), line: [] };
  const steepGermination = { acrospires, growth: null, lengthOnTemperature } as unknown as SteepGerminationResult;
  const report = { steepGermination } as FactFrame["report"];
  const frame = { report, latestRuns: [], from: last - 20 * 86_400_000, before: last + 1 } as unknown as FactFrame;
  return floorFacts(frame).filter((fact) => fact.kind === "bed");
}

describe("floorFacts(frame), of beds side by side", () => {
  it("finds a bed that lags beneath what the beds' own warmth does, at the house's growth a kelvin", () => {
    const [fact, ...others] = bedFactsOf(twoBeds(0.08), PER_KELVIN);
    expect(others).toEqual([]);
    expect(fact).toMatchObject({ bed: "B2", atOneTemperature: true, runCount: LATEST });
    expect(fact?.difference.estimate).toLieWithin(-0.08, 0.005);
    expect(fact?.chanceReal).toBeGreaterThan(0.99);
    // Without it the same lag is no surer than a coin.
    expect(bedFactsOf(twoBeds(0.08), null)[0]?.chanceReal).toBeLessThan(0.5);
  });

  it("still names a bed that fell behind because it grew cold", () => {
    const colder = twoBeds(0, (at) => (at >= COUNT - LATEST ? 3 : 0));
    const [fact] = bedFactsOf(colder, PER_KELVIN);
    expect(fact).toMatchObject({ bed: "B2", atOneTemperature: false });
    expect(fact?.difference.estimate).toLieWithin(-0.18, 0.005);
  });

  it("says nothing of beds that grow as they did", () => {
    expect(bedFactsOf(twoBeds(0), PER_KELVIN)).toEqual([]);
  });
});
