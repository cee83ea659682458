import type { IntakeAir, LoadRow } from "./loadRow.ts";

/** What `load_rows` holds of the air at the kiln's intake, by where it comes from. */
export interface AirColumns {
  readonly loggedAtLoadingHumidity: number | null;
  readonly loggedAtLoadingCelsius: number | null;
  readonly loggedOverLoadHumidity: number | null;
  readonly loggedOverLoadCelsius: number | null;
  readonly weatherAtLoadingHumidity: number | null;
  readonly weatherAtLoadingCelsius: number | null;
  readonly weatherOverLoadHumidity: number | null;
  readonly weatherOverLoadCelsius: number | null;
}

/** Humidity makes the air; a temperature without one is of no use, and one from elsewhere is never added. */
function airFrom(humidity: number | null, celsius: number | null, source: IntakeAir["source"]): IntakeAir | null {
  return humidity === null ? null : { relativeHumidityPercent: humidity, celsius, source };
}

/**
 * Air at the intake, both ways of saying it, each with its source. At loading: as logged, else the weather then. Over the
 * load: the weather's mean over it, else as logged. The two are never mixed: they belong to different fits.
 */
export function intakeAir(air: AirColumns): Pick<LoadRow, "airAtLoading" | "airOverLoad"> {
  return {
    airAtLoading:
      airFrom(air.loggedAtLoadingHumidity, air.loggedAtLoadingCelsius, "logged") ??
      airFrom(air.weatherAtLoadingHumidity, air.weatherAtLoadingCelsius, "weather"),
    airOverLoad:
      airFrom(air.weatherOverLoadHumidity, air.weatherOverLoadCelsius, "weather") ??
      airFrom(air.loggedOverLoadHumidity, air.loggedOverLoadCelsius, "logged"),
  };
}
