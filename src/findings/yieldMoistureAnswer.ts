import type { ChartedRun, ControlChart, YieldMoistureResult } from "../report/controlChartResult.ts";
import { localParts, printDate, printMonth } from "../units/instant.ts";
import { printNumber } from "../units/print.ts";
import { measureName, percent, points, ruleWords } from "./chartWords.ts";
import { counted, countedInWords, listed } from "./counted.ts";
import { joinSentences, type Sentence, strong } from "./sentence.ts";
import { isTrend, type SignalGroup, signalGroups, signalNow } from "./signalGroups.ts";

/** `the middle of September`, with its year unless that is the year of `now`. */
export function roughDate(at: number, now: number, timeZone: string): string {
  const { year, month, day } = localParts(at, timeZone);
  const part = day <= 10 ? "beginning" : day <= 20 ? "middle" : "end";
  const inFull = printMonth(`${year}-${month}`);
  const named = year === localParts(now, timeZone).year ? inFull.slice(0, inFull.indexOf(" ")) : inFull;
  return `the ${part} of ${named}`;
}

/** Where the measure stands when nothing is off: the mean of the latest phase's batches that no signal speaks of. */
export function usualLevel(chart: ControlChart, groups: readonly SignalGroup[]): number | null {
  const phase = chart.phases.length - 1;
  const quiet = (index: number): boolean => groups.every(({ from, to }) => index < from || index > to);
  const values = chart.runs.filter((run, index) => run.phase === phase && quiet(index)).map(({ value }) => value);
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
}

const levelOf = (chart: ControlChart, value: number): string =>
  percent(value, chart.measure === "final_moisture_pct" && chart.assumptions?.coarseStep == null ? 2 : 1);

function shiftClause(name: string, group: SignalGroup, latest: ChartedRun, timeZone: string): Sentence {
  const { main, runs } = group;
  const since = roughDate(runs[0]?.at ?? latest.at, latest.at, timeZone);
  if (isTrend(main)) {
    return [
      `${name} has ${main.direction === "rising" ? "risen" : "fallen"} `,
      strong(points(main.size)),
      ` since ${since}`,
    ];
  }
  const way = main.direction === "above" ? "high" : "low";
  if (runs.length > 1) return [`${name} runs `, strong(`${points(main.size)} ${way}`), ` since ${since}`];
  const run = runs[0]?.run ?? latest.run;
  const which = run === latest.run ? `the latest batch, ${run},` : `batch ${run}`;
  return [`${name} of ${which} was `, strong(`${points(main.size)} ${way}`)];
}

/** Fewer batches than this have held only so far. */
const FEW = 12;

/** What one measure does now: `yield holds at 91.0 % of the grain’s dry matter`. */
function clause(chart: ControlChart, timeZone: string): Sentence {
  const name = measureName[chart.measure];
  const latest = chart.runs.at(-1);
  const groups = signalGroups(chart);
  const now = signalNow(chart, groups);
  if (now !== null && latest !== undefined) return shiftClause(name, now, latest, timeZone);
  const level = usualLevel(chart, groups);
  if (level === null) return [`${name} has no limits yet`];
  const of = chart.measure === "dry_yield_pct" ? " of the grain’s dry matter" : "";
  const soFar = chart.runs.length < FEW ? " so far" : "";
  return [`${name} holds at `, strong(levelOf(chart, level)), `${of}${soFar}`];
}

/** How many batches met the spec, over all varieties that have one. */
export function withinSpec(chart: ControlChart): { readonly met: number; readonly of: number } | null {
  const of = chart.capability.reduce((sum, { runs }) => sum + runs, 0);
  const missed = chart.capability.reduce((sum, { seenOutside }) => sum + seenOutside, 0);
  return of === 0 ? null : { met: of - missed, of };
}

/** `Yield met its spec in 174 of 178 batches, moisture in all 178.` */
function specSentence(charts: readonly ControlChart[]): Sentence {
  const seen = charts.flatMap((chart) => {
    const within = withinSpec(chart);
    return within === null ? [] : [{ name: measureName[chart.measure], ...within }];
  });
  const clauses = seen.map(({ name, met, of }, i): Sentence => {
    const all = met === of ? `all ${printNumber(of, 0)}` : `${printNumber(met, 0)} of ${printNumber(of, 0)}`;
    return [
      `${name} ${i === 0 ? "met its spec in " : "in "}`,
      strong(i === 0 ? `${all}\u00a0${of === 1 ? "batch" : "batches"}` : all),
    ];
  });
  return asSentence(clauses, ", ");
}

/** Clauses as one sentence: a capital at its start, a full stop at its end. */
function asSentence(clauses: readonly Sentence[], between: string): Sentence {
  const parts = clauses.flatMap((one, i) => (i === 0 ? one : [between, ...one]));
  const [first] = parts;
  if (first === undefined) return [];
  const text = typeof first === "string" ? first : first.strong;
  const capital = `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
  return [typeof first === "string" ? capital : strong(capital), ...parts.slice(1), "."];
}

const charted = ({ charts }: YieldMoistureResult): readonly ControlChart[] =>
  charts.filter(({ tooLittle, runs }) => tooLittle === null && runs.length > 0);

/** The page's first sentence: are yield and final moisture in control, and do they meet the spec? */
export function yieldMoistureAnswer(result: YieldMoistureResult, timeZone: string): Sentence {
  const able = charted(result);
  const lacking = result.charts.map(({ tooLittle }) => tooLittle).filter((why) => why !== null);
  if (able.length === 0) {
    return lacking.length === 0
      ? ["These logs hold no yield and no final moisture yet."]
      : joinSentences([...new Set(lacking)].map((why) => [why]));
  }
  return joinSentences([
    asSentence(
      able.map((chart) => clause(chart, timeZone)),
      "; ",
    ),
    specSentence(able),
    ...lacking.map((why): Sentence => [why]),
  ]);
}

/** How many signals there were, and what looked for them where there was none. */
function signalsCounted(charts: readonly ControlChart[], timeZone: string): Sentence {
  const counts = charts.map((chart) => ({ chart, groups: signalGroups(chart) }));
  if (counts.every(({ groups }) => groups.length === 0)) {
    const rules = listed((charts[0]?.rules ?? []).map((rule) => ruleWords[rule]));
    const batches = charts.map(
      ({ runs, measure }) => `${counted(runs.length, "batch", "batches")} of ${measureName[measure]}`,
    );
    return [`Looked for: ${rules}. Nothing signalled, in ${listed(batches)}.`];
  }
  const said = counts.map(({ chart, groups }) => {
    const of = `of ${measureName[chart.measure]}`;
    const latest = Math.max(...groups.map(({ to }) => chart.runs[to]?.at ?? Number.NEGATIVE_INFINITY));
    if (!Number.isFinite(latest)) return `none ${of}`;
    const when = printDate(latest, timeZone);
    return `${printNumber(groups.length, 0)} ${of}, ${groups.length === 1 ? "on" : "the last on"} ${when}`;
  });
  return [`Signals: ${said.join("; ")}.`];
}

/** What weakens the answer: limits that rest on few batches, and how far off they may lie. */
function provisionalSentence(charts: readonly ControlChart[]): Sentence {
  const said = charts.flatMap((chart): readonly string[] => {
    const phase = chart.phases.at(-1);
    if (phase === undefined || !phase.provisional || phase.centres.length === 0) return [];
    const name = measureName[chart.measure];
    if (phase.reach === null) return [`too few batches of some variety for ${name}`];
    const { low, high } = phase.reach;
    return [`±${printNumber(low, 1)} to ${printNumber(high, 1)}\u00a0points for ${name}`];
  });
  return said.length === 0 ? [] : [`Limits are provisional: ${listed(said)}.`];
}

/** What the answer rests on: signals counted, what was looked at, limits that are still uncertain. */
export function yieldMoistureGrounds(result: YieldMoistureResult, timeZone: string): readonly Sentence[] {
  const able = charted(result);
  return able.length === 0 ? [] : [joinSentences([signalsCounted(able, timeZone), provisionalSentence(able)])];
}

/** `Lacking: 3 not off the kiln yet, 1 no malt mass.` Empty where every batch is on the chart. */
export function lackingSentence({ lacking, runs }: ControlChart): Sentence {
  const count = lacking.reduce((sum, one) => sum + one.count, 0);
  if (count === 0) return [];
  const reasons = [...lacking]
    .sort((a, b) => b.count - a.count)
    .map(({ reason, count: n }) => `${reason}${lacking.length === 1 ? "" : ` (${printNumber(n, 0)})`}`);
  return [
    `${countedInWords(count, runs.length === 0 ? "batch" : "other batch", runs.length === 0 ? "batches" : "other batches")} `,
    `${count === 1 ? "is" : "are"} not on the chart: ${listed(reasons)}.`,
  ];
}
