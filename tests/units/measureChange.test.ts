import { describe, expect, it } from "vitest";
import { changeUnit, printChange, printLevel, printSize, printSpan } from "../../src/units/measureChange.ts";

const plain = (text: string): string => text.replaceAll("\u00a0", " ");

describe("a change of a measure in print", () => {
  it("levels and changes of one measure carry the same decimals, final moisture one more", () => {
    expect(plain(printLevel("kiln_hours", 13.36, "metric"))).toBe("13.4 h");
    expect(plain(printChange("kiln_hours", -1.354, "metric"))).toBe("−1.4 h");
    expect(plain(printLevel("final_moisture_pct", 4.507, "metric"))).toBe("4.51 %");
    expect(plain(printSize("final_moisture_pct", -0.132, "metric"))).toBe("0.13 points");
    expect(plain(printSize("energy_kwh", 36.9, "metric"))).toBe("37 kWh");
    expect(printSize("acrospire_mean", 0.0512, "metric")).toBe("0.05");
    expect(changeUnit("dry_yield_pct", "us")).toBe("points");
  });

  it("printSpan(measure, interval) gives sizes, smaller first, where both ends lie on one side, and signs where they do not", () => {
    expect(plain(printSpan("kiln_hours", { low: -2.33, high: -0.38 }, "metric"))).toBe("0.4 to 2.3 h");
    expect(plain(printSpan("kiln_hours", { low: 0.38, high: 2.33 }, "metric"))).toBe("0.4 to 2.3 h");
    expect(plain(printSpan("kiln_hours", { low: -0.55, high: 1.28 }, "metric"))).toBe("−0.6 to +1.3 h");
  });
});
