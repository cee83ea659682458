import type { HoursFact } from "../../report/fact.ts";
import type { FittedLoad } from "../../report/kilnHoursResult.ts";
import { bestModel } from "../bestModel.ts";
import { chanceReal } from "./chanceReal.ts";
import { batchesAMonth, concerns, type FactFrame, namedRuns, noLoss } from "./factFrame.ts";

/** An hour and a half beyond weather and bed is a trouble of middling size (common practice: a kiln night has an hour to spare). */
const BEFORE = { share: 0.1, size: 1.5 };

/** The mean of residuals with its 95 % interval, from the model's own scatter. */
function meanOver(loads: readonly FittedLoad[], residualHours: number): HoursFact["hoursOver"] {
  const estimate = loads.reduce((sum, load) => sum + load.residualHours, 0) / loads.length;
  const reach = (1.96 * residualHours) / Math.sqrt(loads.length);
  return { estimate, low: estimate - reach, high: estimate + reach };
}

/** Loads that together took longer, or less, than weather and bed explain, as long as the latest are among them. */
export function hoursFacts(frame: FactFrame): readonly HoursFact[] {
  const { kilnHours } = frame.report.kilnHours;
  const model = bestModel(kilnHours);
  if (model === null) return [];
  return (kilnHours.stretches ?? []).flatMap((stretch): HoursFact[] => {
    if (!concerns(frame, stretch.from, stretch.to)) return [];
    const names = new Set(stretch.loads);
    const loads = model.loads.filter(({ load }) => names.has(load));
    const hoursOver = meanOver(loads, model.fit.residualStandardDeviation);
    const runs = loads.flatMap((load) => load.runs);
    const slow = Math.max(0, hoursOver.estimate);
    return [
      {
        kind: "kiln hours",
        from: stretch.from,
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
