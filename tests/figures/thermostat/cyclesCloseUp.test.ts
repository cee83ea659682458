import { describe, expect, test } from "vitest";
import type { FigureSpec } from "../../../src/figures/figureSpec.ts";
import { renderFigure } from "../../../src/figures/renderFigure.ts";
import { cyclesCloseUp } from "../../../src/figures/thermostat/cyclesCloseUp.ts";
import { minuteTicks } from "../../../src/figures/thermostat/minuteTicks.ts";
import type { KilnCurve } from "../../../src/report/runPageResult.ts";
import { drawn, heightScale, levelStrokes } from "../controlCharts/handMadeChart.ts";
import { document, kilnLoad, settings, textsOf, thermostatCurve } from "../handMade.ts";
import { readLoad } from "./handMadeThermostat.ts";

const NBSP = "\u00a0";
const MINUTE = 60_000;
const from = kilnLoad.loadedAt;
const draw = (spec: FigureSpec | null, width = 1040): string => {
  if (!spec) throw new Error("no figure");
  return renderFigure(spec, { document, width, idPrefix: "f" });
};

/** The hand-made curve cycles about 48 °C every 12 minutes for ten hours, then climbs to its cure. */
const curve = thermostatCurve();
const read = readLoad({
  dryingFrom: from + 60 * MINUTE,
  dryingTo: from + 600 * MINUTE,
  rampFrom: from + 600 * MINUTE,
  cureFrom: from + 700 * MINUTE,
  cureTo: from + 900 * MINUTE,
  dryingSetCelsius: 48,
  dryingOffsetKelvin: 0.3,
  dryingMeanCelsius: 48.3,
  dryingCycles: 45,
  dryingDuty: 0.44,
  dryingSwingKelvin: 4,
  dryingPeriodMinutes: 12,
  dryingSwitchOffCelsius: 50.1,
  dryingSwitchOnCelsius: 46.2,
  cureSetCelsius: 80,
  sentences: ["Drying: a sentence of the drying hold.", "Cure: a sentence of the cure."],
});

describe("cyclesCloseUp(curve, load, thermostatLoad, settings, {probeAtBulb, from, to})", () => {
  const spec = cyclesCloseUp(curve, kilnLoad, read, settings, { probeAtBulb: true });

  test("draws the last six cycles of the drying hold, every reading of them", () => {
    const svg = drawn(draw(spec));
    const dots = [...svg.querySelectorAll(".readings circle")];
    expect(dots).toHaveLength(73);
    expect(spec?.table.rows).toHaveLength(73);
    const y = heightScale(svg);
    const seen = Array.from(curve.at).flatMap((at, i) =>
      at >= from + 528 * MINUTE && at <= from + 600 * MINUTE ? (curve.airOnCelsius[i] ?? Number.NaN) : [],
    );
    seen.forEach((celsius, i) => {
      expect(Number(dots[i]?.getAttribute("cy"))).toLieWithin(y(celsius), 0.3);
    });
  });

  test.each([1040, 340])("draws set point, mean and switch points at their heights, named, at %i px", (width) => {
    const markup = draw(spec, width);
    const svg = drawn(markup);
    const y = heightScale(svg);
    for (const [selector, celsius] of [
      [".levels .rule", 48.3],
      [".levels .limit", 48],
    ] as const) {
      expect(levelStrokes(svg, selector)[0]?.y).toLieWithin(y(celsius), 0.3);
    }
    const switches = levelStrokes(svg, ".levels .event").map((line) => line.y);
    expect(switches[0]).toLieWithin(y(50.1), 0.3);
    expect(switches[1]).toLieWithin(y(46.2), 0.3);
    const words = textsOf(markup, ".label").join(" ");
    for (const name of ["off at", "mean", "set", "on at", `48.3${NBSP}°C`]) expect(words).toContain(name);
  });

  test("says what was read of the hold, and that hold's own sentences alone", () => {
    expect(spec?.summary).toBe(
      `26-117, 31 Oct 2026, 01:48 to 03:00: set to 48.0${NBSP}°C. The mean over the hold’s whole cycles is 48.3${NBSP}°C, 0.3${NBSP}°C over its set point. It switches off at 50.1${NBSP}°C and on at 46.2${NBSP}°C; air on swings by 4.0${NBSP}°C every 12.0 min, heater on 44 % of the time. a sentence of the drying hold.`,
    );
    expect(spec?.title).toBe("The last cycles of the drying hold");
  });

  test("calls nothing an error of the thermostat where the probe is not at its bulb", () => {
    const away = cyclesCloseUp(curve, kilnLoad, read, settings, { probeAtBulb: false });
    expect(away?.summary).toBe(
      `26-117, 31 Oct 2026, 01:48 to 03:00: set to 48.0${NBSP}°C. The mean over the hold’s whole cycles is 48.3${NBSP}°C as the logger’s probe reads it, away from the thermostat’s bulb. It switches off when the probe reads 50.1${NBSP}°C and on at 46.2${NBSP}°C; air on swings by 4.0${NBSP}°C every 12.0 min, heater on 44 % of the time. a sentence of the drying hold.`,
    );
    expect(draw(away)).toContain("air on at the logger’s probe, °C");
    expect(draw(spec)).not.toContain("logger’s probe");
  });

  test("draws readings less what the logger's check found, and tables them as logged", () => {
    const corrected = cyclesCloseUp(curve, kilnLoad, { ...read, dryingLoggerErrorKelvin: 1.5 }, settings, {
      probeAtBulb: true,
    });
    const svg = drawn(draw(corrected));
    const first = curve.airOnCelsius[528] ?? Number.NaN;
    const dot = svg.querySelector(".readings circle");
    expect(Number(dot?.getAttribute("cy"))).toLieWithin(heightScale(svg)(first - 1.5), 0.3);
    expect(corrected?.table.rows.at(-1)).toEqual(["01:48", first.toFixed(1)]);
    expect(corrected?.summary).toContain(`Drawn 1.5${NBSP}°C lower than logged`);
  });

  test("takes any span of either hold, and claims nothing that was not read", () => {
    const cure = cyclesCloseUp(curve, kilnLoad, read, settings, {
      probeAtBulb: true,
      from: from + 800 * MINUTE,
      to: from + 860 * MINUTE,
    });
    expect(cure?.title).toBe("Cycles of the cure");
    expect(cure?.summary).toBe(`26-117, 31 Oct 2026, 06:20 to 07:20: set to 80.0${NBSP}°C. a sentence of the cure.`);
    expect(levelStrokes(drawn(draw(cure)), ".levels path")).toHaveLength(1);
  });

  test("draws the last hour where neither period nor cycles are known", () => {
    const bare = { ...read, dryingPeriodMinutes: null, dryingCycles: null };
    expect(cyclesCloseUp(curve, kilnLoad, bare, settings, { probeAtBulb: true })?.table.rows).toHaveLength(61);
  });

  test("leaves a gap where the logger was silent", () => {
    const silent: KilnCurve = {
      ...curve,
      airOnCelsius: curve.airOnCelsius.map((celsius, i) => (i >= 560 && i < 572 ? Number.NaN : celsius)),
    };
    const gapped = cyclesCloseUp(silent, kilnLoad, read, settings, { probeAtBulb: true });
    const path = drawn(draw(gapped)).querySelector(".line path")?.getAttribute("d") ?? "";
    expect(path.match(/M/g)).toHaveLength(2);
    expect(gapped?.table.rows).toHaveLength(61);
  });

  test("is null without a hold and a span, and where no reading lies in it", () => {
    expect(cyclesCloseUp(curve, kilnLoad, readLoad({}), settings, { probeAtBulb: true })).toBeNull();
    expect(
      cyclesCloseUp(curve, kilnLoad, read, settings, {
        probeAtBulb: true,
        from: from - 600 * MINUTE,
        to: from - 500 * MINUTE,
      }),
    ).toBeNull();
  });
});

describe("minuteTicks(from, to, count, timeZone)", () => {
  test("names even minutes of the local clock, the day under the first and under midnight", () => {
    const start = Date.UTC(2026, 9, 30, 22, 41);
    expect(
      minuteTicks(start, start + 60 * MINUTE, 12, "Europe/Oslo").map(({ label, under }) => [label, under]),
    ).toEqual([
      ["23:45", "Fri 30 Oct"],
      ["23:50", undefined],
      ["23:55", undefined],
      ["00:00", "Sat 31 Oct"],
      ["00:05", undefined],
      ["00:10", undefined],
      ["00:15", undefined],
      ["00:20", undefined],
      ["00:25", undefined],
      ["00:30", undefined],
      ["00:35", undefined],
      ["00:40", undefined],
    ]);
  });

  test("follows a zone that stands a quarter of an hour off", () => {
    const start = Date.UTC(2026, 9, 30, 12, 0);
    const ticks = minuteTicks(start, start + 240 * MINUTE, 5, "Asia/Kathmandu");
    expect(ticks.map(({ label }) => label)).toEqual(["18:00", "19:00", "20:00", "21:00"]);
  });
});
