import { describe, expect, test } from "vitest";
import type { FigureSettings } from "../../../src/figures/figureSettings.ts";
import type { FigureSpec } from "../../../src/figures/figureSpec.ts";
import { renderFigure } from "../../../src/figures/renderFigure.ts";
import { cumulativeShares } from "../../../src/figures/steepGermination/acrospireClasses.ts";
import { acrospireSharesFigure } from "../../../src/figures/steepGermination/acrospireSharesFigure.ts";
import { bedsBeside, bedsFigure } from "../../../src/figures/steepGermination/bedsFigure.ts";
import { biasFigure } from "../../../src/figures/steepGermination/biasFigure.ts";
import { growthFigure, lengthByTemperatureFigure } from "../../../src/figures/steepGermination/growthFigures.ts";
import { meanLengthFigure } from "../../../src/figures/steepGermination/meanLengthFigure.ts";
import { steepOutFigure } from "../../../src/figures/steepGermination/steepOutFigure.ts";
import { timetableFigure } from "../../../src/figures/steepGermination/timetableFigure.ts";
import { uptakeHoursFigure, uptakeWaterFigure } from "../../../src/figures/steepGermination/uptakeFigures.ts";
import type { AcrospireRun } from "../../../src/report/steepGerminationResult.ts";
import { acrospire, around, nothing, steep, timetableOf } from "../../findings/handMadeFloor.ts";
import { madeUpReport } from "../../support/madeUpReport.ts";
import { drawn, heightScale } from "../controlCharts/handMadeChart.ts";
import { document, settings, textsOf } from "../handMade.ts";

const MINUS = "\u2212";
const draw = (spec: FigureSpec | null, width = 1040): string => {
  if (!spec) throw new Error("no figure");
  return renderFigure(spec, { document, width, idPrefix: "f" });
};

const result = madeUpReport(60).steepGermination;

function everyFigure(reader: FigureSettings): readonly FigureSpec[] {
  const { steeps, acrospires, bias, uptake, beds, growth, lengthOnTemperature } = result;
  if (!bias || !uptake || !growth?.timetable || !lengthOnTemperature)
    throw new Error("the made-up floor lacks a model");
  const outside = new Map(acrospires.slice(3, 6).map(({ run }) => [run, "short" as const]));
  return [
    steepOutFigure(steeps, "", reader),
    biasFigure(steeps, bias, "", reader),
    uptakeHoursFigure(uptake, "", reader),
    uptakeWaterFigure(uptake, "", reader),
    acrospireSharesFigure(acrospires, "", reader),
    meanLengthFigure(acrospires, outside, "", reader),
    bedsFigure(acrospires, beds, "", reader),
    growthFigure(growth, "", reader),
    timetableFigure(growth.timetable, "", reader),
    lengthByTemperatureFigure(lengthOnTemperature, acrospires, "", reader),
  ].flatMap((spec) => spec ?? []);
}

describe.each([1040, 500, 340])("every drawing of the floor at %i px", (width) => {
  test.each(everyFigure(settings).map((spec) => [spec.id, spec] as const))("%s stays within its frame", (_, spec) => {
    const svg = drawn(draw(spec, width));
    expect(svg.outerHTML).not.toMatch(/NaN|undefined|Infinity|style=/);
    for (const mark of svg.querySelectorAll("circle")) {
      expect(Number(mark.getAttribute("cx"))).toBeGreaterThanOrEqual(0);
      expect(Number(mark.getAttribute("cx"))).toBeLessThanOrEqual(width);
    }
  });
});

test("every figure of the floor has its own id and a table as long as what it draws", () => {
  const specs = everyFigure(settings);
  expect(specs).toHaveLength(10);
  expect(new Set(specs.map(({ id }) => id)).size).toBe(specs.length);
  for (const { table } of specs) expect(table.rows.length).toBeGreaterThan(1);
});

test("no figure of the floor says degrees Celsius to a reader of Fahrenheit", () => {
  for (const spec of everyFigure({ ...settings, units: "us" })) {
    const words = `${spec.title} ${spec.table.columns.map(({ unit = "" }) => unit).join(" ")} ${draw(spec)}`;
    expect(words).not.toContain("°C");
  }
});

describe("steepOutFigure(steeps, said, settings)", () => {
  const dry = { low: 41, target: 42, high: 43 };
  const steeps = [steep(1, 44), steep(2, 42.4), steep(3, 46.5), steep(4, 42.4, { variety: "Wheaten", target: dry })];

  test("rings what lies outside its own range, and not the same moisture inside another", () => {
    const markup = draw(steepOutFigure(steeps, "", settings));
    expect(drawn(markup).querySelectorAll("g.dots circle")).toHaveLength(4);
    expect(drawn(markup).querySelectorAll("g.signal circle")).toHaveLength(2);
    expect(textsOf(markup, ".label.signal-words")).toEqual(["R3 46.5", "R2 42.4"]);
  });

  test("draws a strip for each range, with its varieties", () => {
    const names = textsOf(draw(steepOutFigure(steeps, "", settings)), ".axis .name");
    expect(names[0]).toContain("Amber, 3 batches");
    expect(names[1]).toContain("Wheaten, 1 batch");
  });

  test("is null where no moisture is known", () => {
    expect(steepOutFigure([steep(1, null)], "", settings)).toBeNull();
  });
});

describe("acrospireSharesFigure(runs, said, settings)", () => {
  const counts = { none: 10, toQuarter: 0, toHalf: 20, toThreeQuarters: 30, toFull: 15, over: 25 };
  const runs = [acrospire(1, 0.7, { counts }), acrospire(2, 0.7)];

  test("lays each class from its own lower edge to the top", () => {
    const svg = drawn(draw(acrospireSharesFigure(runs, "", settings)));
    const y = heightScale(svg);
    const lower = [...svg.querySelectorAll("path.growth")].map((path) =>
      Number(/V([\d.]+)H/.exec((path.getAttribute("d") ?? "").replace(/^M[^V]*/, ""))?.[1]),
    );
    [0, 10, 10, 30, 60, 75].forEach((percent, step) => {
      expect(lower[step]).toLieWithin(y(percent), 0.3);
    });
  });

  test("names every class beside the columns, whatever its share", () => {
    const names = textsOf(draw(acrospireSharesFigure(runs, "", settings)), ".label.germination");
    expect(names).toEqual(["none", "to ¼", "¼ to ½", "½ to ¾", "¾ to full", "overgrown"]);
  });

  test("draws no more than 200 batches, and says so", () => {
    const many = Array.from({ length: 230 }, (_, i) => acrospire(i, 0.7));
    expect(acrospireSharesFigure(many, "", settings)?.summary).toContain("the latest 200 of 230 batches");
  });
});

describe("cumulativeShares(counts, counted)", () => {
  test("ends at 1, and refuses a count of nothing", () => {
    expect(cumulativeShares({ none: 1, toQuarter: 1, toHalf: 0, toThreeQuarters: 0, toFull: 2, over: 0 }, 4)).toEqual([
      0.25, 0.5, 0.5, 0.5, 1, 1,
    ]);
    expect(() =>
      cumulativeShares({ none: 0, toQuarter: 0, toHalf: 0, toThreeQuarters: 0, toFull: 0, over: 0 }, 0),
    ).toThrow(/requires counted kernels; got 0/);
  });
});

describe("meanLengthFigure(runs, outside, said, settings)", () => {
  const runs = [acrospire(1, 0.7), acrospire(2, 0.5), acrospire(3, 0.8)];

  test("draws what counting leaves open as a stroke over each batch, and rings those outside", () => {
    const svg = drawn(draw(meanLengthFigure(runs, new Map([["R2", "short"]]), "", settings)));
    const y = heightScale(svg);
    const strokes = [...(svg.querySelector(".reach path")?.getAttribute("d") ?? "").matchAll(/,([\d.]+)V([\d.]+)/g)];
    expect(strokes).toHaveLength(3);
    expect(Number(strokes[1]?.[1])).toLieWithin(y(0.46), 0.3);
    expect(Number(strokes[1]?.[2])).toLieWithin(y(0.54), 0.3);
    expect(svg.querySelectorAll("g.signal circle")).toHaveLength(1);
    expect(textsOf(svg.outerHTML, ".label.signal-words")).toEqual(["R2 short"]);
  });
});

describe("bedsFigure(runs, beds, said, settings)", () => {
  const bed = (name: string, meanLength: number | null) => ({
    bed: name,
    counts: null,
    counted: 100,
    meanLength,
    bedMeanCelsius: 15,
  });
  const run = (index: number, ...lengths: readonly (number | null)[]): AcrospireRun =>
    acrospire(index, 0.7, { beds: lengths.map((length, i) => bed(`B${i + 1}`, length)) });

  test("holds each bed against the mean of the others of its batch", () => {
    const beside = bedsBeside([run(1, 0.8, 0.7, 0.6), run(2, 0.8), run(3, 0.8, null)]);
    expect(beside.map(({ bed: name }) => name)).toEqual(["B1", "B2", "B3"]);
    expect(beside[0]?.others).toLieWithin(0.65, 1e-12);
    expect(beside[2]?.others).toLieWithin(0.75, 1e-12);
  });

  test("rings the bed that stood apart and says by how much", () => {
    const lag = { run: "R2", bed: "B2", at: 0, difference: around(-0.2, 0.05), p: 0.001, coolerByKelvin: null };
    const spec = bedsFigure([run(1, 0.8, 0.79), run(2, 0.8, 0.6)], { ...nothing.beds, lags: [lag] }, "", settings);
    expect(textsOf(draw(spec), ".label.signal-words")).toEqual([`R2 ${MINUS}0.20`]);
    expect(spec?.table.rows.filter((row) => row[8] !== "")).toHaveLength(1);
  });

  test("is null where no batch has two beds counted", () => {
    expect(bedsFigure([run(1, 0.8), run(2)], nothing.beds, "", settings)).toBeNull();
  });
});

describe("timetableFigure(timetable, said, settings)", () => {
  test("draws the timetable itself at 0 and signs every difference", () => {
    const spec = timetableFigure(timetableOf([around(12, 3), around(-9, 2)]), "", settings);
    const svg = drawn(draw(spec, 500));
    expect(textsOf(svg.outerHTML, ".label")).toContain("unload later");
    expect(spec?.table.rows.map((row) => row[2])).toEqual(["+12 (+9 to +15)", `${MINUS}9 (${MINUS}11 to ${MINUS}7)`]);
  });

  test("is null for one bed temperature, which is no line", () => {
    expect(timetableFigure(timetableOf([around(12, 3)]), "", settings)).toBeNull();
  });
});
