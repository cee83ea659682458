import type { ChangeResult, ChangesResult } from "../../report/changesResult.ts";
import { countedInWords, listed } from "../counted.ts";
import { joinSentences, type Sentence, strong } from "../sentence.ts";
import type { Reader } from "../thermostatWords.ts";
import { effectSentence, effectStatement } from "./changeSentences.ts";
import { mainEffect, namedChange } from "./changeWords.ts";

/** Did the latest change help? */
export function changesAnswer({ changes, tooLittle }: ChangesResult, { units, timeZone }: Reader): Sentence {
  const [latest] = changes;
  if (latest === undefined) return [tooLittle ?? "No change is logged."];
  const named = `The latest change, ${namedChange(latest, timeZone)}, `;
  const effect = mainEffect(latest);
  if (effect === null) return [named, strong("cannot be judged"), `: ${latest.tooLittle ?? "too little is logged."}`];
  const said = effectSentence(effect, units);
  switch (effect.verdict) {
    case "helped":
      return [named, strong("helped"), ": ", ...said, "."];
    case "hurt":
      return [named, strong("did not help"), ": ", ...said, "."];
    case "moved":
      return [named, "moved something: ", ...said, "."];
    case "no difference":
      return [named, "made ", ...said, "."];
    case "cannot be told":
      return [
        `Whether the latest change helped, ${namedChange(latest, timeZone)}, `,
        strong("cannot be told yet"),
        ": ",
        ...said,
        ".",
      ];
  }
}

/** What the latest change came to in the other measures, and how the changes before it did. */
export function changesGrounds({ changes }: ChangesResult, { units }: Reader): readonly Sentence[] {
  const [latest] = changes;
  if (latest === undefined) return [];
  const main = mainEffect(latest);
  const others = latest.effects.filter((effect) => effect !== main);
  return [joinSentences(others.map((effect) => effectStatement(effect, units))), tally(changes)];
}

const TALLY = [
  ["helped", "helped"],
  ["hurt", "did harm"],
  ["moved", "moved something for neither better nor worse"],
  ["no difference", "made no difference worth telling"],
  ["cannot be told", "cannot be told"],
  ["too little", "could not be compared"],
] as const;

/** `Four changes are logged: two helped, one made no difference worth telling and one cannot be told.` */
function tally(changes: readonly ChangeResult[]): Sentence {
  if (changes.length < 2) return [];
  const counts = new Map<string, number>();
  for (const change of changes) {
    const verdict = mainEffect(change)?.verdict ?? "too little";
    counts.set(verdict, (counts.get(verdict) ?? 0) + 1);
  }
  const parts = TALLY.flatMap(([verdict, words]) => {
    const count = counts.get(verdict);
    return count === undefined ? [] : [`${numberWord(count)} ${words}`];
  });
  return [`${countedInWords(changes.length, "change")} are logged: ${listed(parts)}.`];
}

const numberWord = (count: number): string => countedInWords(count, "", "").trim().toLowerCase();
