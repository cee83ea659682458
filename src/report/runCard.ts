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

/** What is said of a box in two or three words, where the column's own words do not say it by themselves. */
const LABELS: Readonly<Record<string, string>> = {
  grain_in: "grain in",
  grain_moisture_pct: "grain moisture",
  started_at: "began",
  ended_at: "ended",
  water: "water",
  wet_hours: "under water",
  air_rest_hours: "air rests",
  steep_out: "mass at steep-out",
  steep_out_moisture_pct: "moisture at steep-out",
  chitted_pct: "chitted",
  bed_grain: "grain in the bed",
  room: "room",
  bed_mean: "bed, mean",
  bed_max: "bed, warmest",
  acrospire_none: "acrospire none",
  acrospire_to_quarter: "acrospire to ¼",
  acrospire_to_half: "acrospire to ½",
  acrospire_to_three_quarters: "acrospire to ¾",
  acrospire_to_full: "acrospire to full",
  acrospire_over: "overgrown",
  green_moisture_pct: "green malt moisture",
  loaded_at: "loaded, fan on",
  cure_started_at: "turned up to cure",
  heat_off_at: "heat off",
  unloaded_at: "unloaded",
  bed_depth: "bed depth",
  green_load: "green malt",
  ambient_rh_pct: "intake humidity",
  ambient: "intake air",
  ambient_basis: "intake air taken",
  outside_rh_pct: "outdoor humidity",
  outside: "outdoors",
  drying_set: "set, drying",
  cure_set: "set, cure",
  fan_set: "set, fan",
  final_moisture_pct: "final moisture",
  malt_out: "malt out",
  cleaned_out: "cleaned",
  rootlets: "rootlets",
  energy_kwh: "energy",
  bag_code: "code on the bags",
};

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
            const label = LABELS[column.stem] ?? column.stem;
            return { column: heading, label, unit: unitOf(column, heading), choices: column.choices ?? [] };
          }),
      };
    }),
  };
}
