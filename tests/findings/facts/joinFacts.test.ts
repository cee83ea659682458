import { describe, expect, it } from "vitest";
import { noLoss } from "../../../src/findings/facts/factFrame.ts";
import { costOf, joinFacts } from "../../../src/findings/facts/joinFacts.ts";
import type { ChartFact, EnergyFact, Fact, HoursFact, SteepFact } from "../../../src/report/fact.ts";
import type { HouseCosts } from "../../../src/report/reviewResult.ts";

const costs: HouseCosts = {
  currency: "EUR",
  perKilowattHour: 0.2,
  perLabourHour: 20,
  perKilogramMalt: 1.5,
  perRefusedBatch: 300,
};
const base = { from: 0, to: 10, runs: ["1", "2"], runCount: 2, chanceReal: 0.9, loss: noLoss, beside: [] };
const slow: HoursFact = {
  ...base,
  kind: "kiln hours",
  hoursOver: { estimate: 2, low: 1, high: 3 },
  loss: { ...noLoss, kilnHours: 12 },
};
const damp: ChartFact = {
  ...base,
  kind: "chart",
  measure: "final_moisture_pct",
  variety: null,
  size: 0.4,
  single: false,
  from: 5,
  to: 20,
};
const dear: EnergyFact = { ...base, kind: "energy", perKilogramOver: { estimate: 0.2, low: 0.1, high: 0.3 } };

describe("costOf(loss, costs)", () => {
  it("prices each part, a quarter of an hour's work with each kiln hour", () => {
    const loss = { kilnHours: 4, labourHours: 1, kilowattHours: 10, kilogramsMalt: 2, refusedBatches: 0.5 };
    expect(costOf(loss, costs)).toAgreeWithin(2 + 2 * 20 + 3 + 150, 1e-12);
  });

  it("is not known where the house names no price", () => {
    const none = { currency: null, perKilowattHour: null, perLabourHour: null, perKilogramMalt: null };
    expect(costOf(slow.loss, { ...none, perRefusedBatch: null })).toBeNull();
  });
});

describe("joinFacts(facts, costs)", () => {
  it("makes one finding of a slow kiln, damp malt and dear water at the same time", () => {
    const [finding, ...others] = joinFacts([slow, damp, dear], costs);
    expect(others).toEqual([]);
    expect(finding?.cause).toBe("kiln air");
    expect(finding?.facts).toHaveLength(3);
    expect(finding?.chanceReal).toAgreeWithin(1 - 0.1 ** 3, 1e-12);
  });

  it("keeps apart what did not happen together, and what points the other way", () => {
    const later = { ...damp, from: 30, to: 40 };
    expect(joinFacts([slow, later], costs).map(({ cause }) => cause)).toEqual(["kiln hours", "chart"]);
    const dry = { ...damp, size: -0.4 };
    expect(joinFacts([slow, dry], costs)).toHaveLength(2);
  });

  it("makes one finding of a yield and a gain in mass that moved the same way, as with a scale", () => {
    const low: ChartFact = { ...damp, measure: "dry_yield_pct", size: -1.8 };
    const apart = (estimate: number): SteepFact => {
      const points = { estimate, low: estimate - 0.4, high: estimate + 0.4 };
      return { ...base, kind: "steep", shape: "bias moved", points };
    };
    expect(joinFacts([low, apart(1.1)], costs).map(({ cause }) => cause)).toEqual(["scale"]);
    expect(joinFacts([low, apart(-1.1)], costs)).toHaveLength(2);
    expect(joinFacts([low, { ...apart(1.1), shape: "bias" }], costs)).toHaveLength(2);
  });

  it("ranks by cost times chance, and what costs nothing yet above nothing", () => {
    const cheap: Fact = { ...slow, hoursOver: { estimate: -1, low: -2, high: -0.5 }, loss: noLoss };
    const dearer: Fact = { ...damp, loss: { ...noLoss, refusedBatches: 1 }, from: 30, to: 40 };
    const ranked = joinFacts([cheap, dearer], costs);
    expect(ranked.map(({ cause }) => cause)).toEqual(["chart", "kiln hours"]);
    expect(ranked.every(({ rank }) => rank > 0)).toBe(true);
  });

  it("says the same id of the same trouble a month later", () => {
    const [one] = joinFacts([damp], costs);
    const [other] = joinFacts([{ ...damp, from: 8, to: 60, runs: ["9"], runCount: 1 }], costs);
    expect(other?.id).toBe(one?.id);
  });
});
