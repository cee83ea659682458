import { wilsonInterval } from "../../analysis/wilsonInterval.ts";
import type { Coverage, FittedLoad } from "../kilnHoursResult.ts";

/** How often the planning interval, made from the earlier loads alone, held what came; null where none was made. */
export function coverageOf(loads: readonly FittedLoad[]): Coverage | null {
  const judged = loads.flatMap(({ hours, oneStepAhead }) =>
    oneStepAhead === null ? [] : [hours >= oneStepAhead.low && hours <= oneStepAhead.high],
  );
  if (judged.length === 0) return null;
  const held = judged.filter(Boolean).length;
  const share = wilsonInterval(held, judged.length, 0.95);
  return {
    held,
    of: judged.length,
    percent: { estimate: (100 * held) / judged.length, low: 100 * share.low, high: 100 * share.high },
  };
}
