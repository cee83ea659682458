import { allFacts, LEAST_CHANCE } from "../../findings/facts/allFacts.ts";
import { type FactFrame, type FactReport, LATEST_RUNS } from "../../findings/facts/factFrame.ts";
import { factId, joinFacts } from "../../findings/facts/joinFacts.ts";
import { logsFacts } from "../../findings/facts/logsFacts.ts";
import { lookedAt } from "../../findings/facts/lookedAt.ts";
import { ordersFacts } from "../../findings/facts/ordersFacts.ts";
import { type ChangesOptions, idsOfChanges, judgeEvents } from "../changes/analyseChanges.ts";
import type { EventRow } from "../eventRow.ts";
import type { ReportRows } from "../report.ts";
import type {
  HouseCosts,
  MonthReview,
  OpenQuestion,
  PromisedAgainstMade,
  ReviewFinding,
  ReviewResult,
} from "../reviewResult.ts";
import type { RunRow } from "../runRow.ts";
import type { TargetRow } from "../targetRow.ts";
import { acceptedValues } from "./acceptedValues.ts";
import { energyBeyond } from "./energyBeyond.ts";
import { logHealthOf, lostRuns } from "./logHealth.ts";
import { monthEvents } from "./monthEvents.ts";
import { type Month, monthBefore, monthOf, monthsOf, sameMonthYearBefore } from "./months.ts";
import { monthTotals, runsOfMonth } from "./monthTotals.ts";
import { promisedAgainstMade } from "./promised/promisedAgainstMade.ts";
import type { TradeRows } from "./promised/readTrade.ts";

export interface ReviewOptions {
  readonly costs: HouseCosts;
  /** Which months are worked out: all of them while the site is built, else the one that is shown (null: the latest). */
  readonly months: "all" | string | null;
  /** The report as it stood before a moment. */
  readonly reportBefore: (before: number) => Promise<FactReport>;
  readonly trade: () => Promise<TradeRows>;
  readonly targets: readonly TargetRow[];
  /** How what was changed or repaired is compared. */
  readonly comparing: Omit<ChangesOptions, "events" | "kilnHours" | "targets" | "timeZone">;
}

/** Batches that have left the kiln; earliest first. */
function unloaded(runs: readonly RunRow[]): readonly RunRow[] {
  return runs
    .filter(({ unloadedAt }) => unloadedAt !== null)
    .toSorted((a, b) => (a.unloadedAt ?? 0) - (b.unloadedAt ?? 0));
}

async function frameOf(month: Month, { reportBefore }: ReviewOptions): Promise<FactFrame> {
  const report = await reportBefore(month.before);
  const monthRuns = runsOfMonth(report.runs, month);
  const latestRuns = unloaded(report.runs).slice(-Math.max(LATEST_RUNS, monthRuns.length));
  const { name, from, before } = month;
  const energyOver = energyBeyond(report.loads, month);
  return { month: name, from, before, report, monthRuns, lostRuns: lostRuns(report, month), latestRuns, energyOver };
}

/** What was open at the end of the month before, and what became of it. */
function openQuestions(
  before: readonly ReviewFinding[],
  now: readonly ReviewFinding[],
  batches: number,
): readonly OpenQuestion[] {
  // By facts, since what stood alone last month may be one witness of several now.
  const idsOf = ({ facts }: ReviewFinding): readonly string[] => facts.map(factId);
  const here = new Set(now.flatMap(idsOf));
  return before.map((lastMonth) => {
    const still = idsOf(lastMonth).some((id) => here.has(id));
    return { id: lastMonth.id, lastMonth, now: still ? "still there" : batches === 0 ? "cannot be told" : "gone" };
  });
}

interface Beside {
  readonly lastFindings: readonly ReviewFinding[];
  readonly promised: PromisedAgainstMade | null;
  readonly ids: ReadonlyMap<EventRow, string>;
  readonly options: ReviewOptions;
}

function reviewOf(frame: FactFrame, { lastFindings, promised, ids, options }: Beside): MonthReview {
  const { report, month, monthRuns, from, before } = frame;
  const { timeZone } = report.house;
  const totalsOf = (name: string) => monthTotals(report.runs, report.loads, monthOf(name, timeZone));
  const [last, year] = [totalsOf(monthBefore(month)), totalsOf(sameMonthYearBefore(month))];
  // A month in which nothing left the kiln has nothing of its own to show but faults in its logs; what was open before stays open.
  const own = monthRuns.length === 0 ? logsFacts(frame) : allFacts(frame);
  const findings = joinFacts([...own, ...surelyLate(promised)], options.costs);
  const judge = (judged: readonly EventRow[]) =>
    judgeEvents(judged, report.runs, report.loads, {
      ...options.comparing,
      events: report.events,
      kilnHours: report.kilnHours,
      targets: options.targets,
      timeZone,
    });
  const { events, earlier } = monthEvents(report.events, month, judge, ids);
  return {
    totals: monthTotals(report.runs, report.loads, { name: month, from, before }),
    lastMonth: last.batches === 0 ? null : last,
    sameMonthLastYear: year.batches === 0 ? null : year,
    findings,
    open: openQuestions(lastFindings, findings, monthRuns.length),
    events,
    eventsBefore: earlier,
    lookedAt: lookedAt(frame, promised),
    logHealth: logHealthOf(report, monthRuns, { from, before }),
    promised,
  };
}

const surelyLate = (promised: PromisedAgainstMade | null) =>
  ordersFacts(promised).filter(({ chanceReal }) => chanceReal >= LEAST_CHANCE);

/** As of the last thing logged, since a month's last day may lie days behind it or ahead of it. */
async function promisedOf({ report }: FactFrame, { runs, loads, lastLoggedAt }: ReportRows, { trade }: ReviewOptions) {
  if (lastLoggedAt === null) return null;
  return promisedAgainstMade({ trade: await trade(), runs, loads, kilnHours: report.kilnHours, asOf: lastLoggedAt });
}

/** The month itself, or the latest before it in which a batch left the kiln. */
function latestWithBatches(name: string, rows: ReportRows): Month {
  const { runs, house } = rows;
  const month = monthOf(name, house.timeZone);
  const isFirst = !runs.some(({ unloadedAt }) => unloadedAt !== null && unloadedAt < month.from);
  return isFirst || runsOfMonth(runs, month).length > 0 ? month : latestWithBatches(monthBefore(name), rows);
}

/** A house's months in review, each as it stood at its end. */
export async function analyseReview(rows: ReportRows, options: ReviewOptions): Promise<ReviewResult> {
  const { timeZone } = rows.house;
  const always = { from: Number.NEGATIVE_INFINITY, before: Number.POSITIVE_INFINITY };
  const months = monthsOf(rows.runs, timeZone, lostRuns(rows, always));
  const { costs } = options;
  const names = months.map(({ name }) => name);
  const accepted = acceptedValues(options.targets, rows.runs);
  if (months.length === 0) {
    return { months: [], monthsThereAre: [], costs, accepted, tooLittle: "No batch has left the kiln yet." };
  }
  const wanted =
    options.months === "all"
      ? months
      : months.filter(({ name }) => name === (names.includes(options.months ?? "") ? options.months : names[0]));
  const ids = idsOfChanges(rows.events);
  const findingsOf = new Map<string, readonly ReviewFinding[]>();
  const reviews: MonthReview[] = [];
  // Earliest first, so that each finds what was open before it.
  for (const month of wanted.toReversed()) {
    const lastName = monthBefore(month.name);
    if (!findingsOf.has(lastName) && names.includes(lastName)) {
      const fired = latestWithBatches(lastName, rows);
      findingsOf.set(lastName, joinFacts(allFacts(await frameOf(fired, options)), costs));
    }
    const frame = await frameOf(month, options);
    const promised = month.name === names[0] ? await promisedOf(frame, rows, options) : null;
    const lastFindings = findingsOf.get(lastName) ?? [];
    const review = reviewOf(frame, { lastFindings, promised, ids, options });
    findingsOf.set(month.name, review.totals.batches === 0 ? lastFindings : review.findings);
    reviews.push(review);
  }
  return { months: reviews.reverse(), monthsThereAre: names, costs, accepted, tooLittle: null };
}
