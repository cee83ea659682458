import type { VarietyReason } from "../../report/varietiesResult.ts";
import { maltMeasure } from "../../units/maltMeasure.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { type Sentence, strong } from "../sentence.ts";
import { differenceWords } from "./scoreWords.ts";

/** What a reason is called at the head of its sentence. */
export const reasonTitle: Readonly<Record<VarietyReason["kind"], string>> = {
  lot: "A lot stands out",
  grain: "The grain changed",
  process: "The process changed",
};

/**
 * One reason in words, with its size where it has one: a lot's distance from the others; for grain from the lowest to the
 * highest lot; for an event from before it to after it; for thermostat and season from the least to the most.
 */
export function reasonSentence(
  { kind, measure, lot, how, size, goesWith }: VarietyReason,
  units: UnitSystem,
): Sentence {
  const { words } = maltMeasure(measure);
  const name = `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
  const sized = size === null ? null : strong(differenceWords(measure, size, units, true));
  const lotName = strong(`Grain lot ${lot ?? "not named"}`);
  if (kind === "lot" && how === "spread") {
    return [lotName, ` is uneven in itself: its ${words} spreads more than that of the other lots.`];
  }
  if (kind === "lot") {
    return [lotName, `: ${words} lies off that of the other lots`, ...(sized === null ? [] : [" by ", sized]), "."];
  }
  if (kind === "grain" && lot !== null) {
    return [
      lotName,
      ` has ${goesWith ?? "other grain"}. That goes with its ${words}; it does not prove to be the cause.`,
    ];
  }
  const range = kind === "grain" ? " from the lowest to the highest lot" : "";
  return [`${name} goes with `, strong(goesWith ?? "it"), ...(sized === null ? [] : [": ", sized, range]), "."];
}
