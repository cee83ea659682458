import { meanByMass } from "./expressions.ts";

/**
 * `kiln_rows`: kilning.csv row by row (one row for each run in each load) with what only the whole run or load can say.
 *
 * - `load_id`: the load as logged, else what another row of the same kiln and moment calls it, else kiln and moment. A
 *   name that several kilns use for loads of their own gets the kiln's name added.
 * - `final_moisture`: of the row, else of the run's other rows, else the mean of its samples, else the last certificate.
 * - `share`: the part of its run that lies in this load, by green malt, else by malt out.
 * - `malt_kg` carries the dry matter that left this load, so rootlets are in it: malt out, else cleaned malt and rootlets.
 * - `water_kg`: dry matter × (M₁′ − M₂′) on dry-basis moistures, M₁ the green malt's. Where that was not measured, what
 *   the green load lost, which is the same sum. None is given where the malt would have gained water.
 */
export const kilnRows = `
CREATE OR REPLACE TABLE kiln_rows AS
WITH named AS (
  SELECT *, rowid AS row_order,
    coalesce(load, max(load) OVER (PARTITION BY kiln, loaded_at)) AS load_name
  FROM kilning
),
keyed AS (
  SELECT *,
    CASE
      WHEN load_name IS NULL THEN kiln || ' ' || strftime(loaded_at, '%Y-%m-%dT%H:%MZ')
      WHEN min(kiln) OVER (PARTITION BY load_name) <> max(kiln) OVER (PARTITION BY load_name)
        THEN load_name || ' ' || kiln
      ELSE load_name
    END AS load_id,
    CASE
      WHEN count(*) OVER of_run = 1 THEN 1
      WHEN count(green_load_kg) OVER of_run = count(*) OVER of_run THEN green_load_kg / sum(green_load_kg) OVER of_run
      WHEN count(malt_out_kg) OVER of_run = count(*) OVER of_run THEN malt_out_kg / sum(malt_out_kg) OVER of_run
    END AS share,
    coalesce(malt_out_kg, cleaned_out_kg + rootlets_kg, cleaned_out_kg) AS malt_kg
  FROM named
  WINDOW of_run AS (PARTITION BY run)
),
logged AS (
  SELECT run, ${meanByMass("final_moisture_pct", "malt_kg")} AS logged_pct FROM keyed GROUP BY run
),
samples AS (
  SELECT run, avg(moisture_pct) AS sampled_pct, count(*) AS samples FROM moisture_samples GROUP BY run
),
certificates AS (
  SELECT run, first(moisture_pct ORDER BY tested_on DESC, rowid DESC) AS lab_pct
  FROM lab WHERE moisture_pct IS NOT NULL GROUP BY run
),
moistures AS (
  SELECT run, coalesce(logged_pct, sampled_pct, lab_pct) AS run_moisture_pct,
    CASE
      WHEN logged_pct IS NOT NULL THEN 'logged'
      WHEN samples = 1 THEN '1 sample'
      WHEN samples > 1 THEN 'mean of ' || samples || ' samples'
      WHEN lab_pct IS NOT NULL THEN 'laboratory'
    END AS moisture_basis
  FROM logged LEFT JOIN samples USING (run) LEFT JOIN certificates USING (run)
),
dried AS (
  SELECT k.*, m.run_moisture_pct, m.moisture_basis, g.green_moisture_pct,
    s.grain, s.variety, s.grain_in_kg * k.share AS grain_share_kg, s.grain_moisture_pct,
    coalesce(k.final_moisture_pct, m.run_moisture_pct) AS final_moisture,
    k.malt_kg * (1 - coalesce(k.final_moisture_pct, m.run_moisture_pct) / 100) AS dry_matter_kg
  FROM keyed k
  LEFT JOIN moistures m USING (run)
  LEFT JOIN germination_runs g USING (run)
  LEFT JOIN steep_runs s USING (run)
),
watered AS (
  SELECT *,
    CASE WHEN green_moisture_pct IS NOT NULL
      THEN dry_matter_kg * (green_moisture_pct / (100 - green_moisture_pct) - final_moisture / (100 - final_moisture))
      ELSE green_load_kg - malt_kg END AS water
  FROM dried
)
SELECT * EXCLUDE (water), CASE WHEN water > 0 THEN water END AS water_kg
FROM watered ORDER BY row_order`;
