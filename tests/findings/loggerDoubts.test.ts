import { describe, expect, it } from "vitest";
import { doubtSentence, loggerDoubts } from "../../src/findings/loggerDoubts.ts";
import { checkWays, errorWords, trustSentence } from "../../src/findings/loggerTrust.ts";
import { plainText, type Sentence } from "../../src/findings/sentence.ts";
import type { Reader } from "../../src/findings/thermostatWords.ts";
import type { EventRow } from "../../src/report/eventRow.ts";
import type { KilnThermostat, LoggerTrust } from "../../src/report/thermostatResult.ts";
import { loadsOnAPlane } from "../support/loads.ts";
import { madeUpKiln } from "../support/madeUpThermostat.ts";

const DAY = 86_400_000;
const reader: Reader = { units: "metric", timeZone: "UTC" };
const said = (sentence: Sentence): string => plainText(sentence).replaceAll("\u00a0", " ");
const loads = loadsOnAPlane(60, { intercept: 1, perPoint: 0.074, perMetre: 45, noise: 0.4 });
const stepped = madeUpKiln(loads, "step");
// The made-up step: 3 September 2025, between 22 August and 12 September.
const onset = Date.UTC(2025, 8, 3);

type Check = LoggerTrust["checks"][number];
const check = (at: number, referenceCelsius: number, errorKelvin: number): Check => ({
  at,
  probe: "air_on",
  referenceCelsius,
  readingCelsius: referenceCelsius + errorKelvin,
  note: null,
});
const checked = (checks: readonly Check[], kiln: KilnThermostat = stepped): KilnThermostat => ({
  ...kiln,
  logger: { ...kiln.logger, checks },
});

describe("loggerDoubts(kiln)", () => {
  it("finds none where the checks are recent and sound", () => {
    expect(loggerDoubts(stepped)).toEqual([]);
  });

  it("doubts a logger whose hot checks either side of a step differ as the step does", () => {
    const moved = checked([check(onset - 60 * DAY, 50, 0), check(onset + 40 * DAY, 50, -0.9)]);
    const [doubt] = loggerDoubts(moved);
    expect(doubt?.kind).toBe("checksMoved");
    if (doubt === undefined) return;
    expect(said(doubtSentence(doubt, reader))).toBe(
      "The logger may be the one that is off: it read 0.9 °C lower when checked on 13 October 2025 than on 5 July 2025, and the readings stepped between the two.",
    );
  });

  it("keeps quiet on checks that differ the other way, or that are cold", () => {
    expect(loggerDoubts(checked([check(onset - 60 * DAY, 50, 0), check(onset + 40 * DAY, 50, 0.9)]))).toEqual([]);
    const cold = checked([
      check(onset - 60 * DAY, 0, 0),
      check(onset + 40 * DAY, 0, -0.9),
      check(onset + 50 * DAY, 50, 0),
    ]);
    expect(loggerDoubts(cold)).toEqual([]);
  });

  it("doubts a logger that was worked on where the readings stepped, and only there", () => {
    const work: EventRow = { on: onset, kind: "repair", scope: "logger", what: "new battery", alters: null };
    const [doubt] = loggerDoubts({ ...stepped, events: [work] });
    if (doubt === undefined) throw new RangeError("a logger event at the step is a ground for doubt");
    expect(said(doubtSentence(doubt, reader))).toContain(
      "the readings stepped about 3 September 2025, when work on it was logged (new battery)",
    );
    expect(loggerDoubts({ ...stepped, events: [{ ...work, on: onset - 90 * DAY }] })).toEqual([]);
    expect(loggerDoubts({ ...stepped, events: [{ ...work, scope: "thermostat" }] })).toEqual([]);
  });

  it("doubts a logger that was off in ice and was not checked hot", () => {
    const [doubt] = loggerDoubts(checked([check(onset + 40 * DAY, 0, 0.8)]));
    if (doubt === undefined) throw new RangeError("an ice point that is off is a ground for doubt");
    expect(said(doubtSentence(doubt, reader))).toContain(
      "in ice on 13 October 2025 it read 0.8 °C too high, and it was not checked hot",
    );
    const hotToo = checked([check(onset + 40 * DAY, 0, 0.8), check(onset + 40 * DAY + 1, 50, 0)]);
    expect(loggerDoubts(hotToo)).toEqual([]);
  });

  it("counts days in singular and plural", () => {
    const stale = (days: number): Sentence => doubtSentence({ kind: "stale", days, allowed: 100 }, reader);
    expect(said(stale(1.2))).toContain("1 day ago");
    expect(said(stale(101))).toContain("101 days ago");
  });
});

describe("trustSentence(logger, reader)", () => {
  it("says what the check found, its uncertainty doubled, and what was done with it", () => {
    const words = said(trustSentence({ ...stepped.logger, errorKelvin: 1.24, uncertaintyKelvin: 0.11 }, reader));
    expect(words).toContain("last checked 19 days before the last load; the house allows 100.");
    expect(words).toContain("read 1.2 °C too high, give or take 0.2 °C (95 %)");
  });

  it("says that ice alone corrects nothing, and that nothing was checked", () => {
    expect(said(trustSentence({ ...stepped.logger, errorKelvin: null }, reader))).toContain("ice alone corrects none");
    expect(said(trustSentence({ ...stepped.logger, daysSinceCheck: null }, reader))).toContain("No check");
  });

  it("calls an error that rounds to nothing right", () => {
    expect(errorWords(-0.02, "metric")).toBe("right");
    expect(errorWords(-0.2, "metric")).toBe("0.2\u00a0°C too low");
  });
});

describe("checkWays(boilingCelsius, altitudeMetres, units)", () => {
  it("gives both points in the reader's units, with the caution where steam is", () => {
    const [ice, boiling] = checkWays(96.65, 1000, "metric").map(said);
    expect(ice).toContain("0.0 °C");
    // Water boils at 96.65 °C 1000 m above the sea (ASHRAE Fundamentals 2017, ch. 1).
    expect(boiling).toContain("1000 m above the sea, it reads 96.7 °C");
    expect(boiling).toContain("burn");
    const [iceUs, boilingUs] = checkWays(96.65, 1000, "us").map(said);
    expect(iceUs).toContain("32 °F");
    // 96.65 × 1.8 + 32 = 205.97; 1000 / 0.3048 = 3281.
    expect(boilingUs).toContain("3281 ft above the sea, it reads 206.0 °F");
  });
});
