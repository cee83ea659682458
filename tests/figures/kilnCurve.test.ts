import { describe, expect, test } from "vitest";
import { kilnCurveFigure } from "../../src/figures/kilnCurveFigure.ts";
import { renderFigure } from "../../src/figures/renderFigure.ts";
import { document, kilnLoad, settings, textsOf, thermostatCurve } from "./handMade.ts";

const NBSP = "\u00a0";

describe("kilnCurveFigure(curve, load, settings)", () => {
  const spec = kilnCurveFigure(thermostatCurve(), kilnLoad, settings);
  if (!spec) throw new Error("no figure");
  const at = (width: number): string => renderFigure(spec, { document, width, idPrefix: "curve" });

  test("draws 15 h of 1-minute readings that cycle in at most 7 kB wide and 5 kB narrow", () => {
    expect(at(1040).length).toBeLessThan(7_000);
    expect(at(340).length).toBeLessThan(5_000);
  });

  test("says in its table how long after loading each probe was lowest and highest", () => {
    expect(spec.table.columns.map(({ label, unit }) => `${label} ${unit ?? ""}`)).toEqual([
      "probe ",
      "lowest °C",
      "after h",
      "highest °C",
      "after h",
    ]);
    const curve = thermostatCurve();
    const hottest = curve.airOnCelsius.indexOf(Math.max(...curve.airOnCelsius.filter(Number.isFinite)));
    const hours = ((curve.at[hottest] ?? 0) - kilnLoad.loadedAt) / 3_600_000;
    expect(Number(spec.table.rows[0]?.[4])).toLieWithin(hours, 0.05 + 1e-9);
  });

  test("is drawn once, at a phone's width, beside another curve of the same run", () => {
    const beside = kilnCurveFigure(thermostatCurve(), kilnLoad, settings, true);
    expect(beside?.wideWidth).toBe(beside?.narrowWidth);
    expect(beside?.printAs).toBe("narrow");
  });

  test("names every line and both set points in words", () => {
    for (const width of [1040, 340]) {
      const labels = textsOf(at(width), ".label");
      for (const name of [
        "air on",
        "bed",
        "air off",
        `drying set 48${NBSP}°C`,
        `cure set 80${NBSP}°C`,
        "cure from 03:00",
      ]) {
        expect(labels).toContain(name);
      }
    }
  });

  test("leaves a gap where the logger was silent", () => {
    const holder = document.createElement("div");
    holder.innerHTML = at(1040);
    const paths = [...holder.querySelectorAll(".line path")].map((path) => path.getAttribute("d") ?? "");
    expect(paths.map((d) => d.split("M").length - 1).sort()).toEqual([1, 1, 2]);
  });

  test("says when it was loaded, for how long, and how hot the air on was", () => {
    expect(spec.summary).toBe(
      `Loaded 30 Oct 2026, 17:00, 15.0${NBSP}h in the kiln, the cure begun after 10.0${NBSP}h. Air on went up to 82.0${NBSP}°C.`,
    );
    expect(spec.table.rows.map((row) => row[0])).toEqual(["air on", "bed", "air off"]);
  });

  test("says how many probes were silent, and is null where all were", () => {
    const silent = new Float64Array(901).fill(Number.NaN);
    const one = { ...thermostatCurve(), bedCelsius: silent };
    expect(kilnCurveFigure(one, kilnLoad, settings)?.summary).toContain("One probe was silent.");
    expect(kilnCurveFigure({ ...one, airOnCelsius: silent, airOffCelsius: silent }, kilnLoad, settings)).toBeNull();
  });

  test("shows readers of Fahrenheit their own degrees", () => {
    const us = kilnCurveFigure(thermostatCurve(), kilnLoad, { ...settings, units: "us" });
    expect(us?.summary).toContain(`180${NBSP}°F`);
  });
});
