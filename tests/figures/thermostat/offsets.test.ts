import { describe, expect, test } from "vitest";
import type { FigureSpec } from "../../../src/figures/figureSpec.ts";
import { renderFigure } from "../../../src/figures/renderFigure.ts";
import { offsetsFigure } from "../../../src/figures/thermostat/offsetsFigure.ts";
import { swingAndRiseFigure } from "../../../src/figures/thermostat/swingAndRiseFigure.ts";
import type { HoldJudgement, KilnThermostat } from "../../../src/report/thermostatResult.ts";
import { drawn, heightScale, levelStrokes } from "../controlCharts/handMadeChart.ts";
import { document, settings, textsOf } from "../handMade.ts";
import {
  alarmDown,
  atLoad,
  calibration,
  checkOf,
  creepModels,
  judgementWith,
  kilnWith,
  loadName,
  runName,
  steadyModels,
  trust,
} from "./handMadeThermostat.ts";

const NBSP = "\u00a0";
const MINUS = "\u2212";
const draw = (spec: FigureSpec | null, width = 1040): string => {
  if (!spec) throw new Error("no figure");
  return renderFigure(spec, { document, width, idPrefix: "f" });
};
const figureOf = (judgement: HoldJudgement, parts: Partial<KilnThermostat> = {}): FigureSpec => {
  const spec = offsetsFigure(judgement, kilnWith(judgement, parts), settings);
  if (!spec) throw new Error("no figure");
  return spec;
};
/** From a load to its place across, read off two dots. */
const acrossScale = (svg: Element, loads: number): ((load: number) => number) => {
  const dots = [...svg.querySelectorAll(".dots circle")].map((dot) => Number(dot.getAttribute("cx")));
  expect(dots).toHaveLength(loads);
  const [first, last] = [dots[0] ?? Number.NaN, dots.at(-1) ?? Number.NaN];
  return (load) => first + ((last - first) * load) / (loads - 1);
};
const pathOf = (svg: Element, selector: string): string => svg.querySelector(selector)?.getAttribute("d") ?? "";
const numbers = (path: string): number[] => [...path.matchAll(/-?[\d.]+/g)].map(Number);

const LOADS = 50;
const creep = (load: number): number => (load < 30 ? 0.2 : 0.2 - 0.05 * (load - 30));
const creeping = judgementWith({
  offsets: Array.from({ length: LOADS }, (_, i) => creep(i) + ((i * 7) % 5) / 20 - 0.1),
  models: creepModels(0, 30, LOADS - 1),
  alarm: alarmDown(LOADS, 32, 36, (load) => (load < 30 ? 0 : -0.04 * (load - 30))),
});

describe("offsetsFigure(judgement, kiln, settings)", () => {
  test.each([1040, 340])("draws loads, tolerance and the winner's line at their heights, at %i px", (width) => {
    const svg = drawn(draw(figureOf(creeping), width));
    const y = heightScale(svg);
    const heights = [...svg.querySelectorAll(".dots circle")].map((dot) => Number(dot.getAttribute("cy")));
    creeping.points.forEach((point, i) => {
      expect(heights[i]).toLieWithin(y(point.offsetKelvin), 0.4);
    });
    const edges = levelStrokes(svg, ".limit path").map((line) => line.y);
    expect(edges[0]).toLieWithin(y(1.5), 0.3);
    expect(edges[1]).toLieWithin(y(-1.5), 0.3);
    const x = acrossScale(svg, LOADS);
    const [startX, startY, , , toX, toY] = numbers(pathOf(svg, ".line:not(.dashed):not(.thin) path:not([d*=v])"));
    // Relative steps after the first place: flat to the onset, then down.
    expect(startX).toLieWithin(x(0), 0.3);
    expect(startY).toLieWithin(y(0.2), 0.3);
    expect(toX).toLieWithin(x(LOADS - 1) - x(30), 0.4);
    expect(toY).toLieWithin(y(creep(LOADS - 1)) - y(0.2), 0.4);
  });

  test("rings the load an alarm was raised at and says so beside it", () => {
    const markup = draw(figureOf(creeping));
    const svg = drawn(markup);
    const rings = [...svg.querySelectorAll("g.signal circle")];
    expect(rings).toHaveLength(1);
    expect(Number(rings[0]?.getAttribute("cx"))).toLieWithin(acrossScale(svg, LOADS)(36), 0.3);
    expect(Number(rings[0]?.getAttribute("cy"))).toLieWithin(
      heightScale(svg)(creeping.points[36]?.offsetKelvin ?? Number.NaN),
      0.3,
    );
    expect(textsOf(markup, ".signal-words")).toEqual(["alarm 5 Jul 2025, down", "running mean"]);
  });

  test("draws the running mean, about the baseline's level, from where it came out of its limits", () => {
    // It is outside ±0.25 from load 37 on, so it is drawn from load 36.
    const late = alarmDown(LOADS, 12, 40, (load) => (load < 30 ? 0 : -0.04 * (load - 30)));
    const stretches = creeping.stretches.map((stretch) => ({ ...stretch, alarm: late }));
    const svg = drawn(draw(figureOf({ ...creeping, stretches })));
    const [x, y] = [acrossScale(svg, LOADS), heightScale(svg)];
    const [startX, startY, ...steps] = numbers(pathOf(svg, ".level path"));
    expect(startX).toLieWithin(x(36), 0.3);
    expect(startY).toLieWithin(y(0.2 - 0.24), 0.3);
    const across = steps.filter((_, i) => i % 2 === 0).reduce((sum, step) => sum + step, 0);
    expect(across).toLieWithin(x(LOADS - 1) - x(36), 1.5);
  });

  test("brackets the dates between which the change began, with an upright at the estimate", () => {
    const markup = draw(figureOf(creeping));
    const svg = drawn(markup);
    const x = acrossScale(svg, LOADS);
    const [, left, right, upright] =
      /M([\d.]+),[\d.]+V[\d.]+H([\d.]+).*\|M([\d.]+),/.exec(
        `${pathOf(svg, ".brackets .tick")}|${pathOf(svg, ".brackets .leader")}`,
      ) ?? [];
    expect(Number(left)).toLieWithin(x(28) - 2, 0.3);
    expect(Number(right)).toLieWithin(x(33) + 2, 0.3);
    expect(Number(upright)).toLieWithin(x(30), 0.3);
    expect(textsOf(markup, ".label")).toContain("began about 5 Jun 2025 (26 May to 20 Jun 2025)");
  });

  test.each([1040, 340])("lets no event's line run through the words of a bracket, at %i px", (width) => {
    const event = { ...calibration(31), kind: "repair", scope: "kiln" };
    const svg = drawn(draw(figureOf(creeping, { events: [event] }), width));
    const [, , foot = Number.NaN] = numbers(pathOf(svg, ".event"));
    const [, top = Number.NaN] = numbers(pathOf(svg, ".brackets .tick"));
    const words = svg.querySelector(".brackets text");
    expect(foot).toBeLessThanOrEqual(top);
    expect(Number(words?.getAttribute("y"))).toBeGreaterThan(foot);
  });

  test("goes on to where it leaves the tolerance: dashed to the estimate, the interval on the edge, hatched between", () => {
    const markup = draw(figureOf(creeping));
    const svg = drawn(markup);
    const [x, y] = [acrossScale(svg, LOADS), heightScale(svg)];
    const [fromX, fromY, toX, toY] = numbers(pathOf(svg, ".dashed path"));
    expect(fromX).toLieWithin(x(LOADS - 1), 0.3);
    expect(fromY).toLieWithin(y(creep(LOADS - 1)), 0.4);
    expect(toX).toLieWithin(x(64), 0.6);
    expect(toY).toLieWithin(y(-1.5), 0.3);
    const bar = [...svg.querySelectorAll(".line path")]
      .map((path) => path.getAttribute("d") ?? "")
      .find((d) => d.includes("v8"));
    const [, barFrom, barTo] = /^M([\d.]+),.*H([\d.]+)/.exec(bar ?? "") ?? [];
    expect(Number(barFrom)).toLieWithin(x(60), 0.6);
    expect(Number(barTo)).toLieWithin(x(70), 0.8);
    for (const [, strokeX, strokeY] of pathOf(svg, ".hatch path").matchAll(/[ML]([\d.]+),([\d.]+)/g)) {
      expect(Number(strokeX)).toBeGreaterThanOrEqual(x(LOADS - 1) - 0.4);
      expect(Number(strokeX)).toBeLessThanOrEqual(x(70) + 0.8);
      expect(Number(strokeY)).toBeLessThanOrEqual(y(-1.5) + 0.4);
    }
    expect(textsOf(markup, ".label")).toEqual(
      expect.arrayContaining(["leaves the tolerance about 22 Nov 2025", "(2 Nov to 22 Dec 2025)"]),
    );
  });

  test("says level, rate, onset, alarm and dates in its summary", () => {
    expect(figureOf(creeping).summary).toBe(
      `Since the first load, 50 loads: a level of +0.2${NBSP}°C, then moving by ${MINUS}0.30${NBSP}°C a month (${MINUS}0.36 to ${MINUS}0.25) from about 5 June 2025 (26 May to 20 June 2025). Alarm on 5 July 2025 (down, by the running mean and the cumulative sum). At this rate it leaves the tolerance of ±1.5${NBSP}°C about 22 November 2025 (2 November to 22 December 2025).`,
    );
  });

  test("draws changes from the level before where the probe is not at the bulb, with the tolerance about it, and says so", () => {
    const far = judgementWith({
      offsets: Array.from({ length: 30 }, (_, i) => -6 + (i % 3) / 10),
      models: steadyModels(0, 29, -5.9),
    });
    const spec = figureOf(far, { probeAtBulb: false });
    const svg = drawn(draw(spec));
    const y = heightScale(svg);
    const edges = levelStrokes(svg, ".limit path").map((line) => line.y);
    expect(edges[0]).toLieWithin(y(1.5), 0.3);
    expect(edges[1]).toLieWithin(y(-1.5), 0.3);
    expect(textsOf(draw(spec), ".dots title")[0]).toContain(`${MINUS}0.1${NBSP}°C from the level before any change`);
    expect(spec.table.columns.map(({ label }) => label)).toContain("change");
    // The level itself says where the probe is: it stands nowhere.
    for (const said of [spec.summary, ...textsOf(draw(spec), "title, text"), JSON.stringify(spec.table.rows)]) {
      expect(said).not.toMatch(/\u22125\.9|\u22126\.0|5\.[0-9]\u00a0°C/);
    }
    expect(textsOf(draw(spec), ".label")).toContain("level before");
    expect(textsOf(draw(spec), ".axis .title")[0]).toContain("the probe is not at the bulb");
    expect(textsOf(draw(spec, 340), ".axis .title")[0]).toContain("not at the bulb");
    expect(spec.summary).toContain(`the tolerance of ±1.5${NBSP}°C around the level before`);
    expect(spec.summary).toContain("The probe does not sit at the bulb");
  });

  test("starts a band of its own with each calibration where the probe is not at the bulb", () => {
    const far = judgementWith({
      offsets: Array.from({ length: 40 }, (_, i) => (i < 21 ? -6 : -5)),
      calibratedAfter: [20],
      models: steadyModels(21, 39, -5),
      alarm: { ...alarmDown(19, 0, 0, () => 0), alarms: [] },
    });
    const svg = drawn(draw(figureOf(far, { probeAtBulb: false })));
    // Nothing is known of the level of the first stretch, so it has no band.
    expect(svg.querySelectorAll(".band rect")).toHaveLength(1);
    const band = svg.querySelector(".band rect");
    const x = acrossScale(svg, 40);
    expect(Number(band?.getAttribute("x"))).toBeGreaterThan(x(20));
    expect(Number(band?.getAttribute("x"))).toBeLessThan(x(21));
  });

  test("names calibrations above the frame and ticks each day the logger was checked along its foot", () => {
    const judgement = judgementWith({ offsets: Array.from({ length: 40 }, () => 0.1), calibratedAfter: [20] });
    const checks = [checkOf(atLoad(5), 0, 0.2), checkOf(atLoad(5) + 3_600_000, 80, 80.4), checkOf(atLoad(30), 0, 0.2)];
    const markup = draw(figureOf(judgement, { logger: trust({ checks, daysSinceCheck: 45 }) }));
    expect(textsOf(markup, ".label")).toEqual(
      expect.arrayContaining(["set right against reference", "logger checked", "set point"]),
    );
    const ticks = pathOf(drawn(markup), ".checks .tick");
    expect(ticks.match(/M/g)).toHaveLength(2);
    expect(Number(numbers(ticks)[0])).toLieWithin(acrossScale(drawn(markup), 40)(5), 0.3);
  });

  test("draws no onset, no forecast and no ring where nothing moved", () => {
    const judgement = judgementWith({
      offsets: Array.from({ length: 20 }, (_, i) => (i % 3) / 10),
      models: steadyModels(0, 19),
      alarm: { ...alarmDown(20, 0, 0, () => 0), alarms: [] },
    });
    const spec = figureOf(judgement);
    const svg = drawn(draw(spec));
    for (const selector of [".hatch", ".dashed", ".brackets", ".signal", ".level"]) {
      expect(svg.querySelector(selector)).toBeNull();
    }
    expect(spec.summary).toBe(
      `Since the first load, 20 loads: steady at +0.1${NBSP}°C (0.0 to +0.2). No alarm. It stays within the tolerance of ±1.5${NBSP}°C for the next 365 days.`,
    );
  });

  test("says what is too little, and which loads had no offset", () => {
    const few = { ...judgementWith({ offsets: [0.2], tooLittle: "1 load; a drift needs 11." }) };
    expect(figureOf({ ...few, without: [{ reason: "power-limited", count: 2 }] }).summary).toBe(
      "Since the first load, 1 load. 1 load; a drift needs 11. 2 loads without an offset are not drawn.",
    );
    expect(offsetsFigure(judgementWith({ offsets: [] }), kilnWith(few), settings)).toBeNull();
  });

  test("says what the alarm still needs where the models can speak already", () => {
    const some = judgementWith({
      offsets: Array.from({ length: 9 }, () => 0.1),
      models: steadyModels(0, 8),
      tooLittle: "The alarm needs 11 loads.",
    });
    expect(figureOf(some).summary).toContain("(0.0 to +0.2). The alarm needs 11 loads. It stays");
  });

  test("says that it is outside already and since when", () => {
    const levelNow = { estimate: -1.9, low: -2, high: -1.8 };
    const since = { estimate: atLoad(20), low: atLoad(19), high: atLoad(22) };
    const outside = judgementWith({
      offsets: Array.from({ length: 30 }, (_, i) => (i < 20 ? 0 : -1.9)),
      models: {
        ...creepModels(0, 20, 29),
        winner: "step",
        kelvinPerMonth: null,
        stepKelvin: { estimate: -2.1, low: -2.2, high: -2 },
        leaves: { kind: "already-outside", side: -1, since, levelNow },
      },
    });
    const spec = figureOf(outside);
    expect(spec.summary).toContain(
      `It has been outside the tolerance of ±1.5${NBSP}°C since about 16 April 2025 (11 April to 26 April 2025).`,
    );
    expect(textsOf(draw(spec), ".label")).toContain("outside since 16 Apr 2025");
  });

  test("never lets a forecast that may not come end before the drawing does", () => {
    const base = creepModels(0, 30, LOADS - 1);
    const maybe = judgementWith({
      offsets: creeping.points.map((point) => point.offsetKelvin),
      models: {
        ...base,
        isClear: false,
        scores: [
          { model: "creep", parameters: 4, residualSquares: 1, bic: 1 },
          { model: "step", parameters: 4, residualSquares: 1, bic: 2 },
        ],
        leaves: {
          ...base.leaves,
          kind: "dated",
          side: -1,
          onlyIfCreep: true,
          earliest: atLoad(60),
          estimate: atLoad(64),
          latest: null,
        },
      },
    });
    const spec = figureOf(maybe);
    const svg = drawn(draw(spec));
    const bar = [...svg.querySelectorAll(".line path")]
      .map((path) => path.getAttribute("d") ?? "")
      .find((d) => d.includes("v8"));
    const [, barTo] = /H([\d.]+)/.exec(bar ?? "") ?? [];
    expect(Number(barTo)).toLieWithin(levelStrokes(svg, ".limit path")[0]?.x2 ?? 0, 0.3);
    // An arrow, where a bar that ends has an upright.
    expect(bar).toMatch(/m-7,-4l7,4l-7,4$/);
    expect(spec.summary).toContain("though a step explains it nearly as well");
    expect(spec.summary).toContain("If it is a creep, it leaves");
    expect(spec.summary).toContain("not before 2 November 2025");
  });

  test("leaves out loads that would crowd the forecast, says from when it is drawn, and tables them all", () => {
    const many = judgementWith({ offsets: Array.from({ length: 200 }, () => 0.1), calibratedAfter: [150] });
    const narrow = draw(figureOf(many), 340);
    const dots = drawn(narrow).querySelectorAll(".dots circle").length;
    expect(dots).toBeLessThan(130);
    expect(dots).toBeGreaterThan(50);
    expect(textsOf(narrow, ".label").some((text) => text.startsWith("from "))).toBe(true);
    expect(figureOf(many).table.rows).toHaveLength(200);
    expect(draw(figureOf(many))).not.toContain(">from ");
  });

  test("lists loads latest first with links, what the logger's check took off, and the alarm", () => {
    const loads = [{ load: loadName(36), dryingLoggerErrorKelvin: 0.4 }] as unknown as KilnThermostat["loads"];
    const { table } = figureOf(creeping, { loads });
    expect(table.rows[LOADS - 1 - 36]).toEqual([
      { text: runName(36), href: `../runs/${runName(36)}/` },
      "5 Jul 2025",
      "48.0",
      `${MINUS}0.1`,
      "0.05",
      "42",
      "+0.4",
      "alarm, down",
    ]);
  });

  test("shows readers of Fahrenheit their own degrees", () => {
    const spec = offsetsFigure(creeping, kilnWith(creeping), { ...settings, units: "us" });
    expect(spec?.summary).toContain(`the tolerance of ±2.7${NBSP}°F`);
    const svg = drawn(draw(spec));
    expect(levelStrokes(svg, ".limit path")[1]?.y).toLieWithin(heightScale(svg)(-2.7), 0.3);
  });
});

describe("swingAndRiseFigure(judgement, kiln, settings)", () => {
  test.each([1040, 340])("stands on the time axis of the offsets at %i px, forecast and all", (width) => {
    const months = (markup: string): string[] =>
      [...drawn(markup).querySelectorAll(".axis text[text-anchor=middle]")].map(
        (text) => `${text.textContent} ${text.getAttribute("x")}`,
      );
    const own = months(draw(swingAndRiseFigure(creeping, kilnWith(creeping), settings), width));
    expect(own.length).toBeGreaterThan(1);
    expect(own).toEqual(months(draw(figureOf(creeping), width)));
  });

  test("draws each load in its strip at its height", () => {
    const svg = drawn(draw(swingAndRiseFigure(creeping, kilnWith(creeping), settings)));
    const dots = [...svg.querySelectorAll(".dots circle")].map((dot) => Number(dot.getAttribute("cy")));
    const swings = creeping.points.flatMap((point) => point.swingKelvin ?? []);
    expect(dots).toHaveLength(swings.length + LOADS);
    // Each strip has its own values along the axis: those of the first come first.
    const labels = [...svg.querySelectorAll(".axis text[text-anchor=end]")].map((text) => ({
      value: Number(text.textContent),
      y: Number(text.getAttribute("y")) - 14 * 0.34,
    }));
    const turn = labels.findIndex((label, i) => i > 0 && label.value < (labels[i - 1]?.value ?? 0));
    const scale = (own: typeof labels) => (value: number) => {
      const [a, b] = [own[0], own.at(-1)];
      if (!a || !b) throw new Error("no axis");
      return a.y + ((value - a.value) / (b.value - a.value)) * (b.y - a.y);
    };
    const [swing, rise] = [scale(labels.slice(0, turn)), scale(labels.slice(turn))];
    swings.forEach((kelvin, i) => {
      expect(dots[i]).toLieWithin(swing(kelvin), 0.4);
    });
    creeping.points.forEach((point, i) => {
      expect(dots[swings.length + i]).toLieWithin(rise(point.riseKelvinPerMinute ?? Number.NaN), 0.4);
    });
  });

  test("says the span since the last calibration beside that before it", () => {
    const judgement = judgementWith({ offsets: Array.from({ length: 40 }, () => 0.1), calibratedAfter: [20] });
    const { summary, table } = swingAndRiseFigure(judgement, kilnWith(judgement), settings) ?? {};
    expect(summary).toBe(
      `Swing since the last calibration or repair: 3.2 to 3.4${NBSP}°C (15 loads); before: 3.2 to 3.4${NBSP}°C (17 loads); 8 loads without. Rise at full power since the last calibration or repair: 1.10 to 1.13${NBSP}°C a minute (19 loads); before: 1.10 to 1.13${NBSP}°C a minute (21 loads).`,
    );
    expect(table?.rows[0]).toEqual([{ text: runName(39), href: `../runs/${runName(39)}/` }, "20 Jul 2025", "", "1.13"]);
  });

  test("names the calibration between its stretches", () => {
    const judgement = judgementWith({ offsets: Array.from({ length: 40 }, () => 0.1), calibratedAfter: [20] });
    expect(textsOf(draw(swingAndRiseFigure(judgement, kilnWith(judgement), settings)), ".label")).toContain(
      calibration(20).what,
    );
  });

  test("is one strip where only one was read, and null where neither was", () => {
    const bare = (parts: object): HoldJudgement => ({
      ...creeping,
      points: creeping.points.map((point) => ({ ...point, ...parts })),
    });
    expect(
      textsOf(draw(swingAndRiseFigure(bare({ swingKelvin: null }), kilnWith(creeping), settings)), ".axis .name"),
    ).toEqual([`rise at full power, °C a minute`]);
    expect(
      swingAndRiseFigure(bare({ swingKelvin: null, riseKelvinPerMinute: null }), kilnWith(creeping), settings),
    ).toBeNull();
  });
});
