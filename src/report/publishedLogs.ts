import type { CsvTable } from "../tables/csvTable.ts";
import type { Kiln, NamedBaseline } from "../tables/house.ts";
import type { LogsResult } from "./logsResult.ts";
import type { HouseBrief, OtherColumn } from "./report.ts";
import type { HouseCosts } from "./reviewResult.ts";
import type { ThermostatSettings } from "./thermostat/analyseThermostat.ts";

/**
 * What the build hands to the browser besides the tables' rows: where each table is, and what cannot be asked of the
 * engine since only the reader of the raw logs knew it. Plain JSON.
 */
export interface PublishedLogs {
  readonly house: HouseBrief;
  readonly logs: LogsResult;
  readonly costs: HouseCosts;
  readonly baselines: readonly NamedBaseline[];
  /** Half-widths about the target for measures that targets.csv leaves without limits, from house.toml. */
  readonly tolerances: Readonly<Record<string, number>>;
  readonly thermostat: ThermostatSettings;
  /** As house.toml describes them: for logs that are taken away. */
  readonly kilns: readonly Kiln[];
  readonly otherColumns: readonly OtherColumn[];
  /** In the order in which the engine takes them in. */
  readonly tables: readonly PublishedTable[];
}

export interface PublishedTable extends Pick<CsvTable, "name" | "columns"> {
  /** Name inside the tables' folder, with a digest of its bytes. */
  readonly file: string;
  readonly bytes: number;
}
