import { JSDOM } from "jsdom";
import { describe, expect, it } from "vitest";
import { changeEffects } from "../../../src/figures/changes/changeEffects.ts";
import { changeInTime } from "../../../src/figures/changes/changeInTime.ts";
import type { FigureSettings } from "../../../src/figures/figureSettings.ts";
import type { FigureSpec } from "../../../src/figures/figureSpec.ts";
import { renderFigure } from "../../../src/figures/renderFigure.ts";
import type { ChangeEffect, ChangeResult } from "../../../src/report/changesResult.ts";
import { CHANGED_AT, handMadeChange, handMadeEffect } from "../../support/handMadeChange.ts";

const settings: FigureSettings = { units: "metric", timeZone: "UTC", runHref: (run) => `/runs/${run}/` };
const { document } = new JSDOM("").window;

function drawn(spec: FigureSpec | null, form: "wide" | "narrow" = "wide"): Document {
  if (spec === null) throw new Error("nothing was drawn");
  const width = form === "wide" ? spec.wideWidth : spec.narrowWidth;
  const markup = renderFigure(spec, { document, width, idPrefix: `${spec.id}-${form}` });
  expect(markup).not.toMatch(/NaN|Infinity|style=/);
  return new JSDOM(markup).window.document;
}

const energy: ChangeEffect = {
  ...handMadeEffect,
  measure: "energy_kwh",
  before: { estimate: 300, low: 290, high: 310 },
  after: { estimate: 280, low: 270, high: 290 },
  total: { estimate: -20, low: -34, high: -6 },
  beyond: { estimate: -3, low: -15, high: 9 },
  points: handMadeEffect.points.map((point) => ({ ...point, value: 20 * point.value, adjusted: 20 * point.adjusted })),
};
const two: ChangeResult = { ...handMadeChange, effects: [handMadeEffect, energy] };
const older: ChangeResult = {
  ...handMadeChange,
  id: "change-2025-03-12",
  at: Date.UTC(2025, 2, 12),
  event: { ...handMadeChange.event, what: "fan runs throughout" },
};

describe("changeInTime(change, events, settings)", () => {
  it.each(["wide", "narrow"] as const)("draws a dot a run and a level a side in every strip, %s", (form) => {
    const figure = drawn(changeInTime(two, [], settings), form);
    expect(figure.querySelectorAll(".dots circle")).toHaveLength(40);
    expect(figure.querySelectorAll(".line path")).toHaveLength(4);
    expect(figure.querySelectorAll(".band rect")).toHaveLength(4);
  });

  it("lays the level after an hour saved below the one before", () => {
    const [before, after] = [...drawn(changeInTime(handMadeChange, [], settings)).querySelectorAll(".line path")].map(
      (path) => Number(/M[^,]+,([\d.]+)/.exec(path.getAttribute("d") ?? "")?.[1]),
    );
    expect(after).toBeGreaterThan(before ?? Number.NaN);
  });

  it("marks the change and what else was logged beside it", () => {
    const beside = [{ on: CHANGED_AT + 20 * 86_400_000, what: "belt mended" }];
    const events = drawn(changeInTime(handMadeChange, beside, settings)).querySelectorAll(".events .event");
    expect(events).toHaveLength(2);
  });

  it("lists every run once, latest first, with what it was and what it is adjusted", () => {
    const table = changeInTime(two, [], settings)?.table;
    expect(table?.rows).toHaveLength(20);
    expect(table?.rows[0]?.[0]).toEqual({ text: "26-019", href: "/runs/26-019/" });
    expect(table?.rows[0]?.[2]).toBe("after");
    expect(table?.rows.at(-1)?.[2]).toBe("before");
  });

  it("says the levels in words, and is null where nothing was compared", () => {
    expect(changeInTime(handMadeChange, [], settings)?.summary).toContain("14.0\u00a0h before, 13.0\u00a0h after");
    expect(changeInTime({ ...handMadeChange, effects: [] }, [], settings)).toBeNull();
  });
});

describe("changeEffects(changes, settings)", () => {
  it.each(["wide", "narrow"] as const)(
    "draws an interval an effect, and hollow what is left beyond a column, %s",
    (form) => {
      const figure = drawn(changeEffects([two, older], settings), form);
      expect(figure.querySelectorAll("circle.mark-ink")).toHaveLength(3);
      expect(figure.querySelectorAll("circle.hollow")).toHaveLength(1);
      expect(figure.querySelectorAll("path.placebos")).toHaveLength(3);
    },
  );

  it("draws what other dates show where it stands, as many strokes as dates", () => {
    const strokes = drawn(changeEffects([handMadeChange], settings))
      .querySelector("path.placebos")
      ?.getAttribute("d");
    expect(strokes?.match(/M/g)).toHaveLength(handMadeEffect.placebo?.sizes.length ?? -1);
  });

  it("lays an hour saved left of nothing", () => {
    const figure = drawn(changeEffects([handMadeChange], settings));
    const nothing = Number(/M([\d.]+)/.exec(figure.querySelector("path.rule")?.getAttribute("d") ?? "")?.[1]);
    expect(Number(figure.querySelector("circle.mark-ink")?.getAttribute("cx"))).toBeLessThan(nothing);
  });

  it("lists every effect with its interval, leads to its change, and is null where nothing was compared", () => {
    const table = changeEffects([two, older], settings)?.table;
    expect(table?.rows).toHaveLength(3);
    expect(table?.rows[0]).toEqual([
      { text: "18 May 2026", href: "#change-2026-05-18" },
      "kiln hours",
      "−1.0\u00a0h",
      "−1.5 to −0.5\u00a0h",
      "0 of 44",
    ]);
    expect(changeEffects([{ ...handMadeChange, effects: [] }], settings)).toBeNull();
  });
});
