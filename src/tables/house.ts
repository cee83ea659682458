import type { UnitSystem } from "../units/unitSystem.ts";

export type DateOrder = "ymd" | "dmy" | "mdy";

/** One kiln as house.toml describes it. What the owner left out is null. */
export interface Kiln {
  readonly id: string;
  readonly floorSquareMetres: number | null;
  readonly heaterKilowatts: number | null;
  readonly fanCubicMetresPerHour: number | null;
  /** Is the logger's air-on probe beside the thermostat's bulb? Only then is an offset an absolute number. */
  readonly probeAtBulb: boolean;
}

/** How a named log file departs from the house's habits. */
export interface FileDeclaration {
  readonly encoding: string | null;
  readonly delimiter: string | null;
  readonly decimal: "." | "," | null;
  readonly dateOrder: DateOrder | null;
}

/** The runs that set the limits for a variety, a grain or `any`: a list, or the dates they were unloaded between. */
export interface NamedBaseline {
  readonly variety: string;
  readonly runs: readonly string[] | null;
  /** Local dates, both inclusive. */
  readonly from: string | null;
  readonly to: string | null;
}

/** The house's settings, read from house.toml; every default is filled in, so that readers never ask twice. */
export interface House {
  readonly name: string;
  /** IANA name; local times in the logs are read in it and times on pages are said in it. */
  readonly timeZone: string;
  readonly units: UnitSystem;
  readonly dateOrder: DateOrder;
  readonly altitudeMetres: number;
  readonly kilns: readonly Kiln[];
  readonly tolerances: {
    readonly thermostatCelsius: number;
    /** Half-widths about the target for measures that targets.csv leaves out, by the measure's name. */
    readonly measures: Readonly<Record<string, number>>;
  };
  readonly costs: {
    readonly currency: string | null;
    readonly perKilowattHour: number | null;
    readonly perLabourHour: number | null;
    readonly perKilogramMalt: number | null;
    readonly perRefusedBatch: number | null;
  };
  /** By file path inside the logs folder. */
  readonly files: ReadonlyMap<string, FileDeclaration>;
  /** Where the owner named the runs that set the limits of the control charts. */
  readonly baselines: readonly NamedBaseline[];
  readonly checks: { readonly loggerDays: number };
  readonly shared: { readonly contact: string | null; readonly note: string | null; readonly showGrowers: boolean };
}
