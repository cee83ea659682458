import type { Interval } from "../analysis/regressionFit.ts";
import type { ChangeEffect } from "./changesResult.ts";
import type { EventRow } from "./eventRow.ts";
import type { Fact, MonthlyLoss } from "./fact.ts";

/** What a house made in one month; a run belongs to the month it was unloaded. Sums over what was logged; null: nothing was. */
export interface MonthTotals {
  /** `2026-10`, local. */
  readonly month: string;
  readonly batches: number;
  /** Firings of a kiln that were unloaded in the month. */
  readonly loads: number;
  readonly grainInKilograms: number | null;
  readonly maltOutKilograms: number | null;
  /** Of the loads unloaded in the month. */
  readonly kilnHours: number | null;
  readonly energyKilowattHours: number | null;
  /** Batches that logged grain and malt, loads that logged hours and energy, so that a sum of too few is seen as such. */
  readonly logged: {
    readonly grainIn: number;
    readonly maltOut: number;
    readonly kilnHours: number;
    readonly energy: number;
  };
}

/** Causes that are seen by what they show in several places. */
export type SharedCause = "kiln air" | "scale";

/** Facts that one cause explains, ranked by what they cost a month times the chance that they are real. */
export interface ReviewFinding {
  /** The same from month to month while it is the same trouble: `thermostat K1 drying`. */
  readonly id: string;
  /** The cause that joins them; the first fact's own kind where there is one fact. */
  readonly cause: SharedCause | Fact["kind"];
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
  /** So many weeks are planned. */
  readonly weeks: number;
  readonly loadsNeeded: number;
  /** Loads of the batches that are under way: they have the kiln first. */
  readonly loadsUnderWay: number;
  /** Kiln nights that those take at this season's humidity, and those there are; null where hours cannot be foretold. */
  readonly nightsNeeded: number | null;
  readonly nightsThereAre: number | null;
  /** Loads the house fires in a middling spell of so many weeks. */
  readonly loadsThereAre: number;
  readonly hoursALoad: Interval | null;
  /** Spells of its own past in which the chance of being late was tried. */
  readonly spells: number;
  /** That at least one load that has yet to be steeped comes too late for its order, 0 to 1. */
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
  /** Changed, repaired, calibrated or gone wrong in the month, earliest first. */
  readonly events: readonly MonthEvent[];
  /** Changes, repairs and calibrations of the two months before, with what they have come to by the end of this one. */
  readonly eventsBefore: readonly MonthEvent[];
  /** What was looked at, so that a quiet month can say so: kinds of fact, and on how many runs or loads. */
  readonly lookedAt: readonly { readonly kind: Fact["kind"]; readonly count: number; readonly tooLittle: boolean }[];
  readonly logHealth: {
    readonly rowsSetAside: number;
    readonly valuesBlanked: number;
    readonly notes: number;
    readonly runs: number;
    readonly runsComplete: number;
    /** Batches that came off the floor in the month and whose kiln row could not be read: they are counted nowhere. */
    readonly runsLost: readonly string[];
    /** Files that could not be read at all, be they of this month or not. */
    readonly filesSetAside: readonly string[];
  };
  /** Only for the latest month. */
  readonly promised: PromisedAgainstMade | null;
}

/** Something logged about the house in a month. */
export interface MonthEvent {
  readonly event: EventRow;
  /** Where it stands on the page Changes; null for what is no change. */
  readonly changeId: string | null;
  /** What it came to by the end of the month in review, its points left out; null where nothing was compared. */
  readonly effect: ChangeEffect | null;
  /** Why nothing was compared, as a sentence; null where something was, or nothing could have shown. */
  readonly tooLittle: string | null;
}

/** What the house accepts of one measure in one variety; null is *not set*. */
export interface Accepted {
  /** As targets.csv has it. */
  readonly measure: string;
  readonly variety: string;
  readonly low: number | null;
  readonly target: number | null;
  readonly high: number | null;
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
  /** Of the measures that the month's figure draws; a measure or variety without a target is not among them. */
  readonly accepted: readonly Accepted[];
  readonly tooLittle: string | null;
}
