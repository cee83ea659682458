import type { RunRow } from "../../src/report/runRow.ts";
import { type Plant, plantedOn } from "./plant.ts";
import { randomStream } from "./random.ts";
import type { Row } from "./rows.ts";
import type { SlippedTables } from "./slips.ts";

/** A column that a house may stop keeping: what it is to the analyses, and the cells that go blank with it. */
export interface KeptColumn {
  readonly field: keyof RunRow;
  readonly table: keyof SlippedTables;
  /** Begins the names of the columns concerned. */
  readonly columns: string;
}

const COLUMNS: readonly KeptColumn[] = [
  { field: "bedDepthMetres", table: "kilning", columns: "bed_depth" },
  { field: "energyKilowattHours", table: "kilning", columns: "energy" },
  { field: "acrospireMean", table: "germination", columns: "acrospire" },
  { field: "steepOutMoisturePercent", table: "steeping", columns: "steep_out" },
];

/** When a row's run came to that stage. */
const STARTED = { steeping: "started_at", germination: "started_at", kilning: "loaded_at" } as const;

/** The column that this house stops keeping. */
export const columnNotKept = (seed: number): KeptColumn => randomStream(seed, "column-not-kept").pick(COLUMNS);

/** Leaves one column blank in a share of the rows from the plant's date on; nothing for a plant of another kind. */
export function leaveBlank(seed: number, plant: Plant, tables: SlippedTables): void {
  const { table, columns } = columnNotKept(seed);
  const r = randomStream(seed, "left-blank");
  for (const row of tables[table]) {
    const { blankShare } = plantedOn(plant, (row[STARTED[table]] ?? "").slice(0, 10));
    if (r.chance(blankShare)) blank(row, columns);
  }
}

function blank(row: Row, columns: string): void {
  for (const name of Object.keys(row)) if (name.startsWith(columns)) row[name] = "";
}
