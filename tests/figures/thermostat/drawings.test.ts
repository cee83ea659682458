import { describe, expect, test } from "vitest";
import { renderFigure } from "../../../src/figures/renderFigure.ts";
import { checksFigure } from "../../../src/figures/thermostat/checksFigure.ts";
import { cyclesCloseUp } from "../../../src/figures/thermostat/cyclesCloseUp.ts";
import { fanFigure } from "../../../src/figures/thermostat/fanFigure.ts";
import { offsetsFigure } from "../../../src/figures/thermostat/offsetsFigure.ts";
import { swingAndRiseFigure } from "../../../src/figures/thermostat/swingAndRiseFigure.ts";
import { drawn } from "../controlCharts/handMadeChart.ts";
import { document, kilnLoad, settings, thermostatCurve } from "../handMade.ts";
import {
  alarmDown,
  atLoad,
  checkOf,
  creepModels,
  judgementWith,
  kilnWith,
  loadName,
  readLoad,
  runName,
  trust,
} from "./handMadeThermostat.ts";

/** A kiln that has everything, of as many loads as asked, never calibrated. */
function figuresOf(count: number, probeAtBulb = true, name = "K1") {
  const onset = Math.floor(count * 0.7);
  const last = count - 1;
  const offsets = Array.from(
    { length: count },
    (_, i) => 0.2 - (i > onset ? (0.8 * (i - onset)) / (count - onset) : 0) + 0.3 * Math.sin(i * 12.9898),
  );
  const judgement = judgementWith({
    offsets,
    ...(count < 20
      ? { tooLittle: "Too few loads." }
      : {
          models: creepModels(0, onset, last),
          alarm: alarmDown(count, onset + 2, onset + 4, (load) => (load > onset ? -0.3 : 0)),
        }),
  });
  const logger = trust({
    checks: Array.from({ length: Math.ceil(count / 6) }, (_, i) =>
      checkOf(atLoad(i * 6), i % 2 === 0 ? 0 : 80, 80.3 * (i % 2)),
    ),
    daysSinceCheck: 30,
    uncertaintyKelvin: 0.15,
  });
  const fan = offsets.map((offsetKelvin, i) => ({
    load: loadName(i),
    runs: [runName(i)],
    at: atLoad(i),
    setCelsius: 45,
    offsetKelvin,
    shareOfHold: 0.8,
  }));
  const kiln = kilnWith(judgement, { kiln: name, logger, fan, probeAtBulb });
  const read = readLoad({
    dryingFrom: kilnLoad.loadedAt,
    dryingTo: kilnLoad.loadedAt + 600 * 60_000,
    dryingSetCelsius: 48,
    dryingPeriodMinutes: 12,
    dryingMeanCelsius: 48.2,
    dryingSwitchOffCelsius: 50,
    dryingSwitchOnCelsius: 46,
  });
  return [
    offsetsFigure(judgement, kiln, settings),
    swingAndRiseFigure(judgement, kiln, settings),
    cyclesCloseUp(thermostatCurve(), kilnLoad, read, settings, { probeAtBulb }),
    fanFigure(kiln, settings),
    checksFigure(kiln, settings),
  ].flatMap((spec) => spec ?? []);
}

const drawings = [1, 8, 60, 700].flatMap((count) =>
  [true, false].flatMap((probeAtBulb) =>
    figuresOf(count, probeAtBulb).flatMap((spec) =>
      [spec.wideWidth, spec.narrowWidth].map((width) => ({
        id: spec.id,
        count,
        probe: probeAtBulb ? "at the bulb" : "elsewhere",
        spec,
        width,
      })),
    ),
  ),
);

test("every figure of the page is drawn, of one load as of many", () => {
  for (const count of [1, 8, 60, 700]) {
    expect(new Set(drawings.filter((one) => one.count === count).map(({ id }) => id)).size).toBe(5);
  }
});

test("two kilns have no id in common but that of the one load that is shown close up", () => {
  const ids = (name: string): readonly string[] =>
    figuresOf(60, true, name)
      .map(({ id }) => id)
      .filter((id) => !id.startsWith("thermostat-cycles-"));
  expect(new Set([...ids("K1"), ...ids("K2")]).size).toBe(8);
});

describe.each(drawings)("the figure $id of $count loads, probe $probe, at $width px", ({ count, spec, width }) => {
  const markup = renderFigure(spec, { document, width, idPrefix: "fig" });

  test("carries no style, no colour of its own, no script, and no number that is none", () => {
    expect(markup).not.toMatch(/<style|<script|\sstyle=|\son\w+=|NaN|undefined|Infinity/i);
    expect(markup).not.toMatch(/#[0-9a-f]{3,8}\b(?!-)|rgb\(/i);
    expect(`${spec.title} ${spec.summary}`).not.toMatch(/NaN|undefined|null|Infinity/);
  });

  test("gives the same bytes twice", () => {
    expect(renderFigure(spec, { document, width, idPrefix: "fig" })).toBe(markup);
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

  test("has a table of at most 200 rows, and stays small where loads are many", () => {
    expect(spec.table.rows.length).toBeGreaterThan(0);
    expect(spec.table.rows.length).toBeLessThanOrEqual(200);
    if (count === 700) expect(markup.length).toBeLessThan(24_000);
  });
});
