import { mean, sumOfAll } from "./expressions.ts";

/**
 * `run_rows`: one row a run, every stage joined, whatever stages have been logged so far. Kiln times and hours are those
 * of the run's load (the first, where it was split); masses are the run's own over all its loads. Energy is the sum over
 * loads that held nothing else, else null: what a shared load used cannot be told apart by run.
 *
 * Dry-matter yield = malt(1 − Mm)/grain(1 − Mg), malt being the cleaned malt, else malt out less rootlets, else malt out.
 */
export const runRows = `
CREATE OR REPLACE TABLE run_rows AS
WITH all_runs AS (
  SELECT run FROM steeping UNION SELECT run FROM germination UNION SELECT run FROM kilning
),
first_loads AS (
  SELECT k.run, l.load, l.kiln, l.loaded_at, l.cure_started_at, l.heat_off_at, l.unloaded_at, l.kiln_hours, l.drying_hours
  FROM kiln_rows k JOIN load_rows l ON l.load = k.load_id
  QUALIFY row_number() OVER (PARTITION BY k.run ORDER BY l.loaded_at, k.row_order) = 1
),
energy AS (
  SELECT run, ${sumOfAll("alone_kwh")} AS energy_kwh FROM (
    SELECT DISTINCT k.run, l.load, CASE WHEN len(l.runs) = 1 THEN l.energy_kwh END AS alone_kwh
    FROM kiln_rows k JOIN load_rows l ON l.load = k.load_id
  ) GROUP BY run
),
kilned AS (
  SELECT run,
    count(DISTINCT load_id) AS loads,
    ${mean("bed_depth_m")} AS bed_depth_m,
    ${sumOfAll("green_load_kg")} AS green_load_kg,
    any_value(run_moisture_pct) AS final_moisture_pct,
    any_value(moisture_basis) AS final_moisture_basis,
    ${sumOfAll("malt_out_kg")} AS malt_out_kg,
    ${sumOfAll("cleaned_out_kg")} AS cleaned_out_kg,
    ${sumOfAll("rootlets_kg")} AS rootlets_kg,
    ${sumOfAll("water_kg")} AS water_removed_kg,
    string_agg(DISTINCT bag_code, ', ' ORDER BY bag_code) AS bag_code,
    string_agg(note, chr(10) ORDER BY row_order) AS note
  FROM kiln_rows GROUP BY run
),
joined AS (
  SELECT r.run, s.* EXCLUDE (run, note), g.* EXCLUDE (run, note), f.* EXCLUDE (run), e.energy_kwh,
    k.* EXCLUDE (run, note, loads), coalesce(k.loads, 0) AS loads,
    nullif(concat_ws(chr(10), s.note, g.note, k.note), '') AS notes,
    coalesce(k.cleaned_out_kg, k.malt_out_kg - k.rootlets_kg, k.malt_out_kg) AS malt_kg,
    CASE
      WHEN k.cleaned_out_kg IS NOT NULL THEN 'cleaned'
      WHEN k.malt_out_kg - k.rootlets_kg IS NOT NULL THEN 'as unloaded less rootlets'
      WHEN k.malt_out_kg IS NOT NULL THEN 'as unloaded'
    END AS malt_basis,
    coalesce(f.loaded_at, g.germination_started_at, s.steep_started_at) AS sorted_at
  FROM all_runs r
  LEFT JOIN steep_runs s USING (run)
  LEFT JOIN germination_runs g USING (run)
  LEFT JOIN kilned k USING (run)
  LEFT JOIN first_loads f USING (run)
  LEFT JOIN energy e USING (run)
)
SELECT *,
  CASE WHEN grain_in_kg > 0 AND grain_moisture_pct < 100
    THEN 100 * malt_kg * (100 - final_moisture_pct) / (grain_in_kg * (100 - grain_moisture_pct)) END AS dry_matter_yield_pct,
  CASE WHEN grain_in_kg > 0 THEN 100 * malt_kg / grain_in_kg END AS as_is_yield_pct
FROM joined ORDER BY sorted_at, run`;
