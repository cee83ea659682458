import type { AnalysisGround } from "../analysisGround.ts";
import { once } from "../once.ts";
import type { ReportRows } from "../report.ts";

/**
 * What was known before a moment: batches and loads that had left the kiln by then or were under way, events, targets and
 * checks of that time. Targets and settings have no dates; they stand as they are today.
 */
export function groundBefore(ground: AnalysisGround, before: number): AnalysisGround {
  const { logged, rows } = ground;
  const isKnown = (startedAt: number | null, endedAt: number | null): boolean =>
    (endedAt ?? startedAt ?? Number.POSITIVE_INFINITY) < before;
  const runs = rows.runs.filter((run) =>
    isKnown(run.loadedAt ?? run.germinationStartedAt ?? run.steepStartedAt, run.unloadedAt),
  );
  const loads = rows.loads.filter(({ loadedAt, unloadedAt }) => isKnown(loadedAt, unloadedAt));
  const events = rows.events.filter(({ on }) => on < before);
  const known = new Set(runs.map(({ run }) => run));
  return {
    ...ground,
    rows: { ...rows, runs, loads, events } satisfies ReportRows,
    forFacts: true,
    logged: {
      ...logged,
      runs: logged.runs.filter(({ run }) => known.has(run)),
      loads,
      events,
      thermostat: once(async () => {
        const { loads: summaries, checks } = await logged.thermostat();
        return { loads: summaries, checks: checks.filter(({ at }) => at < before) };
      }),
    },
  };
}
