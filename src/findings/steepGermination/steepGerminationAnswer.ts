import type { SteepGerminationResult } from "../../report/steepGerminationResult.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { joinSentences, type Sentence } from "../sentence.ts";
import { evennessSentence, lengthSentence } from "./acrospireSentences.ts";
import { bedsClause } from "./bedSentences.ts";
import { steepOutSentence } from "./steepSentences.ts";
import { lengthOnTemperatureClause, timetableBatchesSentence, timetableSentence } from "./timetableSentences.ts";
import { waterSentence } from "./uptakeSentences.ts";

/** What can be said of the timetable: hours where counts were made on the way, else final length alone. */
function growthClause(
  { growth, lengthOnTemperature, acrospires }: SteepGerminationResult,
  units: UnitSystem,
): Sentence {
  if (growth?.timetable != null) return timetableSentence(growth.timetable, units);
  if (lengthOnTemperature !== null) return lengthOnTemperatureClause(lengthOnTemperature, units);
  return lengthSentence(acrospires);
}

/** What there is to say first, in this order: does the timetable suit the weather, is steep-out on target, which bed lags? */
const mainSentences = (result: SteepGerminationResult, units: UnitSystem): readonly Sentence[] =>
  [growthClause(result, units), steepOutSentence(result.steeps), bedsClause(result.beds)].filter(
    (sentence) => sentence.length > 0,
  );

/** The page's first sentence: does the fixed timetable suit the weather? Where nothing is known of that, what comes next. */
export function steepGerminationAnswer(result: SteepGerminationResult, units: UnitSystem): Sentence {
  const [first] = mainSentences(result, units);
  if (first !== undefined) return first;
  const lacking = [result.steepTooLittle, result.acrospireTooLittle].filter((why) => why !== null);
  return lacking.length === 0
    ? ["These logs hold steeps, and nothing yet to hold them against: no target, and no acrospires counted."]
    : joinSentences([...new Set(lacking)].map((why) => [why]));
}

/** The other two questions, and in how many batches the timetable was off. */
export function steepGerminationGrounds(result: SteepGerminationResult, units: UnitSystem): readonly Sentence[] {
  const { growth, acrospires } = result;
  const timetable = growth?.timetable ?? null;
  return [
    joinSentences(mainSentences(result, units).slice(1)),
    timetable === null ? [] : timetableBatchesSentence(timetable, acrospires),
  ];
}

/** How long and how even the malt comes off, and what the water does. */
export function steepGerminationKnown(result: SteepGerminationResult, units: UnitSystem): readonly Sentence[] {
  const { growth, lengthOnTemperature, acrospires, uptake } = result;
  const lengthSaid = growth?.timetable == null && lengthOnTemperature === null;
  return [
    lengthSaid ? [] : lengthSentence(acrospires),
    evennessSentence(acrospires),
    uptake === null ? [] : waterSentence(uptake, units),
  ];
}
