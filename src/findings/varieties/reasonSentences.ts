import type { VarietyReason } from "../../report/varietiesResult.ts";
import { maltMeasure } from "../../units/maltMeasure.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { type Sentence, strong } from "../sentence.ts";
import { differenceWords } from "./scoreWords.ts";

/** What a reason is called at the head of its sentence. */
export const reasonTitle: Readonly<Record<VarietyReason["kind"], string>> = {
  lot: "One lot stands out",
  grain: "The grain changed",
  process: "The process changed",
};

/** One reason in words: `Grain lot L7: final moisture differs by 0.42 points (0.18 to 0.66) from that of all other lots.` */
export function reasonSentence({ kind, measure, lot, size, goesWith }: VarietyReason, units: UnitSystem): Sentence {
  const name = maltMeasure(measure).words;
  const by: Sentence = size === null ? [] : [" by ", strong(differenceWords(measure, size, units, true))];
  const lotSaid: Sentence = lot === null ? [] : [" in ", strong(`lot ${lot}`)];
  const also = goesWith === null ? "" : kind === "lot" ? `; with it goes ${goesWith}` : `, along with ${goesWith}`;
  if (kind === "lot")
    return [
      strong(`Grain lot ${lot ?? "not named"}`),
      `: ${name} stands off that of the other lots`,
      ...by,
      `${also}.`,
    ];
  return [`${name.charAt(0).toUpperCase()}${name.slice(1)} moved`, ...by, ...lotSaid, `${also}.`];
}
