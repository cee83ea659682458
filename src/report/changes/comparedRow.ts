import type { AirBasis } from "../airBasis.ts";
import type { ChangedMeasure } from "../changesResult.ts";
import { type ModelRow, modelRows } from "../kilnHours/modelRow.ts";
import type { Filling } from "../kilnHoursResult.ts";
import type { LoadRow } from "../loadRow.ts";
import type { RunRow } from "../runRow.ts";
import type { TargetRow } from "../targetRow.ts";
import { measuredRuns } from "../yieldMoisture/measuredRuns.ts";

/** One value of one measure that can stand in a comparison: a kiln load for hours and energy, a run for the rest. */
export interface ComparedRow {
  /** Its first run, by which it is named. */
  readonly name: string;
  readonly value: number;
  readonly variety: string;
  readonly grain: string | null;
  readonly kiln: string;
  /** The load's place in a fit of hours; null for measures of runs. */
  readonly model: ModelRow | null;
  readonly run: RunRow | null;
  readonly load: LoadRow | null;
}

/**
 * Tonnes of dry air that each row's load needs, as Kiln hours has them, but never by what a change altered: where it touched
 * the water that comes to the kiln, the house's usual load stands in, so that only the air counts; where it altered the set
 * point or the fan, the usual set point and a fan that runs. Null for all where Kiln hours does better by humidity, or too
 * little is logged.
 */
export type AirNeeded = (
  rows: readonly ComparedRow[],
  altered: string | null,
  touchesWater: boolean,
) => readonly (number | null)[] | null;

/** What every comparison of a report stands on. */
export interface ComparedGround {
  readonly runs: readonly RunRow[];
  readonly loads: readonly LoadRow[];
  readonly samples: ReadonlyMap<string, readonly number[]>;
  readonly targets: readonly TargetRow[];
  /** Runs left out by hand. */
  readonly without: ReadonlySet<string>;
  readonly airBasis: AirBasis;
  readonly filling: Filling;
  readonly airNeeded: AirNeeded;
  readonly timeZone: string;
}

/** Loads of several varieties stand together. */
const MIXED = "mixed";

function loadsOf(measure: "kiln_hours" | "energy_kwh", ground: ComparedGround): ComparedRow[] {
  const { loads, airBasis, filling, without } = ground;
  const runs = new Map(ground.runs.map((run) => [run.run, run]));
  return modelRows(loads, "kiln-hours", airBasis, filling, without).rows.flatMap((model) => {
    const { load } = model;
    const value = measure === "kiln_hours" ? model.hours : load.energyKilowattHours;
    if (value === null) return [];
    const run = runs.get(load.runs[0] ?? "") ?? null;
    return [
      {
        name: load.runs[0] ?? load.load,
        value,
        variety: load.variety ?? MIXED,
        grain: load.grain,
        kiln: load.kiln,
        model,
        run,
        load,
      },
    ];
  });
}

function runsOf(measure: ChangedMeasure, ground: ComparedGround): ComparedRow[] {
  const { samples, without } = ground;
  const kept = ground.runs.filter(({ run }) => !without.has(run));
  const loads = new Map(ground.loads.map((load) => [load.load, load]));
  const rowOf = (run: RunRow, value: number): ComparedRow => ({
    name: run.run,
    value,
    variety: run.variety ?? "not known",
    grain: run.grain,
    kiln: run.kiln ?? "",
    model: null,
    run,
    load: run.load === null ? null : (loads.get(run.load) ?? null),
  });
  if (measure === "dry_yield_pct" || measure === "final_moisture_pct") {
    return measuredRuns(kept, measure, samples).measured.map(({ row, value }) => rowOf(row, value));
  }
  return kept.flatMap((run) => {
    const value = measure === "steep_out_moisture_pct" ? run.steepOutMoisturePercent : run.acrospireMean;
    return value === null ? [] : [rowOf(run, value)];
  });
}

/** Every value of a measure that the view's rows hold, whatever the dates. */
export function comparedRows(measure: ChangedMeasure, ground: ComparedGround): readonly ComparedRow[] {
  return measure === "kiln_hours" || measure === "energy_kwh" ? loadsOf(measure, ground) : runsOf(measure, ground);
}
