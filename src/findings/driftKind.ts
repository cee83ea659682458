import type { DriftEvidence } from "../report/thermostatResult.ts";
import { listed } from "./counted.ts";
import { type Sentence, strong } from "./sentence.ts";

/** What each kind is called inside a sentence. */
const kindName: Readonly<Record<DriftEvidence["kind"], string>> = {
  "set point": "a set point that has moved",
  "worn contacts": "worn contacts",
  "weak heater or fan": "a weak heater or fan",
  season: "the season",
};

export const kindTitle: Readonly<Record<DriftEvidence["kind"], string>> = {
  "set point": "Set point",
  "worn contacts": "Worn contacts",
  "weak heater or fan": "Weak heater or fan",
  season: "Season",
};

export const speaksWords: Readonly<Record<DriftEvidence["speaks"], string>> = {
  for: "speaks for it",
  against: "speaks against it",
  open: "cannot be told",
};

/** `The evidence speaks for a set point that has moved and against worn contacts; the season cannot be told.` No verdict. */
export function driftKindSentence(evidence: readonly DriftEvidence[]): Sentence {
  const of = (speaks: DriftEvidence["speaks"]): string =>
    listed(evidence.filter((one) => one.speaks === speaks).map(({ kind }) => kindName[kind]));
  const [pro, contra, open] = [of("for"), of("against"), of("open")];
  if (pro === "" && contra === "") {
    return open === "" ? [] : ["What kind of change it is cannot be told from these loads."];
  }
  const said: Sentence =
    pro === "" ? ["The evidence speaks "] : ["The evidence speaks for ", strong(pro), contra === "" ? "" : " and "];
  return [
    ...said,
    contra === "" ? "" : `against ${contra}`,
    open === "" ? "." : `; nothing can be said on ${open}.`,
    " It is evidence, no verdict.",
  ];
}
