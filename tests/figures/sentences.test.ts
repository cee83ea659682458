import { describe, expect, test } from "vitest";
import { addedVariableFigure } from "../../src/figures/addedVariableFigure.ts";
import { renderFigure } from "../../src/figures/renderFigure.ts";
import { residualsInTime } from "../../src/figures/residualsInTime.ts";
import { document, modelWith, settings, stretchOf, textsOf } from "./handMade.ts";

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
