import type { LeavesTolerance } from "../analysis/drift/leavesTolerance.ts";
import { printDateInFull } from "../units/instant.ts";
import { counted } from "./counted.ts";
import { type Sentence, strong } from "./sentence.ts";
import { besideSetPoint, degrees, degreesSigned, type Reader, twoDates } from "./thermostatWords.ts";
import { roughDate } from "./yieldMoistureAnswer.ts";

/** What the tolerance is held against. */
export interface ToleranceWords extends Reader {
  readonly toleranceKelvin: number;
  /** Else only a change counts against it. */
  readonly probeAtBulb: boolean;
  /** The kiln's last load, milliseconds UTC. */
  readonly now: number;
}

const tolerance = ({ toleranceKelvin, units }: ToleranceWords): string =>
  `its tolerance of ${degrees(toleranceKelvin, units)}`;

/** In the answer the tolerance has no number; the grounds below give it. */
const ITS = "its tolerance";

/** After *will* or *may*. Without a probe at the bulb only a move can be measured. */
const leave = (words: ToleranceWords, named: string): string =>
  words.probeAtBulb ? `leave ${named}` : `have moved by more than ${named}`;

const left = ({ probeAtBulb }: ToleranceWords, named: string): string =>
  probeAtBulb ? `left ${named}` : `moved by more than ${named}`;

/** `left its tolerance`, after *may already have*. */
export const leftItsTolerance = (words: ToleranceWords): string => left(words, ITS);

const outside = ({ probeAtBulb }: ToleranceWords, named: string): string =>
  probeAtBulb ? `outside ${named}` : `further than ${named} from where it was`;

const inside = ({ probeAtBulb }: ToleranceWords, named: string): string =>
  `stay within ${named}${probeAtBulb ? "" : " of where it was"}`;

function datedClause(leaves: Extract<LeavesTolerance, { kind: "dated" }>, words: ToleranceWords): Sentence {
  const { earliest, latest, onlyIfCreep } = leaves;
  const { now, timeZone } = words;
  const start = onlyIfCreep ? "; if this is a creep it" : ", and";
  if (earliest <= now) {
    const by = latest === null ? "" : `, else it will by ${printDateInFull(latest, timeZone)}`;
    return [`${start} may `, strong("already"), ` have ${leftItsTolerance(words)}${by}`];
  }
  return latest === null
    ? [`${start} may ${leave(words, ITS)} from `, strong(printDateInFull(earliest, timeZone)), " on"]
    : [`${start} will ${leave(words, ITS)} between `, strong(twoDates(earliest, latest, timeZone))];
}

/** What follows the size of a change in one sentence: when it leaves its tolerance, or that it has. */
export function leavesClause(leaves: LeavesTolerance, words: ToleranceWords): Sentence {
  if (leaves.kind === "dated") return datedClause(leaves, words);
  if (leaves.kind === "already-outside") {
    const { since } = leaves;
    const when = since === null ? "" : ` since ${roughDate(since.estimate, words.now, words.timeZone)}`;
    return [since === null ? ", and is " : ", and has been ", strong(outside(words, ITS)), when];
  }
  if (leaves.kind === "not-within-horizon") {
    return [`; for ${horizon(leaves.horizonDays)} it should ${inside(words, ITS)}`];
  }
  return [`; when it will ${leave(words, ITS)} cannot be told yet`];
}

const horizon = (days: number): string => (days === 365 ? "a year" : counted(days, "day"));

const WHY: Readonly<Record<Extract<LeavesTolerance, { kind: "cannot-be-told" }>["why"], string>> = {
  "level-straddles": "its level is not known well enough to say on which side of the tolerance it lies",
  "creep-not-excluded": "too few loads to rule out that it creeps",
  "alarm-unexplained": "something has changed, and neither a step nor a creep explains it",
};

/**
 * Where it stood when it was last read, with its interval, and when it leaves its tolerance, which may lie between that and the
 * kiln’s last load: for the entry below the answer.
 */
export function leavesSentence(leaves: LeavesTolerance, words: ToleranceWords): Sentence {
  const { units, probeAtBulb } = words;
  const { estimate, low, high } = leaves.levelNow;
  const level = probeAtBulb
    ? `When last read it held ${besideSetPoint(estimate, units)} (95\u00a0% interval ${degreesSigned(low, high, units)}). `
    : "";
  return [`${level}${outlook(leaves, words)}`];
}

function outlook(leaves: LeavesTolerance, words: ToleranceWords): string {
  const { timeZone, now } = words;
  const its = tolerance(words);
  if (leaves.kind === "already-outside") {
    const { since } = leaves;
    const dated = since !== null && since.low < since.high;
    return `It is ${outside(words, its)}${dated ? `, since a day between ${twoDates(since.low, since.high, timeZone)}` : ""}.`;
  }
  if (leaves.kind === "not-within-horizon") {
    return `For ${horizon(leaves.horizonDays)} after the last load it should ${inside(words, its)}.`;
  }
  if (leaves.kind === "cannot-be-told") return `When it will ${leave(words, its)} cannot be told: ${WHY[leaves.why]}.`;
  const { earliest, estimate, latest } = leaves;
  const best = estimate === null ? "" : ` The best guess is ${printDateInFull(estimate, timeZone)}.`;
  const already = earliest <= now;
  if (latest === null) {
    return already
      ? `It may already have ${left(words, its)}, or never do so.${best}`
      : `If it goes on as it went it may ${leave(words, its)} on ${printDateInFull(earliest, timeZone)} at the earliest, or never.${best}`;
  }
  return already
    ? `It may already have ${left(words, its)}; if it goes on as it went it will by ${printDateInFull(latest, timeZone)} (95\u00a0% interval).${best}`
    : `If it goes on as it went it will ${leave(words, its)} between ${twoDates(earliest, latest, timeZone)} (95\u00a0% interval).${best}`;
}
