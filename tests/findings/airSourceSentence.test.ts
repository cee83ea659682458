import { describe, expect, test } from "vitest";
import { airSourceSentence } from "../../src/findings/airSourceSentence.ts";
import { plainText } from "../../src/findings/sentence.ts";
import type { AirCompared } from "../../src/report/airCompared.ts";
import type { KilnHoursResult } from "../../src/report/kilnHoursResult.ts";

const said = (airCompared: AirCompared, airBasis: KilnHoursResult["airBasis"] = "at_loading"): string =>
  plainText(airSourceSentence({ airBasis, airCompared } as KilnHoursResult)).replaceAll("\u00a0", " ");

describe("airSourceSentence", () => {
  test("names both sources, how far they lie apart and which reads damper", () => {
    expect(said({ logged: 20, weather: 3, difference: { loads: 18, median: -4, medianSize: 6 } })).toBe(
      "Air at loading is as written down for 20 loads and from the weather files for 3 loads. Where both are known (18 loads), half of the loads have the two within 6.0 points of humidity, and the weather files read 4.0 points drier as a rule.",
    );
  });

  test("lets neither be damper where they lie about each other", () => {
    const text = said({ logged: 0, weather: 9, difference: { loads: 9, median: 0.2, medianSize: 5 } }, "mean");
    expect(text).toContain("Air over the load is from the weather files for 9 loads.");
    expect(text).toContain("neither reads damper as a rule");
  });

  test("is silent where there are no weather files", () => {
    expect(said({ logged: 20, weather: 0, difference: null })).toBe("");
  });
});
