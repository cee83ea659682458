import type { ComparedRow } from "./comparedRow.ts";

/** The columns of the logs that a change may name in `alters` and that a run or a load carries as a number, by their stem. */
const COLUMNS: Readonly<Record<string, (row: ComparedRow) => number | null | undefined>> = {
  bed_depth: ({ load, run }) => load?.bedDepthMetres ?? run?.bedDepthMetres,
  green_load: ({ load, run }) => load?.greenLoadKilograms ?? run?.greenLoadKilograms,
  grain_in: ({ load, run }) => load?.grainInKilograms ?? run?.grainInKilograms,
  green_moisture: ({ load, run }) => load?.greenMoisturePercent ?? run?.greenMoisturePercent,
  drying_set: ({ load }) => load?.dryingSetCelsius,
  cure_set: ({ load }) => load?.cureSetCelsius,
  // What a thermostat of the fan’s own sets is how long it runs; a fan without one runs throughout.
  fan_set: ({ load }) => (load === null ? null : (load.fanShareOfHold ?? 1)),
  water: ({ run }) => run?.steepWaterCelsius,
  wet_hours: ({ run }) => run?.steepWetHours,
  air_rest_hours: ({ run }) => run?.steepAirRestHours,
  steep_out_moisture: ({ run }) => run?.steepOutMoisturePercent,
  bed_mean: ({ run }) => run?.bedMeanCelsius,
  bed_max: ({ run }) => run?.bedMaxCelsius,
  room: ({ run }) => run?.roomCelsius,
  turns: ({ run }) => run?.turns,
};

/** What sentences call it. */
const NAMES: Readonly<Record<string, string>> = {
  bed_depth: "bed depth",
  green_load: "green load",
  grain_in: "grain in",
  green_moisture: "green moisture",
  drying_set: "drying set point",
  cure_set: "cure set point",
  fan_set: "the fan’s share of the hold",
  water: "steep water",
  wet_hours: "wet hours",
  air_rest_hours: "air-rest hours",
  steep_out_moisture: "steep-out moisture",
  bed_mean: "bed temperature",
  bed_max: "highest bed temperature",
  room: "room temperature",
  turns: "turns",
};

/** `bed_depth` of `bed_depth`, `bed_depth_cm` or ` Bed_depth `; null where nothing is named. */
export function alteredStem(alters: string | null): string | null {
  const named = alters?.trim().toLowerCase() ?? "";
  if (named === "") return null;
  return named in COLUMNS ? named : named.replace(/_(cm|in|kg|lb|c|f|pct)$/, "");
}

/** `bed depth`; the column's own name where it is none that is carried here. */
export const alteredName = (stem: string): string => NAMES[stem] ?? stem.replaceAll("_", " ");

/** Its value in a row; null where it is not logged, or not a column that is carried here. */
export const alteredValue = (stem: string, row: ComparedRow): number | null => COLUMNS[stem]?.(row) ?? null;

/** Predictors of Kiln hours that already hold what a column sets. */
const HELD_BY: Readonly<Record<string, string>> = { bed_depth: "bedDepthMetres", fan_set: "dryAirNeededTonnes" };

/** Whether one of these columns already carries an altered one. */
export const isHeldBy = (stem: string, columns: readonly { readonly name: string }[]): boolean =>
  columns.some(({ name }) => name === HELD_BY[stem]);
