/**
 * Aggregate expressions that say how rows of one batch become one. Masses add up, and only where every row has one: a
 * part is not a whole. Conditions and moistures are averaged over the rows that have one.
 */

/** The sum where every row has a value, else null. */
export const sumOfAll = (value: string): string => `CASE WHEN count(${value}) = count(*) THEN sum(${value}) END`;

/** The latest where every row has one: a stage is over when its last row is. */
export const lastOfAll = (value: string): string => `CASE WHEN count(${value}) = count(*) THEN max(${value}) END`;

/** What all rows that say anything agree on, else null. */
export const shared = (value: string): string => `CASE WHEN min(${value}) = max(${value}) THEN min(${value}) END`;

/** The plain mean; rows that agree give their own value to the last digit. */
export const mean = (value: string): string =>
  `CASE WHEN min(${value}) = max(${value}) THEN min(${value}) ELSE avg(${value}) END`;

/** The mean weighted by a mass where every row with a value has the mass too, else the plain mean. */
export const meanByMass = (value: string, mass: string): string => `CASE
    WHEN min(${value}) = max(${value}) THEN min(${value})
    WHEN count(*) FILTER (${value} IS NOT NULL AND coalesce(${mass}, 0) <= 0) = 0
      THEN sum(${value} * ${mass}) / sum(${mass}) FILTER (${value} IS NOT NULL)
    ELSE avg(${value}) END`;

/** How many there are: by name where every row has one, else one a row. */
export const countOf = (name: string): string =>
  `CASE WHEN count(${name}) = count(*) THEN count(DISTINCT ${name}) ELSE count(*) END`;

/** Elapsed hours between two instants. */
export const hoursBetween = (from: string, to: string): string =>
  `(epoch_ms(${to}) - epoch_ms(${from})) / 3600000.0::DOUBLE`;

/** Notes of several rows, a line each, in the order they were written. */
export const linesOf = (note: string): string => `string_agg(${note}, chr(10) ORDER BY row_order)`;
