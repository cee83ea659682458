import type { PredictorColumn } from "../../analysis/factorisation.ts";
import type { ChangedMeasure } from "../changesResult.ts";
import type { ComparedGround, ComparedRow } from "./comparedRow.ts";

/** How one comparison is adjusted: rows that have all it needs, and a column for each thing. */
export interface Adjustment {
  readonly rows: readonly ComparedRow[];
  readonly columns: readonly PredictorColumn[];
  /** `air needed`, `bed depth`, `variety`. */
  readonly words: readonly string[];
}

/** Columns that set how much water a load brings to the kiln. */
const SETS_WATER: ReadonlySet<string> = new Set([
  "bed_depth",
  "green_load",
  "grain_in",
  "green_moisture",
  "steep_out_moisture",
  "wet_hours",
  "air_rest_hours",
  "water",
]);
/** Columns that set how deep the bed lies. */
const SETS_DEPTH: ReadonlySet<string> = new Set(["bed_depth", "green_load", "grain_in"]);
/** Scopes that change the green malt before the kiln sees it. */
const BEFORE_THE_KILN: ReadonlySet<string> = new Set(["grain", "steep", "germination", "scale"]);

export interface AdjustmentWish {
  readonly measure: ChangedMeasure;
  readonly scope: string;
  /** The column that the change altered; null to adjust for that as well. */
  readonly altered: string | null;
}

const ofLoads = (measure: ChangedMeasure): boolean => measure === "kiln_hours" || measure === "energy_kwh";

const touchesWater = ({ scope, altered }: AdjustmentWish): boolean =>
  BEFORE_THE_KILN.has(scope) || (altered !== null && SETS_WATER.has(altered));

const keepsDepth = ({ altered }: AdjustmentWish): boolean => altered === null || !SETS_DEPTH.has(altered);

/** The same for two wishes that are adjusted alike. */
export function adjustmentKey(wish: AdjustmentWish): string {
  const { measure, altered } = wish;
  const air = ofLoads(measure)
    ? [touchesWater(wish), keepsDepth(wish), altered === "drying_set", altered === "fan_set"]
    : [];
  return [...air, altered === "variety"].join();
}

const oneHot = (rows: readonly ComparedRow[], of: (row: ComparedRow) => string, name: string): PredictorColumn[] => {
  const counts = new Map<string, number>();
  for (const row of rows) counts.set(of(row), (counts.get(of(row)) ?? 0) + 1);
  // The commonest is what the others are compared with.
  const [, ...others] = [...counts].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1));
  return others.map(([group]) => ({
    name: `${name} ${group}`,
    label: name,
    values: rows.map((row) => (of(row) === group ? 1 : 0)),
  }));
};

const varies = ({ values }: PredictorColumn): boolean => Array.from(values).some((value) => value !== values[0]);

/**
 * The columns that a measure is adjusted by: weather as Kiln hours has it, bed depth, variety and kiln; never what the change
 * altered, nor what follows from it. Moisture and yield know no weather here: the house sees the season in them through the
 * grain, which the variety carries.
 */
export function adjustmentFor(rows: readonly ComparedRow[], wish: AdjustmentWish, ground: ComparedGround): Adjustment {
  const isOfLoads = ofLoads(wish.measure);
  const air = isOfLoads ? airAdjustment(rows, wish, ground) : { rows, columns: [], words: [] };
  const variety = wish.altered === "variety" ? [] : oneHot(air.rows, (row) => row.variety, "variety");
  const kiln = isOfLoads || wish.measure === "final_moisture_pct" ? oneHot(air.rows, (row) => row.kiln, "kiln") : [];
  return {
    rows: air.rows,
    columns: [...air.columns, ...variety, ...kiln],
    words: [...air.words, ...(variety.length > 0 ? ["variety"] : []), ...(kiln.length > 0 ? ["kiln"] : [])],
  };
}

function airAdjustment(rows: readonly ComparedRow[], wish: AdjustmentWish, { airNeeded }: ComparedGround): Adjustment {
  const { measure, altered } = wish;
  const onlyAir = touchesWater(wish);
  const needed = airNeeded(rows, altered, onlyAir);
  const kept = needed === null ? rows : rows.filter((_, row) => needed[row] !== null);
  const columns: PredictorColumn[] = [];
  const words: string[] = [];
  const add = (name: string, word: string, of: (row: ComparedRow, at: number) => number): void => {
    const column = { name, label: word, values: kept.map(of) };
    if (!varies(column)) return;
    columns.push(column);
    words.push(word);
  };
  if (needed === null) {
    add("relativeHumidityPercent", "humidity", (row) => row.model?.air.relativeHumidityPercent ?? 0);
  } else {
    const known = needed.filter((tonnes) => tonnes !== null);
    add(
      "dryAirNeededTonnes",
      onlyAir ? "the air’s drying power" : "the air that the water needs",
      (_, row) => known[row] ?? 0,
    );
  }
  if (keepsDepth(wish)) {
    add("bedDepthMetres", "bed depth", (row) => row.model?.bedDepthMetres ?? 0);
  }
  // Cold air has to be heated, whether or not it dries well.
  const celsius = kept.map((row) => row.model?.air.celsius ?? null);
  if (measure === "energy_kwh" && celsius.every((one) => one !== null)) {
    add("celsius", "outside temperature", (_, row) => celsius[row] ?? 0);
  }
  return { rows: kept, columns, words };
}
