import { describe, expect, it } from "vitest";
import { fitLeastSquares } from "../../../src/analysis/fitLeastSquares.ts";
import { cycleLean } from "../../../src/malting/thermostat/cycleLean.ts";
import { relayCycle } from "../../../src/malting/thermostat/relayCycle.ts";

/** A kiln at 48 °C whose intake air is colder or warmer: the heater is on for more or less of the time. */
const cycles = Array.from({ length: 29 }, (_, at) => {
  const heaterOffCelsius = -5 + 1.25 * at;
  return relayCycle({
    timeConstantMinutes: 30,
    heaterOffCelsius,
    heaterOnCelsius: heaterOffCelsius + 57,
    switchOffCelsius: 49.7,
    switchOnCelsius: 46.3,
    deadTimeMinutes: 1,
  });
});

describe("cycleLean(duty)", () => {
  it("is 0 at a half and changes sign there", () => {
    expect(cycleLean(0.5)).toBe(0);
    expect(cycleLean(0.8)).toLieWithin(-cycleLean(0.2), 1e-12);
  });

  it("gives, with a straight line in duty, where the closed form of the relay cycle has its time mean, to 0.03 K", () => {
    const duties = cycles.map(({ duty }) => duty);
    expect(Math.min(...duties)).toBeLessThan(0.4);
    expect(Math.max(...duties)).toBeGreaterThan(0.92);
    const columns = [
      { name: "duty", values: duties },
      { name: "lean", values: duties.map(cycleLean) },
    ];
    const { residuals } = fitLeastSquares(
      columns,
      cycles.map(({ meanCelsius }) => meanCelsius),
    );
    for (const residual of residuals) expect(residual).toLieWithin(0, 0.03);
  });

  it("comes with a swing squared over twelve times the span, the first term of the closed form", () => {
    const plant = { timeConstantMinutes: 30, heaterOnCelsius: 70, heaterOffCelsius: 10 };
    const { duty, meanCelsius } = relayCycle({ ...plant, switchOffCelsius: 60.5, switchOnCelsius: 59.5 });
    expect(meanCelsius - 60).toAgreeWithin(cycleLean(duty) / (12 * 60), 0.01);
  });

  it("throws for a heater that is always on", () => {
    expect(() => cycleLean(1)).toThrow(RangeError);
  });
});
