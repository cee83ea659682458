import { describe, expect, test } from "vitest";
import { normalDraws } from "../../../src/analysis/normalDraws.ts";
import { seededRandom } from "../../../src/analysis/seededRandom.ts";
import type { LoadRow } from "../../../src/report/loadRow.ts";
import { load, loadsOnAPlane } from "../../support/loads.ts";
import { change, changesOf, dayOf, effectOf, judged, latest, runOf } from "./changedHouse.ts";

const PLANE = { intercept: 1, perPoint: 0.074, perMetre: 45, noise: 0.25 };
const AT = 40;

/** A house whose bed was laid 4 cm shallower at load 40, and nothing else done. */
function shallower(): LoadRow[] {
  return loadsOnAPlane(80, PLANE).map((row, index) => {
    const depth = (row.bedDepthMetres ?? 0) - (index >= AT ? 0.04 : 0);
    const hours = (row.kilnHours ?? 0) - (index >= AT ? 0.04 * PLANE.perMetre : 0);
    return { ...row, bedDepthMetres: depth, kilnHours: hours };
  });
}

describe("a bed laid shallower, told to alter bed_depth", () => {
  const judged = latest(changesOf(shallower(), [change(AT, { alters: "bed_depth" })]));
  const hours = effectOf(judged, "kiln_hours");

  test("its total effect on hours is depth's own, since depth is not adjusted for", () => {
    const truth = -0.04 * PLANE.perMetre;
    expect(hours.total.low).toBeLessThanOrEqual(truth);
    expect(hours.total.high).toBeGreaterThanOrEqual(truth);
    expect(hours.total.estimate).toLieWithin(truth, 0.5);
    expect(hours.verdict).toBe("helped");
    expect(hours.adjustedFor).not.toContain("bed depth");
  });

  test("nothing is left of it beyond depth", () => {
    expect(hours.beyond?.low).toBeLessThan(0);
    expect(hours.beyond?.high).toBeGreaterThan(0);
    expect(Math.abs(hours.beyond?.estimate ?? 9)).toBeLessThan(0.3);
  });

  test("with a unit on the column's name it is the same column", () => {
    const named = latest(changesOf(shallower(), [change(AT, { alters: "Bed_depth_cm" })]));
    expect(effectOf(named, "kiln_hours").total).toEqual(hours.total);
    expect(named.altered).toBe("bed depth");
  });

  test("were depth not named as altered, it would be adjusted for and no effect be left", () => {
    const unnamed = effectOf(latest(changesOf(shallower(), [change(AT)])), "kiln_hours");
    expect(unnamed.adjustedFor).toContain("bed depth");
    expect(unnamed.total.low).toBeLessThan(0);
    expect(unnamed.total.high).toBeGreaterThan(0);
    expect(unnamed.beyond).toBeNull();
  });
});

describe("what a comparison spans", () => {
  const loads = loadsOnAPlane(160, PLANE);

  test("from the lasting event of the same scope before to the one after; incidents, baselines and other scopes bound nothing", () => {
    const judged = latest(
      changesOf(loads, [
        change(60, { kind: "repair" }),
        change(70, { kind: "incident" }),
        change(72, { kind: "new-baseline" }),
        change(75, { scope: "thermostat", kind: "calibration" }),
        change(80, { what: "the change" }),
        change(95, { kind: "repair" }),
      ]),
    );
    expect([judged.from, judged.at, judged.to]).toEqual([dayOf(60), dayOf(80), dayOf(95)]);
    const { points } = effectOf(judged, "kiln_hours");
    expect(points[0]?.run).toBe("R60");
    expect(points.at(-1)?.run).toBe("R94");
    expect(points.filter(({ isAfter }) => isAfter)[0]?.run).toBe("R80");
  });

  test("at most a year each way", () => {
    const judged = latest(changesOf(loads, [change(80)]));
    expect(judged.at - judged.from).toBe(365.25 * 86_400_000);
    expect(judged.to - judged.at).toBe(365.25 * 86_400_000);
  });

  test("warns of a repair at its end, of an event within it, and not of one that cannot touch the same", () => {
    const warnings = latest(
      changesOf(loads, [
        change(75, { scope: "thermostat", kind: "calibration", what: "set right" }),
        change(78, { scope: "steep", kind: "repair", what: "tank mended" }),
        change(79, { scope: "cleaning", kind: "change", what: "other sieve" }),
        change(80),
        change(95, { kind: "repair", what: "belt" }),
      ]),
    ).warnings.filter(({ kind }) => kind === "another event");
    const said = warnings.map(({ what }) => what).join(" ");
    expect(said).toContain("set right");
    expect(said).toContain("ends with a repair: belt");
    // A steep touches the hours too, by the water; a sieve does not.
    expect(said).toContain("tank mended");
    expect(said).not.toContain("other sieve");
  });

  test("two changes of one day are two changes, each with an address of its own", () => {
    const { changes } = changesOf(loads, [change(80, { what: "one" }), change(80, { what: "two" })]);
    expect(new Set(changes.map(({ id }) => id)).size).toBe(2);
    expect(changes[0]?.id).toBe("change-2026-02-10-2");
    expect(changes[0]?.warnings.some(({ what }) => what.includes("the same day: one"))).toBe(true);
  });
});

describe("which runs are compared", () => {
  test("runs left out by hand are not", () => {
    const judged = latest(changesOf(shallower(), [change(AT)], { without: ["R41", "R42"] }));
    const runs = effectOf(judged, "kiln_hours").points.map(({ run }) => run);
    expect(runs).not.toContain("R41");
    expect(runs).toContain("R43");
  });

  test("a variety on one side alone tells nothing and is left out, with a warning", () => {
    const loads = shallower().map((row, index) => (index % 5 === 0 && index > AT ? { ...row, variety: "Late" } : row));
    const judged = latest(changesOf(loads, [change(AT)]));
    expect(effectOf(judged, "kiln_hours").runsAfter).toBe(33);
    expect(judged.warnings.find(({ kind }) => kind === "other variety")?.what).toContain("Late");
  });

  test("a variety that is slower by nature is not taken for the change", () => {
    // After the change most loads are of the slow variety, which takes 3 hours more.
    const loads = loadsOnAPlane(80, PLANE).map((row, index) => {
      const slow = index < AT ? index % 4 === 0 : index % 4 !== 0;
      return slow ? { ...row, variety: "Slow", kilnHours: (row.kilnHours ?? 0) + 3 } : row;
    });
    const { total, plain } = effectOf(latest(changesOf(loads, [change(AT)])), "kiln_hours");
    expect(plain.low).toBeGreaterThan(0.5);
    expect(total.low).toBeLessThan(0);
    expect(total.high).toBeGreaterThan(0);
  });

  test("a steep change counts for grain that went into the steep after it; what lay on the floor at a germination change is neither", () => {
    const draw = normalDraws(seededRandom(3));
    const loads = Array.from({ length: 60 }, (_, index) => load(index));
    const runs = loads.map((row) =>
      runOf(row, { steepOutMoisturePercent: 44 + 0.3 * draw(), acrospireMean: 0.75 + 0.05 * draw() }),
    );
    const steep = effectOf(
      latest(changesOf(loads, [change(30, { scope: "steep" })], { runs })),
      "steep_out_moisture_pct",
    );
    // Run 30 was steeped five days before it was loaded: before the change.
    expect(steep.points.find(({ run }) => run === "R30")?.isAfter).toBe(false);
    expect(steep.points.find(({ run }) => run === "R31")?.isAfter).toBe(true);
    const floor = effectOf(
      latest(changesOf(loads, [change(30, { scope: "germination" })], { runs })),
      "acrospire_mean",
    );
    expect(floor.points.some(({ run }) => run === "R30")).toBe(false);
    expect(floor.points.find(({ run }) => run === "R31")?.isAfter).toBe(true);
  });
});

describe("what is said where little can be told", () => {
  test("too few runs on a side are a sentence with both counts", () => {
    const judged = latest(changesOf(loadsOnAPlane(30, PLANE), [change(27)]));
    expect(judged.effects).toEqual([]);
    expect(judged.tooLittle).toContain("27 loads before and 3 loads after");
  });

  test("a change to the logger compares nothing and says why", () => {
    const judged = latest(changesOf(loadsOnAPlane(40, PLANE), [change(20, { scope: "logger" })]));
    expect(judged.tooLittle).toMatch(/logger moves what is read/);
    expect(judged.lacking).toEqual([]);
  });

  test("without a change there is a sentence and still a plan for the next trial", () => {
    const { changes, tooLittle, plans } = changesOf(loadsOnAPlane(60, PLANE), []);
    expect(changes).toEqual([]);
    expect(tooLittle).toContain("No change is logged");
    const hours = plans.find(({ measure }) => measure === "kiln_hours");
    // The noise that was put in is the spread between runs.
    expect(hours?.spread).toAgreeWithin(PLANE.noise, 0.2);
    expect(hours?.rows.map(({ runsEachSide80 }) => runsEachSide80 ?? 0)).toEqual(
      [...(hours?.rows ?? [])].map(({ runsEachSide80 }) => runsEachSide80 ?? 0).sort((a, b) => b - a),
    );
  });

  test("no logs at all are no fault", () => {
    expect(changesOf([], [])).toMatchObject({ changes: [], plans: [] });
    expect(latest(changesOf([], [change(3)])).tooLittle).toContain("0 loads before");
  });

  test("a noisy house hears how many more runs would tell, unless what came next has closed the comparison", () => {
    const noisy = loadsOnAPlane(66, { ...PLANE, noise: 1.6 });
    const open = effectOf(latest(changesOf(noisy, [change(58)])), "kiln_hours");
    expect(open.verdict).toBe("cannot be told");
    expect(open.moreRuns).toBeGreaterThan(0);
    const closed = latest(
      changesOf(loadsOnAPlane(100, { ...PLANE, noise: 1.6 }), [change(58), change(66, { kind: "repair" })]),
    );
    expect(effectOf(closed, "kiln_hours")).toMatchObject({ moreRuns: null, whyNoMore: "comparison is closed" });
  });

  test("where weather parts the sides as yet, it hears how many runs at least, and not that none would do", () => {
    // Each side has its own dampness, with little to tell it by: the step and the humidity are hard to part.
    const parted = loadsOnAPlane(28, { ...PLANE, noise: 0.4 }).map((row, index) => {
      const relativeHumidityPercent = (index < 20 ? 62 : 74) + (index % 3);
      const hours =
        (row.kilnHours ?? 0) + 0.074 * (relativeHumidityPercent - (row.airAtLoading?.relativeHumidityPercent ?? 0));
      return {
        ...row,
        kilnHours: hours,
        airAtLoading: { relativeHumidityPercent, celsius: 10, source: "logged" as const },
      };
    });
    const { verdict, moreRuns, moreRunsAtLeast, whyNoMore } = effectOf(
      latest(changesOf(parted, [change(20)])),
      "kiln_hours",
    );
    expect(verdict).toBe("cannot be told");
    expect(moreRuns).toBeNull();
    expect(whyNoMore).toBeNull();
    expect(moreRunsAtLeast).not.toBeNull();
  });

  test("what was mended is held against the two months before it alone", () => {
    const loads = loadsOnAPlane(80, PLANE).map((row, index) =>
      // A belt that slips from load 32 to 39 costs two hours; those of the year before were sound.
      index >= 32 && index < AT ? { ...row, kilnHours: (row.kilnHours ?? 0) + 2 } : row,
    );
    const mended = change(AT, { kind: "repair" });
    const [result] = judged(loads, [mended]);
    if (result === undefined) throw new Error("the repair was not judged");
    const { total, runsBefore, verdict } = effectOf(result, "kiln_hours");
    expect(runsBefore).toBeLessThanOrEqual(13);
    expect(verdict).toBe("helped");
    expect(total.low).toBeLessThan(-2);
    expect(total.high).toBeGreaterThan(-2);
  });
});

describe("other dates without a change", () => {
  /** How many of 60 idle changes are called a difference: by their intervals alone, and once other dates are asked. */
  const calledADifference = (wander: number): { readonly byInterval: number; readonly kept: number } => {
    let [byInterval, kept] = [0, 0];
    for (let seed = 1; seed <= 60; seed += 1) {
      const draw = normalDraws(seededRandom(seed));
      let level = 0;
      const loads = loadsOnAPlane(140, { ...PLANE, noise: 0 }).map((row) => {
        level += wander * draw();
        return { ...row, kilnHours: (row.kilnHours ?? 0) + level + 0.5 * draw() };
      });
      const { total, verdict } = effectOf(latest(changesOf(loads, [change(70)])), "kiln_hours");
      if (total.low > 0 || total.high < 0) byInterval += 1;
      if (verdict === "helped" || verdict === "hurt") kept += 1;
    }
    return { byInterval, kept };
  };

  test("in houses whose level wanders by itself they keep idle changes from being called a difference", () => {
    const { byInterval, kept } = calledADifference(0.2);
    // Intervals alone call more than half of them one.
    expect(byInterval).toBeGreaterThan(30);
    expect(kept).toBeLessThan(0.5 * byInterval);
    expect(kept).toBeLessThanOrEqual(20);
  }, 30_000);

  test("in steady houses hardly an idle change is called a difference", () => {
    // 5 in 100 by the interval: 3 of 60, and 8 by three standard errors.
    const { byInterval, kept } = calledADifference(0);
    expect(byInterval).toBeLessThanOrEqual(8);
    expect(kept).toBeLessThanOrEqual(byInterval);
  }, 30_000);

  test("none shows as much as a real change does in a steady house, and each is made of as many runs as the change's own", () => {
    const { placebo, total } = effectOf(
      latest(changesOf(shallower(), [change(AT, { alters: "bed_depth" })])),
      "kiln_hours",
    );
    expect(placebo?.asLarge).toBe(0);
    expect(placebo?.own).toLieWithin(total.estimate, 0.6);
    // Two stretches of 40: ten runs a side leave 2 × (40 − 20 + 1) dates, eleven would leave 38.
    expect([placebo?.runsEachSide, placebo?.dates]).toEqual([10, 42]);
  });

  test("stretches that end in a repair are not tried, since what was mended had begun in them", () => {
    const judged = latest(changesOf(shallower(), [change(AT), change(62, { kind: "repair" })]));
    const { placebo } = effectOf(judged, "kiln_hours");
    // Up to the change 40 loads, from the repair on 18; the 22 between are left out. Five a side leave 31 and 9.
    expect([placebo?.runsEachSide, placebo?.dates]).toEqual([5, 40 - 10 + 1 + (18 - 10 + 1)]);
  });
});
