import { wilsonInterval } from "../../src/analysis/wilsonInterval.ts";
import type {
  LabRow,
  LotSpread,
  MeasureScore,
  PeriodComparison,
  ScoredBatch,
  SpreadSplit,
  Tolerance,
  VarietiesResult,
  VarietyDetail,
  VarietyScore,
} from "../../src/report/varietiesResult.ts";

const DAY = 86_400_000;
const START = Date.UTC(2025, 0, 6);

const tolerances: readonly Tolerance[] = [
  { measure: "final_moisture_pct", low: 3.6, target: 4.4, high: 5 },
  { measure: "dry_yield_pct", low: 89.5, target: 91, high: null },
  { measure: "acrospire_overgrown_pct", low: null, target: null, high: 15 },
];

const interval = (estimate: number, reach: number) => ({ estimate, low: estimate - reach, high: estimate + reach });

function measureScore(tolerance: Tolerance, onTarget: number, even: number, batches: number): MeasureScore {
  const met = Math.round(batches * onTarget);
  return {
    tolerance,
    scale: "as it is",
    limits: {
      low: tolerance.low ?? Number.NEGATIVE_INFINITY,
      high: tolerance.high ?? Number.POSITIVE_INFINITY,
      below: 1,
      above: 1,
      leastSpread: 0,
    },
    batches,
    mean: tolerance.target ?? tolerance.high ?? 0,
    ownSpread: 0.3,
    spread: 0.32,
    resolutionFloorUsed: false,
    onTarget,
    even,
    drag: 100 * (1 - onTarget) * 0.8,
    met,
    metShare: wilsonInterval(met, batches),
  };
}

/** A batch every eight days; the last measure is not recorded of each fifth. */
function batchesOf(variety: string, count: number, offset: number): readonly ScoredBatch[] {
  return Array.from({ length: count }, (_, i) => {
    const moisture = 4.4 + 0.5 * Math.sin(i * 12.9898 + offset);
    const overgrown = i % 5 === 4 ? null : 8 + 9 * Math.sin(i * 3.7 + offset);
    const met = moisture >= 3.6 && moisture <= 5 && (overgrown ?? 0) <= 15;
    return {
      run: `${variety.charAt(0)}${i + 1}`,
      variety,
      lot: `${variety.charAt(0)}L${1 + Math.floor((i * 6) / count)}`,
      at: START + i * 8 * DAY,
      values: [moisture, 90.6 + Math.cos(i + offset), overgrown],
      metAll: overgrown === null ? null : met,
    };
  });
}

interface ScoreDesign {
  readonly onTarget: number;
  readonly even: number;
  readonly batches: number;
  readonly standing: VarietyScore["standing"];
}

function scoreOf(variety: string, { onTarget, even, batches, standing }: ScoreDesign): VarietyScore {
  const reach = standing === "full" ? 12 : null;
  const number = (estimate: number) => ({
    estimate,
    low: reach === null ? null : estimate - reach,
    high: reach === null ? null : estimate + reach,
  });
  const none = standing === "none";
  const met = Math.round((batches * onTarget) / 100);
  const chances = [onTarget / 100 + 0.05, 0.93, 0.97];
  return {
    variety,
    grain: "barley",
    batches,
    allBatches: batches + 2,
    lots: none ? 1 : 6,
    standing,
    onTarget: none ? null : number(onTarget),
    even: none ? null : number(even),
    noInterval: null,
    met,
    metShare: batches === 0 ? null : wilsonInterval(met, batches),
    measures: none
      ? []
      : tolerances.map((one, i) => measureScore(one, chances[i] ?? 1, (chances[i] ?? 1) + 0.02, batches)),
    beside: none ? [] : [measureScore({ measure: "colour_ebc", low: 2.5, target: 3.6, high: 5 }, 0.82, 0.88, 6)],
    notCounted: none ? [] : [{ measure: "don_mg_kg", reason: "2 of 24 batches have it; a score needs 5" }],
    batchesInOrder: batchesOf(variety, batches + 2, onTarget),
    tooLittle: none ? `${batches} batches with every measure; a score needs 5.` : null,
  };
}

function lotOf(letter: string, i: number, level: number, change: Partial<LotSpread> = {}): LotSpread {
  const mean = change.mean ?? level + 0.06 * i;
  return {
    lot: `${letter}L${i}`,
    batches: 4 + (i % 2),
    mean,
    meanInterval: interval(mean, 0.18),
    spread: 0.21,
    firstAt: START + i * 40 * DAY,
    lastAt: START + (i * 40 + 30) * DAY,
    differs: false,
    differsP: 0.6,
    uneven: false,
    unevenP: 0.4,
    ...change,
  };
}

function splitOf(
  measure: string,
  letter: string,
  level: number,
  changes: Readonly<Record<number, Partial<LotSpread>>> = {},
): SpreadSplit {
  return {
    measure,
    lots: [1, 2, 3, 4, 5, 6].map((i) => lotOf(letter, i, level, changes[i])),
    seasonTakenOut: true,
    betweenLots: { estimate: 0.1, low: 0.02, high: 0.3 },
    withinLots: { estimate: 0.22, low: 0.17, high: 0.31 },
    shareBetween: { estimate: 0.17, low: 0.01, high: 0.46 },
    spreadsDifferP: 0.04,
    tooLittle: null,
  };
}

export function certificate(run: string, day: number, methodSet: string | null, values: LabRow["values"]): LabRow {
  return { run, testedOn: START + day * DAY, laboratory: "Example laboratory", methodSet, values };
}

const lab: readonly LabRow[] = [
  certificate("A3", 30, "EBC", {
    extract_fine_dry_pct: 81,
    moisture_pct: 5,
    colour_ebc: 3.94,
    diastatic_power_wk: 250,
  }),
  certificate("A9", 90, "EBC", {
    extract_fine_dry_pct: 80.6,
    moisture_pct: 4.6,
    colour_ebc: 3.2,
    diastatic_power_wk: null,
  }),
  certificate("A14", 130, "EBC", {
    extract_fine_dry_pct: 81.4,
    moisture_pct: null,
    colour_ebc: 5.6,
    diastatic_power_wk: 334,
  }),
  certificate("A2", 20, "ASBC", { extract_fine_dry_pct: 79.9, moisture_pct: 4.5, colour_ebc: 3.6 }),
  certificate("A6", 60, "ASBC", { extract_fine_dry_pct: 80.2, moisture_pct: 4.4, colour_ebc: 3.7 }),
];

function detailOf(variety: string, standsOut: boolean): VarietyDetail {
  const letter = variety.charAt(0);
  const out = standsOut
    ? { 4: { differs: true, differsP: 0.003, mean: 4.95 }, 2: { uneven: true, unevenP: 0.012, spread: 0.6 } }
    : {};
  const reason = { measure: "final_moisture_pct", lot: `${letter}L4`, how: "level" } as const;
  return {
    variety,
    splits: [
      splitOf("final_moisture_pct", letter, 4.2, out),
      splitOf("dry_yield_pct", letter, 90.6),
      splitOf("acrospire_overgrown_pct", letter, 8),
    ],
    quarters: {
      each: 6,
      lookedAt: 14,
      differences: [
        {
          column: "grain_protein_dry_pct",
          best: 10.8,
          worst: 12.1,
          difference: interval(1.3, 0.6),
          p: 0.0006,
          correctedP: 0.008,
        },
        { column: "bed_max_c", best: 17.1, worst: 18.4, difference: interval(1.3, 1.4), p: 0.07, correctedP: 0.3 },
      ],
    },
    reasons: standsOut
      ? [
          { ...reason, kind: "lot", size: interval(0.42, 0.2), goesWith: null },
          { ...reason, kind: "grain", size: null, goesWith: "the highest grain protein of its lots" },
        ]
      : [],
    withoutLot: standsOut ? { lot: `${letter}L4`, onTarget: 71, batches: 20 } : null,
    lab: standsOut ? lab : [],
  };
}

const period = (variety: string, measure: string, difference: number, reach: number): PeriodComparison => ({
  variety,
  measure,
  now: { name: "July to September 2026", batches: 8, mean: 4.4 + difference, spread: 0.3 },
  before: { name: "April to June 2026", batches: 9, mean: 4.4, spread: 0.28 },
  difference: interval(difference, reach),
  spreadRatio: { estimate: 1.1, low: 0.6, high: 2.1 },
});

/** Four varieties: uneven by one lot, steady, early, and one with too few batches for a score. */
export function madeUpVarieties(changes: Partial<VarietiesResult> = {}): VarietiesResult {
  return {
    scores: [
      scoreOf("Amber", { onTarget: 46, even: 52, batches: 24, standing: "full" }),
      scoreOf("Brindle", { onTarget: 78, even: 80, batches: 30, standing: "full" }),
      scoreOf("Cresset", { onTarget: 80, even: 82, batches: 8, standing: "early" }),
      scoreOf("Dunlin", { onTarget: 0, even: 0, batches: 3, standing: "none" }),
    ],
    details: [detailOf("Amber", true), detailOf("Brindle", false)],
    backTest: {
      forecasts: 41,
      brierScore: 0.181,
      brierOfBaseRate: 0.22,
      difference: interval(-0.039, 0.03),
      groups: [
        { said: 0.42, seen: wilsonInterval(6, 14), forecasts: 14 },
        { said: 0.78, seen: wilsonInterval(22, 27), forecasts: 27 },
      ],
    },
    backTestOfEven: {
      forecasts: 41,
      brierScore: 0.2,
      brierOfBaseRate: 0.21,
      difference: interval(-0.01, 0.03),
      groups: [{ said: 0.6, seen: wilsonInterval(26, 41), forecasts: 41 }],
    },
    followed: true,
    periods: [
      period("Amber", "final_moisture_pct", 0.31, 0.2),
      period("Brindle", "final_moisture_pct", -0.05, 0.2),
      period("Amber", "dry_yield_pct", 0.4, 0.9),
    ],
    tolerancesFrom: ["targets.csv"],
    tooLittle: null,
    ...changes,
  };
}
