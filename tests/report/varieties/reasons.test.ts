import { describe, expect, it } from "vitest";
import { seededRandom } from "../../../src/analysis/seededRandom.ts";
import type { EventRow } from "../../../src/report/eventRow.ts";
import type { RunRow } from "../../../src/report/runRow.ts";
import type { TargetRow } from "../../../src/report/targetRow.ts";
import { batchesOf } from "../../../src/report/varieties/batches.ts";
import { varietyDetails } from "../../../src/report/varieties/details.ts";
import { scoringGround } from "../../../src/report/varieties/ground.ts";
import type { LotRow } from "../../../src/report/varieties/readLots.ts";
import { gaussian } from "../../analysis/gaussian.ts";
import { bareRun } from "../../support/madeUpReport.ts";

const DAY = 86_400_000;
const START = Date.UTC(2024, 0, 1);
const YEAR = 365.2425 * DAY;
const EACH = 8;

const targets: readonly TargetRow[] = [
  { variety: "any", measure: "final_moisture_pct", low: 3.6, target: 4.4, high: 5.2 },
];

interface House {
  readonly lots?: number;
  readonly seed?: number;
  /** Added to a batch's moisture, by variety, lot (from 0) and moment. */
  readonly shift?: (variety: string, lot: number, at: number) => number;
  /** Times the usual spread of 0.15. */
  readonly wide?: (variety: string, lot: number) => number;
  readonly events?: readonly EventRow[];
  readonly grain?: (variety: string, lot: number) => Partial<LotRow>;
}

/** Two varieties worked side by side, a batch of each every ten days, a lot every eight batches. */
function details({ lots = 7, seed = 1, shift = () => 0, wide = () => 1, events = [], grain = () => ({}) }: House) {
  const runs = ["One", "Two"].flatMap((variety, which) => {
    const noise = gaussian(seededRandom(seed + 100 * which), lots * EACH);
    return Array.from(noise, (draw, index): RunRow => {
      const lot = Math.floor(index / EACH);
      const at = START + (index * 10 + which) * DAY;
      return {
        ...bareRun,
        run: `${variety}${index}`,
        variety,
        grain: "barley",
        lot: `${variety} lot ${lot}`,
        steepStartedAt: at - 6 * DAY,
        germinationStartedAt: at - 5 * DAY,
        loadedAt: at - DAY,
        unloadedAt: at,
        finalMoisturePercent: 4.4 + 0.15 * draw * wide(variety, lot) + shift(variety, lot, at),
        finalMoistureBasis: "logged",
      };
    });
  });
  const rows = ["One", "Two"].flatMap((variety) =>
    Array.from(
      { length: lots },
      (_, lot): LotRow => ({
        lot: `${variety} lot ${lot}`,
        variety,
        cropYear: 2024,
        grower: "the same grower",
        moisturePercent: 12 + (lot % 3) / 10,
        proteinDryPercent: 10.5 + (lot % 4) / 10,
        germinativeEnergyPercent: 97 + (lot % 3),
        plumpPercent: 90 + (lot % 4),
        ...grain(variety, lot),
      }),
    ),
  );
  const about = { samples: new Map(), hoursOver: new Map(), lab: new Map(), without: new Set<string>() };
  const found = varietyDetails(scoringGround(batchesOf(runs, about), targets, {}), {
    events,
    offsets: new Map(),
    lab: [],
    lots: new Map(rows.map((row) => [row.lot, row])),
    loads: new Map(),
  });
  const of = (variety: string) => {
    const own = found.find((detail) => detail.variety === variety);
    if (own === undefined) throw new RangeError(`no details of ${variety}`);
    return own;
  };
  return { one: of("One"), two: of("Two") };
}

describe("varietyDetails(ground, about)", () => {
  it("names nothing of a quiet house more often than about one variety in ten", () => {
    // 40 quiet varieties; lots by level and by spread, grain and process are each held to 5 in 100.
    let named = 0;
    for (let seed = 1; seed <= 20; seed += 1) {
      const { one, two } = details({ seed: 1000 * seed });
      named += [one, two].filter(({ reasons }) => reasons.length > 0).length;
    }
    expect(named).toBeLessThanOrEqual(9);
  });

  it("names the lot that stands at another level, how far, and what of its grain is apart", () => {
    const { one, two } = details({
      shift: (variety, lot) => (variety === "One" && lot === 3 ? 0.6 : 0),
      grain: (variety, lot) => (variety === "One" && lot === 3 ? { proteinDryPercent: 13 } : {}),
    });
    const [first, second] = one.reasons;
    expect([first?.kind, first?.lot, first?.how]).toEqual(["lot", "One lot 3", "level"]);
    expect(first?.size?.low ?? 9).toBeLessThan(0.6);
    expect(first?.size?.high ?? 0).toBeGreaterThan(0.6);
    expect([second?.kind, second?.goesWith]).toEqual(["grain", "the highest grain protein of its lots"]);
    expect(one.withoutLot?.lot).toBe("One lot 3");
    expect(two.reasons.filter(({ kind }) => kind === "lot")).toEqual([]);
  });

  it("names a lot that is uneven in itself as that, though its mean is that of the others", () => {
    const { one } = details({ wide: (variety, lot) => (variety === "One" && lot === 2 ? 4 : 1) });
    expect([one.reasons[0]?.lot, one.reasons[0]?.how]).toEqual(["One lot 2", "spread"]);
    expect(one.splits[0]?.lots.filter(({ uneven }) => uneven).map(({ lot }) => lot)).toEqual(["One lot 2"]);
  });

  it("calls it the process where both varieties moved in the same weeks, with what was logged then", () => {
    const [from, to] = [START + 160 * DAY, START + 240 * DAY];
    const { one } = details({
      shift: (_, __, at) => (at >= from && at < to ? 0.6 : 0),
      events: [{ on: to, kind: "repair", scope: "kiln", what: "new fan belt", alters: null }],
    });
    const stood = one.reasons.filter(({ lot }) => lot === "One lot 2");
    expect(stood.map(({ kind, goesWith }) => [kind, goesWith])).toEqual([["process", "new fan belt"]]);
    expect(one.withoutLot?.lot).not.toBe("One lot 2");
  });

  it("takes a season for a season and not for the grain of winter's lots", () => {
    const season = (_: string, __: number, at: number): number => 0.5 * Math.cos((2 * Math.PI * (at - START)) / YEAR);
    const { one } = details({ shift: season });
    expect(one.splits[0]?.seasonTakenOut).toBe(true);
    expect(one.reasons.map(({ kind, goesWith }) => [kind, goesWith])).toEqual([["process", "the season"]]);
    // From trough to crest.
    expect(one.reasons[0]?.size?.low ?? 9).toBeLessThan(1);
    expect(one.reasons[0]?.size?.high ?? 0).toBeGreaterThan(1);
  });

  it("finds a change among batches of the lot that it fell into", () => {
    const on = START + 279 * DAY;
    const { one } = details({
      shift: (_, lot, at) => (lot === 3 && at - DAY >= on ? 0.7 : 0),
      events: [{ on, kind: "change", scope: "kiln", what: "a higher cure", alters: "cure_set" }],
    });
    const change = one.reasons.find(({ goesWith, lot }) => goesWith === "a higher cure" && lot === null);
    expect(change?.kind).toBe("process");
    expect(change?.size?.low ?? 9).toBeLessThan(0.7);
    expect(change?.size?.high ?? 0).toBeGreaterThan(0.7);
  });

  it("splits the spread from 5 lots on and says what lacks below", () => {
    expect(details({ lots: 5 }).one.splits[0]?.shareBetween).not.toBeNull();
    const { tooLittle, shareBetween } = details({ lots: 4 }).one.splits[0] ?? {};
    expect(shareBetween).toBeNull();
    expect(tooLittle).toBe("4 lots; where the spread lies can be told from 5 on.");
  });
});
