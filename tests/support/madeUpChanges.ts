import { analyseChanges } from "../../src/report/changes/analyseChanges.ts";
import type { ChangesResult } from "../../src/report/changesResult.ts";
import type { EventRow } from "../../src/report/eventRow.ts";
import type { Report } from "../../src/report/report.ts";

/** What a made-up report's house changed: half-way through its loads, near their end, and something that nothing can show. */
export function madeUpChanges({ runs, loads, kilnHours, house }: Report): ChangesResult {
  const dayOf = (share: number): number => {
    const at = loads[Math.floor(share * loads.length)]?.loadedAt ?? Date.UTC(2025, 0, 1);
    return Math.floor(at / 86_400_000) * 86_400_000;
  };
  const event = (share: number, changes: Partial<EventRow>): EventRow => ({
    on: dayOf(share),
    kind: "change",
    scope: "kiln",
    what: "bed laid shallower",
    alters: null,
    ...changes,
  });
  const events = [
    event(0.4, { scope: "logger", what: "another logger" }),
    event(0.5, { alters: "bed_depth" }),
    event(0.9, { what: "door left open <for> a while & a half", scope: "other" }),
  ];
  return analyseChanges(runs, loads, {
    events,
    samples: new Map(),
    targets: [{ variety: "any", measure: "final_moisture_pct", low: 4, target: 4.5, high: 5 }],
    without: new Set(),
    kilnHours,
    targetMoisturePercent: 4.5,
    pressurePascals: 101_325,
    timeZone: house.timeZone,
  });
}
