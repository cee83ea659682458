import { linearCombination } from "../../analysis/predict.ts";
import { ratioInterval } from "../../analysis/ratioInterval.ts";
import type { Interval } from "../../analysis/regressionFit.ts";
import { median } from "../../analysis/summary.ts";
import { print, printRange } from "../../units/print.ts";
import type { UptakeModel } from "../steepGerminationResult.ts";
import { aimOf } from "../targetMoisture.ts";
import type { UptakeFit } from "./uptakeFit.ts";

const hours = (value: number): string => print(value, "hours", "metric", { decimals: 1 });

/** Wet hours at which the mean line of a variety meets `percent`; null where longer standing does not clearly wet more. */
function hoursAt({ fit, point }: UptakeFit, variety: string, percent: number, from: number): Interval | null {
  const at = linearCombination(fit, point(variety, from));
  const slope = linearCombination(fit, [0, 1, ...new Array<number>(fit.terms.length - 2).fill(0)]);
  // Var(x′b) and Var(b₁) come out of the fit; their covariance from that of their sum.
  const beyond = linearCombination(fit, point(variety, from + 1));
  const covariance = (beyond.standardError ** 2 - at.standardError ** 2 - slope.standardError ** 2) / 2;
  const more = ratioInterval(
    {
      numerator: percent - at.estimate,
      denominator: slope.estimate,
      numeratorVariance: at.standardError ** 2,
      denominatorVariance: slope.standardError ** 2,
      covariance: -covariance,
    },
    fit.degreesOfFreedom,
  );
  return slope.estimate <= 0 || more === null
    ? null
    : { estimate: from + more.estimate, low: from + more.low, high: from + more.high };
}

/**
 * For each variety with a target: the wet hours that would have met it on average in the house's usual water, and what it
 * gets now. Refused where they lie outside the hours that were logged for it.
 *
 * @param allowForPoints measured less mass gain, where the fit is of mass gains and the target is meant for what is measured
 */
export function hoursToTarget(fitted: UptakeFit, allowForPoints: number): UptakeModel["hoursToTarget"] {
  return fitted.within.varieties.flatMap((variety) => {
    const own = fitted.batches.filter((batch) => batch.variety === variety);
    const target = own[0]?.target;
    const targetPercent = target ? aimOf(target) : null;
    if (targetPercent === null) return [];
    const logged = own.map(({ wetHours }) => wetHours);
    const usualWetHours = median(logged);
    const wanted = targetPercent - allowForPoints;
    const usualPercent = linearCombination(fitted.fit, fitted.point(variety, usualWetHours)).estimate + allowForPoints;
    const found = hoursAt(fitted, variety, wanted, usualWetHours);
    const [least, most] = [Math.min(...logged), Math.max(...logged)];
    const inside = found !== null && found.estimate >= least && found.estimate <= most;
    const refusal =
      found === null
        ? "These batches do not show that more wet hours give more moisture, so no hours can be named."
        : inside
          ? null
          : `The hours that would meet it, about ${hours(found.estimate)}, lie outside those logged (${printRange(least, most, "hours", "metric", { decimals: 1 })}), so none are named.`;
    return [
      {
        variety,
        targetPercent,
        usualWetHours,
        usualPercent,
        usualWaterCelsius: fitted.usualWater,
        wetHours: inside ? found : null,
        refusal,
      },
    ];
  });
}
