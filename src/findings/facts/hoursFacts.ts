import type { HoursFact } from "../../report/fact.ts";
import type { FittedLoad } from "../../report/kilnHoursResult.ts";
import { bestModel } from "../bestModel.ts";
import { chanceReal } from "./chanceReal.ts";
import { batchesAMonth, concerns, type FactFrame, LATEST_RUNS, namedRuns, noLoss } from "./factFrame.ts";

/** An hour and a half beyond weather and bed is a trouble of middling size (common practice: a kiln night has an hour to spare). */
const BEFORE = { share: 0.1, size: 1.5 };

/** The mean of residuals with its 95 % interval, from the model's own scatter. */
function meanOver(loads: readonly FittedLoad[], residualHours: number): HoursFact["hoursOver"] {
  const estimate = loads.reduce((sum, load) => sum + load.residualHours, 0) / loads.length;
  const reach = (1.96 * residualHours) / Math.sqrt(loads.length);
  return { estimate, low: estimate - reach, high: estimate + reach };
}

/** So many standard errors further off than the loads before them, and the latest stand on a level of their own. */
const ON_TOP = 2;

/** Of a stretch the latest loads alone, where they have moved on from the lesser slowness before them, as when a filter clogs. */
function standingNow(loads: readonly FittedLoad[], residualHours: number): readonly FittedLoad[] {
  const [before, latest] = [loads.slice(0, -LATEST_RUNS), loads.slice(-LATEST_RUNS)];
  if (before.length === 0) return loads;
  const [now, then] = [meanOver(latest, residualHours).estimate, meanOver(before, residualHours).estimate];
  const error = residualHours * Math.sqrt(1 / latest.length + 1 / before.length);
  return (now - then) * Math.sign(now) > ON_TOP * error ? latest : loads;
}

/** Loads that together took longer, or less, than weather and bed explain, as long as the latest are among them. */
export function hoursFacts(frame: FactFrame): readonly HoursFact[] {
  const { kilnHours } = frame.report.kilnHours;
  const model = bestModel(kilnHours);
  if (model === null) return [];
  return (kilnHours.stretches ?? []).flatMap((stretch): HoursFact[] => {
    if (!concerns(frame, stretch.from, stretch.to)) return [];
    const names = new Set(stretch.loads);
    const { residualStandardDeviation } = model.fit;
    const loads = standingNow(
      model.loads.filter(({ load }) => names.has(load)),
      residualStandardDeviation,
    );
    const hoursOver = meanOver(loads, residualStandardDeviation);
    const runs = loads.flatMap((load) => load.runs);
    const slow = Math.max(0, hoursOver.estimate);
    return [
      {
        kind: "kiln hours",
        from: loads[0]?.loadedAt ?? stretch.from,
        to: stretch.to,
        runs: namedRuns(runs),
        runCount: runs.length,
        chanceReal: chanceReal(hoursOver, BEFORE),
        loss: { ...noLoss, kilnHours: (slow * batchesAMonth(frame) * loads.length) / runs.length },
        beside: [],
        hoursOver,
      },
    ];
  });
}
