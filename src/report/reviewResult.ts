import type { Interval } from "../analysis/regressionFit.ts";
import type { EventRow } from "./eventRow.ts";

/** What a house made in one month; a run belongs to the month it was unloaded. Sums over what was logged; null: nothing was. */
export interface MonthTotals {
  /** `2026-10`, local. */
  readonly month: string;
  readonly batches: number;
  readonly grainInKilograms: number | null;
  readonly maltOutKilograms: number | null;
  /** Kiln hours of the loads unloaded in the month. */
  readonly kilnHours: number | null;
  readonly energyKilowattHours: number | null;
  /** Batches that logged each, so that a sum of too few is seen as such. */
  readonly logged: {
    readonly grainIn: number;
    readonly maltOut: number;
    readonly kilnHours: number;
    readonly energy: number;
  };
}

/** What a trouble takes in a month, in the owner's terms; each at least 0. */
export interface MonthlyLoss {
  readonly kilnHours: number;
  readonly labourHours: number;
  readonly kilowattHours: number;
  readonly kilogramsMalt: number;
  readonly refusedBatches: number;
}

interface FactBase {
  /** First and last moment it speaks of. */
  readonly from: number;
  readonly to: number;
  /** In time order; at most the latest dozen where there are more. */
  readonly runs: readonly string[];
  readonly runCount: number;
  /** The chance that it is real and not a play of chance, 0 to 1; how it is had stands with each kind. */
  readonly chanceReal: number;
  readonly loss: MonthlyLoss;
  /** Logged about those days, in words. */
  readonly beside: readonly string[];
}

/** Loads slower or faster than weather and bed explain. */
export interface HoursFact extends FactBase {
  readonly kind: "kiln hours";
  readonly hoursOver: Interval;
}

/** A control chart that signals in this month, or still stands outside. */
export interface ChartFact extends FactBase {
  readonly kind: "chart";
  readonly measure: "dry_yield_pct" | "final_moisture_pct";
  /** Null: all varieties together. */
  readonly variety: string | null;
  /** In the measure's unit, signed. */
  readonly size: number;
  readonly single: boolean;
}

/** The spread within batches. */
export interface WithinFact extends FactBase {
  readonly kind: "uneven batch";
  readonly spreadPoints: number;
  readonly usualPoints: number;
}

export interface ThermostatFact extends FactBase {
  readonly kind: "thermostat";
  readonly kiln: string;
  readonly hold: "drying" | "cure";
  readonly shape: "creep" | "step" | "unexplained" | "worn contacts" | "weak heater or fan";
  readonly movedKelvin: number;
  readonly kelvinPerMonth: Interval | null;
  /** When it leaves its tolerance, where that can be dated. */
  readonly leavesFrom: number | null;
  readonly leavesTo: number | null;
  /** The logger may be the one that is off. */
  readonly loggerDoubt: boolean;
}

export interface LoggerFact extends FactBase {
  readonly kind: "logger";
  readonly kiln: string;
  /** Reading less reference at the latest check; null: it is only long since checked. */
  readonly errorKelvin: number | null;
  readonly daysSinceCheck: number | null;
}

/** A fan, heater or air that shows in energy or in the rise. */
export interface EnergyFact extends FactBase {
  readonly kind: "energy";
  /** kWh for a kilogram of water beyond what the season's air explains. */
  readonly perKilogramOver: Interval;
}

export interface PowerFact extends FactBase {
  readonly kind: "power limit";
  readonly loads: number;
  readonly ofLoads: number;
}

export interface VarietyFact extends FactBase {
  readonly kind: "variety";
  readonly variety: string;
  readonly onTarget: number;
  readonly low: number | null;
  readonly high: number | null;
  /** The measure that drags most. */
  readonly measure: string;
}

export interface LotFact extends FactBase {
  readonly kind: "lot";
  readonly variety: string;
  readonly lot: string;
  readonly measure: string;
  /** The lot's mean off the others, or its spread over theirs. */
  readonly size: Interval | null;
  readonly uneven: boolean;
}

export interface SteepFact extends FactBase {
  readonly kind: "steep";
  /** `shift`: off the house's own usual; `bias`: measured less what the gain in mass says. */
  readonly shape: "shift" | "bias";
  readonly points: Interval;
}

export interface BedFact extends FactBase {
  readonly kind: "bed";
  readonly bed: string;
  /** Fraction of kernel length less the other beds'. */
  readonly difference: Interval;
}

export interface TimetableFact extends FactBase {
  readonly kind: "timetable";
  /** Fraction of kernel length over the aim, at the month's bed temperature. */
  readonly lengthOver: Interval;
  /** Hours the timetable is too long (or short, below 0), where growth could be fitted. */
  readonly hoursOver: Interval | null;
  readonly bedMeanCelsius: number | null;
}

export interface LaboratoryFact extends FactBase {
  readonly kind: "laboratory";
  /** House meter less laboratory, points of moisture. */
  readonly points: Interval;
}

export interface LogsFact extends FactBase {
  readonly kind: "logs";
  readonly rowsSetAside: number;
  readonly valuesBlanked: number;
  /** Columns that were kept before and are missing in most of the month's batches: inside names. */
  readonly missing: readonly string[];
}

export interface OrdersFact extends FactBase {
  readonly kind: "orders";
  readonly kilogramsShort: number;
  readonly chanceLate: number;
  readonly startFirst: string | null;
}

export type Fact =
  | HoursFact
  | ChartFact
  | WithinFact
  | ThermostatFact
  | LoggerFact
  | EnergyFact
  | PowerFact
  | VarietyFact
  | LotFact
  | SteepFact
  | BedFact
  | TimetableFact
  | LaboratoryFact
  | LogsFact
  | OrdersFact;

/** Facts that one cause explains, ranked by what they cost a month times the chance that they are real. */
export interface ReviewFinding {
  /** The same from month to month while it is the same trouble: `thermostat K1 drying`. */
  readonly id: string;
  /** The cause that joins them; the first fact's own kind where there is one fact. */
  readonly cause: "kiln air" | Fact["kind"];
  /** The one that says most first. */
  readonly facts: readonly Fact[];
  readonly chanceReal: number;
  readonly loss: MonthlyLoss;
  /** In the house's currency; null without [costs]. */
  readonly costAMonth: number | null;
  /** By which it is ranked; without costs by the loss in kiln hours and malt at stated weights. */
  readonly rank: number;
}

/** What was open last month, and what became of it. */
export interface OpenQuestion {
  readonly id: string;
  readonly lastMonth: ReviewFinding;
  readonly now: "still there" | "gone" | "cannot be told";
}

/** Owed, in store, and the nights it takes. */
export interface PromisedAgainstMade {
  readonly asOf: number;
  readonly varieties: readonly {
    readonly variety: string;
    readonly owedKilograms: number;
    readonly storeKilograms: number;
    /** Expected of the batches that are in steep, on the floor or in the kiln. */
    readonly comingKilograms: number;
    readonly shortKilograms: number;
    readonly firstDueAt: number | null;
    readonly bags: number | null;
    readonly totes: number | null;
    /** Kiln loads needed for what is short, at the variety's usual malt out of a load. */
    readonly loadsNeeded: number;
  }[];
  readonly orders: readonly {
    readonly order: string;
    readonly customer: string;
    readonly variety: string;
    readonly kilograms: number;
    readonly stillOwedKilograms: number;
    readonly dueAt: number;
    readonly overdue: boolean;
  }[];
  /** Hours needed in the coming four weeks at this season's humidity, nights there are, chance of running late, 0 to 1. */
  readonly weeks: number;
  readonly loadsNeeded: number;
  /** Loads the house fires in a middling spell of so many weeks. */
  readonly loadsThereAre: number;
  /** Spells of its own past that this stands on. */
  readonly spells: number;
  readonly hoursALoad: Interval | null;
  readonly chanceLate: number | null;
  /** Varieties in the order in which they must be steeped, with the latest day. */
  readonly startFirst: readonly {
    readonly variety: string;
    readonly latestSteepAt: number;
    readonly forOrder: string;
  }[];
  readonly tooLittle: string | null;
}

export interface MonthReview {
  readonly totals: MonthTotals;
  readonly lastMonth: MonthTotals | null;
  readonly sameMonthLastYear: MonthTotals | null;
  /** Ranked; a page shows seven and folds the rest. */
  readonly findings: readonly ReviewFinding[];
  readonly open: readonly OpenQuestion[];
  /** Changed, repaired, calibrated or gone wrong in the month, with what it did where that can be told. */
  readonly events: readonly { readonly event: EventRow; readonly changeId: string | null }[];
  /** What was looked at, so that a quiet month can say so: kinds of fact, and on how many runs or loads. */
  readonly lookedAt: readonly { readonly kind: Fact["kind"]; readonly count: number; readonly tooLittle: boolean }[];
  readonly logHealth: {
    readonly rowsSetAside: number;
    readonly valuesBlanked: number;
    readonly notes: number;
    readonly runs: number;
    readonly runsComplete: number;
  };
  /** Only for the latest month. */
  readonly promised: PromisedAgainstMade | null;
}

/** Prices of house.toml; null where not given. */
export interface HouseCosts {
  readonly currency: string | null;
  readonly perKilowattHour: number | null;
  readonly perLabourHour: number | null;
  readonly perKilogramMalt: number | null;
  readonly perRefusedBatch: number | null;
}

export interface ReviewResult {
  /** Latest first. All months at build; in a live session the one that is shown and those beside it. */
  readonly months: readonly MonthReview[];
  /** Every month of the logs, latest first, whether or not it is worked out here. */
  readonly monthsThereAre: readonly string[];
  readonly costs: HouseCosts;
  readonly tooLittle: string | null;
}
