import type { Database } from "../../engine/database.ts";
import type { AcrospireCounts } from "../../malting/acrospire.ts";
import type { BedRow, CountRow, FloorRows, TankRow } from "./floorRows.ts";

/** Where each class stands in germination.csv and acrospire-counts.csv. */
const classColumns: Readonly<Record<keyof AcrospireCounts, string>> = {
  none: "acrospire_none",
  toQuarter: "acrospire_to_quarter",
  toHalf: "acrospire_to_half",
  toThreeQuarters: "acrospire_to_three_quarters",
  toFull: "acrospire_to_full",
  over: "acrospire_over",
};
const classes = Object.keys(classColumns) as readonly (keyof AcrospireCounts)[];
const selectClasses = classes.map((name) => `${classColumns[name]} AS "${name}"`).join(", ");

type Counted = Readonly<Record<keyof AcrospireCounts, number | null>>;

/** Null as soon as one class is blank, since that is not an empty one; and where no kernel is in any. */
function countsOf(row: Counted): AcrospireCounts | null {
  const filled = classes.every((name) => row[name] !== null);
  if (!filled || classes.every((name) => row[name] === 0)) return null;
  const { none, toQuarter, toHalf, toThreeQuarters, toFull, over } = row as AcrospireCounts;
  return { none, toQuarter, toHalf, toThreeQuarters, toFull, over };
}

/** Every tank, bed and count of the logs, by run and in the order they were written. */
export async function readFloor(database: Database): Promise<FloorRows> {
  const tanks = await database.query<TankRow>(
    `SELECT s.run, s.tank, s.grain_in_kg AS "grainInKilograms",
      coalesce(s.grain_moisture_pct, l.moisture_pct) AS "grainMoisturePercent",
      s.started_at AS "startedAt", s.ended_at AS "endedAt", s.steep_out_kg AS "steepOutKilograms",
      s.steep_out_moisture_pct AS "measuredPercent"
    FROM steeping s LEFT JOIN (
      SELECT * FROM grain_lots QUALIFY row_number() OVER (PARTITION BY lot ORDER BY rowid) = 1
    ) l ON l.lot = s.lot
    ORDER BY s.run, s.rowid`,
  );
  const beds = await database.query<Omit<BedRow, "counts"> & Counted>(
    `SELECT run, bed, started_at AS "startedAt", ended_at AS "endedAt", bed_mean_c AS "meanCelsius", ${selectClasses}
    FROM germination ORDER BY run, rowid`,
  );
  const counts = await database.query<Omit<CountRow, "counts"> & Counted>(
    `SELECT run, bed, counted_at AS "countedAt", ${selectClasses} FROM acrospire_counts ORDER BY run, counted_at, rowid`,
  );
  return {
    tanks,
    beds: beds.map((row) => {
      const { run, bed, startedAt, endedAt, meanCelsius } = row;
      return { run, bed, startedAt, endedAt, meanCelsius, counts: countsOf(row) };
    }),
    counts: counts.flatMap((row) => {
      const found = countsOf(row);
      return found === null ? [] : [{ run: row.run, bed: row.bed, countedAt: row.countedAt, counts: found }];
    }),
  };
}
