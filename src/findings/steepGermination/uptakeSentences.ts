import type { UptakeModel } from "../../report/steepGerminationResult.ts";
import { print, printNumber, printRange } from "../../units/print.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { exactPoints, percent } from "../chartWords.ts";
import { counted } from "../counted.ts";
import { verdictOn } from "../kilnEffects.ts";
import { joinSentences, lowerFirst, type Sentence, strong } from "../sentence.ts";
import { degrees, degreeWord, perDegree } from "./measureWords.ts";

const range = (low: number, high: number): string =>
  printRange(low, high, "percentagePoints", "metric", { decimals: 2 });

/** What an hour under water adds. */
export function wetHourSentence({ pointsPerWetHour: effect }: UptakeModel): Sentence {
  const verdict = verdictOn(effect);
  if (verdict === "not seen") {
    return [
      `These batches do not show that more wet hours make wetter grain (${range(effect.low, effect.high)} an hour).`,
    ];
  }
  return [
    "Each wet hour more goes with ",
    strong(`${exactPoints(Math.abs(effect.estimate))} ${verdict === "adds" ? "more" : "less"}`),
    ` at steep-out (95\u00a0% interval ${range(effect.low, effect.high)}).`,
  ];
}

/** What a degree of water adds; empty where water temperatures are not logged or do not differ. */
export function waterSentence({ pointsPerKelvin }: UptakeModel, units: UnitSystem): Sentence {
  if (pointsPerKelvin === null) return [];
  const [estimate, low, high] = [pointsPerKelvin.estimate, pointsPerKelvin.low, pointsPerKelvin.high].map((value) =>
    perDegree(value, units),
  ) as [number, number, number];
  const verdict = verdictOn(pointsPerKelvin);
  if (verdict === "not seen") {
    return [
      `These batches do not show that the water’s temperature matters (${range(low, high)} for one ${degreeWord(units)}).`,
    ];
  }
  return [
    `Each ${degreeWord(units)} warmer in the water goes with `,
    strong(`${exactPoints(Math.abs(estimate))} ${verdict === "adds" ? "more" : "less"}`),
    ` at steep-out (${range(low, high)}).`,
  ];
}

/** What the fit is made of and what it leaves over. */
export function uptakeLeftSentence(uptake: UptakeModel): Sentence {
  const { rSquared, residualPoints, batches, basis, allowedForBiasPoints: allowed } = uptake;
  return joinSentences([
    [
      `Moisture is ${basis === "measured" ? "as measured" : "from mass gain"} throughout, each variety by itself. Varieties, hours and water account for ${print(100 * rSquared, "percent", "metric", { decimals: 0 })} of the spread over ${counted(batches, "batch", "batches")}; a batch is still off by ${exactPoints(residualPoints)} (standard deviation).`,
    ],
    allowed === null
      ? []
      : [
          `In the hours above the ${exactPoints(Math.abs(allowed))} are allowed for by which measured moisture reads ${allowed > 0 ? "higher" : "lower"}.`,
        ],
  ]);
}

/** Batches that the fit cannot account for; empty without any. The page sets the links after it. */
export function unlikeSentence({ unlikeTheRest }: UptakeModel): Sentence {
  const count = unlikeTheRest.length;
  if (count === 0) return [];
  return [
    strong(counted(count, "batch", "batches")),
    ` ${count === 1 ? "is" : "are"} unlike the rest, beyond what hours, water and chance account for: look for a scale, a meter or a slip of the pen`,
  ];
}

/** For one variety: the wet hours that would have met its target, or why that is not said. */
export function hoursToTargetSentence(row: UptakeModel["hoursToTarget"][number], units: UnitSystem): Sentence {
  const { variety, targetPercent, usualWetHours, usualWaterCelsius, wetHours, refusal } = row;
  if (wetHours === null) return [`${variety}: ${lowerFirst(refusal ?? "the hours cannot be said.")}`];
  const water = usualWaterCelsius === null ? "" : ` in water of ${degrees(usualWaterCelsius, units)}`;
  const more = wetHours.estimate - usualWetHours;
  const change =
    wetHours.low <= usualWetHours && wetHours.high >= usualWetHours
      ? `its usual ${print(usualWetHours, "hours", "metric")} may well be right`
      : `${print(Math.abs(more), "hours", "metric")} ${more > 0 ? "more" : "fewer"} than it usually gets`;
  return joinSentences([
    [
      `${variety} would have met ${percent(targetPercent)} after `,
      strong(print(wetHours.estimate, "hours", "metric")),
      ` wet (${printNumber(wetHours.low, 1)} to ${printNumber(wetHours.high, 1)})${water}: ${change}.`,
    ],
  ]);
}
