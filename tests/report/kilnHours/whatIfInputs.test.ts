import { describe, expect, it } from "vitest";
import { convertWhatIf, readClock, readWhatIf } from "../../../src/report/kilnHours/whatIfInputs.ts";
import type { WhatIfInputs } from "../../../src/report/kilnHoursResult.ts";

const usual: WhatIfInputs = {
  relativeHumidityPercent: 70,
  celsius: 8,
  bedDepthMetres: 0.15,
  greenLoadKilograms: null,
  dryingSetCelsius: 48,
  startedAtMinutes: 18 * 60,
  wantedFinishMinutes: null,
};

describe("readWhatIf(text, usual, units)", () => {
  it("keeps the house's usual value for a field left alone", () => {
    expect(readWhatIf({}, usual, "metric")).toEqual({ kind: "inputs", inputs: usual });
  });

  it("reads centimetres and degrees Celsius in metric", () => {
    const read = readWhatIf({ depth: "16,5", temperature: "\u22123" }, usual, "metric");
    expect(read.kind === "inputs" && read.inputs.bedDepthMetres).toAgreeWithin(0.165, 1e-12);
    expect(read.kind === "inputs" && read.inputs.celsius).toBe(-3);
  });

  it("reads inches, pounds and degrees Fahrenheit in US customary units (NIST SP 811: 1 in = 0.0254 m, 1 lb = 0.45359237 kg)", () => {
    const read = readWhatIf({ depth: "6", temperature: "50", load: "1000" }, usual, "us");
    expect(read.kind === "inputs" && read.inputs.bedDepthMetres).toAgreeWithin(0.1524, 1e-12);
    expect(read.kind === "inputs" && read.inputs.celsius).toAgreeWithin(10, 1e-12);
    expect(read.kind === "inputs" && read.inputs.greenLoadKilograms).toAgreeWithin(453.59237, 1e-12);
  });

  it.each([
    ["humidity", "101", "The humidity must be a number between 0 and 100\u00a0%."],
    ["humidity", "damp", "The humidity must be a number between 0 and 100\u00a0%."],
    ["start", "25:00", "Write the time as 18:00."],
  ] as const)("answers %s = %s with a sentence that names the field", (field, typed, sentence) => {
    expect(readWhatIf({ [field]: typed }, usual, "metric")).toEqual({ kind: "fault", field, sentence });
  });
});

describe("readClock(text)", () => {
  it("reads hours and minutes as minutes after midnight", () => {
    expect(readClock("07:05")).toBe(425);
    expect(readClock("7.05")).toBe(425);
    expect(readClock("7")).toBeNull();
  });
});

describe("convertWhatIf(text, from, to)", () => {
  it("says the same bed, air and load in other units, and leaves humidity and clock times alone", () => {
    const metric = { depth: "15.24", temperature: "10", humidity: "82", start: "18:00", load: "100" };
    expect(convertWhatIf(metric, "metric", "us")).toEqual({
      depth: "6",
      temperature: "50",
      humidity: "82",
      start: "18:00",
      load: "220",
    });
  });

  it("leaves alone what is no number", () => {
    expect(convertWhatIf({ depth: "deep" }, "metric", "us")).toEqual({ depth: "deep" });
  });
});
