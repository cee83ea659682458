import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { baseAddress } from "../../scripts/share/share.ts";
import { standingOf } from "../../src/shared/againstSpec.ts";
import { batchAnswer, batchTitle, figureLines, packageWords } from "../../src/shared/batchWords.ts";
import { printBoth, printLimitsBoth, printMeasureBoth } from "../../src/shared/bothUnits.ts";
import type { SharedBatch } from "../../src/shared/sharedSite.ts";
import { maltMeasure } from "../../src/units/maltMeasure.ts";

const plain = (text: string): string => text.replaceAll(/[\u00a0\u202f]/g, " ");

const batch: SharedBatch = {
  ref: "x",
  run: {
    grain: "barley",
    variety: "Reed",
    cropYear: 2025,
    grower: null,
    steepStartedAt: null,
    steepEndedAt: null,
    germinationStartedAt: null,
    germinationEndedAt: null,
    bedMeanCelsius: null,
    loadedAt: null,
    cureStartedAt: null,
    unloadedAt: Date.UTC(2026, 2, 7, 13),
    kilnHours: null,
    dryingHours: null,
    finalMoisturePercent: 4.4,
    finalMoistureBasis: "mean of 3 samples",
    bagCode: "R-7",
  },
  load: null,
  curve: null,
  deliveries: [],
  certificates: [
    { testedOn: Date.UTC(2026, 2, 20), methodSet: "EBC", values: { colour_ebc: 3.94, extract_fine_dry_pct: 79 } },
    { testedOn: Date.UTC(2026, 2, 10), methodSet: null, values: { colour_ebc: 1.97 } },
  ],
  spec: {
    final_moisture_pct: { low: 3.6, target: null, high: 5 },
    extract_fine_dry_pct: { low: 80, target: null, high: null },
    friability_pct: { low: 80, target: null, high: null },
  },
  former: [],
};

describe("printing in both unit systems", () => {
  it("says the house's own units first, and once what both say alike", () => {
    // 1 lb is 0.45359237 kg exactly; 100 °C is 212 °F.
    expect(plain(printBoth(45.359237, "mass", "metric", { decimals: 1 }))).toBe("45.4 kg (100.0 lb)");
    expect(plain(printBoth(100, "temperature", "us"))).toBe("212 °F (100.0 °C)");
    expect(plain(printBoth(4.4, "percent", "metric"))).toBe("4.4 %");
  });

  it("says a measure and its limits in both", () => {
    const colour = maltMeasure("colour_ebc");
    expect(plain(printMeasureBoth(colour, 3.94, "metric"))).toBe("3.9 EBC (2.0 SRM)");
    expect(plain(printLimitsBoth(colour, { low: null, target: null, high: 5.91 }, "us"))).toBe(
      "at most 3.0 SRM (at most 5.9 EBC)",
    );
  });
});

describe("standingOf(value, limits)", () => {
  it.each([
    [5, "within"],
    [5 + 1e-12, "within"],
    [5.01, "above"],
    [3.59, "below"],
    [3.6, "within"],
  ])("%d of 3.6 to 5 is %s", (value, standing) => {
    expect(standingOf(value, { low: 3.6, target: null, high: 5 })).toBe(standing);
  });

  it("is nothing without limits, a bare target included", () => {
    expect(standingOf(4, undefined)).toBeNull();
    expect(standingOf(4, { low: null, target: 4, high: null })).toBeNull();
  });
});

describe("figureLines(batch, units, timeZone)", () => {
  const { lines, untested } = figureLines(batch, "metric", "UTC");
  const of = (name: string) =>
    lines.filter((line) => line.name === name).map(({ value, how, standing }) => [plain(value), how, standing]);

  it("gives units, method and date with each figure, newest certificate first", () => {
    expect(of("Colour")).toEqual([
      ["3.9 EBC (2.0 SRM)", "EBC, 20 Mar 2026", null],
      ["2.0 EBC (1.0 SRM)", "method not named, 10 Mar 2026", null],
    ]);
    expect(of("Final moisture")).toEqual([["4.4 %", "mean of 3 samples, malthouse, 7 Mar 2026", "within"]]);
  });

  it("says not tested of what has a spec, and lists the rest", () => {
    expect(of("Friability")).toEqual([["not tested", "", null]]);
    expect(untested).toContain("viscosity");
    expect(untested).not.toContain("friability");
  });
});

describe("a batch in words", () => {
  it("names what lies outside its spec", () => {
    expect(plain(batchAnswer(batch, "metric"))).toBe(
      "4.4 % moisture; outside the spec: extract, dry basis below the spec.",
    );
    expect(batchAnswer({ ...batch, spec: {} }, "metric")).toContain("no spec to hold it against");
    const { final_moisture_pct, friability_pct } = batch.spec;
    const answer = (spec: SharedBatch["spec"]): string => plain(batchAnswer({ ...batch, spec }, "metric"));
    if (final_moisture_pct === undefined || friability_pct === undefined) throw new Error("no spec");
    expect(answer({ final_moisture_pct })).toBe("4.4 % moisture; the one figure of the spec tested and within it.");
    expect(answer({ final_moisture_pct, friability_pct })).toBe(
      "4.4 % moisture; 1 of 2 figures of the spec tested, and within it.",
    );
    // Two certificates say its colour: still one figure.
    expect(answer({ final_moisture_pct, colour_ebc: { low: 1, target: null, high: 5 } })).toBe(
      "4.4 % moisture; all 2 figures of the spec tested and within it.",
    );
    expect(answer({ friability_pct })).toBe("4.4 % moisture; nothing that the spec asks for was tested.");
  });

  it("goes by its bag code, else by its first delivery", () => {
    expect(batchTitle(batch)).toBe("Batch R-7");
    const delivery = {
      shippedOn: Date.UTC(2026, 3, 9),
      massKilograms: 1,
      packageKind: null,
      packageCount: null,
      product: "malt",
    };
    expect(batchTitle({ run: { ...batch.run, bagCode: null }, deliveries: [delivery] })).toBe(
      "Batch without a bag code, delivered 9 Apr 2026",
    );
  });

  it.each([
    ["bag", 24, "24 bags"],
    ["tote", 1, "1 tote"],
    ["bulk", null, "in bulk"],
    ["bag", null, "bags"],
    [null, 3, "3 packages"],
    [null, null, "–"],
  ])("packs %s, %s as %s", (packageKind, packageCount, said) => {
    expect(plain(packageWords({ packageKind, packageCount }))).toBe(said);
  });
});

describe("baseAddress(text)", () => {
  it("takes a plain web address and closes it with a slash", () => {
    expect(baseAddress("https://malt.example/b")).toBe("https://malt.example/b/");
    expect(baseAddress("https://malt.example")).toBe("https://malt.example/");
  });

  it.each([
    "malt.example",
    "javascript:alert(1)",
    "file:///srv",
    "https://a:b@malt.example/",
    "https://malt.example/?x=1",
    "https://malt.example/#x",
  ])("refuses %s", (text) => {
    expect(() => baseAddress(text)).toThrow("a plain web address is wanted");
  });
});

describe("the customers' faces", () => {
  it("have the measures that the site's have", () => {
    const measures = (path: string) =>
      readFileSync(path, "utf8").match(
        /(?:size-adjust|ascent-override|descent-override|line-gap-override|font-weight): [^;]+/g,
      );
    expect(measures("src/shared/styles/fonts.css")).toEqual(measures("src/styles/fonts.css"));
  });
});
