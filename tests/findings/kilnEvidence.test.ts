import { describe, expect, it } from "vitest";
import {
  coverageSentence,
  energySentence,
  guessSentence,
  underWaySentence,
  unfittedSentence,
} from "../../src/findings/kilnEvidence.ts";
import { plainText, type Sentence } from "../../src/findings/sentence.ts";
import type { GuessComparison, UnderWay, UnfittedLoad } from "../../src/report/kilnHoursResult.ts";

const said = (sentence: Sentence): string => plainText(sentence).replaceAll("\u00a0", " ");

describe("coverageSentence(coverage)", () => {
  it("says how often the interval held, with its own interval", () => {
    expect(said(coverageSentence({ held: 94, of: 106, percent: { estimate: 88.7, low: 81, high: 93 } }))).toBe(
      "The 90 % interval, made before each load, held 94 of 106 (89 %; 81 % to 93 % allowing for chance).",
    );
  });

  it("calls an interval too narrow or too wide only where chance is ruled out", () => {
    const narrow = said(coverageSentence({ held: 60, of: 100, percent: { estimate: 60, low: 50, high: 69 } }));
    expect(narrow).toContain("too narrow");
    const wide = said(coverageSentence({ held: 300, of: 300, percent: { estimate: 100, low: 98.7, high: 100 } }));
    expect(wide).toContain("wider than it need be");
    expect(said(coverageSentence({ held: 0, of: 0, percent: { estimate: 0, low: 0, high: 0 } }))).toContain("untried");
  });
});

describe("guessSentence(comparison)", () => {
  const comparison: GuessComparison = {
    guesses: [
      { kind: "drying-air", rootMeanSquareHours: 0.5, meanAbsoluteHours: 0.4 },
      { kind: "humidity-and-depth", rootMeanSquareHours: 0.6, meanAbsoluteHours: 0.5 },
    ],
    loads: 90,
    bestOverSecond: { estimate: -0.1, low: -0.2, high: 0.1 },
    winner: null,
  };

  it("names a winner only where the comparison does", () => {
    expect(said(guessSentence(comparison))).toContain("cannot be told apart");
    expect(said(guessSentence({ ...comparison, winner: "drying-air" }))).toContain("Best on 90 loads");
  });
});

describe("unfittedSentence(unfitted)", () => {
  const left = (reason: string): UnfittedLoad => ({
    load: "x",
    runs: ["x"],
    kiln: "1",
    loadedAt: 0,
    hours: null,
    reason,
  });

  it("counts by reason, the commonest first", () => {
    expect(said(unfittedSentence([left("no bed depth"), left("power-limited"), left("power-limited")]))).toBe(
      "3 loads are not in the fit: 2 power-limited and 1 no bed depth.",
    );
    expect(said(unfittedSentence([]))).toBe("Every load is in the fit.");
  });
});

describe("energySentence(energy, units)", () => {
  it("sets the energy for the water beside the latent heat, in the reader's units", () => {
    const energy = {
      loads: [],
      medianKilowattHours: 410,
      medianPerKilogramWater: 1.21,
      latentHeatFloor: 0.66,
      floorCelsius: 30,
    };
    expect(said(energySentence(energy, "metric"))).toContain("1.21 kWh/kg of water removed");
    // 1.21 kWh/kg × 0.45359237 kg/lb = 0.549 kWh/lb; 30 °C is 86 °F.
    expect(said(energySentence(energy, "us"))).toContain("0.55 kWh/lb of water removed; to evaporate a pound at 86 °F");
  });
});

describe("underWaySentence(load, timeZone)", () => {
  const load: UnderWay = {
    load: "L9",
    runs: ["R9"],
    kiln: "1",
    loadedAt: Date.UTC(2026, 9, 30, 18, 5),
    hours: { estimate: 14.1, low: 12.8, high: 15.4 },
    whyNot: null,
  };

  it("says clock times to ten minutes", () => {
    expect(said(underWaySentence(load, "UTC"))).toBe(
      "In the kiln since 18:05 on 30 Oct 2026: off about 08:10 on 31 Oct 2026, in 90 of 100 such loads between 06:50 and 09:30.",
    );
  });

  it("says why there is no estimate", () => {
    expect(said(underWaySentence({ ...load, hours: null, whyNot: "no earlier load was much like it" }, "UTC"))).toBe(
      "In the kiln since 18:05 on 30 Oct 2026; no estimate, since no earlier load was much like it.",
    );
  });
});
