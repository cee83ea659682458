import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { DEMO_LOGS } from "../../../scripts/buildSite.ts";
import { POOR_LOT, SLIPPING_BELT } from "../../../scripts/demo/truths.ts";
import type { VarietiesResult } from "../../../src/report/varietiesResult.ts";
import { wholeView } from "../../../src/report/view.ts";
import { type OpenedReports, openReportsAtBuild } from "../../support/openReportsAtBuild.ts";

let opened: OpenedReports;
let whole: VarietiesResult;
beforeAll(async () => {
  opened = await openReportsAtBuild(DEMO_LOGS);
  whole = (await opened.of(wholeView)).varieties;
}, 120_000);
afterAll(() => opened.close());

const scoreOf = (result: VarietiesResult, variety: string) => {
  const found = result.scores.find((score) => score.variety === variety);
  if (found === undefined) throw new RangeError(`no score of ${variety}`);
  return found;
};
const poor = () => whole.details.find(({ variety }) => variety === POOR_LOT.variety);

describe("the invented house's varieties", () => {
  it("have the variety of the poor lot scored lowest, in both numbers", () => {
    expect(whole.scores.length).toBeGreaterThan(2);
    expect(whole.scores[0]?.variety).toBe(POOR_LOT.variety);
    const even = [...whole.scores].sort((a, b) => (a.even?.estimate ?? 100) - (b.even?.estimate ?? 100));
    expect(even[0]?.variety).toBe(POOR_LOT.variety);
  });

  it("have the poor lot named as the reason, as uneven in itself, with its germinative energy", () => {
    const [first, ...rest] = poor()?.reasons ?? [];
    expect([first?.kind, first?.lot, first?.how]).toEqual(["lot", POOR_LOT.lot, "spread"]);
    const grain = rest.filter(({ kind, lot }) => kind === "grain" && lot === POOR_LOT.lot);
    expect(grain.map(({ goesWith }) => goesWith)).toContain("the lowest germinative energy of its lots");
    const uneven = poor()?.splits.flatMap(({ lots }) => lots.filter((lot) => lot.uneven).map(({ lot }) => lot)) ?? [];
    expect(new Set(uneven)).toEqual(new Set([POOR_LOT.lot]));
  });

  it("score the variety higher once that lot is left out, by the page's own words and by hand", async () => {
    const before = scoreOf(whole, POOR_LOT.variety);
    const { withoutLot } = poor() ?? {};
    expect(withoutLot?.lot).toBe(POOR_LOT.lot);
    expect(withoutLot?.onTarget ?? 0).toBeGreaterThan((before.onTarget?.estimate ?? 100) + 5);
    const runs = before.batchesInOrder.filter(({ lot }) => lot === POOR_LOT.lot).map(({ run }) => run);
    const after = (await opened.of({ ...wholeView, without: runs.sort() })).varieties;
    expect(scoreOf(after, POOR_LOT.variety).onTarget?.estimate ?? 0).toBeGreaterThan(
      (before.onTarget?.estimate ?? 100) + 5,
    );
  }, 60_000);

  it("do not blame a lot for the fan belt: other varieties were late in the same weeks", () => {
    const blamed = whole.details.flatMap(({ reasons }) =>
      reasons.filter(({ measure }) => measure === "kiln_hours_over_expected"),
    );
    const from = Date.parse(SLIPPING_BELT.from);
    const to = Date.parse(SLIPPING_BELT.repairedOn);
    let late = 0;
    for (const { kind, lot, goesWith } of blamed) {
      const worked = whole.scores
        .flatMap(({ batchesInOrder }) => batchesInOrder)
        .filter((batch) => batch.lot === lot && batch.at >= from && batch.at <= to);
      if (worked.length === 0) continue;
      late += 1;
      expect(kind).toBe("process");
      expect(goesWith).toMatch(/belt/);
    }
    expect(late).toBeGreaterThan(0);
  });

  it("rank no variety with few batches above its evidence", async () => {
    // The variety with the fewest batches scores no higher than the share of them that met everything.
    const [fewest] = [...whole.scores].sort((a, b) => a.batches - b.batches);
    expect(fewest?.onTarget?.estimate ?? 100).toBeLessThanOrEqual(100 * (fewest?.metShare?.estimate ?? 0));
    const width = ({ onTarget }: (typeof whole.scores)[number]): number => (onTarget?.high ?? 0) - (onTarget?.low ?? 0);
    expect(fewest && width(fewest)).toBeGreaterThan(0);
    // Of the last months alone it has too few for a score, and comes last instead of first.
    const late = (await opened.of({ ...wholeView, from: "2026-06-01" })).varieties;
    const few = late.scores.filter(({ standing }) => standing === "none");
    expect(few.length).toBeGreaterThan(0);
    expect(late.scores.slice(-few.length)).toEqual(few);
    for (const { onTarget, even, tooLittle } of few) {
      expect([onTarget, even]).toEqual([null, null]);
      expect(tooLittle).toMatch(/a score needs 5/);
    }
  }, 60_000);

  it("have forecasts from the past alone put to the test on every batch that a score stood for", () => {
    const complete = whole.scores.reduce((sum, { batches }) => sum + batches, 0);
    const { backTest, backTestOfEven, scores } = whole;
    expect(backTest?.forecasts).toBe(complete - 5 * scores.length);
    for (const test of [backTest, backTestOfEven]) {
      expect(test?.brierScore).toBeLessThan(0.3);
      expect(test?.difference.low ?? 1).toBeLessThan(test?.difference.high ?? 0);
    }
  });
});
