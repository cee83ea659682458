import type { ReviewFinding } from "../../report/reviewResult.ts";
import type { Finding } from "../finding.ts";
import { joinSentences, type Sentence } from "../sentence.ts";
import { checkFirst } from "./checkFirst.ts";
import { costSentence } from "./costSentence.ts";
import { factPath } from "./factPath.ts";
import { factWhat } from "./factWhat.ts";
import { howSure } from "./howSure.ts";
import type { ReviewReader } from "./reader.ts";

/** What several facts have in common is said first. */
const LEADS: ReadonlyMap<ReviewFinding["cause"], Sentence> = new Map([
  ["kiln air", ["Too little air or heat seems to reach the bed."]],
  ["scale", ["The scale seems to have moved: malt and steeped grain are off the same way."]],
]);

/** A finding in words, as the page and the terminal both say it. */
export function findingInWords(finding: ReviewFinding, reader: ReviewReader): Finding {
  const { id, facts, chanceReal, costAMonth } = finding;
  const [first] = facts;
  if (first === undefined) throw new RangeError(`a finding needs a fact; ${id} has none`);
  const lead: Sentence = LEADS.get(finding.cause) ?? [];
  return {
    id,
    what: joinSentences([lead, factWhat(first, reader)]),
    howSure: howSure(finding),
    chanceReal,
    cost: costSentence(finding, reader),
    costAMonth,
    evidence: facts.map((fact, at) => ({
      seen: factWhat(fact, reader),
      path: factPath(fact),
      runs: fact.runs,
      runCount: fact.runCount,
      // What several witnesses stand beside is told once.
      beside: fact.beside.filter((event) => !facts.slice(0, at).some(({ beside }) => beside.includes(event))),
    })),
    checkFirst: checkFirst(finding),
    from: Math.min(...facts.map(({ from }) => from)),
    to: Math.max(...facts.map(({ to }) => to)),
  };
}
