import { describe, expect, it } from "vitest";
import { analyseKilnHours } from "../../../src/report/kilnHours/analyseKilnHours.ts";
import { answerWhatIf } from "../../../src/report/kilnHours/whatIf.ts";
import type { WhatIfInputs } from "../../../src/report/kilnHoursResult.ts";
import type { LoadRow } from "../../../src/report/loadRow.ts";
import { load, loadsOnAPlane } from "../../support/loads.ts";

const PLANE = { intercept: 1, perPoint: 0.074, perMetre: 45, noise: 0.4 };

const analyse = (loads: readonly LoadRow[], without: readonly string[] = []) =>
  analyseKilnHours(loads, {
    air: null,
    without: new Set(without),
    targetMoisturePercent: 4.5,
    pressurePascals: 101_325,
    timeZone: "UTC",
  });

const tonight: WhatIfInputs = {
  relativeHumidityPercent: 70,
  celsius: 10,
  bedDepthMetres: 0.155,
  greenLoadKilograms: null,
  dryingSetCelsius: 48,
  startedAtMinutes: 18 * 60,
  wantedFinishMinutes: 7 * 60,
};

describe("analyseKilnHours(loads, options)", () => {
  it("finds the plane that the hours were made from", () => {
    const { humidityDepth } = analyse(loadsOnAPlane(120, PLANE)).kilnHours;
    const { hoursPerTenPoints, hoursPerCentimetre } = humidityDepth ?? {};
    expect(hoursPerTenPoints?.low).toBeLessThan(0.74);
    expect(hoursPerTenPoints?.high).toBeGreaterThan(0.74);
    expect(hoursPerCentimetre?.low).toBeLessThan(0.45);
    expect(hoursPerCentimetre?.high).toBeGreaterThan(0.45);
    expect(hoursPerTenPoints && hoursPerTenPoints.high - hoursPerTenPoints.low).toBeLessThan(0.2);
  });

  it.each([0, 1, 2, 5, 11])("says in a sentence that %i loads are too few", (count) => {
    const { kilnHours } = analyse(loadsOnAPlane(count, PLANE));
    expect(kilnHours.humidityDepth).toBeNull();
    expect(kilnHours.tooLittle).toContain(count === 0 ? "none" : String(count));
    expect(kilnHours.tooLittle).toContain("12");
  });

  it("answers with a sentence where the bed was never varied", () => {
    const loads = loadsOnAPlane(30, PLANE).map((row) => ({ ...row, bedDepthMetres: 0.15 }));
    expect(analyse(loads).kilnHours.tooLittle).toContain("bed depth");
  });

  it("counts the air of a fan that stood still for its share of the hold, so that such nights stand on the line of the others", () => {
    const running = analyse(loadsOnAPlane(60, PLANE)).kilnHours.dryingAir;
    const needed = running?.dryAirNeededTonnes ?? new Float64Array();
    // Every third night the fan ran for 60 to 90 % of the hold, and the hours are those of so much more air.
    const loads = loadsOnAPlane(60, PLANE).map((row, at) => {
      const share = at % 3 === 0 ? 0.6 + 0.1 * (at % 4) : null;
      const hours = 3 + 0.4 * ((needed[at] ?? Number.NaN) / (share ?? 1)) + 0.01 * (at % 5);
      return { ...row, kilnHours: hours, fanShareOfHold: share };
    });
    const read = analyse(loads).kilnHours.dryingAir;
    expect(read?.hoursPerTonneOfAir.estimate).toAgreeWithin(0.4, 0.01);
    expect(read?.fit.residualStandardDeviation).toBeLessThan(0.02);
    expect(read?.loadsWithFanStops).toBe(20);
    const unread = analyse(loads.map((row) => ({ ...row, fanShareOfHold: null }))).kilnHours.dryingAir;
    expect(unread?.fit.residualStandardDeviation).toBeGreaterThan(0.5);
  });

  it("takes the coming load's fan to run as in the latest five loads, and throughout where nothing is logged", () => {
    const loads = loadsOnAPlane(60, PLANE).map((row, at) => ({ ...row, fanShareOfHold: at < 50 ? null : 0.7 }));
    expect(analyse(loads).kilnHours.dryingAir?.filling.fanShareOfHold).toBe(0.7);
    expect(analyse(loadsOnAPlane(60, PLANE)).kilnHours.dryingAir?.filling.fanShareOfHold).toBe(1);
  });

  it("gives no air needed where the fan hardly ran", () => {
    const loads = loadsOnAPlane(60, PLANE).map((row, at) => ({ ...row, fanShareOfHold: at === 7 ? 0.03 : null }));
    expect(analyse(loads).kilnHours.dryingAir?.loads).toHaveLength(59);
  });

  it("keeps what no fit can use, each with its reason", () => {
    const loads = [
      ...loadsOnAPlane(20, PLANE),
      load(20, { kilnHours: null }),
      load(21, { powerLimited: true }),
      load(22, { airAtLoading: null }),
      load(23, { bedDepthMetres: null }),
      load(24),
    ];
    const { unfitted, underWay } = analyse(loads, ["R24"]);
    expect(unfitted.map(({ load: name, reason }) => `${name}: ${reason}`)).toEqual([
      "L20: still in the kiln",
      "L21: power-limited",
      "L22: no air at loading",
      "L23: no bed depth",
      "L24: left out by hand",
    ]);
    expect(underWay.map((row) => row.load)).toEqual(["L20"]);
    expect(underWay[0]?.hours?.estimate).toBeGreaterThan(0);
  });

  it("never mixes air known at loading with air averaged over the load in one fit", () => {
    const loads = loadsOnAPlane(30, PLANE).map((row, i) =>
      i % 3 === 0 ? { ...row, airOverLoad: row.airAtLoading, airAtLoading: null } : row,
    );
    const { airBasis, kilnHours, unfitted } = analyse(loads);
    expect(airBasis).toBe("at_loading");
    expect(kilnHours.humidityDepth?.loads).toHaveLength(20);
    expect(unfitted.every(({ reason }) => reason === "no air at loading")).toBe(true);
    expect(unfitted).toHaveLength(10);
  });

  it("ranks the guesses on the same loads and names the regression that made the hours over the mean", () => {
    const { guesses } = analyse(loadsOnAPlane(120, PLANE)).kilnHours;
    const kinds = guesses?.guesses.map((guess) => guess.kind) ?? [];
    expect(kinds.indexOf("humidity-and-depth")).toBeLessThan(kinds.indexOf("mean-so-far"));
    expect(guesses?.loads).toBe(108);
  });

  it("names no winner among guesses on hours that nothing explains", () => {
    const { guesses } = analyse(loadsOnAPlane(60, { intercept: 13, perPoint: 0, perMetre: 0, noise: 1 })).kilnHours;
    expect(guesses?.guesses).toHaveLength(4);
    expect(guesses?.winner === "humidity-and-depth" || guesses?.winner === "drying-air").toBe(false);
  });

  it("holds what came about 90 times in 100 when the plane is the truth", () => {
    const { coverage } = analyse(loadsOnAPlane(400, PLANE)).kilnHours;
    // 388 loads judged: three standard errors of a share of 0.9 are 4.6 points.
    expect(coverage && (100 * coverage.held) / coverage.of).toLieWithin(90, 4.6);
  });
});

describe("answerWhatIf(result, inputs, units)", () => {
  const result = analyse(loadsOnAPlane(120, PLANE));

  it("gives the plane's own hours, within their interval", () => {
    const answer = answerWhatIf(result, tonight, "metric");
    const truth = PLANE.intercept + PLANE.perPoint * 70 + PLANE.perMetre * 0.155;
    expect(answer.kind === "estimate" && answer.kilnHours.low).toBeLessThan(truth);
    expect(answer.kind === "estimate" && answer.kilnHours.high).toBeGreaterThan(truth);
  });

  it("counts the latest start back from the wanted finish by the upper end of the interval", () => {
    const answer = answerWhatIf(result, tonight, "metric");
    if (answer.kind === "refusal") throw new Error(answer.sentence);
    expect(answer.latestStart).toAgreeWithin((24 + 7 - answer.kilnHours.high) * 60, 1e-12);
    expect(answer.offLatest).toAgreeWithin(18 * 60 + answer.kilnHours.high * 60, 1e-12);
  });

  it("refuses what lies outside the logs, in words that name what and how far", () => {
    const answer = answerWhatIf(result, { ...tonight, bedDepthMetres: 0.4 }, "metric");
    expect(answer.kind === "refusal" && answer.sentence).toMatch(
      /bed depth 40\.0.cm.*above the 1[12]\.\d.cm to 1[89]\.\d.cm/,
    );
  });
});
