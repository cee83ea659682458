import { expect, test } from "vitest";
import { fitDriftModels } from "../../../src/analysis/drift/driftModels.ts";
import { simulateOffsets } from "../../../src/analysis/drift/simulateOffsets.ts";
import { isFitFault, sayFitFault } from "../../../src/analysis/fitFault.ts";

test("fitDriftModels(series): intervals of 95 % hold onset and slope in about 95 of 100 simulated creeps", () => {
  let [onsets, slopes, levels] = [0, 0, 0];
  const houses = 400;
  for (let seed = 1; seed <= houses; seed += 1) {
    const { days, values, onsetDay } = simulateOffsets(
      5_000_000 + seed,
      { kind: "creep", perMonth: 0.5 },
      {
        noise: 0.4,
        loadsPerMonth: 6,
        quietLoads: [10, 30],
        loads: 60,
        earlierLoads: 0,
      },
    );
    const models = fitDriftModels({ days, values });
    if (isFitFault(models)) throw new Error(sayFitFault(models));
    const { creep } = models;
    if (creep === null) throw new Error("no creep");
    const onset = onsetDay as number;
    const slope = 0.5 / 30.44;
    const now = slope * ((days[59] as number) - onset);
    if (creep.onsetDay.low <= onset && onset <= creep.onsetDay.high) onsets += 1;
    if (creep.slopePerDay.low <= slope && slope <= creep.slopePerDay.high) slopes += 1;
    if (creep.levelNow.low <= now && now <= creep.levelNow.high) levels += 1;
  }
  // Binomial with 95 %: 366 to 392 of 400 in 99.8 of 100 such studies.
  for (const held of [onsets, slopes, levels]) {
    expect(held).toBeGreaterThanOrEqual(366);
    expect(held).toBeLessThanOrEqual(392);
  }
});
