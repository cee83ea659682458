import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitDriftModels } from "../../../src/analysis/drift/driftModels.ts";
import { leavesTolerance, type ToleranceQuestion } from "../../../src/analysis/drift/leavesTolerance.ts";
import { isFitFault, sayFitFault } from "../../../src/analysis/fitFault.ts";
import { creeping, scattered, unevenDays } from "./series.ts";

function ask(days: Float64Array, values: Float64Array, question: Partial<ToleranceQuestion> = {}) {
  const models = fitDriftModels({ days, values });
  if (isFitFault(models)) throw new Error(sayFitFault(models));
  return { models, answer: leavesTolerance({ days, values }, models, { tolerance: 2, of: "absolute", ...question }) };
}

const days = unevenDays(40);
const last = days[39] as number;

describe("leavesTolerance(series, models, question)", () => {
  test("of a nearly exact creep: the day on which the line meets the tolerance", () => {
    // From −0.2 at day 80 by 0.01 a day: 2 at day 300.
    const { answer } = ask(days, scattered(creeping(days, -0.2, 80, 0.01), 0.01));
    if (answer.kind !== "dated") throw new Error(answer.kind);
    expect(last).toBeLessThan(300);
    expect(answer.side).toBe(1);
    expect(answer.onlyIfCreep).toBe(false);
    expect(answer.estimate).toLieWithin(300, 3);
    expect(answer.earliest).toBeLessThan(answer.estimate as number);
    expect(answer.latest as number).toBeGreaterThan(answer.estimate as number);
    expect((answer.latest as number) - answer.earliest).toBeLessThan(12);
  });

  test("a creep downwards mirrors it", () => {
    const values = scattered(creeping(days, -0.2, 80, 0.01), 0.05);
    const up = ask(days, values).answer;
    const down = ask(
      days,
      values.map((value) => -value),
    ).answer;
    if (up.kind !== "dated" || down.kind !== "dated") throw new Error("not dated");
    expect(down.side).toBe(-1);
    expect(down.earliest).toLieWithin(up.earliest, 1e-6);
    expect(down.latest as number).toLieWithin(up.latest as number, 1e-6);
  });

  test("as a change only the distance from the level before counts, whatever that level is", () => {
    const creep = scattered(creeping(days, 0, 80, 0.01), 0.05);
    const here = ask(days, creep, { of: "change" }).answer;
    const there = ask(
      days,
      creep.map((value) => value + 5),
      { of: "change" },
    ).answer;
    if (here.kind !== "dated" || there.kind !== "dated") throw new Error("not dated");
    expect(there.earliest).toLieWithin(here.earliest, 1e-5);
    expect(here.earliest).toBeLessThan(280);
    expect(here.latest as number).toBeGreaterThan(280);
  });

  test("a wider tolerance is left later, an uncertain logger makes the range wider", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9999 }), (seed) => {
        const values = scattered(creeping(days, 0, 60, 0.012), 0.15, seed);
        const [near, far, unsure] = [
          ask(days, values).answer,
          ask(days, values, { tolerance: 2.5 }).answer,
          ask(days, values, { commonStandardError: 0.3 }).answer,
        ];
        if (near.kind !== "dated" || far.kind !== "dated" || unsure.kind !== "dated") return;
        expect(far.earliest).toBeGreaterThan(near.earliest);
        expect(unsure.earliest).toBeLessThan(near.earliest);
        if (near.latest !== null && unsure.latest !== null) expect(unsure.latest).toBeGreaterThan(near.latest);
      }),
      { numRuns: 50 },
    );
  });

  test("says since when it lies outside", () => {
    // 2 is passed at day 140.
    const { answer } = ask(days, scattered(creeping(days, 0, 60, 0.025), 0.1));
    if (answer.kind !== "already-outside" || answer.since === null) throw new Error(answer.kind);
    expect(answer.since.low).toBeLessThan(140);
    expect(answer.since.high).toBeGreaterThan(140);
    expect(answer.since.high).toBeLessThan(last);
    expect(answer.side).toBe(1);
    expect(answer.levelNow.low).toBeGreaterThan(2);
  });

  test("a step over the tolerance is outside since the step, one under it is not", () => {
    const step = (size: number) =>
      scattered(
        days.map((_, at) => (at < 20 ? 0 : size)),
        0.2,
      );
    const over = ask(days, step(3)).answer;
    expect(over).toMatchObject({ kind: "already-outside", side: 1, since: { estimate: days[20] } });
    const { answer, models } = ask(days, step(-1.2), { tolerance: 3, horizonDays: 60 });
    expect(models.winner).toBe("step");
    expect(answer.kind).toBe("not-within-horizon");
    // What stands outside from the start has no day on which it left.
    expect(
      ask(
        days,
        step(-1.2).map((value) => value + 6),
      ).answer,
    ).toMatchObject({ side: 1, since: null });
  });

  test("forty quiet loads exclude leaving within two months; ten do not exclude it within a year", () => {
    const quiet = scattered(new Float64Array(40), 0.4, 11);
    expect(ask(days, quiet, { horizonDays: 60 }).answer.kind).toBe("not-within-horizon");
    const few = ask(days.subarray(0, 10), quiet.subarray(0, 10));
    expect(few.models.winner).toBe("constant");
    expect(few.answer).toMatchObject({ kind: "cannot-be-told", why: "creep-not-excluded" });
    const standing = ask(days, quiet, { horizonDays: 60, alarmStands: true }).answer;
    expect(standing).toMatchObject({ kind: "cannot-be-told", why: "alarm-unexplained" });
    expect(
      ask(
        days,
        quiet.map((value) => value + 2),
      ).answer,
    ).toMatchObject({ why: "level-straddles" });
  });

  test("where step and creep are not clearly apart there is no latest date", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9999 }), (seed) => {
        const { answer, models } = ask(days, scattered(creeping(days, 0, 130, 0.02), 0.4, seed));
        if (answer.kind === "dated" && !models.isClear)
          expect(answer).toMatchObject({ onlyIfCreep: true, latest: null });
      }),
      { numRuns: 60 },
    );
  });

  test("refuses what is no question", () => {
    expect(() => ask(days, scattered(days, 1), { tolerance: 0 })).toThrow(RangeError);
    expect(() => ask(days, scattered(days, 1), { horizonDays: -1 })).toThrow(RangeError);
    expect(() => ask(days, scattered(days, 1), { commonStandardError: -1 })).toThrow(RangeError);
  });
});
