import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { FigureSpec } from "../../../src/figures/figureSpec.ts";
import { renderFigure } from "../../../src/figures/renderFigure.ts";
import { asOf, checkAges } from "../../../src/figures/thermostat/checkAge.ts";
import { checksFigure } from "../../../src/figures/thermostat/checksFigure.ts";
import { fanFigure } from "../../../src/figures/thermostat/fanFigure.ts";
import { hatch } from "../../../src/figures/thermostat/hatch.ts";
import type { KilnThermostat, LoggerTrust } from "../../../src/report/thermostatResult.ts";
import { drawn } from "../controlCharts/handMadeChart.ts";
import { document, settings, textsOf } from "../handMade.ts";
import { atLoad, checkOf, DAY, judgementWith, kilnWith, loadName, runName, trust } from "./handMadeThermostat.ts";

const NBSP = "\u00a0";
const MINUS = "\u2212";
const draw = (spec: FigureSpec | null, width = 500): string => {
  if (!spec) throw new Error("no figure");
  return renderFigure(spec, { document, width, idPrefix: "f" });
};

describe("fanFigure(kiln, settings)", () => {
  const fan = [-0.4, null, -0.8, 0.1].map((offsetKelvin, i) => ({
    load: loadName(i),
    runs: [runName(i)],
    at: atLoad(i),
    setCelsius: 45,
    offsetKelvin,
    shareOfHold: i === 3 ? null : 0.7 + i / 10,
  }));
  const kiln = kilnWith(judgementWith({ offsets: [0] }), { fan });

  test("draws offset and share of the hold in two strips, a load missing in one drawn in the other", () => {
    const markup = draw(fanFigure(kiln, settings));
    expect(textsOf(markup, ".axis .name")).toEqual(["switches from its set point, °C", "on, % of the drying hold"]);
    expect(textsOf(markup, ".dots title")).toEqual([
      `25-001, 6 Jan 2025: ${MINUS}0.4${NBSP}°C`,
      `25-003, 16 Jan 2025: ${MINUS}0.8${NBSP}°C`,
      `25-004, 21 Jan 2025: +0.1${NBSP}°C`,
      "25-001, 6 Jan 2025: on for 70 % of the hold",
      "25-002, 11 Jan 2025: on for 80 % of the hold",
      "25-003, 16 Jan 2025: on for 90 % of the hold",
    ]);
  });

  test("says both spans and that the air goes with the share", () => {
    expect(fanFigure(kiln, settings)?.summary).toBe(
      `4 loads with the fan on a thermostat of its own, 6 Jan to 21 Jan 2025. It switched ${MINUS}0.8 to +0.1${NBSP}°C from its set point. It blew for 70 to 90 % of the drying hold, and the air through the bed goes with that share.`,
    );
    expect(fanFigure(kiln, settings)?.table.rows[0]).toEqual([
      { text: "25-004", href: "../runs/25-004/" },
      "21 Jan 2025",
      "45.0",
      "+0.1",
      "",
    ]);
  });

  test("draws only how its offsets changed where the probe is not at its bulb", () => {
    const spec = fanFigure({ ...kiln, probeAtBulb: false }, settings);
    expect(textsOf(draw(spec), ".dots title").slice(0, 3)).toEqual([
      `25-001, 6 Jan 2025: 0.0${NBSP}°C`,
      `25-003, 16 Jan 2025: ${MINUS}0.4${NBSP}°C`,
      `25-004, 21 Jan 2025: +0.5${NBSP}°C`,
    ]);
    expect(textsOf(draw(spec), ".axis .name")[0]).toBe("switches from where it mostly does, °C");
    expect(spec?.summary).toContain("only changes are drawn");
    expect(spec?.table.columns.map(({ label }) => label)).toContain("change");
  });

  test("is null where no fan had a thermostat that could be read", () => {
    expect(fanFigure({ ...kiln, fan: [] }, settings)).toBeNull();
    const unread = fan.map((load) => ({ ...load, offsetKelvin: null, shareOfHold: null }));
    expect(fanFigure({ ...kiln, fan: unread }, settings)).toBeNull();
  });
});

describe("checksFigure(kiln, settings)", () => {
  const of = (own: LoggerTrust): KilnThermostat => kilnWith(judgementWith({ offsets: [0] }), { logger: own });
  const logger = trust({
    checks: [
      checkOf(atLoad(0), 0, 0.9),
      checkOf(atLoad(0) + 3_600_000, 80, 81.4),
      checkOf(atLoad(30), 0, 0.1),
      checkOf(atLoad(30) + 3_600_000, 80, 80.5),
      checkOf(atLoad(2), 0, -0.3, "bed"),
    ],
    daysSinceCheck: 130,
    uncertaintyKelvin: 0.2,
  });

  test("draws reading less reference for each probe, ice points hollow", () => {
    const markup = draw(checksFigure(of(logger), settings));
    expect(textsOf(markup, ".axis .name")).toEqual(["air on, °C over the reference", "bed, °C over the reference"]);
    const svg = drawn(markup);
    expect(svg.querySelectorAll(".dots circle")).toHaveLength(2);
    expect(svg.querySelectorAll(".hollow circle")).toHaveLength(3);
    const [first, second] = [...svg.querySelectorAll(".dots circle")].map((dot) => Number(dot.getAttribute("cy")));
    const zero = Number(/,([\d.]+)H/.exec(svg.querySelector(".rule path")?.getAttribute("d") ?? "")?.[1]);
    // Heights over the line of no error are in proportion to the errors, 1.4 and 0.5.
    expect((zero - (first ?? 0)) / (zero - (second ?? 0))).toAgreeWithin(1.4 / 0.5, 0.02);
  });

  test("gives the readings of the last check their interval of two standard uncertainties, and their temperatures", () => {
    const markup = draw(checksFigure(of(logger), settings));
    const svg = drawn(markup);
    const path = svg.querySelector("g.tick path")?.getAttribute("d") ?? "";
    expect(path.match(/M/g)).toHaveLength(2);
    const [, top, bottom] = /M[\d.]+,([\d.]+)V([\d.]+)/.exec(path) ?? [];
    const zero = Number(/,([\d.]+)H/.exec(svg.querySelector(".rule path")?.getAttribute("d") ?? "")?.[1]);
    const first = Number(svg.querySelector(".dots circle")?.getAttribute("cy"));
    expect(Math.abs(Number(bottom) - Number(top)) / (zero - first)).toAgreeWithin(0.8 / 1.4, 0.02);
    expect(textsOf(markup, ".label")).toEqual(expect.arrayContaining([`at 0${NBSP}°C`, `at 80${NBSP}°C`]));
  });

  test("shows when the last check was too old", () => {
    const svg = drawn(draw(checksFigure(of(logger), settings)));
    expect(svg.querySelectorAll(".recent")).toHaveLength(2);
    expect(svg.querySelectorAll("path.hatch")).toHaveLength(2);
  });

  test("says what the last check found, how old it is, and what that means", () => {
    expect(checksFigure(of(logger), settings)?.summary).toBe(
      `The last check on 5 June 2025 found +0.1${NBSP}°C at 0${NBSP}°C, +0.5${NBSP}°C at 80${NBSP}°C (upright lines: ±0.4${NBSP}°C, two standard uncertainties). That was 130 days before the latest load, more than the 100 that the house allows: thermostat and logger cannot be told apart.`,
    );
    const fresh = checksFigure(of({ ...logger, daysSinceCheck: 20, stale: false }), settings);
    expect(fresh?.summary).toContain("That was 20 days before the latest load, within the 100 that the house allows.");
  });

  test("says where only other probes were checked", () => {
    const bedOnly = checksFigure(of(trust({ checks: [checkOf(atLoad(2), 0, -0.3, "bed")] })), settings);
    expect(bedOnly?.summary).toContain("Air on was never checked, so thermostat and logger cannot be told apart.");
  });

  test("lists every check, latest first, and is null where there is none", () => {
    expect(checksFigure(of(logger), settings)?.table.rows[0]).toEqual([
      "5 Jun 2025",
      "air on",
      "80.0",
      "80.5",
      "+0.5",
      "",
    ]);
    expect(checksFigure(of(trust()), settings)).toBeNull();
  });
});

describe("checkAges(logger)", () => {
  test("parts the time from the first check to now into recent and too old, without gap or overlap", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 3000 }), { minLength: 1, maxLength: 30 }),
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 1, max: 900 }),
        (days, loggerDays, daysSinceCheck) => {
          const logger = trust({ checks: days.map((day) => checkOf(day * DAY, 0, 0)), loggerDays, daysSinceCheck });
          const ages = checkAges(logger);
          expect(ages[0]?.from).toBe(Math.min(...days) * DAY);
          expect(ages.at(-1)?.to).toBe(asOf(logger));
          ages.slice(1).forEach((age, i) => {
            expect(age.from).toBe(ages[i]?.to);
            expect(age.recent).not.toBe(ages[i]?.recent);
          });
          for (const { from, to, recent } of ages) {
            const middle = (from + to) / 2;
            const last = Math.max(...days.map((day) => day * DAY).filter((at) => at <= middle));
            expect(middle - last <= loggerDays * DAY).toBe(recent);
          }
        },
      ),
    );
  });
});

describe("hatch(corners)", () => {
  test("fills a convex area with slanting strokes that end on its sides", () => {
    const corners = [
      { x: 10, y: 30 },
      { x: 10, y: 50 },
      { x: 80, y: 90 },
      { x: 140, y: 90 },
    ];
    const strokes = [...hatch(corners, 8).matchAll(/M([\d.-]+),([\d.-]+)L([\d.-]+),([\d.-]+)/g)].map((found) =>
      found.slice(1).map(Number),
    );
    // Along x + y the area reaches from 40 to 230: multiples of 8 after the first corner.
    expect(strokes).toHaveLength(23);
    for (const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] of strokes) {
      expect(x1 + y1).toLieWithin(x2 + y2, 1e-9);
      for (const [x, y] of [
        [x1, y1],
        [x2, y2],
      ] as const) {
        corners.forEach((from, k) => {
          const to = corners[(k + 1) % corners.length] ?? from;
          const side = (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x);
          expect(side).toBeLessThanOrEqual(1e-6);
        });
      }
    }
  });

  test("is empty where there is no area", () => {
    expect(hatch([])).toBe("");
    expect(hatch([{ x: 1, y: 1 }])).toBe("");
  });
});
