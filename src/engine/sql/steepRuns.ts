import { countOf, lastOfAll, linesOf, meanByMass, shared, sumOfAll } from "./expressions.ts";

/**
 * `steep_runs`: one row a run from steeping.csv (one row a tank) and grain-lots.csv. Grain moisture is the tank's, else
 * its lot's. Steep-out moisture is measured, else from the gain in mass, 100 − W₀(100 − M₀)/W₁ (dry matter taken as
 * constant); none is given where the grain would have come out lighter than its own dry matter.
 */
export const steepRuns = `
CREATE OR REPLACE TABLE steep_runs AS
WITH lots AS (
  SELECT * FROM grain_lots QUALIFY row_number() OVER (PARTITION BY lot ORDER BY rowid) = 1
),
tanks AS (
  SELECT s.rowid AS row_order, s.run, s.lot, s.tank, s.grain_in_kg, s.started_at, s.ended_at, s.water_c, s.wet_hours,
    s.air_rest_hours, s.steep_out_kg, s.steep_out_moisture_pct, s.chitted_pct, s.note,
    coalesce(s.grain_moisture_pct, l.moisture_pct) AS grain_moisture_pct,
    l.grain, l.variety, l.grower, l.crop_year, l.protein_dry_pct
  FROM steeping s LEFT JOIN lots l ON l.lot = s.lot
),
runs AS (
  SELECT run,
    first(lot ORDER BY grain_in_kg DESC NULLS LAST, row_order) AS lot,
    CASE WHEN count(DISTINCT lot) > 1 THEN string_agg(DISTINCT lot, ', ' ORDER BY lot) END AS lots,
    ${shared("grain")} AS grain,
    ${shared("variety")} AS variety,
    string_agg(DISTINCT grower, ', ' ORDER BY grower) AS grower,
    ${shared("crop_year")} AS crop_year,
    ${sumOfAll("grain_in_kg")} AS grain_in_kg,
    ${meanByMass("grain_moisture_pct", "grain_in_kg")} AS grain_moisture_pct,
    ${meanByMass("protein_dry_pct", "grain_in_kg")} AS grain_protein_dry_pct,
    min(started_at) AS steep_started_at,
    ${lastOfAll("ended_at")} AS steep_ended_at,
    ${meanByMass("water_c", "grain_in_kg")} AS steep_water_c,
    ${meanByMass("wet_hours", "grain_in_kg")} AS steep_wet_hours,
    ${meanByMass("air_rest_hours", "grain_in_kg")} AS steep_air_rest_hours,
    ${sumOfAll("steep_out_kg")} AS steep_out_kg,
    ${meanByMass("steep_out_moisture_pct", "steep_out_kg")} AS measured_pct,
    ${meanByMass("chitted_pct", "grain_in_kg")} AS chitted_pct,
    ${countOf("tank")} AS tanks,
    ${linesOf("note")} AS note
  FROM tanks GROUP BY run
),
gained AS (
  SELECT *,
    CASE WHEN steep_out_kg * 100 > grain_in_kg * (100 - grain_moisture_pct)
      THEN 100 - grain_in_kg * (100 - grain_moisture_pct) / steep_out_kg END AS gained_pct
  FROM runs
)
SELECT * EXCLUDE (measured_pct, gained_pct),
  coalesce(measured_pct, gained_pct) AS steep_out_moisture_pct,
  CASE WHEN measured_pct IS NOT NULL THEN 'measured'
    WHEN gained_pct IS NOT NULL THEN 'from mass gain' END AS steep_out_moisture_basis
FROM gained ORDER BY run`;
