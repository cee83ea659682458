import { describe, expect, it } from "vitest";
import { effectBasis, effectSize } from "../../src/findings/driftEffectWords.ts";
import { driftKindSentence } from "../../src/findings/driftKind.ts";
import { fanSentence } from "../../src/findings/fanSentence.ts";
import { kilnCard } from "../../src/findings/kilnCard.ts";
import { plainText, type Sentence } from "../../src/findings/sentence.ts";
import {
  alarmSentence,
  changeSentence,
  explainingTests,
  modelsSentence,
  stretchSentence,
  withoutSentence,
} from "../../src/findings/stretchSentences.ts";
import type { Reader } from "../../src/findings/thermostatWords.ts";
import type { DriftEvidence, HoldJudgement, KilnThermostat } from "../../src/report/thermostatResult.ts";
import { loadsOnAPlane } from "../support/loads.ts";
import { interval } from "../support/madeUpChart.ts";
import { evidenceOf, madeUpKiln, madeUpModels } from "../support/madeUpThermostat.ts";

const DAY = 86_400_000;
const reader: Reader = { units: "metric", timeZone: "UTC" };
const said = (sentence: Sentence): string => plainText(sentence).replaceAll("\u00a0", " ");
const loads = loadsOnAPlane(60, { intercept: 1, perPoint: 0.074, perMetre: 45, noise: 0.4 });
const creeping = madeUpKiln(loads, "creep");
const steady = madeUpKiln(loads, "steady");
const times = { from: Date.UTC(2026, 0, 1), onset: Date.UTC(2026, 8, 1), to: Date.UTC(2026, 9, 31) };

function latest(kiln: KilnThermostat) {
  const stretch = kiln.drying?.stretches.at(-1);
  if (stretch === undefined) throw new RangeError("the made-up kiln has a stretch");
  return stretch;
}

describe("alarmSentence(stretch, timeZone)", () => {
  it("says when and by which chart, or that neither did", () => {
    expect(said(alarmSentence(latest(creeping), "UTC"))).toBe(
      "Alarm raised 13 October 2025 by the running mean and the cumulative sum: below what the first 10 loads allow.",
    );
    expect(said(alarmSentence(latest(steady), "UTC"))).toBe(
      "Neither the running mean nor the cumulative sum has left what the first 10 loads allow.",
    );
  });
});

describe("changeSentence(models, reader)", () => {
  it("gives a creep's rate with its interval and its onset", () => {
    const words = said(changeSentence(madeUpModels("creep", times), reader));
    // 1.1 K in the 60 days from 1 September: 0.558 K in 30.44 days, made up with 0.14 either side.
    expect(words).toContain("A creep down 0.56 °C a month (95 % interval 0.42 to 0.70 °C)");
    expect(words).toContain("begun on a day between 20 August and 10 September 2026 (best guess 1 Sep 2026)");
    expect(words).toContain("(Theil–Sen)");
  });

  it("gives a step's size, its interval with signs where it reaches over nothing", () => {
    const models = madeUpModels("step", times);
    expect(said(changeSentence(models, reader))).toContain("A step down 1.1 °C (95 % interval 0.8 to 1.4 °C)");
    const unsure = { ...models, stepKelvin: interval(-0.3, -0.7, 0.1) };
    expect(said(changeSentence(unsure, reader))).toContain("interval −0.7 to +0.1 °C");
  });

  it("is empty for a level that never moved", () => {
    expect(changeSentence(madeUpModels("steady", times), reader)).toEqual([]);
  });
});

describe("modelsSentence(models)", () => {
  it("names both stories where neither is clearly better", () => {
    const models = madeUpModels("step", times);
    expect(said(modelsSentence(models))).toBe(
      "Of three stories, no change, one step and a creep, one step fits best and clearly: a creep comes 8.0 behind (BIC; 6 is clear).",
    );
    expect(said(modelsSentence({ ...models, isClear: false }))).toContain(
      "Not settled: one step fits best, but a creep nearly as well",
    );
  });
});

describe("explainingTests(models, timeZone)", () => {
  it("says that they never alarm, and is empty without them", () => {
    const models = madeUpModels("creep", times);
    expect(said(explainingTests(models, "UTC"))).toMatch(/^To explain only, never to alarm: Mann–Kendall p < 0\.001/);
    expect(explainingTests({ ...models, mannKendallP: null, pettitt: null }, "UTC")).toEqual([]);
  });
});

describe("stretchSentence(stretch, reader)", () => {
  it("says in a line what a stretch came to", () => {
    expect(said(stretchSentence(latest(creeping), reader))).toContain("crept down 0.61 °C a month.");
    expect(said(stretchSentence(latest(steady), reader))).toBe(
      "Since its calibration on 10 March 2025 (47 loads, 12 Mar 2025 to 28 Oct 2025): steady.",
    );
    expect(said(stretchSentence({ ...latest(steady), loads: 0 }, reader))).toContain("nothing to judge");
  });
});

describe("withoutSentence(judgement)", () => {
  const judgement = (without: HoldJudgement["without"]): HoldJudgement => {
    if (creeping.drying === null) throw new RangeError("the made-up kiln has a drying hold");
    return { ...creeping.drying, without };
  };

  it("counts by reason, the commonest first", () => {
    const words = withoutSentence(
      judgement([
        { reason: "no set point logged", count: 1 },
        { reason: "the heater could not hold the set point", count: 4 },
      ]),
    );
    expect(said(words)).toBe(
      "No offset is claimed for 5 loads: the heater could not hold the set point (4) and no set point logged (1).",
    );
    expect(withoutSentence(judgement([]))).toEqual([]);
    expect(said(withoutSentence(judgement([{ reason: "no set point logged", count: 1 }])))).toBe(
      "No offset is claimed for 1 load: no set point logged.",
    );
  });
});

describe("driftKindSentence(evidence)", () => {
  const evidence = (kind: DriftEvidence["kind"], speaks: DriftEvidence["speaks"]): DriftEvidence =>
    evidenceOf({ kind, speaks });

  it("weighs the kinds and is no verdict", () => {
    const words = said(
      driftKindSentence([
        evidence("set point", "for"),
        evidence("worn contacts", "against"),
        evidence("weak heater or fan", "against"),
        evidence("season", "open"),
      ]),
    );
    expect(words).toBe(
      "The evidence speaks for a set point that has moved and against worn contacts and a weak heater or fan; nothing can be said on the season. It is evidence, no verdict.",
    );
  });

  it("says so where nothing can be told, and nothing where nothing was looked at", () => {
    expect(said(driftKindSentence([evidence("season", "open")]))).toContain("cannot be told from these loads");
    expect(said(driftKindSentence([evidence("season", "against")]))).toContain("speaks against the season.");
    expect(driftKindSentence([])).toEqual([]);
  });
});

describe("fanSentence(kiln, reader)", () => {
  it("says where the fan switched and how much of its air went through the bed", () => {
    // Offsets 0.6, 0.7, 0.9, 1.0 and 1.1 (one is not known); shares 0.70 to 0.80.
    const words = said(fanSentence(creeping, reader));
    expect(words).toContain("set at 45 °C, switched 0.9 °C above its set point (middle of 5 loads).");
    expect(words).toContain("ran for 75 % of the hold");
  });

  it("gives no error without a probe at the bulb, and nothing without a fan's thermostat", () => {
    expect(said(fanSentence({ ...creeping, probeAtBulb: false }, reader))).toContain("no error is given");
    expect(fanSentence({ ...creeping, fan: [] }, reader)).toEqual([]);
  });

  it("says that it switched too seldom", () => {
    const fan = creeping.fan.map((one) => ({ ...one, offsetKelvin: null }));
    expect(said(fanSentence({ ...creeping, fan }, reader))).toContain("switched too seldom");
  });
});

describe("effectSize and effectBasis", () => {
  const energy = { measure: "energy", effect: interval(0.1, 0.02, 0.18), loads: 12 } as const;

  it("give the effect in the reader's units, with its interval", () => {
    // 0.1 kWh/kg × 0.45359237 kg/lb = 0.0454 kWh/lb.
    expect(effectSize(energy, "metric").replaceAll("\u00a0", " ")).toBe("+0.100 kWh/kg (+0.020 to +0.180 kWh/kg)");
    expect(effectSize(energy, "us")).toContain("+0.045");
  });

  it("claim more than chance only where the interval keeps clear of nothing", () => {
    expect(effectBasis(energy)).toMatch(/More than chance gives\.$/);
    expect(effectBasis({ ...energy, effect: interval(0.1, -0.02, 0.22) })).toMatch(/No more than chance gives\.$/);
  });

  it("say that it cannot be told", () => {
    const none = { ...energy, effect: null, loads: 1 };
    expect(effectSize(none, "metric")).toBe("cannot be told");
    expect(effectBasis(none)).toContain("1\u00a0load since the change");
  });
});

describe("kilnCard(kiln, altitudeMetres, reader)", () => {
  const steps = (kiln: KilnThermostat): readonly string[] => (kilnCard(kiln, 110, reader)?.steps ?? []).map(said);

  it("checks the logger first, and sends only an electrician into the thermostat", () => {
    const list = steps(creeping);
    expect(list[0]).toMatch(/^Check the logger once more/);
    expect(list[1]).toContain("Steam and boiling water burn");
    expect(list.findIndex((step) => step.includes("electrician set"))).toBeGreaterThan(
      list.findIndex((step) => step.startsWith("Then hot.")),
    );
  });

  it("says first what was found to doubt the logger", () => {
    const stale = { ...creeping, logger: { ...creeping.logger, stale: true, daysSinceCheck: 140 } };
    expect(said(kilnCard(stale, 110, reader)?.found[0] ?? [])).toContain("The logger may be the one that is off");
    expect(steps(stale)[0]).toContain("it may be the one that is off");
  });

  it("looks at heater and fan before the dial where the rise has slowed", () => {
    const { drying } = creeping;
    if (drying === null) throw new RangeError("the made-up kiln has a drying hold");
    const evidence: readonly DriftEvidence[] = [evidenceOf({ kind: "weak heater or fan", speaks: "for" })];
    const list = steps({ ...creeping, drying: { ...drying, evidence } });
    const place = (start: string): number => list.findIndex((step) => step.startsWith(start));
    expect(place("Heater and fan")).toBeGreaterThan(0);
    expect(place("Heater and fan")).toBeLessThan(place("Kiln cold"));
  });

  it("leaves a steady thermostat alone, and says when the logger is due", () => {
    const list = steps(steady);
    expect(list[0]).toContain("leave the dial alone");
    // Last checked on 9 October 2025, and 100 days are allowed.
    const last = Math.max(...steady.logger.checks.map(({ at }) => at));
    expect(last - Date.UTC(2025, 9, 9)).toBeLessThan(DAY);
    expect(list.join(" ")).toContain("next check is due 17 January 2026");
    expect(list.join(" ")).not.toContain("electrician");
  });

  it("hangs nothing where nothing was judged", () => {
    expect(kilnCard(madeUpKiln([]), 110, reader)).toBeNull();
  });
});
