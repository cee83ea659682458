import { countOf, lastOfAll, linesOf, meanByMass } from "./expressions.ts";

/** The lengths that stand for the classes, as fractions of the kernel: middles, and 1.125 for the overgrown (LOGS format). */
const midpoints = [
  ["acrospire_none", 0],
  ["acrospire_to_quarter", 0.125],
  ["acrospire_to_half", 0.375],
  ["acrospire_to_three_quarters", 0.625],
  ["acrospire_to_full", 0.875],
  ["acrospire_over", 1.125],
] as const;

/** Null as soon as one class is blank: a class that was not recorded is not an empty one. */
const counted = midpoints.map(([name]) => name).join(" + ");
const lengths = midpoints.map(([name, length]) => `${name} * ${length}::DOUBLE`).join(" + ");

/**
 * `germination_runs`: one row a run from germination.csv (one row a bed). Conditions are averaged by bed_grain where
 * logged, kernels of all beds counted together.
 */
export const germinationRuns = `
CREATE OR REPLACE TABLE germination_runs AS
WITH beds AS (
  SELECT *, rowid AS row_order, ${counted} AS counted, ${lengths} AS lengths FROM germination
),
runs AS (
  SELECT run,
    min(started_at) AS germination_started_at,
    ${lastOfAll("ended_at")} AS germination_ended_at,
    ${meanByMass("room_c", "bed_grain_kg")} AS room_c,
    ${meanByMass("bed_mean_c", "bed_grain_kg")} AS bed_mean_c,
    max(bed_max_c) AS bed_max_c,
    ${meanByMass("turns", "bed_grain_kg")}::DOUBLE AS turns,
    ${meanByMass("green_moisture_pct", "bed_grain_kg")} AS green_moisture_pct,
    nullif(sum(counted), 0) AS acrospire_counted,
    sum(lengths) AS lengths,
    sum(acrospire_over) FILTER (counted IS NOT NULL) AS over,
    ${countOf("bed")} AS beds,
    ${linesOf("note")} AS note
  FROM beds GROUP BY run
)
SELECT * EXCLUDE (lengths, over),
  lengths / acrospire_counted AS acrospire_mean,
  100.0::DOUBLE * over / acrospire_counted AS acrospire_overgrown_pct
FROM runs ORDER BY run`;
