import { describe, expect, it } from "vitest";
import type { FactFrame } from "../../../src/findings/facts/factFrame.ts";
import { logsFacts } from "../../../src/findings/facts/logsFacts.ts";
import type { LogsFact } from "../../../src/report/fact.ts";
import type { RunRow } from "../../../src/report/runRow.ts";
import type { Problem } from "../../../src/tables/problem.ts";
import { bareRun, madeUpProblem } from "../../support/madeUpReport.ts";

const DAY = 86_400_000;
const MONTH_FROM = Date.UTC(2026, 8, 1);
const BEFORE = 30;

const run = (at: number, bedDepthMetres: number | null): RunRow => ({
  ...bareRun,
  run: `26-${100 + at}`,
  unloadedAt: MONTH_FROM + (at - BEFORE) * 4 * DAY + DAY,
  bedDepthMetres,
});

interface Logged {
  /** Depths of the earlier batches that are blank, of thirty. */
  readonly blankBefore?: number;
  /** The month's depths. */
  readonly depths: readonly (number | null)[];
  readonly problems?: readonly Partial<Problem>[];
  /** Batches whose kiln row was set aside. */
  readonly lost?: readonly RunRow[];
}

function factsOf({ blankBefore = 1, depths, problems = [], lost = [] }: Logged): readonly LogsFact[] {
  const earlier = Array.from({ length: BEFORE }, (_, at) => run(at, at < blankBefore ? null : 0.3));
  const monthRuns = depths.map((depth, i) => run(BEFORE + i, depth));
  const logs = { problems: problems.map((problem) => ({ ...madeUpProblem, ...problem })) };
  const report = { runs: [...earlier, ...monthRuns].reverse(), logs } as unknown as FactFrame["report"];
  return logsFacts({ report, monthRuns, lostRuns: lost, from: MONTH_FROM } as unknown as FactFrame);
}

const missing = (logged: Logged) => factsOf(logged).flatMap((fact) => fact.missing);

describe("logsFacts(frame)", () => {
  it("says that a column is no longer kept where half of the month's batches or more lack it", () => {
    expect(missing({ depths: [null, null, null, 0.3, 0.3, 0.3] })).toEqual(["bedDepthMetres"]);
    expect(missing({ depths: [null, null, null, 0.3, 0.3, 0.3, 0.3] })).toEqual([]);
  });

  it("calls two blanks of four forgetting, and three the end of keeping", () => {
    expect(missing({ depths: [null, null, 0.3, 0.3] })).toEqual([]);
    expect(missing({ depths: [null, null, null, 0.3] })).toEqual(["bedDepthMetres"]);
  });

  it("says nothing of a column that was never well kept, or of a month before which there is nothing", () => {
    expect(missing({ blankBefore: 7, depths: [null, null, null] })).toEqual([]);
    expect(factsOf({ depths: [0.3, 0.3, 0.3] })).toEqual([]);
  });

  it("counts rows set aside and values blanked among the month's batches, and no row that only repeats another", () => {
    const of = (rule: string, effect: Problem["effect"], at: number): Partial<Problem> => ({
      rule,
      effect,
      run: `26-${100 + at}`,
    });
    const depths = [0.3, 0.3, 0.3];
    const [fact] = factsOf({
      depths,
      problems: [
        of("duplicate-key", "row-set-aside", BEFORE),
        of("repeated-row", "row-set-aside", BEFORE + 1),
        of("out-of-range", "value-blanked", BEFORE + 1),
        of("out-of-range", "value-blanked", 0),
      ],
    });
    expect(fact).toMatchObject({ rowsSetAside: 1, valuesBlanked: 1, runCount: 2 });
    expect(factsOf({ depths, problems: [of("out-of-range", "value-blanked", BEFORE)] })).toEqual([]);
  });

  it("counts batches whose kiln row was set aside, among others and where the month holds nothing else", () => {
    const lost = [BEFORE + 3, BEFORE + 4].map((at) => ({
      ...run(at, null),
      unloadedAt: null,
      germinationEndedAt: MONTH_FROM + DAY * (at - BEFORE),
    }));
    const problems = lost.map((each) => ({
      rule: "no-such-date",
      effect: "row-set-aside" as const,
      run: each.run,
    }));
    const [among] = factsOf({ depths: [0.3, 0.3, 0.3], problems, lost });
    expect(among).toMatchObject({ rowsSetAside: 2, batchesLost: 2, missing: [], runCount: 2 });
    const [alone] = factsOf({ depths: [], problems, lost });
    expect(alone).toMatchObject({
      batchesLost: 2,
      runs: lost.map((each) => each.run),
      from: lost[0]?.germinationEndedAt,
    });
  });

  it("takes no column for abandoned because the row it stood in could not be read", () => {
    const unread = [BEFORE + 3, BEFORE + 4, BEFORE + 5].map((at) => ({ ...run(at, null), unloadedAt: null }));
    const problems = unread.map((each) => ({ effect: "row-set-aside" as const, run: each.run }));
    expect(factsOf({ depths: [0.3, 0.3], problems, lost: unread }).flatMap((fact) => fact.missing)).toEqual([]);
  });
});
