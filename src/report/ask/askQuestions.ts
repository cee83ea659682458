/** A question worked out in SQL, to be asked as it stands or altered. */
export interface AskQuestion {
  readonly title: string;
  readonly sql: string;
}

/** What a maltster would ask that no page answers in just this way. Every one runs on whatever logs are shown. */
export const askQuestions: readonly AskQuestion[] = [
  {
    title: "How much malt came off the kiln, month by month?",
    sql: `SELECT date_trunc('month', house_time(unloaded_at)) AS month,
  sum(malt_kg) AS malt_kg, count(*) AS batches
FROM run_rows
WHERE unloaded_at IS NOT NULL
GROUP BY ALL
ORDER BY month`,
  },
  {
    title: "How long does each variety lie on the kiln?",
    sql: `SELECT variety, median(kiln_hours) AS median_hours,
  quantile_cont(kiln_hours, 0.1) AS one_in_ten_below,
  quantile_cont(kiln_hours, 0.9) AS one_in_ten_above, count(*) AS loads
FROM load_rows
WHERE kiln_hours IS NOT NULL AND variety IS NOT NULL
GROUP BY variety
ORDER BY median_hours DESC`,
  },
  {
    title: "Which ten loads took longest, and in what air?",
    sql: `SELECT load, kiln_hours, loaded_at::DATE AS loaded, array_to_string(runs, ', ') AS batches, variety,
  coalesce(weather_over_load_rh_pct, logged_over_load_rh_pct, logged_at_loading_rh_pct) AS humidity_pct,
  round(bed_depth_m * 100, 1) AS depth_cm
FROM load_rows
WHERE kiln_hours IS NOT NULL
ORDER BY kiln_hours DESC
LIMIT 10`,
  },
  {
    title: "Do deeper beds take longer?",
    sql: `SELECT bed_depth_m * 100 AS depth_cm, kiln_hours, load
FROM load_rows
WHERE bed_depth_m IS NOT NULL AND kiln_hours IS NOT NULL
ORDER BY depth_cm, load`,
  },
  {
    title: "At what hour of the day do we load, and how long does it take then?",
    sql: `SELECT hour(house_time(loaded_at)) AS hour_loaded, avg(kiln_hours) AS mean_hours, count(*) AS loads
FROM load_rows
WHERE kiln_hours IS NOT NULL
GROUP BY hour_loaded
ORDER BY hour_loaded`,
  },
  {
    title: "What did each kilogram of malt cost in energy, month by month?",
    sql: `SELECT date_trunc('month', house_time(loaded_at)) AS month,
  sum(energy_kwh) / sum(malt_out_kg) AS kwh_per_kg, count(*) AS loads
FROM load_rows
WHERE energy_kwh IS NOT NULL AND malt_out_kg > 0
GROUP BY ALL
ORDER BY month`,
  },
  {
    title: "Which grain lots gave the least malt for their dry matter?",
    sql: `SELECT lot, avg(dry_matter_yield_pct) AS yield_pct, min(variety) AS variety, count(*) AS batches
FROM run_rows
WHERE dry_matter_yield_pct IS NOT NULL
GROUP BY lot
HAVING count(*) >= 3
ORDER BY yield_pct
LIMIT 15`,
  },
  {
    title: "How evenly did the kiln dry, batch by batch?",
    sql: `SELECT run, max(moisture_pct) - min(moisture_pct) AS spread_points,
  avg(moisture_pct) AS mean_pct, count(*) AS samples
FROM moisture_samples
GROUP BY run
HAVING count(*) >= 2
ORDER BY spread_points DESC
LIMIT 20`,
  },
  {
    title: "Does warmer steep water chit more kernels?",
    sql: `SELECT steep_water_c, chitted_pct, run, variety
FROM run_rows
WHERE steep_water_c IS NOT NULL AND chitted_pct IS NOT NULL
ORDER BY steep_water_c, run`,
  },
  {
    title: "How far above its mean did the warmest bed of each batch get?",
    sql: `SELECT house_time(germination_started_at) AS into_the_bed, bed_max_c - bed_mean_c AS above_mean_c, run
FROM run_rows
WHERE bed_max_c IS NOT NULL AND bed_mean_c IS NOT NULL
ORDER BY into_the_bed`,
  },
  {
    title: "What was sent to whom this past year?",
    sql: `SELECT customer, sum(mass_kg) AS sent_kg, count(DISTINCT run) AS batches, max(shipped_on) AS last_sent
FROM deliveries
WHERE coalesce(product, 'malt') = 'malt'
  AND shipped_on > (SELECT max(shipped_on) FROM deliveries) - INTERVAL 1 YEAR
GROUP BY customer
ORDER BY sent_kg DESC`,
  },
  {
    title: "How dry is the air at the intake, month by month?",
    sql: `SELECT date_trunc('month', house_time("at")) AS month,
  median(ambient_rh_pct) AS humidity_pct, median(ambient_c) AS air_c
FROM weather
GROUP BY ALL
ORDER BY month`,
  },
  {
    title: "Which loads came off in the three days after something was changed or repaired?",
    sql: `SELECT l.load, l.kiln_hours, e."on" AS done_on, e.what, house_time(l.loaded_at) AS loaded
FROM events e
JOIN load_rows l ON house_time(l.loaded_at)::DATE BETWEEN e."on" AND e."on" + 3
WHERE e.kind IN ('change', 'repair') AND e.scope IN ('kiln', 'thermostat', 'other')
ORDER BY loaded, done_on, e.what`,
  },
];
