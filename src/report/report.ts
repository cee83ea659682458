import type { UnitSystem } from "../units/unitSystem.ts";
import type { ChangesResult } from "./changesResult.ts";
import type { YieldMoistureResult } from "./controlChartResult.ts";
import type { EventRow } from "./eventRow.ts";
import type { KilnHoursResult } from "./kilnHoursResult.ts";
import type { LoadRow } from "./loadRow.ts";
import type { LogsResult } from "./logsResult.ts";
import type { ReviewResult } from "./reviewResult.ts";
import type { RunRow } from "./runRow.ts";
import type { SteepGerminationResult } from "./steepGerminationResult.ts";
import type { ThermostatResult } from "./thermostatResult.ts";
import type { VarietiesResult } from "./varietiesResult.ts";

/** What every page needs to know of the house. */
export interface HouseBrief {
  readonly name: string;
  readonly timeZone: string;
  readonly units: UnitSystem;
  readonly altitudeMetres: number;
  /** True for the invented house that comes with the project; every page then says so. */
  readonly invented: boolean;
}

/** Choices offered to the reader, from the whole of the logs whatever the view. */
export interface Choices {
  readonly varieties: readonly string[];
  readonly kilns: readonly string[];
  readonly firstDate: string | null;
  readonly lastDate: string | null;
}

/** A column that the format does not know, kept for the run's page as it was logged. */
export interface OtherColumn {
  readonly run: string;
  readonly table: string;
  readonly column: string;
  readonly value: string;
}

/** What every page stands on: the rows of one view, and what is known whatever the view. */
export interface ReportRows {
  readonly house: HouseBrief;
  readonly choices: Choices;
  /** The latest instant in any run log; pages say *logs to 31 October 2026*. */
  readonly lastLoggedAt: number | null;
  /** By loading time, latest first. */
  readonly runs: readonly RunRow[];
  /** By loading time, earliest first. */
  readonly loads: readonly LoadRow[];
  /** By date, earliest first. */
  readonly events: readonly EventRow[];
  readonly logs: LogsResult;
  readonly otherColumns: readonly OtherColumn[];
}

/** What is worked out of the rows, each part by itself, so that a live page asks only for those it shows. */
export interface ReportParts {
  readonly kilnHours: KilnHoursResult;
  readonly yieldMoisture: YieldMoistureResult;
  readonly thermostat: ThermostatResult;
  readonly varieties: VarietiesResult;
  readonly steepGermination: SteepGerminationResult;
  readonly changes: ChangesResult;
  readonly review: ReviewResult;
}

export type PartName = keyof ReportParts;

/** The rows with some of the parts: what a page's body takes that needs no more. */
export type ReportWith<Part extends PartName> = ReportRows & Pick<ReportParts, Part>;

/** Everything the pages say, for one view of the logs. Plain data: it can cross from worker to page and be written as JSON. */
export interface Report extends ReportRows, ReportParts {}
