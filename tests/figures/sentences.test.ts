import { describe, expect, test } from "vitest";
import { addedVariableFigure } from "../../src/figures/addedVariableFigure.ts";
import { coverageByMonth } from "../../src/figures/coverageByMonth.ts";
import { energyFigure } from "../../src/figures/energyFigure.ts";
import { fittedAgainstActual } from "../../src/figures/fittedAgainstActual.ts";
import { renderFigure } from "../../src/figures/renderFigure.ts";
import { residualsInTime } from "../../src/figures/residualsInTime.ts";
import { runTimeline } from "../../src/figures/runTimeline.ts";
import { whatIfInterval } from "../../src/figures/whatIfInterval.ts";
import type { WhatIfEstimate } from "../../src/report/whatIfAnswer.ts";
import { document, modelWith, settings, stretchOf, textsOf, timedRun } from "./handMade.ts";

const NBSP = "\u00a0";

describe("residualsInTime(model, settings)", () => {
  // With a spread of 0.5 h the band reaches 0.82 h: three of these ten lie outside it.
  const model = modelWith([0, 0.1, -0.2, 0.9, -1.1, 0.3, 2, 0.81, -0.8, 0]);

  test("counts the loads outside the band of 90 of 100", () => {
    expect(residualsInTime(model, settings).summary).toBe(
      `3 of 10 loads lie outside the band of ±0.8${NBSP}h that should hold 90 of 100.`,
    );
  });

  test("says each stretch in words, in the summary and on the drawing", () => {
    const spec = residualsInTime(model, settings, { stretches: [stretchOf(model, 3, 7, 1.53)] });
    expect(spec.summary).toContain(
      `5 loads from 21 January 2025 to 10 February 2025 took about 1.5${NBSP}h longer than weather and bed account for.`,
    );
    const svg = renderFigure(spec, { document, width: 1040, idPrefix: "f" });
    expect(textsOf(svg, ".label")).toContain(`5 loads about 1.5${NBSP}h slow`);
    expect(textsOf(svg, "g.signal circle")).toHaveLength(5);
  });

  test("outlines a crowd once instead of ringing forty points, and still says it in words", () => {
    const crowded = modelWith(Array.from({ length: 400 }, (_, i) => (i >= 300 && i < 340 ? 1.3 : 0.4 * Math.sin(i))));
    const events = [280, 341].map((i) => ({ on: crowded.loads[i]?.loadedAt ?? 0, what: `change ${i}` }));
    const spec = residualsInTime(crowded, settings, { stretches: [stretchOf(crowded, 300, 339, 1.3)], events });
    for (const width of [1040, 340]) {
      const svg = renderFigure(spec, { document, width, idPrefix: "f" });
      expect(textsOf(svg, "g.signal rect")).toHaveLength(1);
      expect(textsOf(svg, "g.signal circle")).toHaveLength(0);
      expect(textsOf(svg, ".label")).toContain(`40 loads about 1.3${NBSP}h slow`);
    }
  });

  test("names logged events", () => {
    const on = model.loads[5]?.loadedAt ?? 0;
    const spec = residualsInTime(model, settings, { events: [{ on, what: "fan belt tightened" }] });
    expect(textsOf(renderFigure(spec, { document, width: 340, idPrefix: "f" }), ".label")).toContain(
      "fan belt tightened",
    );
  });

  test("lists loads latest first, with links, and says when only the latest 200 are listed", () => {
    const { table } = residualsInTime(model, settings);
    expect(table.rows[0]?.[0]).toEqual({ text: "25-010", href: "../runs/25-010/" });
    expect(table.rows.at(-1)?.slice(1)).toEqual(["6 Jan 2025", "12.5", "12.5", "0.0"]);
    expect(table.note).toBeUndefined();
    const many = residualsInTime(modelWith(Array.from({ length: 512 }, () => 0.1)), settings).table;
    expect(many.rows).toHaveLength(200);
    expect(many.note).toBe("The latest 200 of 512 loads.");
  });
});

describe("addedVariableFigure(model, predictor, settings)", () => {
  const model = modelWith([0, 0.1, -0.2, 0.4]);

  test("says the effect of ten points of humidity with its interval, in words and on the line", () => {
    const spec = addedVariableFigure(model, "relativeHumidityPercent", settings);
    expect(spec.summary).toBe(
      `Each 10 points of humidity add 0.74 h (95 % interval 0.60 to 0.88), with the bed held at 16.0${NBSP}cm; 4 loads.`,
    );
    const labels = textsOf(renderFigure(spec, { document, width: 500, idPrefix: "f" }), ".label");
    expect(labels).toEqual(["+0.74 h for each 10 points", "(0.60 to 0.88)"]);
  });

  test("says the effect of an inch to readers of inches: 2.54 times that of a centimetre", () => {
    const spec = addedVariableFigure(model, "bedDepthMetres", { ...settings, units: "us" });
    expect(spec.summary).toContain("Each 1 in of bed adds 1.27 h (95 % interval 1.02 to 1.52)");
  });

  test("says so where the interval holds 0", () => {
    const unsure = { ...model, hoursPerTenPoints: { estimate: -0.2, low: -0.5, high: 0.1 } };
    const { summary } = addedVariableFigure(unsure, "relativeHumidityPercent", settings);
    expect(summary).toContain("take off 0.20 h (95 % interval −0.50 to 0.10)");
    expect(summary).toContain("cannot yet tell it from no effect");
  });
});

describe("fittedAgainstActual(model, settings)", () => {
  test("says what the fit explains and what it leaves over", () => {
    expect(fittedAgainstActual(modelWith([0, 0.3, -0.4], 0.53), settings).summary).toBe(
      `The fit explains 83 % of the spread of 3 loads; what it leaves over for one load has a standard deviation of 0.53${NBSP}h.`,
    );
  });
});

describe("energyFigure(energy, settings, runsOf)", () => {
  const energy = {
    loads: [
      {
        load: "a",
        loadedAt: Date.UTC(2026, 0, 5),
        kilowattHours: 600,
        waterRemovedKilograms: 500,
        kilowattHoursPerKilogramWater: 1.2,
      },
      {
        load: "b",
        loadedAt: Date.UTC(2026, 1, 5),
        kilowattHours: 700,
        waterRemovedKilograms: 500,
        kilowattHoursPerKilogramWater: 1.4,
      },
    ],
    medianKilowattHours: 650,
    medianPerKilogramWater: 1.3,
    latentHeatFloor: 0.65,
    floorCelsius: 48,
  };

  test("says the usual energy beside the least that evaporation takes", () => {
    expect(energyFigure(energy, settings).summary).toBe(
      `Half of 2 loads took more than 1.30${NBSP}kWh/kg of water, 2.0 times what evaporation alone takes (0.65${NBSP}kWh/kg).`,
    );
  });

  test("links each load to its run", () => {
    const { rows } = energyFigure(energy, settings, (load) => [`run-${load}`]).table;
    expect(rows[0]?.[0]).toEqual({ text: "run-b", href: "../runs/run-b/" });
  });
});

describe("runTimeline(run, settings)", () => {
  test("says the hours of each stage, across the end of summer time in true elapsed hours", () => {
    // The clocks went back at 03:00 on 25 October 2026, before this run began.
    expect(runTimeline(timedRun, settings)?.summary).toBe(
      `Steeped 38.0${NBSP}h, germinated 89.5${NBSP}h, kilned 15.0${NBSP}h, the cure begun after 10.0${NBSP}h; 6 days 0${NBSP}h in all.`,
    );
  });

  test("writes each stage and its hours on the drawing, wide and narrow", () => {
    const spec = runTimeline(timedRun, settings);
    if (!spec) throw new Error("no figure");
    for (const width of [1040, 340]) {
      const words = textsOf(renderFigure(spec, { document, width, idPrefix: "f" }), ".on-bar, .label");
      expect(words.toSorted()).toEqual([`germination 89.5${NBSP}h`, `kiln 15.0${NBSP}h`, `steep 38.0${NBSP}h`]);
    }
  });

  test("says what is under way, and is null where nothing was recorded", () => {
    const kilning = { ...timedRun, unloadedAt: null };
    expect(runTimeline(kilning, settings)?.summary).toBe(
      `Steeped 38.0${NBSP}h, germinated 89.5${NBSP}h. Kiln under way since 30 Oct 2026, 17:00.`,
    );
    const blank = { ...timedRun, steepStartedAt: null, germinationStartedAt: null, loadedAt: null };
    expect(runTimeline(blank, settings)).toBeNull();
  });
});

describe("whatIfInterval(estimate, startedAtMinutes)", () => {
  const estimate: WhatIfEstimate = {
    kind: "estimate",
    model: "drying-air",
    kilnHours: { estimate: 14, low: 13, high: 15 },
    dryingHours: { estimate: 10.5, low: 10, high: 11 },
    readyAt: 1080 + 630,
    offAt: 1080 + 840,
    offEarliest: 1080 + 780,
    offLatest: 1080 + 900,
    latestStart: 1080 - 120,
  };

  test("says both moments on the clock, across midnight", () => {
    const spec = whatIfInterval(estimate, 1080);
    expect(spec.summary).toBe(
      "Ready for the ramp about 04:30 (04:00 to 05:00), off the kiln about 08:00 (07:00 to 09:00); the bars hold 90 of 100 such loads.",
    );
    const words = textsOf(renderFigure(spec, { document, width: 500, idPrefix: "f" }), "text");
    for (const said of [
      "ready for the ramp about 04:30",
      "off the kiln about 08:00",
      "wanted by 07:00",
      "00:00",
      "next day",
    ]) {
      expect(words).toContain(said);
    }
  });

  test("leaves out the ramp where drying hours are not logged", () => {
    const spec = whatIfInterval({ ...estimate, dryingHours: null, readyAt: null }, 1080);
    expect(spec.summary).toMatch(/^Off the kiln about 08:00/);
    expect(spec.table.rows).toHaveLength(1);
  });
});

describe("coverageByMonth(logs)", () => {
  const month = (name: string, loads: number, loadsWithDepth: number) => ({
    month: name,
    rows: {},
    loads,
    loadsWithAir: loads,
    loadsWithDepth,
    loadsWithReadings: 0,
    runsWithFinalMoisture: loads,
    runsWithYield: loads,
  });

  test("adds up what was logged", () => {
    const spec = coverageByMonth({ files: [], problems: [], months: [month("2026-09", 6, 6), month("2026-10", 5, 3)] });
    expect(spec?.summary).toBe("Of 11 loads in 2 months, 11 have air, 9 have a bed depth and 0 have readings.");
    expect(spec?.table.rows[0]).toEqual(["October 2026", "5", "5", "3", "0", "5", "5"]);
  });

  test("is null where there is no load", () => {
    expect(coverageByMonth({ files: [], problems: [], months: [month("2026-09", 0, 0)] })).toBeNull();
  });
});
