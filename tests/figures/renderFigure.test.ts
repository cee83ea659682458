import { describe, expect, test } from "vitest";
import { addedVariableFigure } from "../../src/figures/addedVariableFigure.ts";
import type { FigureSpec } from "../../src/figures/figureSpec.ts";
import { fittedAgainstActual } from "../../src/figures/fittedAgainstActual.ts";
import { kilnCurveFigure } from "../../src/figures/kilnCurveFigure.ts";
import { renderFigure } from "../../src/figures/renderFigure.ts";
import { residualsInTime } from "../../src/figures/residualsInTime.ts";
import { runTimeline } from "../../src/figures/runTimeline.ts";
import { roundNumbers } from "../../src/figures/tidyDrawing.ts";
import { document, kilnLoad, modelWith, settings, stretchOf, thermostatCurve, timedRun } from "./handMade.ts";

const model = modelWith(Array.from({ length: 30 }, (_, i) => Math.sin(i * 2.1) * 0.7));
const stretch = stretchOf(model, 20, 24, 1.5);
const specs: readonly FigureSpec[] = [
  residualsInTime(model, settings, {
    stretches: [stretch],
    events: [{ on: model.loads[10]?.loadedAt ?? 0, what: "bed made shallower" }],
  }),
  addedVariableFigure(model, "relativeHumidityPercent", settings, [stretch]),
  addedVariableFigure(model, "bedDepthMetres", { ...settings, units: "us" }, [stretch]),
  fittedAgainstActual(model, settings, [stretch]),
  ...[kilnCurveFigure(thermostatCurve(), kilnLoad, settings), runTimeline(timedRun, settings)].flatMap((s) => s ?? []),
];
const drawings = specs.flatMap((spec) => [
  { id: spec.id, spec, width: spec.wideWidth },
  { id: spec.id, spec, width: spec.narrowWidth },
]);

const parse = (markup: string): Element => {
  const holder = document.createElement("div");
  holder.innerHTML = markup;
  const svg = holder.firstElementChild;
  if (!svg) throw new Error("no svg");
  return svg;
};

describe.each(drawings)("renderFigure(spec $id) at $width px", ({ spec, width }) => {
  const markup = renderFigure(spec, { document, width, idPrefix: "fig" });

  test("carries no style, neither element nor attribute, and no script", () => {
    expect(markup).not.toMatch(/<style|<script|\sstyle=|\son\w+=/i);
  });

  test("gives the same bytes twice, although Plot's own counters go on", () => {
    expect(renderFigure(spec, { document, width, idPrefix: "fig" })).toBe(markup);
  });

  test("begins every id with the prefix, and refers only to ids it has", () => {
    const svg = parse(markup);
    const ids = [...svg.querySelectorAll("[id]")].map((element) => element.id);
    expect(ids.every((id) => id.startsWith("fig-"))).toBe(true);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, id] of markup.matchAll(/url\(#([^)]+)\)/g)) expect(ids).toContain(id);
  });

  test("is one image named by its title and summary, with no link inside the image", () => {
    const svg = parse(markup);
    const images = [svg, ...svg.querySelectorAll("*")].filter((e) => e.getAttribute("role") === "img");
    expect(images).toHaveLength(1);
    const said = (images[0]?.getAttribute("aria-labelledby") ?? "").split(" ");
    expect(said.map((id) => svg.querySelector(`#${id}`)?.textContent)).toEqual([spec.title, spec.summary]);
    expect(images[0]?.querySelector("a")).toBeNull();
    for (const link of svg.querySelectorAll("a")) {
      expect(link.closest("[aria-hidden=true]")).not.toBeNull();
      expect(link.getAttribute("tabindex")).toBe("-1");
      expect(link.getAttribute("href")).toMatch(/^\.\.\/runs\/[^/]+\/$/);
    }
    expect(svg.querySelectorAll("[aria-label], [aria-description]")).toHaveLength(0);
  });

  test("writes coordinates to one decimal at most", () => {
    for (const [, numbers] of markup.matchAll(/ (?:d|x|y|cx|cy|x1|y1|x2|y2|width|height)="([^"]*)"/g)) {
      expect(numbers).not.toMatch(/\d\.\d\d/);
    }
  });

  test("uses no colour of its own", () => {
    expect(markup).not.toMatch(/#[0-9a-f]{3,8}\b(?!-)|rgb\(/i);
  });
});

describe("renderFigure", () => {
  const spec = (href: string): FigureSpec => residualsInTime(model, { ...settings, runHref: () => href });

  test("refuses a link that would run a script", () => {
    expect(() => renderFigure(spec("javascript:alert(1)"), { document, width: 500, idPrefix: "f" })).toThrow(
      RangeError,
    );
    expect(() => renderFigure(spec(" JavaScript:alert(1)"), { document, width: 500, idPrefix: "f" })).toThrow(
      RangeError,
    );
  });

  test("keeps marks out of more than 300 loads without links, and small", () => {
    const many = modelWith(Array.from({ length: 2000 }, (_, i) => Math.sin(i * 12.9898) * Math.sin(i * 78.233)));
    const markup = renderFigure(residualsInTime(many, settings), { document, width: 1040, idPrefix: "f" });
    expect(markup).not.toContain("<a ");
    expect(markup.length).toBeLessThan(20_000);
  });

  test("escapes what logs put into it", () => {
    const loads = model.loads.map((l) => ({ ...l, runs: ['<img src=x onerror="a">'] }));
    const markup = renderFigure(residualsInTime({ ...model, loads }, settings), {
      document,
      width: 500,
      idPrefix: "f",
    });
    expect(parse(markup).querySelector("img")).toBeNull();
  });
});

describe("roundNumbers(text)", () => {
  test("rounds every number of a path and loses none", () => {
    expect(roundNumbers("M12.04,-0.04L1e3,3.96Z")).toBe("M12,0L1e3,4Z");
    expect(roundNumbers("M.55-.55")).toBe("M.6-.5");
    expect(roundNumbers("M3-.04.04l1.04.5")).toBe("M3 0 0l1 .5");
  });
});
