import type { Interval } from "../analysis/regressionFit.ts";

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
  /** How much further apart it switches on and off than it did, where that is what is said; its middle is then not spoken of. */
  readonly widerKelvin: Interval | null;
  readonly kelvinPerMonth: Interval | null;
  /** When it leaves its tolerance, where that can be dated; both its last load where it is outside already. */
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

/** A heater that is on for longer than it was, for the same lift of the air. */
export interface HeaterFact extends FactBase {
  readonly kind: "heater";
  readonly kiln: string;
  /** Share of the time more, as a share of what it was: 0.28 where two elements of nine are out. */
  readonly longerOn: Interval;
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
  /** `shift`: off the house's own usual; `bias`: measured less what the gain in mass says; `bias moved`: that it has moved by. */
  readonly shape: "shift" | "bias" | "bias moved";
  readonly points: Interval;
}

export interface BedFact extends FactBase {
  readonly kind: "bed";
  readonly bed: string;
  /** Fraction of kernel length less the other beds', against what it used to be. */
  readonly difference: Interval;
  /** The beds' own temperatures are allowed for, at the house's own growth a kelvin. */
  readonly atOneTemperature: boolean;
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
  /** House meter less laboratory, points of moisture; where it has `moved`, less what that used to be. */
  readonly points: Interval;
  readonly moved: boolean;
}

export interface LogsFact extends FactBase {
  readonly kind: "logs";
  readonly rowsSetAside: number;
  /** Batches whose kiln row is among those: no other page counts them. */
  readonly batchesLost: number;
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
  | HeaterFact
  | VarietyFact
  | LotFact
  | SteepFact
  | BedFact
  | TimetableFact
  | LaboratoryFact
  | LogsFact
  | OrdersFact;
