import { JSDOM } from "jsdom";
import { describe, expect, it } from "vitest";
import { type StoryRun, storyStages } from "../../src/figures/batchStages.ts";
import { batchStory } from "../../src/figures/batchStory.ts";
import { textSize } from "../../src/figures/figureSettings.ts";
import { formerBatchesFigure } from "../../src/figures/formerBatches.ts";
import { renderFigure } from "../../src/figures/renderFigure.ts";
import { textWidth } from "../../src/figures/textWidth.ts";

const { document } = new JSDOM("").window;
const HOUR = 3_600_000;
const settings = { units: "metric", timeZone: "UTC" } as const;

const run: StoryRun = {
  steepStartedAt: 0,
  steepEndedAt: 36 * HOUR,
  germinationStartedAt: 37 * HOUR,
  germinationEndedAt: 133 * HOUR,
  loadedAt: 134 * HOUR,
  cureStartedAt: 144 * HOUR,
  unloadedAt: 149 * HOUR,
};
const none: StoryRun = {
  steepStartedAt: null,
  steepEndedAt: null,
  germinationStartedAt: null,
  germinationEndedAt: null,
  loadedAt: null,
  cureStartedAt: null,
  unloadedAt: null,
};
const at = Float64Array.from({ length: 151 }, (_, i) => (134 + i / 10) * HOUR);
const curve = {
  at,
  airOnCelsius: at.map((_, i) => (i < 100 ? 48 : 80)),
  airOffCelsius: at.map((_, i) => 25 + i / 5),
  bedCelsius: at.map(() => Number.NaN),
};
const load = { heatOffAt: 148 * HOUR, dryingSetCelsius: 48, cureSetCelsius: 80 };

const draw = (spec: ReturnType<typeof batchStory>, width: number): Element => {
  if (spec === null) throw new Error("no figure");
  const holder = document.createElement("div");
  holder.innerHTML = renderFigure(spec, { document, width, idPrefix: "x" });
  return holder;
};

describe("storyStages(run)", () => {
  it("says steep and kiln in hours and the bed in days, in true elapsed time", () => {
    expect(storyStages(run).map(({ name, said }) => `${name} ${said.replace("\u00a0", " ")}`)).toEqual([
      "steep 36.0 h",
      "bed 4.0 days",
      "kiln 15.0 h",
    ]);
  });

  it("leaves out a stage without an end, or one that ends before it begins", () => {
    expect(storyStages({ ...run, steepEndedAt: null, germinationEndedAt: HOUR }).map(({ name }) => name)).toEqual([
      "kiln",
    ]);
  });
});

describe("batchStory(story, settings)", () => {
  it.each([1040, 340])("draws stages, readings, set points and cure in one drawing, %d px wide", (width) => {
    const drawn = draw(batchStory({ run, load, curve }, settings), width);
    const words = [...drawn.querySelectorAll("text")].map((text) => text.textContent?.replaceAll("\u00a0", " "));
    for (const said of ["steep 36.0 h", "bed 4.0 days", "kiln 15.0 h", "air on", "air off", "cure"])
      expect(words).toContain(said);
    // A silent probe is not drawn. Degrees stand in both systems: 48 °C is 118.4 °F, 80 °C is 176 °F.
    expect(words).not.toContain("bed");
    expect(words).toContain("drying set 48 °C (118 °F)");
    expect(words).toContain("cure set 80 °C (176 °F)");
    expect(words).toContain("40 (104)");
    expect(drawn.querySelector("[style]")).toBeNull();
  });

  it("draws the stages alone where the logger has nothing, and says so", () => {
    const spec = batchStory({ run, load: null, curve: null }, settings);
    expect(spec?.summary).toContain("The kiln's logger has nothing on this batch.");
    expect(draw(spec, 1040).querySelectorAll("rect")).toHaveLength(3);
  });

  it("is no figure where no stage has both its ends", () => {
    expect(batchStory({ run: none, load: null, curve: null }, settings)).toBeNull();
  });
});

describe("formerBatchesFigure(strips, words)", () => {
  const strip = {
    name: "colour",
    value: 3.6,
    former: [3.2, 3.4, 3.5, 3.9],
    next: { estimate: 3.5, low: 2.9, high: 4.1 },
    say: (value: number) => `${value.toFixed(1)} EBC`,
    limits: [2.5, 4],
  };
  const words = { summary: "", rows: [] };

  it("draws a dot a former batch, a ring about this one, and the spread to expect with its ends said", () => {
    const spec = formerBatchesFigure([strip], words);
    if (spec === null) throw new Error("no figure");
    const holder = document.createElement("div");
    holder.innerHTML = renderFigure(spec, { document, width: 1040, idPrefix: "x" });
    expect(holder.querySelectorAll(".dots circle")).toHaveLength(4);
    expect(holder.querySelectorAll(".signal circle")).toHaveLength(1);
    expect(holder.querySelectorAll(".band")).toHaveLength(1);
    // The lower limit lies off the strip, the upper one on it.
    expect(holder.querySelectorAll(".limit")).toHaveLength(1);
    const said = [...holder.querySelectorAll("text")].map((text) => text.textContent);
    expect(said).toEqual(expect.arrayContaining(["colour", "this batch 3.6 EBC", "2.9 EBC", "4.1 EBC"]));
  });

  it.each([
    ["apart", [2.9, 3.7], 3.3],
    ["crowded by a batch far off", [2.9, 2.91, 2.96], 9],
    ["crowded at the far end", [8.9, 8.97, 9], 2],
  ])("keeps what it says of former batches on the paper and out of each other's way: %s", (_, former, value) => {
    const say = (shown: number): string => `${shown.toFixed(2)} EBC (${(shown / 1.97).toFixed(2)} SRM)`;
    const spec = formerBatchesFigure([{ ...strip, say, former, value, next: null }], words);
    if (spec === null) throw new Error("no figure");
    for (const width of [340, 1040]) {
      const holder = document.createElement("div");
      holder.innerHTML = renderFigure(spec, { document, width, idPrefix: "x" });
      const size = textSize({ width, narrow: width === 340 });
      const said = [...holder.querySelectorAll("text.soft")].map((text) => {
        const [centre, half] = [Number(text.getAttribute("x")), textWidth(text.textContent ?? "", size) / 2];
        return { from: centre - half, to: centre + half };
      });
      expect(said).toHaveLength(2);
      const [low, high] = said;
      expect(low?.from).toBeGreaterThanOrEqual(0);
      expect(high?.from).toBeGreaterThan(low?.to ?? Number.NaN);
      expect(high?.to).toBeLessThanOrEqual(width);
    }
  });

  it("draws batches that are all alike, and one alone, and says them once", () => {
    for (const former of [[3.4, 3.4], [3.4]]) {
      const spec = formerBatchesFigure([{ ...strip, value: null, former, next: null }], words);
      if (spec === null) throw new Error("no figure");
      const drawn = renderFigure(spec, { document, width: 340, idPrefix: "x" });
      expect(drawn).not.toContain("NaN");
      expect(drawn.match(/3\.4 EBC/g)).toHaveLength(1);
    }
  });

  it("is no figure without anything to compare", () => {
    expect(formerBatchesFigure([], words)).toBeNull();
  });
});
