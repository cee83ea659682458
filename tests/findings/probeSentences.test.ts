import { describe, expect, it } from "vitest";
import { doubtSentence, loggerDoubts } from "../../src/findings/loggerDoubts.ts";
import { probeSentences } from "../../src/findings/probeSentences.ts";
import { plainText, type Sentence } from "../../src/findings/sentence.ts";
import type { Reader } from "../../src/findings/thermostatWords.ts";
import type { KilnThermostat, ProbeEvidence } from "../../src/report/thermostatResult.ts";
import { loadsOnAPlane } from "../support/loads.ts";
import { interval } from "../support/madeUpChart.ts";
import { madeUpKiln } from "../support/madeUpThermostat.ts";

const reader: Reader = { units: "metric", timeZone: "UTC" };
const said = (sentence: Sentence): string => plainText(sentence).replaceAll("\u00a0", " ");
const loads = loadsOnAPlane(60, { intercept: 1, perPoint: 0.074, perMetre: 45, noise: 0.4 });

function kilnWith(change: "creep" | "steady", probes: readonly Partial<ProbeEvidence>[]): KilnThermostat {
  const kiln = madeUpKiln(loads, change);
  const whole = probes.map(
    (probe): ProbeEvidence => ({
      probe: "air_off",
      speaks: "open",
      change: interval(-0.4, -0.7, -0.1),
      airOnKelvin: -1.1,
      leastKelvin: -0.3,
      loads: 48,
      ...probe,
    }),
  );
  return { ...kiln, drying: kiln.drying && { ...kiln.drying, probes: whole } };
}

describe("probeSentences(kiln, reader)", () => {
  it("says that air off moved along, by how much, and what that speaks for", () => {
    const [first, caution] = probeSentences(kilnWith("creep", [{ speaks: "thermostat" }]), reader).map(said);
    expect(first).toBe(
      "The air that leaves the bed, early in the drying hold, moved with it: −0.4 (−0.7 to −0.1) °C at equal air outside, where air on moved −1.1 °C. That speaks for the thermostat.",
    );
    expect(caution).toContain("one logger");
  });

  it("says that the bed did not move, and the doubt about the logger comes first", () => {
    const still = kilnWith("creep", [{ probe: "bed", speaks: "logger", change: interval(0, -0.2, 0.2) }]);
    expect(said(probeSentences(still, reader)[0] ?? [])).toBe(
      "The probe in the bed, early in the drying hold, did not move with it: 0.0 (−0.2 to +0.2) °C at equal air outside, where air on moved −1.1 °C, and with a thermostat would have moved −0.3 °C at the least. That speaks for the logger’s probe at air on.",
    );
    const [doubt] = loggerDoubts(still);
    expect(doubt?.kind).toBe("probesStill");
    expect(said(doubtSentence(doubt ?? { kind: "probesStill" }, reader))).toContain(
      "The logger may be the one that is off",
    );
  });

  it("raises no doubt where one probe moved and another did not", () => {
    const both = kilnWith("creep", [{ speaks: "thermostat" }, { probe: "bed", speaks: "logger" }]);
    expect(loggerDoubts(both).map(({ kind }) => kind)).not.toContain("probesStill");
  });

  it("says what logging a probe would tell where none is logged", () => {
    const none = [
      { loads: 0, change: null },
      { probe: "bed" as const, loads: 0, change: null },
    ];
    expect(probeSentences(kilnWith("creep", none), reader).map(said)).toEqual([
      expect.stringContaining("A probe there would tell"),
    ]);
  });

  it("gathers the probes that cannot tell in one sentence, after the one that can", () => {
    const mixed = [{ speaks: "thermostat" as const }, { probe: "bed" as const }];
    const [first, second] = probeSentences(kilnWith("creep", mixed), reader).map(said);
    expect(first).toContain("moved with it");
    expect(second).toBe(
      "Too uneven from load to load, or in too few loads, to tell: the probe in the bed early in the drying hold.",
    );
  });

  it("says nothing where nothing is alarmed", () => {
    expect(probeSentences(kilnWith("steady", [{ speaks: "thermostat" }]), reader)).toEqual([]);
  });
});
