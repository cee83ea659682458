import { describe, expect, test } from "vitest";
import type { AcrospireCounts } from "../../../src/malting/acrospire.ts";
import type { RunRow } from "../../../src/report/runRow.ts";
import { acrospireRuns } from "../../../src/report/steepGermination/acrospireRuns.ts";
import { bedsCompared } from "../../../src/report/steepGermination/bedsCompared.ts";
import type { BedRow } from "../../../src/report/steepGermination/floorRows.ts";
import type { AcrospireRun } from "../../../src/report/steepGerminationResult.ts";

const usual: AcrospireCounts = { none: 2, toQuarter: 0, toHalf: 8, toThreeQuarters: 40, toFull: 46, over: 4 };
/** A quarter of a kernel shorter, kernel by kernel. */
const shorter: AcrospireCounts = { none: 2, toQuarter: 8, toHalf: 40, toThreeQuarters: 46, toFull: 4, over: 0 };

/** Batches of several beds each, counted as given. */
function batches(
  all: readonly (readonly {
    readonly bed: string | null;
    readonly counts: AcrospireCounts | null;
    readonly celsius?: number;
  }[])[],
): readonly AcrospireRun[] {
  const rows = all.map((_, at) => ({
    run: `R${at}`,
    variety: "one",
    grain: "barley",
    germinationStartedAt: 0,
    germinationEndedAt: at + 1,
    bedMeanCelsius: 15,
  }));
  const bedsOf = new Map(
    all.map((beds, at): [string, readonly BedRow[]] => [
      `R${at}`,
      beds.map(({ bed, counts, celsius = 15 }) => ({
        run: `R${at}`,
        bed,
        startedAt: 0,
        endedAt: at + 1,
        meanCelsius: celsius,
        counts,
      })),
    ]),
  );
  return acrospireRuns(rows as unknown as RunRow[], bedsOf, []);
}

describe("bedsCompared(acrospires)", () => {
  test("names the bed that lagged, by how much and how much cooler it lay", () => {
    const found = bedsCompared(
      batches([
        [
          { bed: "B1", counts: usual, celsius: 16 },
          { bed: "B2", counts: shorter, celsius: 14.5 },
        ],
      ]),
    );
    expect(found.compared).toBe(1);
    expect(found.lags).toHaveLength(1);
    expect(found.lags[0]).toMatchObject({ run: "R0", bed: "B2", coolerByKelvin: 1.5 });
    // 98 of 100 kernels are a quarter shorter.
    expect(found.lags[0]?.difference.estimate).toAgreeWithin(-0.245, 1e-9);
    expect(found.lags[0]?.difference.high).toBeLessThan(0);
  });

  test("compares two beds once, three beds three times, and a bed without a count not at all", () => {
    const two = [
      { bed: "B1", counts: usual },
      { bed: "B2", counts: usual },
    ];
    expect(bedsCompared(batches([two])).compared).toBe(1);
    expect(bedsCompared(batches([[...two, { bed: "B3", counts: usual }]])).compared).toBe(3);
    expect(bedsCompared(batches([[...two, { bed: "B3", counts: null }]])).compared).toBe(1);
    expect(bedsCompared(batches([[{ bed: "B1", counts: usual }]])).compared).toBe(0);
  });

  test("names of three beds the one that ran ahead as well as one that lagged", () => {
    const ahead = batches([
      [
        { bed: "B1", counts: shorter },
        { bed: "B2", counts: shorter },
        { bed: "B3", counts: usual },
      ],
    ]);
    const { lags } = bedsCompared(ahead);
    const best = lags.find(({ bed }) => bed === "B3");
    expect(best?.difference.low).toBeGreaterThan(0);
  });

  test("asks for more of a difference the more beds it compares", () => {
    const slightly: AcrospireCounts = { ...usual, toThreeQuarters: 65, toFull: 21 };
    const alone = batches([
      [
        { bed: "B1", counts: usual },
        { bed: "B2", counts: slightly },
      ],
    ]);
    const alike = [
      { bed: "B1", counts: usual },
      { bed: "B2", counts: usual },
    ];
    const among = batches([
      [
        { bed: "B1", counts: usual },
        { bed: "B2", counts: slightly },
      ],
      ...new Array<typeof alike>(40).fill(alike),
    ]);
    expect(bedsCompared(alone).lags).toHaveLength(1);
    expect(bedsCompared(among).lags).toHaveLength(0);
  });

  test("averages each bed's differences over five batches or more, with names of the log or of the place", () => {
    const pair = [
      { bed: "B1", counts: usual, celsius: 16 },
      { bed: "B2", counts: shorter, celsius: 15 },
    ];
    const found = bedsCompared(batches(new Array<typeof pair>(5).fill(pair))).byBed;
    expect(found.map(({ bed, runs }) => [bed, runs])).toEqual([
      ["B1", 5],
      ["B2", 5],
    ]);
    expect(found[0]?.difference.estimate).toAgreeWithin(0.245, 1e-9);
    expect(found[1]).toMatchObject({ warmerByKelvin: -1 });
    expect(bedsCompared(batches(new Array<typeof pair>(4).fill(pair))).byBed).toEqual([]);
    const nameless = pair.map((bed) => ({ ...bed, bed: null }));
    expect(batches([nameless])[0]?.beds.map(({ bed }) => bed)).toEqual(["bed 1", "bed 2"]);
  });
});
