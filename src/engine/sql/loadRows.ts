import { hoursBetween, mean, meanByMass, shared, sumOfAll } from "./expressions.ts";

/** Air logged by hand under one basis; a blank basis counts as at loading, which is when a hand is at the kiln. */
const logged = (column: string, basis: "at_loading" | "mean"): string => {
  const value = `CASE WHEN coalesce(ambient_basis, 'at_loading') = '${basis}' THEN ${column} END`;
  return mean(`(${value})`);
};

/**
 * `load_rows`: one row a firing of a kiln. Hours, set points, air and energy belong to the load, so rows that share it
 * should agree: set points and depth are averaged, energy is given only where they do. Masses are the runs' together.
 */
export const loadRows = `
CREATE OR REPLACE TABLE load_rows AS
WITH loads AS (
  SELECT load_id AS load,
    min(kiln) AS kiln,
    list(DISTINCT run ORDER BY run) AS runs,
    CASE WHEN count(variety) = count(*) THEN ${shared("variety")} END AS variety,
    CASE WHEN count(grain) = count(*) THEN ${shared("grain")} END AS grain,
    min(loaded_at) AS loaded_at,
    min(cure_started_at) AS cure_started_at,
    max(heat_off_at) AS heat_off_at,
    max(unloaded_at) AS unloaded_at,
    ${mean("bed_depth_m")} AS bed_depth_m,
    ${sumOfAll("grain_share_kg")} AS grain_in_kg,
    ${meanByMass("grain_moisture_pct", "grain_share_kg")} AS grain_moisture_pct,
    ${sumOfAll("green_load_kg")} AS green_load_kg,
    ${meanByMass("green_moisture_pct", "green_load_kg")} AS green_moisture_pct,
    ${logged("ambient_rh_pct", "at_loading")} AS logged_at_loading_rh_pct,
    ${logged("ambient_c", "at_loading")} AS logged_at_loading_c,
    ${logged("ambient_rh_pct", "mean")} AS logged_over_load_rh_pct,
    ${logged("ambient_c", "mean")} AS logged_over_load_c,
    ${mean("drying_set_c")} AS drying_set_c,
    ${mean("cure_set_c")} AS cure_set_c,
    ${meanByMass("final_moisture", "malt_kg")} AS final_moisture_pct,
    ${sumOfAll("malt_out_kg")} AS malt_out_kg,
    ${sumOfAll("water_kg")} AS water_removed_kg,
    ${shared("energy_kwh")} AS energy_kwh
  FROM kiln_rows GROUP BY load_id
)
SELECT l.*, w.* EXCLUDE (load_id),
  ${hoursBetween("l.loaded_at", "l.unloaded_at")} AS kiln_hours,
  ${hoursBetween("l.loaded_at", "l.cure_started_at")} AS drying_hours
FROM loads l LEFT JOIN load_weather w ON w.load_id = l.load
ORDER BY l.loaded_at, l.kiln, l.load`;
