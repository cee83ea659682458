import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plainText } from "../../src/findings/sentence.ts";
import {
  clockAndDay,
  clockOf,
  latestStartSentence,
  startOf,
  toTenMinutes,
  whatIfSentence,
} from "../../src/findings/whatIfSentence.ts";
import type { WhatIfEstimate } from "../../src/report/whatIfAnswer.ts";

/** Loaded at 18:00 and 14.2 h in the kiln. */
const answer: WhatIfEstimate = {
  kind: "estimate",
  model: "humidity-and-depth",
  kilnHours: { estimate: 14.2, low: 13.1, high: 15.3 },
  dryingHours: { estimate: 10.7, low: 10, high: 11.4 },
  readyAt: 1080 + 10.7 * 60,
  offAt: 1080 + 14.2 * 60,
  offEarliest: 1080 + 13.1 * 60,
  offLatest: 1080 + 15.3 * 60,
  latestStart: 1440 + 420 - 15.3 * 60,
};

describe("clockOf(minutes), clockAndDay(minutes)", () => {
  it("wrap over midnight both ways", () => {
    expect(clockOf(1840)).toBe("06:40");
    expect(clockOf(-30)).toBe("23:30");
    expect(clockAndDay(1080)).toBe("18:00");
    expect(clockAndDay(1840)).toBe("06:40 the next day");
    expect(clockAndDay(-30)).toBe("23:30 the day before");
    expect(clockAndDay(2 * 1440)).toBe("00:00, 2 days later");
  });
});

describe("toTenMinutes(answer)", () => {
  it("never promises more than the interval does", () => {
    const hours = fc.double({ min: 4, max: 40, noNaN: true });
    fc.assert(
      fc.property(hours, hours, hours, (a, b, c) => {
        const [low = 0, estimate = 0, high = 0] = [a, b, c].sort((x, y) => x - y);
        const exact = {
          ...answer,
          kilnHours: { estimate, low, high },
          offAt: 1080 + estimate * 60,
          offEarliest: 1080 + low * 60,
          offLatest: 1080 + high * 60,
        };
        const said = toTenMinutes(exact);
        expect(said.offEarliest).toBeLessThanOrEqual(exact.offEarliest);
        expect(said.offLatest).toBeGreaterThanOrEqual(exact.offLatest);
        expect(Math.abs(said.offAt - exact.offAt)).toBeLessThanOrEqual(5);
      }),
    );
  });

  it("lets nobody load later than the exact latest start", () => {
    expect(toTenMinutes(answer).latestStart).toBe(940);
    expect(answer.latestStart).toLieWithin(942, 1e-9);
  });

  it("knows when the load went in", () => {
    expect(startOf(answer)).toBe(1080);
  });
});

describe("whatIfSentence(answer)", () => {
  it("says when the ramp and the end come", () => {
    expect(plainText(whatIfSentence(answer))).toBe(
      "Ready for the ramp about 04:40 the next day, off the kiln about 08:10 the next day.",
    );
    expect(plainText(whatIfSentence({ ...answer, readyAt: null }))).toBe("Off the kiln about 08:10 the next day.");
  });
});

describe("latestStartSentence(answer)", () => {
  it("works back from the wanted finish by the upper end", () => {
    expect(plainText(latestStartSentence(answer))).toBe("To be off by 07:00, load by 15:40.");
    expect(latestStartSentence({ ...answer, latestStart: null })).toEqual([]);
  });
});
