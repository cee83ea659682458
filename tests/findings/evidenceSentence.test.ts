import { describe, expect, it } from "vitest";
import { evidenceSentence } from "../../src/findings/evidenceSentence.ts";
import { faultSentences } from "../../src/findings/loggerFaults.ts";
import type { Reader } from "../../src/findings/thermostatWords.ts";
import { interval } from "../support/madeUpChart.ts";
import { evidenceOf, madeUpKiln } from "../support/madeUpThermostat.ts";

describe("evidenceSentence(evidence, units)", () => {
  const words = (parts: Parameters<typeof evidenceOf>[0], units: Reader["units"] = "metric"): string =>
    evidenceSentence(evidenceOf(parts), units).replaceAll("\u00a0", " ");
  const middle = { kind: "set point", speaks: "for", change: interval(-1.1, -1.5, -0.7) } as const;
  const rise = { kind: "weak heater or fan", speaks: "for", change: interval(-0.3, -0.4, -0.2), before: 1.1 } as const;

  it("says how far the middle of the cycles moved, in the reader's degrees", () => {
    expect(words(middle)).toBe("The middle of the cycles has moved by −1.1 (−1.5 to −0.7) °C.");
    // A difference of 1 K is one of 1.8 °F: 1.1, 1.5 and 0.7 K are 1.98, 2.7 and 1.26 °F.
    expect(words(middle, "us")).toBe("The middle of the cycles has moved by −2.0 (−2.7 to −1.3) °F.");
  });

  it("says what swing and rise were before, the rise a minute", () => {
    expect(words(rise)).toBe(
      "The rise at full power was 1.10 °C a minute and has moved by −0.30 (−0.40 to −0.20) °C a minute.",
    );
    expect(words(rise, "us")).toBe(
      "The rise at full power was 1.98 °F a minute and has moved by −0.54 (−0.72 to −0.36) °F a minute.",
    );
    expect(words({ ...rise, isAtEqualAir: true })).toMatch(/\(−0\.40 to −0\.20\) °C a minute, at equal air outside\.$/);
    expect(words({ kind: "worn contacts", speaks: "against", change: interval(0.1, -0.1, 0.3), before: 4 })).toBe(
      "The swing of the cycles was 4.00 °C and has moved by +0.10 (−0.10 to +0.30) °C.",
    );
  });

  it("says what the air outside explains and what is left beside it", () => {
    const season = {
      kind: "season",
      speaks: "against",
      change: interval(0.5, 0, 1),
      beside: interval(-1, -2, -0.5),
    } as const;
    expect(words(season, "us")).toBe(
      "The air outside explains +0.9 (0.0 to +1.8) °F over its range; beside it the change is −1.8 (−3.6 to −0.9) °F.",
    );
  });

  it("says why nothing can be told", () => {
    expect(words({ kind: "worn contacts", speaks: "open", unknown: "too few" })).toBe(
      "The swing of the cycles is read in too few of these loads to tell.",
    );
    expect(words({ kind: "season", speaks: "open", unknown: "together" })).toContain("cannot be told apart");
  });
});

describe("faultSentences(logger, reader)", () => {
  const { logger } = madeUpKiln([]);
  const fault = { at: Date.UTC(2025, 9, 9, 12), errorKelvin: 1.5, aboutCelsius: 80 };
  const faults = [
    fault,
    { ...fault, at: fault.at + 3_600_000 },
    { ...fault, at: fault.at + 86_400_000, errorKelvin: -0.5 },
  ];
  const words = (units: Reader["units"]): readonly string[] =>
    faultSentences({ ...logger, faults }, { units, timeZone: "UTC" }).map((one) => one.replaceAll("\u00a0", " "));

  it("say day, size, side and temperature in the reader's degrees, the same of one day once", () => {
    expect(words("metric")).toEqual([
      "On 9 Oct 2025 the logger read 1.5 °C too high at about 80 °C.",
      "On 10 Oct 2025 the logger read 0.5 °C too low at about 80 °C.",
    ]);
    // 1.5 K is 2.7 °F, 80 °C is 176 °F.
    expect(words("us")[0]).toBe("On 9 Oct 2025 the logger read 2.7 °F too high at about 176 °F.");
  });

  it("are none where no check found a fault", () => {
    expect(faultSentences(logger, { units: "metric", timeZone: "UTC" })).toEqual([]);
  });
});
