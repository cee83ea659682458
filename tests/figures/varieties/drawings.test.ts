import { describe, expect, test } from "vitest";
import type { FigureSpec } from "../../../src/figures/figureSpec.ts";
import { renderFigure } from "../../../src/figures/renderFigure.ts";
import { batchesInOrderFigure } from "../../../src/figures/varieties/batchesInOrderFigure.ts";
import type { MeasuredBatches } from "../../../src/figures/varieties/batchStrips.ts";
import { betweenLotsFigure } from "../../../src/figures/varieties/betweenLotsFigure.ts";
import { chancesFigure } from "../../../src/figures/varieties/chancesFigure.ts";
import { lotFault, lotsFigure } from "../../../src/figures/varieties/lotsFigure.ts";
import { periodsFigure } from "../../../src/figures/varieties/periodsFigure.ts";
import { reliabilityFigure } from "../../../src/figures/varieties/reliabilityFigure.ts";
import { scoresFigure } from "../../../src/figures/varieties/scoresFigure.ts";
import type { Tolerance } from "../../../src/report/varietiesResult.ts";
import { madeUpVarieties } from "../../support/madeUpVarieties.ts";
import { drawn } from "../controlCharts/handMadeChart.ts";
import { document, settings } from "../handMade.ts";

const result = madeUpVarieties();
const splits = result.details[0]?.splits ?? [];
const DAY = 86_400_000;
const START = Date.UTC(2025, 0, 6);
const moistureTolerance: Tolerance = { measure: "final_moisture_pct", low: 3.6, target: 4.4, high: 5 };

function measured(count: number): readonly MeasuredBatches[] {
  const batches = (level: number, swing: number) =>
    Array.from({ length: count }, (_, i) => ({
      run: `25-${i + 1}`,
      at: START + i * 3 * DAY,
      value: level + swing * Math.sin(i * 12.9898),
    }));
  return [
    { measure: "final_moisture_pct", tolerance: moistureTolerance, batches: batches(4.4, 0.8) },
    { measure: "colour_ebc", tolerance: { low: null, target: null, high: 5 }, batches: batches(4, 0.9) },
    { measure: "fan_mg_l", tolerance: { low: null, target: null, high: null }, batches: [] },
  ];
}

const inOrder = (count: number, units: "metric" | "us" = "metric"): FigureSpec | null =>
  batchesInOrderFigure(
    measured(count),
    { ...settings, units },
    { id: "in-order", title: "In order", dated: "unloaded" },
  );

const lots = lotsFigure(
  splits.map((split) => ({ split, tolerance: moistureTolerance })),
  settings,
  { id: "lots", title: "Lots" },
);

const figures: readonly FigureSpec[] = [
  scoresFigure(result.scores),
  chancesFigure(result.scores),
  periodsFigure(result.periods, settings),
  result.backTest === null ? null : reliabilityFigure(result.backTest, { id: "foretold", title: "Foretold" }),
  inOrder(60),
  lots,
  betweenLotsFigure(splits, settings),
].flatMap((spec) => spec ?? []);

const textOf = (cell: unknown): string =>
  (typeof cell === "string" ? cell : (cell as { readonly text: string }).text).replaceAll("\u00a0", " ");
const rowsOf = (spec: FigureSpec | null): readonly (readonly string[])[] =>
  (spec?.table.rows ?? []).map((row) => row.map(textOf));

test("every figure of both pages is drawn", () => {
  expect(figures).toHaveLength(7);
});

describe.each(
  figures.flatMap((spec) => [spec.wideWidth, spec.narrowWidth].map((width) => ({ id: spec.id, spec, width }))),
)("the figure $id at $width px", ({ spec, width }) => {
  const markup = renderFigure(spec, { document, width, idPrefix: "fig" });

  test("carries no style, no colour of its own, no script, and no number that is none", () => {
    expect(markup).not.toMatch(/<style|<script|\sstyle=|\son\w+=|NaN|undefined|Infinity/i);
    expect(markup).not.toMatch(/#[0-9a-f]{3,8}\b(?!-)|rgb\(/i);
  });

  test("gives the same bytes twice, and a table with its numbers", () => {
    expect(renderFigure(spec, { document, width, idPrefix: "fig" })).toBe(markup);
    expect(spec.table.rows.length).toBeGreaterThan(0);
    expect(spec.summary).not.toMatch(/NaN|undefined|null/);
  });

  test("keeps every word inside the drawing", () => {
    const svg = drawn(markup);
    const [wide, high] = [Number(svg.getAttribute("width")), Number(svg.getAttribute("height"))];
    for (const text of svg.querySelectorAll("text")) {
      const [x, y] = [Number(text.getAttribute("x")), Number(text.getAttribute("y"))];
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(wide);
      expect(y).toBeGreaterThan(0);
      expect(y).toBeLessThanOrEqual(high);
    }
  });
});

/** The drawing as an element. @throws {RangeError} where there is none */
function drawingOf(spec: FigureSpec | null, width = 1040): Element {
  if (spec === null) throw new RangeError("there is no figure to draw");
  return drawn(renderFigure(spec, { document, width, idPrefix: "fig" }));
}

describe("scoresFigure(scores)", () => {
  test("has the scores' own numbers in its table, and none for a variety without a score", () => {
    const rows = rowsOf(scoresFigure(result.scores));
    expect(rows[0]).toEqual(["Amber", "24", "46", "34", "58", "52", "40", "64", "11", ""]);
    expect(rows[3]).toEqual(["Dunlin", "3", "", "", "", "", "", "", "0", "no score"]);
  });

  test("draws early numbers open and without interval, and those without a score not at all", () => {
    const svg = drawingOf(scoresFigure(result.scores));
    expect(svg.querySelectorAll(".hollow")).toHaveLength(2);
    const words = svg.textContent ?? "";
    expect(words).toContain("even 82, early");
    expect(words).not.toContain("Dunlin");
  });

  test("is null where nothing has a score", () => {
    expect(scoresFigure(result.scores.filter(({ standing }) => standing === "none"))).toBeNull();
  });
});

describe("chancesFigure(scores)", () => {
  test("draws what drags, counts what does not, and keeps beside the score what is beside it", () => {
    const words = drawingOf(chancesFigure(result.scores)).textContent ?? "";
    expect(words).toContain("1 other, each met by 95 in 100 or more");
    expect(words).toContain("beside the score, of the batches tested:");
    const rows = rowsOf(chancesFigure(result.scores));
    expect(rows[0]?.slice(0, 4)).toEqual(["Amber", "final moisture", "51", "53"]);
    expect(rows[3]).toContain("beside it");
  });
});

describe("periodsFigure(periods, settings)", () => {
  test("rings only means whose interval leaves out no change, and tables the difference with its interval", () => {
    const figure = periodsFigure(result.periods, settings);
    expect(drawingOf(figure).querySelectorAll("circle.signal")).toHaveLength(1);
    expect(rowsOf(figure)[0]?.slice(-2)).toEqual(["+0.31 (+0.11 to +0.51)", "1.10 (0.60 to 2.10)"]);
  });

  test("is null where no two quarters stand side by side", () => {
    expect(periodsFigure([], settings)).toBeNull();
  });
});

describe("lotsFigure(measures, settings)", () => {
  test("rings and names lots that stand out, each in its own way", () => {
    const svg = drawingOf(lots);
    expect(svg.querySelectorAll("circle.signal")).toHaveLength(2);
    expect(svg.textContent).toContain("other level");
    expect(svg.textContent).toContain("uneven in itself");
    const faults = rowsOf(lots).map((row) => row.at(-1));
    expect(faults.filter((fault) => fault !== "")).toEqual(["uneven in itself", "other level"]);
  });

  test("lotFault(lot) says both where both are so", () => {
    const lot = splits[0]?.lots[0];
    expect(lot && lotFault({ ...lot, differs: true, uneven: true })).toBe("other level, uneven");
    expect(lot && lotFault(lot)).toBe("");
  });
});

describe("betweenLotsFigure(splits, settings)", () => {
  test("tables shares and spreads, and leaves out measures with too few lots", () => {
    expect(rowsOf(betweenLotsFigure(splits, settings))[0]).toEqual([
      "final moisture, %",
      "6",
      "0.10 (0.02 to 0.30)",
      "0.22 (0.17 to 0.31)",
      "17 (1 to 46)",
    ]);
    const few = splits.map((split) => ({ ...split, shareBetween: null, tooLittle: "4 lots; 5 are needed." }));
    expect(betweenLotsFigure(few, settings)).toBeNull();
  });

  test("gives no interval of 0 to 0 for lots that are closer together than chance", () => {
    const closed = splits.map((split) => ({ ...split, shareBetween: { estimate: 0, low: 0, high: 0 } }));
    const figure = betweenLotsFigure(closed, settings);
    expect(rowsOf(figure)[0]?.at(-1)).toBe("none seen");
    expect(figure?.summary).toContain("In no measure");
  });

  test("says which measures differ mostly from lot to lot", () => {
    const apart = splits.map((split) => ({ ...split, shareBetween: { estimate: 0.95, low: 0.83, high: 0.99 } }));
    expect(betweenLotsFigure(apart, settings)?.summary).toContain(
      "between lots in final moisture, 95\u00a0% (83 to 99)",
    );
  });
});

describe("batchesInOrderFigure(measured, settings, about)", () => {
  test("rings exactly the batches outside their band, and counts them in its summary", () => {
    const [moisture, colour] = measured(60);
    const beyond = (moisture?.batches ?? []).filter(({ value }) => value < 3.6 || value > 5).length;
    const over = (colour?.batches ?? []).filter(({ value }) => value > 5).length;
    expect(beyond).toBeGreaterThan(0);
    const figure = inOrder(60);
    expect(drawingOf(figure).querySelectorAll(".signal circle")).toHaveLength(
      Math.min(beyond, 20) + Math.min(over, 20),
    );
    expect(figure?.summary).toContain(`Final moisture: ${beyond} of 60 batches outside`);
  });

  test("links each batch while they are few, and draws many as one path", () => {
    expect(drawingOf(inOrder(60)).querySelectorAll("a")).toHaveLength(120);
    expect(drawingOf(inOrder(400)).querySelectorAll("a")).toHaveLength(0);
  });

  test("says values in the reader's units, and passes over measures without a value", () => {
    const figure = inOrder(3, "us");
    expect(figure?.table.columns.map(({ label }) => label)).toEqual([
      "batch",
      "unloaded",
      "final moisture, %",
      "colour, SRM",
    ]);
    expect(rowsOf(figure).at(-1)?.at(-1)).toBe("2.0");
    const none = batchesInOrderFigure([], settings, { id: "in-order", title: "In order", dated: "unloaded" });
    expect(none).toBeNull();
  });
});
