import type { Interval } from "../analysis/regressionFit.ts";
import type { HumidityDepthModel } from "../report/kilnHoursResult.ts";
import { print, printRange } from "../units/print.ts";
import type { UnitSystem } from "../units/unitSystem.ts";
import { type Sentence, strong } from "./sentence.ts";

/** One inch is 2.54 cm exactly. */
const CENTIMETRES_PER_INCH = 2.54;

/** Hours for one more unit of bed as a reader of `units` counts it: a centimetre or an inch. */
export function effectOfDepth(perCentimetre: Interval, units: UnitSystem): Interval {
  const factor = units === "us" ? CENTIMETRES_PER_INCH : 1;
  return {
    estimate: perCentimetre.estimate * factor,
    low: perCentimetre.low * factor,
    high: perCentimetre.high * factor,
  };
}

export const depthUnitWord = (units: UnitSystem): string => (units === "us" ? "inch" : "centimetre");

/** What an interval allows one to say of an effect. */
export type EffectVerdict = "adds" | "takes off" | "not seen";

/** An effect is said to be there only where its 95 % interval keeps clear of 0. */
export function verdictOn(effect: Interval): EffectVerdict {
  if (effect.low > 0) return "adds";
  if (effect.high < 0) return "takes off";
  return "not seen";
}

const hours = (value: number): string => print(Math.abs(value), "hours", "metric", { decimals: 2 });
const range = (effect: Interval): string => printRange(effect.low, effect.high, "hours", "metric", { decimals: 2 });

/** What humidity and bed depth do to the hours, said no more firmly than their intervals allow. */
export function effectSentence(model: HumidityDepthModel, units: UnitSystem): Sentence {
  const humidity = model.hoursPerTenPoints;
  const depth = effectOfDepth(model.hoursPerCentimetre, units);
  const unit = depthUnitWord(units);
  const ofHumidity = verdictOn(humidity);
  const ofDepth = verdictOn(depth);
  if (ofHumidity === "not seen" && ofDepth === "not seen") {
    return ["These loads do not show that damp air or a deeper bed changes that."];
  }
  if (ofHumidity === "adds" && ofDepth === "adds") {
    return [
      "Damp air adds ",
      strong(hours(humidity.estimate)),
      ` for every 10\u00a0points of humidity, and each ${unit} of bed another `,
      strong(hours(depth.estimate)),
      ".",
    ];
  }
  const first: Sentence =
    ofHumidity === "not seen"
      ? ["These loads do not show that damp air matters; "]
      : [
          `Damp air ${ofHumidity === "adds" ? "adds" : "goes with"} `,
          strong(hours(humidity.estimate)),
          `${ofHumidity === "adds" ? "" : " less"} for every 10\u00a0points of humidity; `,
        ];
  const second: Sentence =
    ofDepth === "not seen"
      ? ["that bed depth matters they do not show."]
      : [
          `each ${unit} of bed ${ofDepth === "adds" ? "adds" : "goes with"} `,
          strong(hours(depth.estimate)),
          ofDepth === "adds" ? "." : " less.",
        ];
  return [...first, ...second];
}

/** The plain 95 % intervals of both effects, for beside the answer. */
export function effectIntervalsSentence(model: HumidityDepthModel, units: UnitSystem): Sentence {
  const depth = effectOfDepth(model.hoursPerCentimetre, units);
  return [
    `The 95\u00a0% intervals: ${range(model.hoursPerTenPoints)} for 10\u00a0points of humidity, `,
    `${range(depth)} for one ${depthUnitWord(units)} of bed.`,
  ];
}
