import { analyseChanges, type ChangesOptions, judgeEvents } from "../../../src/report/changes/analyseChanges.ts";
import type { ChangedMeasure, ChangeEffect, ChangeResult, ChangesResult } from "../../../src/report/changesResult.ts";
import type { EventRow } from "../../../src/report/eventRow.ts";
import { analyseKilnHours } from "../../../src/report/kilnHours/analyseKilnHours.ts";
import type { LoadRow } from "../../../src/report/loadRow.ts";
import type { RunRow } from "../../../src/report/runRow.ts";
import type { TargetRow } from "../../../src/report/targetRow.ts";
import { bareRun } from "../../support/madeUpReport.ts";

export const DAY = 86_400_000;
/** The day, as an event has it, on which load `index` of `tests/support/loads.ts` was loaded. */
export const dayOf = (index: number): number => Date.UTC(2025, 0, 6) + index * 5 * DAY;

export const change = (index: number, changes: Partial<EventRow> = {}): EventRow => ({
  on: dayOf(index),
  kind: "change",
  scope: "kiln",
  what: `changed at ${index}`,
  alters: null,
  ...changes,
});

/** The run of each load, steeped and germinated in the five days before it was loaded. */
export function runOf(load: LoadRow, changes: Partial<RunRow> = {}): RunRow {
  const { loadedAt } = load;
  return {
    ...bareRun,
    run: load.runs[0] ?? load.load,
    load: load.load,
    kiln: load.kiln,
    variety: load.variety,
    grain: load.grain,
    steepStartedAt: loadedAt - 5 * DAY,
    steepEndedAt: loadedAt - 4 * DAY,
    germinationStartedAt: loadedAt - 4 * DAY,
    germinationEndedAt: loadedAt,
    loadedAt,
    unloadedAt: load.unloadedAt,
    finalMoisturePercent: load.finalMoisturePercent,
    dryMatterYieldPercent: null,
    steepOutMoisturePercent: null,
    acrospireMean: null,
    ...changes,
  };
}

interface More {
  readonly runs?: readonly RunRow[];
  readonly targets?: readonly TargetRow[];
  readonly without?: readonly string[];
}

function optionsOf(loads: readonly LoadRow[], events: readonly EventRow[], more: More): ChangesOptions {
  const without = new Set(more.without ?? []);
  const ground = { targetMoisturePercent: 4.5, pressurePascals: 101_325, timeZone: "UTC", without };
  return {
    ...ground,
    events: [...events].sort((a, b) => a.on - b.on),
    samples: new Map(),
    targets: more.targets ?? [],
    kilnHours: analyseKilnHours(loads, { ...ground, air: null }),
  };
}

export const changesOf = (loads: readonly LoadRow[], events: readonly EventRow[], more: More = {}): ChangesResult =>
  analyseChanges(more.runs ?? loads.map((load) => runOf(load)), loads, optionsOf(loads, events, more));

/** What each of these events came to, repairs among them. */
export const judged = (loads: readonly LoadRow[], events: readonly EventRow[]): readonly ChangeResult[] =>
  judgeEvents(
    events,
    loads.map((load) => runOf(load)),
    loads,
    optionsOf(loads, events, {}),
  );

/** @throws where the change was not compared in that measure */
export function effectOf({ effects }: ChangeResult, measure: ChangedMeasure): ChangeEffect {
  const found = effects.find((effect) => effect.measure === measure);
  if (found === undefined) throw new Error(`${measure} was not compared`);
  return found;
}

/** @throws where there is none */
export function latest({ changes }: ChangesResult): ChangeResult {
  const [first] = changes;
  if (first === undefined) throw new Error("no change was judged");
  return first;
}
