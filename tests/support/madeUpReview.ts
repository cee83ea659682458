import type { ReviewReader } from "../../src/findings/review/reader.ts";
import type { Fact } from "../../src/report/fact.ts";
import type {
  HouseCosts,
  MonthReview,
  MonthTotals,
  PromisedAgainstMade,
  ReviewFinding,
  ReviewResult,
} from "../../src/report/reviewResult.ts";

export const madeUpCosts: HouseCosts = {
  currency: "EUR",
  perKilowattHour: 0.2,
  perLabourHour: 20,
  perKilogramMalt: 1.5,
  perRefusedBatch: 300,
};

export const madeUpReader: ReviewReader = { units: "metric", timeZone: "UTC", costs: madeUpCosts };

const loss = { kilnHours: 0, labourHours: 0, kilowattHours: 0, kilogramsMalt: 0, refusedBatches: 0 };
const from = Date.UTC(2026, 8, 28);
const to = Date.UTC(2026, 9, 24);
const base = { from, to, runs: ["26-171", "26-172", "26-175"], runCount: 3, chanceReal: 0.97, loss, beside: [] };
const between = (estimate: number, reach: number) => ({ estimate, low: estimate - reach, high: estimate + reach });

/** One fact of every kind there is, each with other numbers. */
export const everyFact: readonly Fact[] = [
  { ...base, kind: "kiln hours", hoursOver: between(2.2, 0.5), loss: { ...loss, kilnHours: 11 } },
  {
    ...base,
    kind: "chart",
    measure: "final_moisture_pct",
    variety: null,
    size: 0.5,
    single: false,
    loss: { ...loss, refusedBatches: 1.7 },
    beside: ["14 Oct 2026, kiln: belt tightened"],
  },
  { ...base, kind: "uneven batch", spreadPoints: 0.6, usualPoints: 0.2, runs: ["26-175"], runCount: 1 },
  {
    ...base,
    kind: "thermostat",
    kiln: "K1",
    hold: "drying",
    shape: "creep",
    movedKelvin: -0.7,
    widerKelvin: null,
    kelvinPerMonth: between(0.4, 0.2),
    leavesFrom: Date.UTC(2026, 10, 14),
    leavesTo: Date.UTC(2027, 3, 6),
    loggerDoubt: false,
  },
  { ...base, kind: "logger", kiln: "K1", errorKelvin: null, daysSinceCheck: 140, runs: [], runCount: 0 },
  { ...base, kind: "energy", perKilogramOver: between(0.2, 0.06), loss: { ...loss, kilowattHours: 177 } },
  { ...base, kind: "power limit", loads: 3, ofLoads: 6 },
  { ...base, kind: "heater", kiln: "K1", longerOn: between(0.28, 0.05) },
  { ...base, kind: "variety", variety: "Amber", onTarget: 44, low: 27, high: 59, measure: "steep_out_moisture_pct" },
  {
    ...base,
    kind: "lot",
    variety: "Amber",
    lot: "L25-04",
    measure: "dry_yield_pct",
    size: between(-1, 0.3),
    uneven: false,
  },
  { ...base, kind: "steep", shape: "shift", points: between(-0.9, 0.4) },
  { ...base, kind: "bed", bed: "B2", difference: between(-0.08, 0.03), atOneTemperature: false },
  {
    ...base,
    kind: "timetable",
    lengthOver: between(-0.18, 0.04),
    hoursOver: between(-25, 8),
    bedMeanCelsius: 13.2,
  },
  { ...base, kind: "steep", shape: "bias moved", points: between(1.1, 0.4), runCount: 3 },
  { ...base, kind: "laboratory", points: between(-0.2, 0.08), moved: false },
  { ...base, kind: "laboratory", points: between(-0.4, 0.12), moved: true },
  { ...base, kind: "logs", rowsSetAside: 1, batchesLost: 1, valuesBlanked: 2, missing: ["acrospireMean"] },
  { ...base, kind: "orders", kilogramsShort: 420, chanceLate: 0.9, startFirst: "Brindle", runs: [], runCount: 0 },
];

/** A finding of one fact, in the rank that its place in the list gives it. */
export function findingOf(fact: Fact, rank = 1): ReviewFinding {
  return {
    id: `${fact.kind} made up`,
    cause: fact.kind,
    facts: [fact],
    chanceReal: fact.chanceReal,
    loss: fact.loss,
    costAMonth: 0,
    rank,
  };
}

export function totalsOf(month: string, batches: number, changes: Partial<MonthTotals> = {}): MonthTotals {
  return {
    month,
    batches,
    loads: batches,
    grainInKilograms: 300 * batches,
    maltOutKilograms: 252 * batches,
    kilnHours: 13 * batches,
    energyKilowattHours: 300 * batches,
    logged: { grainIn: batches, maltOut: batches, kilnHours: batches, energy: batches },
    ...changes,
  };
}

export const madeUpPromised: PromisedAgainstMade = {
  asOf: Date.UTC(2026, 9, 31),
  varieties: [
    {
      variety: "Amber",
      owedKilograms: 850,
      storeKilograms: 789,
      comingKilograms: 0,
      shortKilograms: 61,
      firstDueAt: Date.UTC(2026, 10, 20),
      bags: 31,
      totes: 1,
      loadsNeeded: 1,
    },
    {
      variety: "Brindle",
      owedKilograms: 0,
      storeKilograms: 20,
      comingKilograms: 250,
      shortKilograms: 0,
      firstDueAt: null,
      bags: null,
      totes: null,
      loadsNeeded: 0,
    },
  ],
  orders: [
    {
      order: "O7",
      customer: "C01",
      variety: "Amber",
      kilograms: 900,
      stillOwedKilograms: 850,
      dueAt: Date.UTC(2026, 10, 20),
      overdue: false,
    },
  ],
  weeks: 4,
  loadsNeeded: 1,
  loadsUnderWay: 1,
  nightsNeeded: 1,
  nightsThereAre: 28,
  loadsThereAre: 5,
  spells: 40,
  hoursALoad: { estimate: 13.2, low: 11.9, high: 14.6 },
  chanceLate: 0,
  startFirst: [{ variety: "Amber", latestSteepAt: Date.UTC(2026, 10, 11), forOrder: "O7" }],
  tooLittle: null,
};

/** October 2026 of a made-up house, quiet unless told otherwise. */
export function madeUpMonth(changes: Partial<MonthReview> = {}): MonthReview {
  return {
    totals: totalsOf("2026-10", 6),
    lastMonth: totalsOf("2026-09", 7),
    sameMonthLastYear: null,
    findings: [],
    open: [],
    events: [],
    eventsBefore: [],
    lookedAt: [
      { kind: "kiln hours", count: 6, tooLittle: false },
      { kind: "chart", count: 6, tooLittle: false },
      { kind: "bed", count: 0, tooLittle: true },
    ],
    logHealth: {
      rowsSetAside: 0,
      valuesBlanked: 0,
      notes: 0,
      runs: 6,
      runsComplete: 6,
      runsLost: [],
      filesSetAside: [],
    },
    promised: null,
    ...changes,
  };
}

export const reviewOf = (months: readonly MonthReview[]): ReviewResult => ({
  months,
  monthsThereAre: months.map(({ totals }) => totals.month),
  costs: madeUpCosts,
  accepted: [{ measure: "final_moisture_pct", variety: "Amber", low: 3.6, target: 4.4, high: 5 }],
  tooLittle: null,
});
