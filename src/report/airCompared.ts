import { median } from "../analysis/summary.ts";
import type { Database } from "../engine/database.ts";
import type { AirBasis } from "./airBasis.ts";
import type { LoadRow } from "./loadRow.ts";

/** Humidity of one load's air by where it comes from; what is not known is null. */
export interface AirSources {
  readonly load: string;
  readonly loggedAtLoading: number | null;
  readonly loggedOverLoad: number | null;
  readonly weatherAtLoading: number | null;
  readonly weatherOverLoad: number | null;
}

/** Which air the loads went by, and how far the two sources lie apart where both are known. */
export interface AirCompared {
  readonly logged: number;
  readonly weather: number;
  /** Weather less logged, in points of relative humidity; null where no load has both. */
  readonly difference: {
    readonly loads: number;
    /** In the middle of the loads: one source reads so much higher as a rule. */
    readonly median: number;
    /** Of its size, without regard to sign. */
    readonly medianSize: number;
  } | null;
}

export function readAirSources(database: Database): Promise<readonly AirSources[]> {
  return database.query<AirSources>(
    `SELECT load, logged_at_loading_rh_pct AS "loggedAtLoading", logged_over_load_rh_pct AS "loggedOverLoad",
      weather_at_loading_rh_pct AS "weatherAtLoading", weather_over_load_rh_pct AS "weatherOverLoad"
    FROM load_rows ORDER BY load`,
  );
}

/** How the air of `loads` was come by on one basis. */
export function compareAir(sources: readonly AirSources[], loads: readonly LoadRow[], basis: AirBasis): AirCompared {
  const shown = new Set(loads.map(({ load }) => load));
  const differences = sources.flatMap((source) => {
    const logged = basis === "at_loading" ? source.loggedAtLoading : source.loggedOverLoad;
    const weather = basis === "at_loading" ? source.weatherAtLoading : source.weatherOverLoad;
    return shown.has(source.load) && logged !== null && weather !== null ? [weather - logged] : [];
  });
  const from = (wanted: "logged" | "weather"): number =>
    loads.filter((load) => (basis === "at_loading" ? load.airAtLoading : load.airOverLoad)?.source === wanted).length;
  return {
    logged: from("logged"),
    weather: from("weather"),
    difference:
      differences.length === 0
        ? null
        : { loads: differences.length, median: median(differences), medianSize: median(differences.map(Math.abs)) },
  };
}
