import type { ChartedMeasure } from "../report/controlChartResult.ts";
import { printDate } from "../units/instant.ts";
import { measureName, points, ruleWords } from "./chartWords.ts";
import { counted, listed } from "./counted.ts";
import { type Sentence, strong } from "./sentence.ts";
import { isTrend, type SignalGroup } from "./signalGroups.ts";

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** `14 Sep 2024`, or `14 Sep 2024 to 3 Oct 2024` where the two differ. */
function between(from: number, to: number, timeZone: string): string {
  const [first, last] = [printDate(from, timeZone), printDate(to, timeZone)];
  return first === last ? `on ${first}` : `from ${first} to ${last}`;
}

/** What a group of signals says: the measure, how far off and which way, over how many batches and when. */
export function signalSentence(group: SignalGroup, measure: ChartedMeasure, timeZone: string): Sentence {
  const { main, runs } = group;
  const name = capital(measureName[measure]);
  const when = between(runs[0]?.at ?? main.from, runs.at(-1)?.at ?? main.to, timeZone);
  if (isTrend(main)) {
    const way = main.direction === "rising" ? "rose" : "fell";
    return [
      `${name} ${way} by `,
      strong(points(main.size)),
      ` over ${counted(runs.length, "batch", "batches")}, ${when}.`,
    ];
  }
  const way = main.direction === "above" ? "above" : "below";
  if (runs.length === 1) {
    return [
      `${name} of ${runs[0]?.run ?? main.raisedAt}, ${when}, lay `,
      strong(`${points(main.size)} ${way}`),
      " its centre.",
    ];
  }
  // The size is that of the main signal, so its batches are counted, not those of its neighbours.
  const over =
    main.runs.length === runs.length
      ? `over ${counted(runs.length, "batch", "batches")}`
      : `over ${main.runs.length === 1 ? "one" : main.runs.length} of ${counted(runs.length, "batch", "batches")}`;
  return [`${name} lay `, strong(`${points(main.size)} ${way}`), ` its centre ${over}, ${when}.`];
}

/** What raised it and when that could first have been known, then what saw it later: goes after the batches' names. */
export function raisedSentence(group: SignalGroup): Sentence {
  const at = group.runs[group.raisedAt - group.from]?.run ?? group.main.raisedAt;
  const first = group.signals.filter(({ raisedAt }) => raisedAt === at);
  const known = new Set(first.map(({ rule }) => rule));
  const later: string[] = [];
  for (const { rule, raisedAt } of group.signals) {
    if (known.has(rule)) continue;
    known.add(rule);
    later.push(`${ruleWords[rule]} at ${raisedAt}`);
  }
  const firstly = listed([...new Set(first.map(({ rule }) => ruleWords[rule]))]);
  const when = group.runs.length === 1 ? "raised by" : `raised at ${at} by`;
  return [`${when} ${firstly}${later.length === 0 ? "" : `, then by ${listed(later)}`}.`];
}

/** What stands in the logs about those days; that it stands beside the signal does not make it the cause. */
export function besideSentence(group: SignalGroup): Sentence {
  if (group.beside.length === 0) return ["Nothing is logged about those days."];
  return [`Logged about those days: ${group.beside.join("; ")}.`];
}
