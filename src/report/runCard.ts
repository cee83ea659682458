import { columnLabel } from "../tables/columnLabels.ts";
import type { Column, TableName } from "../tables/declarations.ts";
import { headingIn } from "../tables/describeFormat.ts";
import { declarationOf } from "../tables/tableDeclarations.ts";
import type { UnitSystem } from "../units/unitSystem.ts";

/** A box to write one value into. */
export interface CardBox {
  /** The column it is typed into afterwards, unit and all. */
  readonly column: string;
  readonly label: string;
  readonly unit: string | null;
  /** Words of which one is ringed. */
  readonly choices: readonly string[];
}

/** The boxes of one stage, in the order of the work. */
export interface CardStage {
  readonly title: string;
  readonly stage: "steep" | "germination" | "kiln" | "none";
  /** The log that it is typed into. */
  readonly file: string;
  readonly boxes: readonly CardBox[];
}

export interface RunCardResult {
  readonly units: UnitSystem;
  readonly stages: readonly CardStage[];
}

/** In the order in which they are filled; `run` and `lot` stand at the head of the card, notes at the foot of each stage. */
const STAGES: readonly { readonly title: string; readonly stage: CardStage["stage"]; readonly table: TableName }[] = [
  { title: "Steep", stage: "steep", table: "steeping" },
  { title: "Germination", stage: "germination", table: "germination" },
  { title: "Kiln", stage: "kiln", table: "kilning" },
];

function unitOf(column: Column, heading: string): string | null {
  if (column.family) return column.family.suffixes.find(({ suffix }) => heading.endsWith(`_${suffix}`))?.label ?? null;
  if (column.kind === "instant") return "date, time";
  if (column.choices) return null;
  if (column.kind === "count") return null;
  return column.unit?.startsWith("%") ? "%" : (column.unit ?? null);
}

const atHead = new Set(["run", "lot", "note"]);

/**
 * The card that goes through the house with one batch: a box for every column of the run logs, under the names that the logs
 * use, in the units that the house writes.
 */
export function runCard(units: UnitSystem): RunCardResult {
  return {
    units,
    stages: STAGES.map(({ title, stage, table }) => {
      const declaration = declarationOf(table);
      return {
        title,
        stage,
        file: declaration.place,
        boxes: declaration.columns
          .filter(({ stem }) => !atHead.has(stem))
          .map((column) => {
            const heading = headingIn(column, units);
            const label = columnLabel(table, column);
            return { column: heading, label, unit: unitOf(column, heading), choices: column.choices ?? [] };
          }),
      };
    }),
  };
}
