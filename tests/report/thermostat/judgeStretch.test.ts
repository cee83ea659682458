import { describe, expect, it } from "vitest";
import { seededRandom } from "../../../src/analysis/seededRandom.ts";
import { judgeStretch } from "../../../src/report/thermostat/judgeStretch.ts";
import type { OffsetPoint } from "../../../src/report/thermostatResult.ts";

const DAY = 86_400_000;
const START = Date.UTC(2026, 0, 5, 17);
const TERMS = { toleranceKelvin: 2, probeAtBulb: true, checkUncertaintyKelvin: 0.15 };

/** Loads five days apart whose offsets follow `course` with a scatter of 0.1 K, at an even duty. */
function points(count: number, course: (day: number) => number): OffsetPoint[] {
  const { uniform } = seededRandom(11);
  return Array.from({ length: count }, (_, index) => {
    const day = 5 * index;
    const wobble = Array.from({ length: 12 }, () => uniform()).reduce((sum, value) => sum + value, -6);
    return {
      load: `L${index}`,
      runs: [`R${index}`],
      at: START + day * DAY,
      offsetKelvin: course(day) + 0.1 * wobble,
      standardErrorKelvin: 0.03,
      duty: 0.5 + 0.01 * (index % 7),
      swingKelvin: 4,
      riseKelvinPerMinute: 1,
      setCelsius: 48,
      stretch: 0,
    };
  });
}

describe("judgeStretch(points, earlier, terms)", () => {
  it("says in a sentence that seven loads are too few", () => {
    const { alarm, models, tooLittle } = judgeStretch(
      points(7, () => 0),
      [],
      TERMS,
    );
    expect(alarm).toBeNull();
    expect(models).toBeNull();
    expect(tooLittle).toContain("7");
  });

  it("raises no alarm over a steady stretch", () => {
    expect(
      judgeStretch(
        points(60, () => 0.3),
        [],
        TERMS,
      ).alarm?.alarms,
    ).toEqual([]);
  });

  it("alarms for a creep, and names its onset, its rate and when it leaves the tolerance", () => {
    const perDay = 0.5 / 30.44;
    const { alarm, models } = judgeStretch(
      points(50, (day) => Math.max(0, day - 150) * perDay),
      [],
      TERMS,
    );
    expect(alarm?.alarms[0]?.direction).toBe("up");
    expect(models?.winner).toBe("creep");
    expect(models?.kelvinPerMonth?.low).toBeLessThan(0.5);
    expect(models?.kelvinPerMonth?.high).toBeGreaterThan(0.5);
    const leavesOn = START + (150 + 2 / perDay) * DAY;
    expect(models?.leaves.kind === "dated" && models.leaves.earliest).toBeLessThan(leavesOn);
    expect(models?.leaves.kind === "dated" && models.leaves.latest).toBeGreaterThan(leavesOn);
  });

  it("calls a slip a step, with its size, and forecasts nothing from it", () => {
    const { models } = judgeStretch(
      points(50, (day) => (day < 150 ? 0 : 1)),
      [],
      TERMS,
    );
    expect(models?.winner).toBe("step");
    expect(models?.stepKelvin?.estimate).toLieWithin(1, 0.15);
    expect(models?.leaves.kind).not.toBe("dated");
  });

  it("raises no alarm for a change that a check of the logger could not confirm", () => {
    expect(
      judgeStretch(
        points(60, (day) => (day < 150 ? 0 : 0.2)),
        [],
        TERMS,
      ).alarm?.alarms,
    ).toEqual([]);
  });
});
