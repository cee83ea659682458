import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { plantedTrial } from "../../scripts/study/plantedTrial.ts";
import { quietTrial } from "../../scripts/study/quietTrial.ts";
import { openReviewDesk, type ReviewDesk } from "../../scripts/study/reviewDesk.ts";
import { type SoundHouse, soundHouse } from "../../scripts/study/soundHouse.ts";

// A small version of `npm run bench -- review`. Not evidence about malting: invented houses are asked whether their review finds
// what was put into them. Seeds of neither the bench's result nor those that thresholds were set on; a house that cries wolf 24 times in its 14 months where facts
// of any chance are let through.
const SEED = 900_002;
/** Some fifteen seconds of a free machine; a busy one takes many times that. */
const PATIENCE = 300_000;

describe("a month's review", () => {
  let desk: ReviewDesk;
  let sound: SoundHouse;
  beforeAll(async () => {
    desk = await openReviewDesk();
    sound = await soundHouse(desk, SEED);
  }, PATIENCE);
  afterAll(() => desk.close());

  test.each(["thermostat step", "mis-set scale"] as const)(
    "names a large %s among its first five findings, and would not without it",
    async (kind) => {
      const trial = await plantedTrial(desk, sound, { seed: SEED, kind, size: "large" });
      expect(trial.month).not.toBeNull();
      expect(trial.isNamed, trial.findings.join(", ")).toBe(true);
      expect(trial.isNamedAnyway).toBe(false);
    },
    PATIENCE,
  );

  test("cries wolf less than once in two months in a quiet house", () => {
    const months = quietTrial(sound);
    expect(months.length).toBeGreaterThanOrEqual(12);
    const wolves = months.flatMap(({ falseFindings }) => falseFindings);
    expect(wolves.length / months.length, wolves.join(", ")).toBeLessThan(0.5);
  });
});
