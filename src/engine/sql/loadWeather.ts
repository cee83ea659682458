/** Air is not guessed across a hole in the weather wider than this. */
const WIDEST_GAP_HOURS = 3;
const WIDEST_GAP = `${WIDEST_GAP_HOURS} * 3600000`;

/** Loads and pieces of weather meet by the day, so that ten years of both need not be compared each with each. */
const DAY = "86400000";

/** The statement's common tables for one column of weather.csv; names end in `_<column>`. */
function airOf(column: string): string {
  return `
points_${column} AS (
  SELECT "at", avg(${column}) AS here FROM weather WHERE ${column} IS NOT NULL GROUP BY "at"
),
pieces_${column} AS MATERIALIZED (
  SELECT "at", here, epoch_ms("at") AS from_ms, epoch_ms(lead("at") OVER in_time) AS to_ms, lead(here) OVER in_time AS there
  FROM points_${column} WINDOW in_time AS (ORDER BY "at")
),
loading_${column} AS (
  SELECT l.load_id,
    CASE
      WHEN l.from_ms = p.from_ms THEN p.here
      WHEN p.to_ms - p.from_ms <= ${WIDEST_GAP}
        THEN p.here + (p.there - p.here) * ((l.from_ms - p.from_ms) / (p.to_ms - p.from_ms))
    END AS at_loading
  FROM spans l ASOF JOIN pieces_${column} p ON l.loaded_at >= p."at"
),
overlaps_${column} AS (
  SELECT l.load_id, l.to_ms - l.from_ms AS load_ms, p.from_ms, p.to_ms, p.here, p.there,
    greatest(l.from_ms, p.from_ms) AS a, least(l.to_ms, p.to_ms) AS b
  FROM days l JOIN pieces_${column} p
    ON p.from_ms // ${DAY} = l.day AND p.from_ms < l.to_ms AND p.to_ms > l.from_ms
  WHERE p.to_ms - p.from_ms <= ${WIDEST_GAP}
),
over_${column} AS (
  SELECT load_id,
    CASE WHEN sum(b - a) = any_value(load_ms) THEN
      sum((b - a) * (here + (there - here) * (((a - from_ms) + (b - from_ms)) / 2.0::DOUBLE / (to_ms - from_ms))) ORDER BY a)
        / any_value(load_ms)
    END AS over_load
  FROM overlaps_${column} GROUP BY load_id
)`;
}

/**
 * `load_weather`: the air at loading and averaged over each load from weather/, humidity and temperature each by itself.
 * Between two records the air is taken to change evenly; the mean is the time-weighted one of that broken line, and
 * there is one only where the records cover the load from end to end. A gap of more than three hours is not bridged.
 */
export const loadWeather = `
CREATE OR REPLACE TABLE load_weather AS
WITH spans AS MATERIALIZED (
  SELECT load_id, min(loaded_at) AS loaded_at, epoch_ms(min(loaded_at)) AS from_ms, epoch_ms(max(unloaded_at)) AS to_ms
  FROM kiln_rows GROUP BY load_id
),
days AS (
  SELECT *, unnest(range((from_ms - ${WIDEST_GAP}) // ${DAY}, to_ms // ${DAY} + 1)) AS day FROM spans WHERE to_ms > from_ms
),
${airOf("ambient_rh_pct")},
${airOf("ambient_c")}
SELECT l.load_id,
  lr.at_loading AS weather_at_loading_rh_pct, lc.at_loading AS weather_at_loading_c,
  orh.over_load AS weather_over_load_rh_pct, oc.over_load AS weather_over_load_c
FROM spans l
LEFT JOIN loading_ambient_rh_pct lr USING (load_id) LEFT JOIN loading_ambient_c lc USING (load_id)
LEFT JOIN over_ambient_rh_pct orh USING (load_id) LEFT JOIN over_ambient_c oc USING (load_id)
ORDER BY l.load_id`;
