import { describe, expect, it } from "vitest";
import { bestModel, dryingAirSentence } from "../../src/findings/bestModel.ts";
import { plainText } from "../../src/findings/sentence.ts";
import { madeUpReport } from "../support/madeUpReport.ts";

const { kilnHours } = madeUpReport(60).kilnHours;

describe("bestModel(analysis)", () => {
  it("is the model that what-if uses", () => {
    expect(bestModel({ ...kilnHours, best: "humidity-and-depth" })?.kind).toBe("humidity-and-depth");
    expect(bestModel({ ...kilnHours, best: "drying-air" })?.kind).toBe("drying-air");
    expect(bestModel({ ...kilnHours, best: null, humidityDepth: null })).toBeNull();
  });
});

describe("dryingAirSentence(analysis)", () => {
  it("calls the drying-air model the better guess only where it won", () => {
    const best = { ...kilnHours, best: "drying-air" as const };
    const { guesses } = kilnHours;
    if (guesses === null) throw new RangeError("sixty loads carry a comparison");
    const won = plainText(dryingAirSentence({ ...best, guesses: { ...guesses, winner: "drying-air" } }));
    expect(won).toContain("since it has guessed best");
    const open = plainText(dryingAirSentence({ ...best, guesses: { ...guesses, winner: null } }));
    expect(open).toContain("not yet proved");
  });

  it("says nothing where the plain regression answers", () => {
    expect(dryingAirSentence({ ...kilnHours, best: "humidity-and-depth" })).toEqual([]);
  });
});
